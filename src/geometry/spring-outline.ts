/**
 * A spring the way drawings show it: cut through the middle, the wire's cut faces at both sides and the far half of each
 * coil between them. The number of coils is kept; their spacing follows the length, down to wire on wire. mm.
 *
 *    o------.        Frame: x from the spring's axis, y the height. Coil i starts at the left, half a pitch lower than
 *     '------o       its right side. Squeezed below its solid length (which cannot be) the wire is drawn thinner.
 *    o------.
 *     '------o
 */
import type { PosedPart } from '../model/assembly/pose.ts';
import { circle, type Outline, type Point, polygonOutline } from './outline.ts';

export type SpringOutline = {
  /** Cut faces of the wire. */
  readonly wires: readonly Outline[];
  /** The far halves of the coils. */
  readonly halves: readonly Outline[];
  readonly isSolid: boolean;
};

/** mm. A spring closer to its solid length than this is drawn solid. */
const SOLID_WITHIN_MM = 0.01;

/** Draws a spring as it is pressed. */
export function springOutline({ part, y, topY }: PosedPart): SpringOutline {
  const length = Math.max(0, topY - y);
  const coils = Math.max(2, Math.round(part.coils));
  const wire = Math.min(part.wire, length / coils);
  const reach = Math.max(0, part.radius - wire / 2);
  const spacing = (length - wire) / (coils - 0.5);
  const left = (i: number): Point => ({ x: -reach, y: y + wire / 2 + i * spacing });
  const right = (i: number): Point => ({ x: reach, y: y + wire / 2 + (i + 0.5) * spacing });
  const turns = Array.from({ length: coils }, (_, i) => i);
  return {
    wires: turns.flatMap((i) => [circle(left(i), wire / 2), circle(right(i), wire / 2)]),
    halves: turns.map((i) => band(left(i), right(i), wire)),
    isSolid: length <= part.solid + SOLID_WITHIN_MM,
  };
}

function band(from: Point, to: Point, width: number): Outline {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const x = (-(to.y - from.y) / length) * (width / 2);
  const y = ((to.x - from.x) / length) * (width / 2);
  return polygonOutline([
    { x: from.x - x, y: from.y - y },
    { x: to.x - x, y: to.y - y },
    { x: to.x + x, y: to.y + y },
    { x: from.x + x, y: from.y + y },
  ]);
}
