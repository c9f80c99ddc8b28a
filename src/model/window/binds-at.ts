/** Where a turn stops. Frame: see `window-input.ts`, turned by the angle. Lengths mm, angles radians. */
import type { Radians } from '../radians.ts';
import { lowerStops } from './lower-stops.ts';
import { shearWindow } from './shear-window.ts';
import { upperStops } from './upper-stops.ts';
import type { LinePoint, WindowInput } from './window-input.ts';

/** What stops the turn. A contact off z = 0 has its mirror image at -z; a turn the other way has it at -x. */
export type Binding = {
  readonly turn: Radians;
  readonly side: 'upper part' | 'lower part';
  readonly contact: LinePoint;
};

/** Finds where a split at this offset stops the turn; null if it turns, as far as the cylinder turns. */
export function bindsAt(input: WindowInput, offset: number): Binding | null {
  const { lowest, highest, lowestAt } = shearWindow(input);
  const byUpper = offset < lowest && lowestAt !== null ? upperStops(input, offset, lowestAt.turn) : null;
  const byLower = offset > highest ? lowerStops(input, offset) : null;
  const upper = byUpper === null ? null : ({ side: 'upper part', ...byUpper } as const);
  const lower = byLower === null ? null : ({ side: 'lower part', ...byLower } as const);
  const first = upper !== null && (lower === null || upper.turn <= lower.turn) ? upper : lower;
  return first !== null && first.turn <= input.turn.angle ? first : null;
}
