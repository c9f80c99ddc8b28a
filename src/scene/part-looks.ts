/**
 * The materials of one theme: for each kind of part a turned or milled surface, a cut face, its edges and its outline.
 * Made once for a theme, shared by all parts, disposed with it.
 */
import {
  Color,
  LineBasicMaterial,
  type Material,
  MeshLambertMaterial,
  MeshPhongMaterial,
  type ShaderMaterial,
} from 'three';
import type { PartKind } from '../solids/solid-parts.ts';
import {
  createHatchMaterial,
  type HatchStyle,
  type ScaleUniform,
  setHatchOpacity,
} from './hatch-material.ts';
import { createOutlineMaterial, type PictureUniform } from './outline-material.ts';
import type { SceneTheme } from './scene-theme.ts';

export type PartLook = {
  readonly skin: Material;
  readonly cap: ShaderMaterial;
  readonly edges: LineBasicMaterial;
  readonly outline: ShaderMaterial;
};

/** CSS pixels. 0.5 mm, the wide line of the drawing, for bodies; 0.35 mm for key, pins and balls. */
const BODY_LINE = 1.9;
const PART_LINE = 1.3;

/** How much a part lets through when it is see-through, and its outline then. */
const SEE_THROUGH = { skin: 0.14, cap: 0.3, edges: 0.2, outline: 0.4 } as const;

/** Edges behind the section are drawn finer than its outlines: one pixel, and paler. */
const EDGE_STRENGTH = 0.5;

const RISING = Math.PI / 4;
const FALLING = -Math.PI / 4;
const PLAIN: HatchStyle = { angle: 0, pitch: 0 };

/** The drawing's styles (a test compares them). Parts that touch differ in angle or pitch. */
const BODY_HATCHES: Readonly<Partial<Record<PartKind, HatchStyle>>> = {
  shell: { angle: RISING, pitch: 8 },
  plug: { angle: FALLING, pitch: 5 },
  sleeve: { angle: RISING, pitch: 4 },
};

/** Only when all is hatched: by draughting custom, solid turned parts, keys and rings cut lengthwise stay plain. */
const PART_HATCHES: Readonly<Partial<Record<PartKind, HatchStyle>>> = {
  key: { angle: Math.PI / 3, pitch: 9 },
  retainer: { angle: FALLING, pitch: 2.5 },
  ball: { angle: -Math.PI / 3, pitch: 4 },
};
const STACK_HATCHES: readonly HatchStyle[] = [
  { angle: FALLING, pitch: 6.5 },
  { angle: RISING, pitch: 6.5 },
  { angle: -Math.PI / 3, pitch: 6.5 },
];

/** Gives the hatching of a kind; `place` counts the parts of a stack from the bottom. */
export function hatchStyleOf(kind: PartKind, place: number, hatching: 'bodies' | 'all'): HatchStyle {
  const body = BODY_HATCHES[kind];
  if (body !== undefined) return body;
  if (hatching === 'bodies') return PLAIN;
  return PART_HATCHES[kind] ?? STACK_HATCHES[place % STACK_HATCHES.length] ?? PLAIN;
}

/** What materials need to know of the eye; set before each frame. */
export type EyeUniforms = { readonly scale: ScaleUniform; readonly picture: PictureUniform };

export class PartLooks {
  readonly #looks = new Map<string, PartLook>();
  readonly #theme: SceneTheme;
  readonly #scale: ScaleUniform;
  readonly #picture: PictureUniform;
  readonly #hatching: 'bodies' | 'all';

  constructor(theme: SceneTheme, hatching: 'bodies' | 'all', eye: EyeUniforms) {
    this.#theme = theme;
    this.#hatching = hatching;
    this.#scale = eye.scale;
    this.#picture = eye.picture;
  }

  /** Gives the materials of a kind of part at its place in the stack, solid or see-through. */
  look(kind: PartKind, place: number, isSeeThrough: boolean): PartLook {
    const key = `${kind} ${place} ${isSeeThrough}`;
    const before = this.#looks.get(key);
    if (before) return before;
    const fresh = this.#create(kind, hatchStyleOf(kind, place, this.#hatching), isSeeThrough);
    this.#looks.set(key, fresh);
    return fresh;
  }

  dispose(): void {
    for (const look of this.#looks.values()) {
      for (const material of Object.values(look)) material.dispose();
    }
    this.#looks.clear();
  }

  #create(kind: PartKind, hatch: HatchStyle, isSeeThrough: boolean): PartLook {
    const colours = this.#theme.parts[kind];
    const cap = createHatchMaterial(colours, hatch, this.#scale);
    setHatchOpacity(cap, isSeeThrough ? SEE_THROUGH.cap : 1);
    return {
      skin: skinMaterial(kind, colours.skin, isSeeThrough),
      cap,
      edges: new LineBasicMaterial({
        color: new Color(this.#theme.ink),
        transparent: true,
        opacity: isSeeThrough ? SEE_THROUGH.edges : EDGE_STRENGTH,
        depthWrite: false,
      }),
      outline: createOutlineMaterial(
        this.#theme.ink,
        BODY_HATCHES[kind] ? BODY_LINE : PART_LINE,
        isSeeThrough ? SEE_THROUGH.outline : 1,
        this.#picture,
      ),
    };
  }
}

function skinMaterial(kind: PartKind, colour: string, isSeeThrough: boolean): Material {
  const common = {
    color: new Color(colour),
    vertexColors: kind !== 'spring',
    transparent: isSeeThrough,
    opacity: isSeeThrough ? SEE_THROUGH.skin : 1,
    depthWrite: !isSeeThrough,
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 1,
  };
  if (kind === 'spring') return new MeshLambertMaterial(common);
  return new MeshPhongMaterial({ ...common, specular: new Color('#3a3a36'), shininess: 28 });
}
