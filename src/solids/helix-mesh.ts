/**
 * A compression spring: round wire along a helix, as a closed mesh whose length can be changed without building it anew.
 *
 * Frame: the axis is the y axis, the lowest point of the wire at y = 0, its highest at y = length. Every height is a
 * plain multiple of the length plus a constant, y = atZero + perLength * length, so a scene moves corners instead of
 * making them: the wire's section stays upright, and its volume the same, at every length.
 *
 *     (____)  end coil, closed
 *      ____)
 *     (____   coils that work share the rest of the length
 *      ____)
 *     (____)  end coil, closed
 */
import { known } from '../model/assert.ts';
import { unitCircle } from './facets.ts';

export type SpringShape = {
  /** Of the outside of the coils. */
  readonly radius: number;
  readonly wire: number;
  readonly coils: number;
  /** Length squeezed solid. */
  readonly solid: number;
};

export type SpringMesh = {
  /** At length 0: only x and z, and the constant part of y. */
  readonly positions: Float32Array;
  /** For each vertex, how much its y grows with the length. */
  readonly perLength: Float32Array;
  readonly normals: Float32Array;
  readonly indices: Uint32Array;
};

const STEPS_PER_COIL = 24;
const SIDES = 8;

/** Builds the mesh of a spring. */
export function buildSpringMesh(shape: SpringShape): SpringMesh {
  const coils = Math.max(3, shape.coils);
  const steps = Math.round(coils * STEPS_PER_COIL);
  const around = unitCircle(STEPS_PER_COIL);
  const section = unitCircle(SIDES);
  const writer = new SpringWriter();
  for (let step = 0; step <= steps; step++) {
    const cosine = known(around[2 * (step % STEPS_PER_COIL)], 'helix point');
    const sine = known(around[2 * (step % STEPS_PER_COIL) + 1], 'helix point');
    const height = wireHeight(shape, coils, step / STEPS_PER_COIL);
    for (let side = 0; side < SIDES; side++) {
      const out = known(section[2 * side], 'wire point');
      const up = known(section[2 * side + 1], 'wire point');
      const r = shape.radius - shape.wire / 2 + (shape.wire / 2) * out;
      writer.vertex([r * cosine, height.atZero + (shape.wire / 2) * up, -r * sine], height.perLength, [
        out * cosine,
        up,
        -out * sine,
      ]);
    }
  }
  for (let step = 0; step < steps; step++) writer.band(step * SIDES, (step + 1) * SIDES);
  writer.lid(0, [0, 0, 1]);
  writer.lid(steps * SIDES, [0, 0, -1]);
  return writer.finish();
}

/** Gives the corners of a spring at one length. */
export function springPositions(mesh: SpringMesh, length: number): Float32Array {
  const positions = mesh.positions.slice();
  for (let i = 0; i < mesh.perLength.length; i++) {
    positions[3 * i + 1] =
      known(positions[3 * i + 1], 'height') + known(mesh.perLength[i], 'height') * length;
  }
  return positions;
}

/** Height of the wire's middle after so many coils, as a constant and a multiple of the length. */
function wireHeight(
  shape: SpringShape,
  coils: number,
  coil: number,
): { readonly atZero: number; readonly perLength: number } {
  // Squeezed solid, all coils climb alike; the end coils climb so at every length.
  const endRise = (shape.solid - shape.wire) / coils;
  const working = coils - 2;
  const inWorking = Math.min(working, Math.max(0, coil - 1));
  const inEnds = coil - inWorking;
  const share = inWorking / working;
  return { atZero: shape.wire / 2 + inEnds * endRise - share * (shape.wire + 2 * endRise), perLength: share };
}

class SpringWriter {
  readonly #positions: number[] = [];
  readonly #perLength: number[] = [];
  readonly #normals: number[] = [];
  readonly #indices: number[] = [];

  vertex(position: readonly number[], perLength: number, normal: readonly number[]): void {
    this.#positions.push(...position);
    this.#perLength.push(perLength);
    this.#normals.push(...normal);
  }

  /** Joins two rings of the wire. */
  band(low: number, high: number): void {
    for (let side = 0; side < SIDES; side++) {
      const next = (side + 1) % SIDES;
      this.#indices.push(low + side, high + side, high + next, low + side, high + next, low + next);
    }
  }

  /** Closes an end with its own copies of the ring, so that it is shaded flat. */
  lid(ring: number, normal: readonly [number, number, number]): void {
    const first = this.#perLength.length;
    for (let i = ring; i < ring + SIDES; i++) {
      this.vertex(this.#positions.slice(3 * i, 3 * i + 3), known(this.#perLength[i], 'height'), normal);
    }
    for (let side = 1; side + 1 < SIDES; side++) {
      if (normal[2] > 0) this.#indices.push(first, first + side, first + side + 1);
      else this.#indices.push(first, first + side + 1, first + side);
    }
  }

  finish(): SpringMesh {
    return {
      positions: Float32Array.from(this.#positions),
      perLength: Float32Array.from(this.#perLength),
      normals: Float32Array.from(this.#normals),
      indices: Uint32Array.from(this.#indices),
    };
  }
}
