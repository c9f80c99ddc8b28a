/**
 * What is in one hole, bottom to top, as estimates: each part's size, and the height of each split above the foot. Parts
 * measured together (a group) count with their common height, never with the sum of their own. mm.
 */
import { combine, type Estimate, exact, type FieldRef, within } from '../estimate/estimate.ts';
import { type Measuring, readLength } from '../estimate/read-value.ts';
import { ballStandsOut } from '../contact/dimple.ts';
import type { PartRole } from '../assembly/assembly.ts';
import type { Item } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { Group, Part } from '../schema/parts-schema.ts';
import { BEARABLE_RADIUS_MM } from '../tolerances.ts';
import { type MeasuredEnd, readEnd } from './part-ends.ts';

export type MeasuredPart = {
  readonly part: Part;
  readonly role: PartRole;
  readonly radius: Estimate;
  /** Null when never measured. */
  readonly length: Estimate | null;
  readonly lower: MeasuredEnd;
  readonly upper: MeasuredEnd;
  readonly flipped: boolean;
};

export type MeasuredStack = {
  readonly parts: readonly MeasuredPart[];
  /**
   * For each part but springs: the height of its top above the foot's lowest point. Null from the first part on whose
   * height is not known.
   */
  readonly tops: readonly (Estimate | null)[];
  /** Parts whose height counts as measured together, by the place of the first and the last. */
  readonly together: readonly { readonly from: number; readonly to: number; readonly group: Id }[];
};

/** A pin on a ball whose dimple nobody measured sinks somewhere between not at all and this share of the ball. */
const DEEPEST_SEAT_SHARE = 0.25;

/** Names the role of each item by its place: balls, then bottom pin, master pins, driver, spring. */
export function rolesOf(kinds: readonly Part['kind'][]): PartRole[] {
  const firstPin = kinds.indexOf('pin');
  const lastPin = kinds.lastIndexOf('pin');
  return kinds.map((kind, i) => {
    if (kind === 'ball') return 'ball';
    if (kind === 'spring') return 'spring';
    if (i === firstPin) return 'bottomPin';
    return i === lastPin ? 'driver' : 'masterPin';
  });
}

/**
 * Measures a stack.
 *
 * @param lineRadius what a crown is turned to unless it says otherwise
 * @param holeRadius a part nobody measured across is drawn to fill its chamber
 */
export function measureStack(
  items: readonly Item[],
  parts: ReadonlyMap<Id, Part>,
  groups: readonly Group[],
  lineRadius: number,
  holeRadius: number,
  measuring: Measuring,
): MeasuredStack {
  const found = items.flatMap((item) => {
    const part = parts.get(item.part);
    return part === undefined ? [] : [{ part, flipped: item.flipped === true }];
  });
  const { least, most } = BEARABLE_RADIUS_MM;
  const roles = rolesOf(found.map((each) => each.part.kind));
  const measured = found.map(({ part, flipped }, i): MeasuredPart => {
    const field: FieldRef = { owner: 'part', id: part.id, name: 'diameter' };
    const radius =
      part.diameter === undefined
        ? exact(holeRadius * 0.975)
        : within(scaled(readLength(part.diameter, field, measuring), 0.5), least, most);
    const role = roles[i] ?? 'bottomPin';
    const top = role === 'driver' || role === 'spring' ? 'other' : 'top of the lower stack';
    const bottom = i === 0 ? 'foot' : role === 'bottomPin' ? 'other' : 'bottom of a driver';
    const ends = [
      readEnd(part, 0, flipped ? top : bottom, lineRadius, radius.value),
      readEnd(part, 1, flipped ? bottom : top, lineRadius, radius.value),
    ] as const;
    return {
      part,
      role,
      radius,
      length: lengthOfPart(part, measuring),
      lower: flipped ? ends[1] : ends[0],
      upper: flipped ? ends[0] : ends[1],
      flipped,
    };
  });
  const together = groupsIn(measured, groups);
  return { parts: measured, tops: topsOf(measured, together, groups, measuring), together };
}

function lengthOfPart(part: Part, measuring: Measuring): Estimate | null {
  const name = part.kind === 'ball' ? 'diameter' : 'length';
  const value = part.kind === 'ball' ? part.diameter : part.length;
  return value === undefined ? null : readLength(value, { owner: 'part', id: part.id, name }, measuring);
}

