/**
 * The material of cut faces: flat colour without light, like paint on paper, with hatching whose pitch stays the same on
 * the screen at every scale. Lines lie at whole multiples of the pitch from the part's own origin, as in the drawing.
 */
import { Color, DoubleSide, ShaderMaterial } from 'three';

export type HatchStyle = {
  /** From the plug's length, counter-clockwise as the section is looked at, radians. */
  readonly angle: number;
  /** CSS pixels from line to line; 0: no lines. */
  readonly pitch: number;
};

/** mm on a cut face for one CSS pixel; one object shared by all cut faces, set before each frame. */
export type ScaleUniform = { value: number };

const VERTEX = /* glsl */ `
  attribute vec2 faceUv;
  varying vec2 place;
  #include <clipping_planes_pars_vertex>
  void main() {
    place = faceUv;
    vec3 transformed = position;
    #include <project_vertex>
  }
`;

const FRAGMENT = /* glsl */ `
  varying vec2 place;
  uniform vec3 fill;
  uniform vec3 ink;
  uniform vec2 across;
  uniform float pitch;
  uniform float mmPerPixel;
  uniform float opacity;
  void main() {
    float amount = 0.0;
    if (pitch > 0.0) {
      float level = dot(place, across);
      float spacing = pitch * mmPerPixel;
      // On a tilted face a screen pixel spans more of the face: lines keep their thickness, not their pitch.
      float pixel = max(fwidth(level), 1e-9);
      float gap = spacing / pixel;
      float away = abs(fract(level / spacing + 0.5) - 0.5) * gap;
      float line = 1.0 - smoothstep(0.1, 1.1, away);
      // Lines that would run into each other become an even tone.
      amount = mix(0.3, line, smoothstep(1.5, 4.0, gap));
    }
    gl_FragColor = vec4(mix(fill, ink, amount), opacity);
    #include <colorspace_fragment>
  }
`;

/** Makes the material of one kind of cut face. */
export function createHatchMaterial(
  colours: { readonly cut: string; readonly hatch: string },
  style: HatchStyle,
  scale: ScaleUniform,
): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    side: DoubleSide,
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 1,
    uniforms: {
      fill: { value: new Color(colours.cut) },
      ink: { value: new Color(colours.hatch) },
      across: { value: [-Math.sin(style.angle), Math.cos(style.angle)] },
      pitch: { value: style.pitch },
      mmPerPixel: scale,
      opacity: { value: 1 },
    },
  });
}

/** Makes cut faces let through what lies behind, or not. */
export function setHatchOpacity(material: ShaderMaterial, opacity: number): void {
  const { opacity: uniform } = material.uniforms;
  if (uniform) uniform.value = opacity;
  material.transparent = opacity < 1;
  material.depthWrite = opacity >= 1;
}
