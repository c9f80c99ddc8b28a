/**
 * Sizes that cannot be: each gives one sentence (which, what is wrong, an example), and the chamber no verdict. Whatever
 * can be reckoned without them still is. mm, radians.
 */
import type { EndShape } from '../end-shape.ts';
import type { MeasuredKey } from '../measured/measured-key.ts';
import type { Id } from '../schema/leaf.ts';
import type { JobUnit } from '../units/length-unit.ts';
import type { LinePlace } from './split-place.ts';
import type { WindowInput } from '../window/window-input.ts';
import { sayLength } from './say.ts';

/** mm. Nothing in a cylinder is larger. */
const LARGEST_MM = 200;
/** mm. Nothing that counts is smaller. */
const SMALLEST_MM = 0.05;

/** Finds the first size of a split's surroundings that cannot be; null when all can. */
export function windowTrouble(
  input: WindowInput,
  unit: JobUnit,
  inner: 'plug' | 'sleeve' | 'shell' = 'plug',
): string | null {
  const { lineRadius, innerHole, lower, upper, clearance, crestDrop } = input;
  const example = unit === 'in' ? '.500 in' : '12.70 mm';
  if (!isSize(2 * lineRadius))
    return `The ${inner} diameter cannot be ${sayLength(2 * lineRadius, unit)}, for example ${example}.`;
  if (!isSize(2 * innerHole.radius) || innerHole.radius >= lineRadius) {
    return `The chamber cannot be ${sayLength(2 * innerHole.radius, unit)} across in a ${inner} of ${sayLength(2 * lineRadius, unit)}.`;
  }
  for (const radius of [lower.radius, upper.radius]) {
    if (!isSize(2 * radius)) return `A pin cannot be ${sayLength(2 * radius, unit)} across.`;
  }
  if (!(clearance >= 0 && clearance < lineRadius / 2))
    return `The play cannot be ${sayLength(clearance, unit)}.`;
  if (!(crestDrop >= 0 && crestDrop < lineRadius / 2)) {
    return `The ${inner}'s crest cannot be ${sayLength(crestDrop, unit)} lower than half its diameter.`;
  }
  if (!(input.turn.angle > 0)) return 'The turn must be more than 0 degrees, for example 360.';
  return endTrouble(lower.top, 'pin') ?? endTrouble(upper.bottom, 'driver');
}

/** mm. A sleeve's wall is at least this thick. */
const THINNEST_WALL_MM = 0.2;

/** Finds a sleeve that does not go around what turns in it; null when all lines lie outside one another. */
export function sleeveTrouble(lines: readonly LinePlace[], unit: JobUnit): string | null {
  for (const { index, measured } of lines) {
    const within = lines[index - 1]?.measured;
    if (within === undefined) continue;
    const bore = 2 * within.radius.value + within.clearance.value;
    const across = 2 * measured.radius.value;
    if (across >= bore + 2 * THINNEST_WALL_MM) continue;
    const example = sayLength(2 * within.radius.value + 3.2, unit);
    return `The sleeve cannot be ${sayLength(across, unit)} across around a plug of ${sayLength(2 * within.radius.value, unit)}, for example ${example}.`;
  }
  return null;
}

/** Finds what cannot be about the cut under a chamber, or about the key as a whole. */
export function keyTrouble(key: MeasuredKey, cut: Id, unit: JobUnit): string | null {
  const found = key.cuts.find((each) => each.id === cut);
  const root = found?.rootDepth?.value;
  if (root !== undefined && !isSize(root)) return `A root depth cannot be ${sayLength(root, unit)}.`;
  const over = found?.overBall;
  if (over != null && !(isSize(over.ball.value) && over.reading.value > over.ball.value)) {
    return `A reading over the ball must be larger than the ball (${sayLength(over.ball.value, unit)}).`;
  }
  if (key.bladeHeightKnown && !isSize(key.bladeHeight.value)) {
    return `The height of the blade cannot be ${sayLength(key.bladeHeight.value, unit)}.`;
  }
  const flat = found?.rootFlat.value ?? 0;
  if (!(flat >= 0 && flat < LARGEST_MM)) return `The root flat cannot be ${sayLength(flat, unit)}.`;
  const angle = found?.includedAngle.value ?? 1;
  if (!(angle > 0.05 && angle < Math.PI - 0.05))
    return 'The angle of a cut lies between 3 and 177 degrees, for example 90.';
  return null;
}

function endTrouble(shape: EndShape, what: string): string | null {
  switch (shape.kind) {
    case 'bevel':
      return shape.angle > 0 && shape.angle < Math.PI / 2 - 1e-3
        ? null
        : `The bevel of a ${what} lies between 0 and 90 degrees, for example 45.`;
    case 'cone':
    case 'cup':
      return shape.includedAngle > 0 && shape.includedAngle < Math.PI - 1e-3
        ? null
        : `The cone of a ${what}'s end lies between 0 and 180 degrees, for example 118.`;
    case 'flat':
    case 'radius':
    case 'dome':
    case 'sphere':
      return null;
  }
}

function isSize(mm: number): boolean {
  return mm >= SMALLEST_MM && mm <= LARGEST_MM;
}
