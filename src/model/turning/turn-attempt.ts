/**
 * Trying the turn: what turns with these stacks and this key, as far as the nominal sizes go, or the angle at which it
 * binds, in which chamber and where. Turn angles from upright; a turn the other way is its mirror image. mm, radians.
 *
 *   inner line clear in every chamber      the plug turns alone
 *   outer line clear in every chamber      plug and sleeve turn together
 *   both                                   either may turn: the plug is shown, unless the person asks for the other
 *   neither, or a mixture of lines         nothing turns: it stops where the first chamber binds
 */
import type { Assembly, AssemblyChamber } from '../assembly/assembly.ts';
import type { MeasuredCylinder } from '../measured/measured-cylinder.ts';
import { measureCylinder } from '../measured/measured-cylinder.ts';
import type { Bench } from '../measured/selection.ts';
import { measureItems } from '../assembly/build-stack.ts';
import { type LinePlace, linePlaces, type SplitPlace, splitPlaces } from '../evaluate/split-place.ts';
import { windowInputFor } from '../evaluate/window-input-for.ts';
import type { Evaluation } from '../evaluate/evaluation.ts';
import { meantLine, whatTurns } from '../evaluate/what-turns.ts';
import type { Parting } from '../assembly/pose-at.ts';
import { asRadians, type Radians } from '../radians.ts';
import type { Id } from '../schema/leaf.ts';
import { bindsAt, type Binding } from '../window/binds-at.ts';
import { rideCurve } from '../window/ride-curve.ts';
import type { WindowInput } from '../window/window-input.ts';

export type ChamberBinding = { readonly chamber: Id; readonly binding: Binding };

export type TurnAttempt = {
  /** The line at which it turns or tries to. */
  readonly line: Id;
  /** The bodies that turn, inside to outside. */
  readonly turning: readonly Id[];
  /** The lines that are clear, inside to outside: with several, friction decides which turns. */
  readonly clear: readonly Id[];
  /** The chambers that stop it, first one first; empty when it turns. */
  readonly stoppedBy: readonly ChamberBinding[];
  /** How far it gets. */
  readonly reach: Radians;
  /** Where the stacks part at that line. */
  readonly parting: Parting;
  /** Heights that what stays behind is lifted to on the way, above the plug's axis, by chamber. */
  readonly driverFloors: (turn: Radians) => ReadonlyMap<Id, number>;
};

type LineTurn = {
  readonly line: LinePlace;
  readonly bindings: readonly ChamberBinding[];
  readonly rides: readonly Ride[];
};

type Ride = {
  readonly chamber: Id;
  readonly below: Id;
  readonly input: WindowInput;
  readonly offset: number;
  readonly axisY: number;
};

/**
 * Tries the turn; null while something needed is not known, or without chambers.
 *
 * @param wanted the line the person tries; tried if it is clear, or if none is. By default the first clear one, else the
 *   one the key is meant for, or that is held the least
 */
export function tryTurn(
  bench: Bench,
  assembly: Assembly,
  evaluation: Evaluation,
  wanted: Id | null = null,
): TurnAttempt | null {
  const measured = measureCylinder(bench.cylinder, bench.job.settings.numbering, bench.measuring);
  const attempts = linePlaces(measured.lines).map((line) =>
    turnAtLine(line, measured, bench, assembly, evaluation),
  );
  const known = attempts.filter((each) => each !== null);
  const clear = known.filter((each) => each.bindings.length === 0);
  const first =
    wanted ?? whatTurns(evaluation, meantLine(bench.job, bench.cylinder.id, bench.key?.id ?? null)).focus;
  const candidates = clear.length > 0 ? clear : known;
  const chosen = candidates.find((each) => each.line.measured.id === first) ?? candidates[0];
  if (chosen === undefined) return null;
  const index = chosen.line.index;
  const stoppedBy = [...chosen.bindings].sort((a, b) => a.binding.turn - b.binding.turn);
  const full = assembly.turn.angle;
  return {
    line: chosen.line.measured.id,
    turning: assembly.bodies.slice(0, index + 1).map((body) => body.id),
    clear: clear.map((each) => each.line.measured.id),
    stoppedBy,
    reach: asRadians(Math.min(full, stoppedBy[0]?.binding.turn ?? full)),
    parting: { lineIndex: index, below: new Map(chosen.rides.map(({ chamber, below }) => [chamber, below])) },
    driverFloors: (turn) => floorsAt(chosen.rides, turn),
  };
}

function turnAtLine(
  line: LinePlace,
  measured: MeasuredCylinder,
  bench: Bench,
  assembly: Assembly,
  evaluation: Evaluation,
): LineTurn | null {
  const bindings: ChamberBinding[] = [];
  const rides: Ride[] = [];
  for (const result of evaluation.chambers) {
    const at = assembly.chambers.findIndex((each) => each.id === result.chamber);
    const chamber = assembly.chambers[at];
    const chamberMeasured = measured.chambers[at];
    const best = result.verdicts.find((each) => each.line === line.measured.id)?.split;
    const split = best == null ? undefined : result.splits[best];
    if (chamber === undefined || chamberMeasured === undefined || split === undefined) return null;
    const place = placeOf(split.below, bench, chamber, assembly);
    if (place === null) return null;
    const input = windowInputFor({ place, line, bench, assembly, chamber });
    const binding = bindsAt(input, split.offset);
    if (binding !== null) bindings.push({ chamber: chamber.id, binding });
    const axisY = assembly.lines[line.index]?.innerAxisY ?? 0;
    rides.push({ chamber: chamber.id, below: split.below, input, offset: split.offset, axisY });
  }
  return rides.length === 0 ? null : { line, bindings, rides };
}

function placeOf(below: Id, bench: Bench, chamber: AssemblyChamber, assembly: Assembly): SplitPlace | null {
  const items = bench.plan.stacks.find((each) => each.chamber === chamber.id)?.items ?? [];
  const radius = assembly.lines[0]?.radius ?? 1;
  const stack = measureItems(bench, items, radius, chamber.holes[0]?.radius ?? 1);
  return splitPlaces(stack).find((each) => each.below.part.id === below) ?? null;
}

function floorsAt(rides: readonly Ride[], turn: Radians): Map<Id, number> {
  const floors = new Map<Id, number>();
  if (turn === 0) return floors;
  for (const { chamber, input, offset, axisY } of rides) {
    floors.set(chamber, axisY + rideCurve(input, offset)(asRadians(Math.abs(turn))));
  }
  return floors;
}
