/**
 * How each kind of part is hatched. Pitch in CSS pixels on paper at any scale, angles radians in the drawing (y down).
 * Parts that can touch never share angle and pitch together (a test goes through all pairs). As a rule of draughting,
 * pins, balls, key and rings are not hatched when cut lengthwise; the teaching style hatches all.
 */
import type { HatchStyle } from '../geometry/hatch.ts';
import type { CutRole } from '../geometry/cut-parts.ts';

const RISING = -Math.PI / 4;
const FALLING = Math.PI / 4;

/** In both styles. */
const BODY_HATCHES: Readonly<Partial<Record<CutRole, HatchStyle>>> = {
  shell: { angle: RISING, pitch: 8 },
  plug: { angle: FALLING, pitch: 5 },
  sleeve: { angle: RISING, pitch: 4 },
};

/** In the teaching style. Parts of one stack alternate by their place, so that two spacers differ as well. */
const PART_HATCHES: Readonly<Record<'key' | 'retainer' | 'ball', HatchStyle>> = {
  key: { angle: -Math.PI / 3, pitch: 9 },
  retainer: { angle: FALLING, pitch: 2.5 },
  ball: { angle: Math.PI / 3, pitch: 4 },
};
const STACK_HATCHES: readonly HatchStyle[] = [
  { angle: FALLING, pitch: 6.5 },
  { angle: RISING, pitch: 6.5 },
  { angle: Math.PI / 3, pitch: 6.5 },
];

export type HatchUse = 'bodies' | 'all' | 'none';

/** Gives the hatching of a part, or null where it stays plain. `place` counts the parts of a stack from the bottom. */
export function hatchFor(role: CutRole, place: number, use: HatchUse): HatchStyle | null {
  if (use === 'none') return null;
  const body = BODY_HATCHES[role];
  if (body !== undefined) return body;
  if (use === 'bodies') return null;
  if (role === 'key' || role === 'retainer' || role === 'ball') return PART_HATCHES[role];
  return STACK_HATCHES[place % STACK_HATCHES.length] ?? null;
}
