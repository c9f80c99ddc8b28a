/** Edits of what is known of a spring beside its two lengths. Each gives a new job. mm, N, GPa. */
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { Part } from '../schema/parts-schema.ts';
import { withOptional } from './change.ts';
import { changePart } from './edit-stack.ts';

export type Pressed = NonNullable<Part['pressed']>[number];

/**
 * What springs are wound of, with the modulus in shear of the wire. GPa. Shigley's Mechanical Engineering Design, table of
 * mechanical properties of some spring wires, from memory: music wire 81.7 to 79.3, hard-drawn 80.7 to 79.3, stainless
 * A313 69.0, phosphor bronze 41.4. For lock springs the thin sizes count.
 */
export const SPRING_WIRES = {
  'music wire': 81.7,
  'stainless steel': 69,
  'phosphor bronze': 41.4,
} as const;
export type SpringWire = keyof typeof SPRING_WIRES;

/** Names the material that a modulus belongs to; null for none of these. */
export function springWireOf(shearModulusGPa: number | undefined): SpringWire | null {
  const names = Object.keys(SPRING_WIRES) as SpringWire[];
  return names.find((name) => SPRING_WIRES[name] === shearModulusGPa) ?? null;
}

export function setSpringWire(job: Job, part: Id, name: SpringWire): Job {
  return changePart(job, part, (each) => ({ ...each, shearModulusGPa: SPRING_WIRES[name] }));
}

/** Sets how many coils a spring has, the closed ones at its ends counted. */
export function setCoils(job: Job, part: Id, coils: number | undefined): Job {
  return changePart(job, part, (each) => withOptional(each, 'coils', coils));
}

export function setCoilEnds(job: Job, part: Id, ends: NonNullable<Part['coilEnds']>): Job {
  return changePart(job, part, (each) => ({ ...each, coilEnds: ends }));
}

/** Sets what a spring pressed with, pressed to a length: the first or the second reading; null takes it away. */
export function setPressed(job: Job, part: Id, which: 0 | 1, reading: Pressed | null): Job {
  return changePart(job, part, (each) => {
    const kept = [0, 1].map((i) => (i === which ? reading : (each.pressed?.[i] ?? null)));
    const pressed = kept.filter((one) => one !== null);
    return withOptional(each, 'pressed', pressed.length === 0 ? undefined : pressed);
  });
}
