/**
 * Lines around cut faces, of constant thickness on the screen. They lie wholly inside the metal: a line drawn on the edge
 * would eat half its thickness of the gap beside it, and a gap of 0.1 mm is what this picture is about.
 *
 *     ______________________  edge of the cut face
 *     ######################  line, as thick as stated
 *       metal
 */
import {
  Color,
  InstancedBufferGeometry,
  InstancedInterleavedBuffer,
  InterleavedBufferAttribute,
  BufferAttribute,
  ShaderMaterial,
  type Vector2,
} from 'three';

/** Size of the picture in CSS pixels; one object shared by all lines, set before each frame. */
export type PictureUniform = { readonly value: Vector2 };

const VERTEX = /* glsl */ `
  attribute vec3 lineStart;
  attribute vec3 lineEnd;
  uniform vec2 picture;
  uniform float thickness;
  void main() {
    vec4 start = projectionMatrix * modelViewMatrix * vec4(lineStart, 1.0);
    vec4 end = projectionMatrix * modelViewMatrix * vec4(lineEnd, 1.0);
    vec2 along = (end.xy / end.w - start.xy / start.w) * picture;
    float reach = length(along);
    vec2 direction = reach > 0.0 ? along / reach : vec2(0.0);
    // The metal is on the left of the line.
    vec2 inward = vec2(-direction.y, direction.x) * thickness * position.y;
    vec4 place = position.x < 0.5 ? start : end;
    place.xy += inward * 2.0 / picture * place.w;
    // In front of the face it belongs to, by less than any gap shows.
    place.z -= 0.00002 * place.w;
    gl_Position = place;
  }
`;

const FRAGMENT = /* glsl */ `
  uniform vec3 ink;
  uniform float opacity;
  void main() {
    gl_FragColor = vec4(ink, opacity);
    #include <colorspace_fragment>
  }
`;

export function createOutlineMaterial(
  ink: string,
  thickness: number,
  opacity: number,
  picture: PictureUniform,
): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    transparent: opacity < 1,
    depthWrite: opacity >= 1,
    uniforms: {
      ink: { value: new Color(ink) },
      opacity: { value: opacity },
      thickness: { value: thickness },
      picture,
    },
  });
}

/** Makes the geometry from pairs of points. */
export function buildOutlineGeometry(points: Float32Array): InstancedBufferGeometry {
  const geometry = new InstancedBufferGeometry();
  geometry.setAttribute(
    'position',
    new BufferAttribute(Float32Array.of(0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0), 3),
  );
  geometry.setIndex([0, 1, 2, 0, 2, 3]);
  const pairs = new InstancedInterleavedBuffer(points, 6, 1);
  geometry.setAttribute('lineStart', new InterleavedBufferAttribute(pairs, 3, 0));
  geometry.setAttribute('lineEnd', new InterleavedBufferAttribute(pairs, 3, 3));
  return geometry;
}
