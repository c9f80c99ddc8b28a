/**
 * The restricted page as numbers: what was measured of each chamber's cut and stack, with its +-, and what is common to all.
 * A key can be cut from it. Lengths mm, angles radians; +- nineteen times in twenty.
 */
import { chamberRows } from '../edit/chamber-rows.ts';
import { type Estimate, expandedUncertainty, type FieldRef } from '../estimate/estimate.ts';
import { readLength } from '../estimate/read-value.ts';
import type { Evaluation } from '../evaluate/evaluation.ts';
import { rolesOf } from '../measured/measured-stack.ts';
import type { Bench } from '../measured/selection.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import type { Part } from '../schema/parts-schema.ts';

export type Measured = {
  readonly mm: number;
  readonly plusMinus: number;
  /** How many readings count; 0 for what is assumed or stated. */
  readonly readings: number;
  readonly basis: LengthValue['basis'];
};

export type PinningRow = {
  readonly chamber: Id;
  readonly number: number;
  readonly rootDepth: Measured | null;
  readonly overBall: Measured | null;
  readonly ball: Measured | null;
  readonly bottomPin: Measured | null;
  /** Ball + bottom pin measured as one. */
  readonly together: Measured | null;
  readonly masterPins: readonly Measured[];
  readonly driver: Measured | null;
  readonly spring: Measured | null;
  readonly needed: { readonly mm: number; readonly plusMinus: number } | null;
};

/** Reads the rows of a bench, by chamber number. */
export function pinningRows(bench: Bench, evaluation: Evaluation): PinningRow[] {
  const { job, cylinder, key, plan } = bench;
  const { rows } = chamberRows(job, { cylinder: cylinder.id, key: key?.id ?? null, plan: plan.id });
  return rows.map(({ chamber, number, under, parts }): PinningRow => {
    const result = evaluation.chambers.find((each) => each.chamber === chamber.id);
    const cut = under?.cut;
    const items = parts?.stack.items ?? [];
    const held = items.flatMap(({ part }) => bench.parts.get(part) ?? []);
    const roles = rolesOf(held.map(({ kind }) => kind));
    const inRole = (role: (typeof roles)[number]) => held.filter((_, i) => roles[i] === role);
    const first = (role: (typeof roles)[number]) =>
      inRole(role).map((part) => ofPart(bench, part))[0] ?? null;
    const needed = result?.neededLowerStack ?? null;
    return {
      chamber: chamber.id,
      number,
      rootDepth: read(bench, cut?.rootDepth),
      overBall: read(bench, cut?.overBall?.reading),
      ball: first('ball'),
      bottomPin: first('bottomPin'),
      together: read(bench, parts?.together?.height),
      masterPins: inRole('masterPin').flatMap((part) => ofPart(bench, part) ?? []),
      driver: first('driver'),
      spring: inRole('spring').map((part) => read(bench, part.free))[0] ?? null,
      needed: needed === null ? null : { mm: needed, plusMinus: result?.neededUncertainty ?? 0 },
    };
  });
}

export type CommonMeasure = { readonly label: string; readonly value: Measured };

/** What is measured once for the cylinder, the key, and the key in the cylinder. */
export function commonMeasures(bench: Bench): CommonMeasure[] {
  const { cylinder, key, seating } = bench;
  const [plug] = cylinder.bodies;
  const named: readonly (readonly [string, Measured | null])[] = [
    ['Plug diameter', read(bench, plug?.outerDiameter)],
    ...cylinder.lines.map(
      (line, i) =>
        [
          cylinder.lines.length === 1 ? 'Play between plug and shell' : `Play at line ${i + 1}`,
          read(bench, line.clearance),
        ] as const,
    ),
    ['Metal under the key', read(bench, seating?.keywayFloorHeight)],
    ['Plug minus floor', read(bench, seating?.plugMinusFloor)],
    ['Height of the blade', read(bench, key?.bladeHeight)],
    ['Root flat', read(bench, key?.rootFlat)],
    ['Key stops short by', read(bench, seating?.stopShort)],
  ];
  return named.flatMap(([label, value]) => (value === null ? [] : [{ label, value }]));
}

function ofPart(bench: Bench, part: Part): Measured | null {
  return read(bench, part.kind === 'ball' ? part.diameter : part.length);
}

/** Which field a doubt comes from plays no part here: each value stands alone. */
const ANY_FIELD: FieldRef = { owner: 'part', id: '', name: '' };

function read(bench: Bench, value: LengthValue | undefined): Measured | null {
  if (value === undefined) return null;
  const estimate: Estimate = readLength(value, ANY_FIELD, bench.measuring);
  const counted = value.readings.filter((reading) => reading.left !== 'out').length;
  return {
    mm: estimate.value,
    plusMinus: expandedUncertainty(estimate),
    readings: value.basis === 'measured' ? counted : 0,
    basis: value.basis,
  };
}
