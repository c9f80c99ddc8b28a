/**
 * The shapes that planned pins will have in a chamber: those of the ball, bottom pin and driver that are in the plan now, else
 * the usual ones; a master pin has the usual ends. Only shapes: lengths come from the plan.
 */
import {
  lowerStackEnd,
  type MeasuredPart,
  type MeasuredStack,
  measureStack,
} from '../measured/measured-stack.ts';
import { type ChamberPlace, holeRadius, radiusOf } from '../matching/fits.ts';
import type { Site } from '../matching/site.ts';
import type { Part } from '../schema/parts-schema.ts';

export type PlannedShapes = {
  /** Ball, bottom pin, master pin, driver. */
  readonly stack: MeasuredStack;
  readonly bottom: MeasuredPart;
  readonly master: MeasuredPart;
  readonly driver: MeasuredPart;
  /** mm; null for a pin alone. */
  readonly ballDiameter: number | null;
};

const PLANNED = { kind: 'pin', quantity: 1, original: false } as const;

/** Lays the shapes out; null when there is nothing to stand on. */
export function plannedShapes(site: Site, place: ChamberPlace): PlannedShapes | null {
  const usual = site.usual(place);
  const end = lowerStackEnd(place.presentStack);
  const present = end < 0 ? [] : place.presentStack.parts.slice(0, end + 1);
  const hasPin = present.some(({ role }) => role === 'bottomPin');
  const lower = hasPin ? present : usual.parts.slice(0, lowerStackEnd(usual) + 1);
  const driver = place.over ?? usual.parts.find(({ role }) => role === 'driver');
  const pin = lower[lower.length - 1];
  if (pin === undefined || driver === undefined) return null;
  const { diameter } = pin.part;
  const master: Part = {
    ...PLANNED,
    id: 'planned-master-pin',
    label: 'master pin',
    ...(diameter !== undefined && { diameter }),
  };
  const parts = [...lower.map(({ part }) => part), master, driver.part];
  const stack = measureStack(
    parts.map(({ id }, i) => ({
      part: id,
      ...((lower[i] ?? (i === parts.length - 1 ? driver : null))?.flipped === true && { flipped: true }),
    })),
    new Map(parts.map((part) => [part.id, part])),
    [],
    radiusOf(site.assembly),
    holeRadius(place),
    site.bench.measuring,
  );
  const bottomAt = lowerStackEnd(stack);
  const bottom = stack.parts[bottomAt];
  const above = stack.parts.slice(bottomAt + 1);
  const [middle, top] = above;
  if (bottom === undefined || middle === undefined || top === undefined) return null;
  const ball = stack.parts.find(({ role }) => role === 'ball');
  return {
    stack,
    bottom,
    master: middle,
    driver: top,
    ballDiameter: ball === undefined ? null : 2 * ball.radius.value,
  };
}