/** Finds runs of parts that were measured together, longest first, none overlapping. */
function groupsIn(parts: readonly MeasuredPart[], groups: readonly Group[]): MeasuredStack['together'] {
  const runs: { from: number; to: number; group: Id }[] = [];
  const here = new Set(parts.map((each) => each.part.id));
  const bySize = groups
    .filter((group) => group.parts.every((id) => here.has(id)))
    .sort((a, b) => b.parts.length - a.parts.length);
  for (const group of bySize) {
    for (let from = 0; from + group.parts.length <= parts.length; from++) {
      const to = from + group.parts.length - 1;
      const fits = group.parts.every((id, i) => parts[from + i]?.part.id === id);
      if (fits && runs.every((run) => run.to < from || run.from > to))
        runs.push({ from, to, group: group.id });
    }
  }
  return runs.sort((a, b) => a.from - b.from);
}

function topsOf(
  parts: readonly MeasuredPart[],
  together: MeasuredStack['together'],
  groups: readonly Group[],
  measuring: Measuring,
): (Estimate | null)[] {
  const tops: (Estimate | null)[] = [];
  let height: Estimate | null = exact(0);
  for (let i = 0; i < parts.length; i++) {
    const part = parts[i];
    if (part === undefined || part.role === 'spring') {
      tops.push(null);
      continue;
    }
    const run = together.find((each) => each.from <= i && i <= each.to);
    if (run !== undefined && i < run.to) {
      tops.push(insideGroup(parts, run.from, i, height));
      continue;
    }
    const group = run && groups.find((each) => each.id === run.group);
    const added: Estimate | null =
      group === undefined
        ? ownHeight(parts, i)
        : readLength(group.height, { owner: 'group', id: group.id, name: 'height' }, measuring);
    height =
      height === null || added === null
        ? null
        : combine([
            [1, height],
            [1, added],
          ]);
    tops.push(height);
  }
  return tops;
}

/** Top of a part inside a group: only for the drawing of a ball, which a split never lies on. */
function insideGroup(
  parts: readonly MeasuredPart[],
  from: number,
  i: number,
  below: Estimate | null,
): Estimate | null {
  let height: Estimate | null = below;
  for (let t = from; t <= i; t++) {
    const added = ownHeight(parts, t);
    height =
      height === null || added === null
        ? null
        : combine([
            [1, height],
            [1, added],
          ]);
  }
  return height;
}

/** What a part adds to the stack under it: its length, less what a ball sinks into its dimple. */
function ownHeight(parts: readonly MeasuredPart[], i: number): Estimate | null {
  const part = parts[i];
  if (part === undefined || part.length === null) return null;
  const under = parts[i - 1];
  if (under === undefined || under.role !== 'ball' || part.role === 'ball') return part.length;
  return combine([
    [1, part.length],
    [-1, seatOf(under, part)],
  ]);
}

/** How far the ball sinks into the end that stands on it: 0 for a flat end, from geometry for a dimple, else a guess. */
function seatOf(ball: MeasuredPart, pin: MeasuredPart): Estimate {
  const { shape, basis } = pin.lower;
  const diameter = 2 * ball.radius.value;
  if (shape.kind === 'cup') {
    return exact(diameter - ballStandsOut(ball.radius.value, shape));
  }
  if (basis === 'seen') return exact(0);
  const deepest = diameter * DEEPEST_SEAT_SHARE;
  const field: FieldRef = { owner: 'part', id: pin.part.id, name: 'dimple' };
  return {
    value: deepest / 2,
    terms: [
      {
        cause: { id: `part/${pin.part.id}/dimple#assumed`, kind: 'assumed', field },
        weight: deepest / 2 / Math.sqrt(3),
      },
    ],
  };
}

function scaled(estimate: Estimate, by: number): Estimate {
  return {
    value: estimate.value * by,
    terms: estimate.terms.map(({ cause, weight }) => ({ cause, weight: weight * by })),
  };
}

/** The place of the last part of the lower stack: the bottom pin, or the ball if there is no pin. -1 for an empty hole. */
export function lowerStackEnd(stack: MeasuredStack): number {
  const pin = stack.parts.findIndex((each) => each.role === 'bottomPin');
  if (pin >= 0) return pin;
  return stack.parts.reduce((last, each, i) => (each.role === 'ball' ? i : last), -1);
}
