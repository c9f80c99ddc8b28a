/** Turns mesh buffers into what three draws, once for equal numbers however many parts share them; frees it with the last. */
import { BufferAttribute, BufferGeometry } from 'three';
import { buildSpringMesh, type SpringShape } from '../solids/helix-mesh.ts';
import type { MeshBuffers } from '../solids/mesh-buffers.ts';
import { buildOutlineGeometry } from './outline-material.ts';

export type PartGeometry = {
  readonly skin: BufferGeometry;
  readonly cap: BufferGeometry | null;
  readonly edges: BufferGeometry | null;
  readonly outline: BufferGeometry | null;
};

/** Geometries by the numbers they are made of, with a count of the parts that show them. */
export class GeometryShelf<T extends { readonly [name: string]: BufferGeometry | null }> {
  readonly #entries = new Map<string, { readonly geometry: T; users: number }>();

  /** Gives the geometry of a key, made by `build` if nobody shows it yet. Each call is undone by one `release`. */
  take(key: string, build: () => T): T {
    const entry = this.#entries.get(key) ?? { geometry: build(), users: 0 };
    entry.users += 1;
    this.#entries.set(key, entry);
    return entry.geometry;
  }

  release(key: string): void {
    const entry = this.#entries.get(key);
    if (!entry) return;
    entry.users -= 1;
    if (entry.users > 0) return;
    for (const geometry of Object.values(entry.geometry)) geometry?.dispose();
    this.#entries.delete(key);
  }
}

export function buildPartGeometry(buffers: MeshBuffers): PartGeometry {
  const skin = new BufferGeometry();
  skin.setAttribute('position', new BufferAttribute(buffers.positions, 3));
  skin.setAttribute('normal', new BufferAttribute(buffers.normals, 3));
  skin.setAttribute('color', new BufferAttribute(wallTone(buffers.inside), 3, true));
  skin.setIndex(new BufferAttribute(buffers.indices, 1));
  return {
    skin,
    cap: buffers.capIndices.length > 0 ? capGeometry(buffers) : null,
    edges: buffers.creases.length > 0 ? pointsGeometry(buffers.creases) : null,
    outline: buffers.capOutline.length > 0 ? buildOutlineGeometry(buffers.capOutline) : null,
  };
}

/** Of 255: how much lighter the outside is than the walls of holes, which therefore read as holes at any angle. */
const WALL_TONE = 176;

function wallTone(inside: Uint8Array): Uint8Array {
  const tone = new Uint8Array(inside.length * 3);
  inside.forEach((isInside, i) => tone.fill(isInside === 1 ? WALL_TONE : 255, 3 * i, 3 * i + 3));
  return tone;
}

function capGeometry(buffers: MeshBuffers): BufferGeometry {
  const cap = new BufferGeometry();
  cap.setAttribute('position', new BufferAttribute(buffers.capPositions, 3));
  cap.setAttribute('faceUv', new BufferAttribute(buffers.capUv, 2));
  cap.setIndex(new BufferAttribute(buffers.capIndices, 1));
  return cap;
}

function pointsGeometry(points: Float32Array): BufferGeometry {
  return new BufferGeometry().setAttribute('position', new BufferAttribute(points, 3));
}

/**
 * A spring whose length is set by one number: corners at length 0, and one morph target that adds a millimetre of length,
 * so that the influence is the length itself.
 */
export function buildSpringGeometry(shape: SpringShape): { readonly coil: BufferGeometry } {
  const mesh = buildSpringMesh(shape);
  const perLength = new Float32Array(mesh.positions.length);
  mesh.perLength.forEach((value, i) => {
    perLength[3 * i + 1] = value;
  });
  const coil = new BufferGeometry();
  coil.setAttribute('position', new BufferAttribute(mesh.positions, 3));
  coil.setAttribute('normal', new BufferAttribute(mesh.normals, 3));
  coil.setIndex(new BufferAttribute(mesh.indices, 1));
  coil.morphAttributes.position = [new BufferAttribute(perLength, 3)];
  coil.morphTargetsRelative = true;
  return { coil };
}
