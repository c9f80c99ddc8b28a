/**
 * One cylinder with one plan, laid out for choosing what stands in its chambers: what stays (drivers, locked chambers), which
 * batches of the bag enter each chamber, and at which offsets each of them would let the line turn. Nothing here depends on
 * a key. A batch's window comes from the window engine with the batch's own end and diameter, under the driver that is in
 * the chamber; it is the window that an evaluation of the finished plan finds. Offsets + high, - low; mm.
 *
 * With a sleeve, what is chosen is the lower stack, whose top is to stand at the inner line.
 */
import { known } from '../assert.ts';
import type { Assembly, AssemblyChamber } from '../assembly/assembly.ts';
import { assemble } from '../assembly/build-assembly.ts';
import { linePlaces } from '../evaluate/split-place.ts';
import {
  type MeasuredChamber,
  type MeasuredCylinder,
  measureCylinder,
} from '../measured/measured-cylinder.ts';
import {
  lowerStackEnd,
  type MeasuredPart,
  type MeasuredStack,
  measureStack,
} from '../measured/measured-stack.ts';
import { type Bench, layOut } from '../measured/selection.ts';
import { standInStack } from '../measured/stand-in.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import {
  type Barred,
  type ChamberPlace,
  type Fit,
  Fits,
  holeRadius,
  radiusOf,
  type SplitWindow,
} from './fits.ts';
import type { Batch, Stock } from './stock.ts';
import type { Kept } from './used-parts.ts';

export type Site = {
  /** Without a key. */
  readonly bench: Bench;
  readonly measured: MeasuredCylinder;
  readonly assembly: Assembly;
  readonly takesBall: boolean;
  /** Open chambers, front to back. */
  readonly places: readonly ChamberPlace[];
  readonly stock: Stock;
  /** What stays in the plan whatever is chosen. */
  readonly kept: Kept;
  /** How a batch of the stock stands in a place. Null for batches with a ball where none belongs, or without. */
  readonly fitOf: (place: ChamberPlace, batch: Batch) => Fit | null;
  /** The same for a stack that is laid out; its own lower end, whatever the batches. */
  readonly fitOfStack: (place: ChamberPlace, stack: MeasuredStack) => Fit | null;
  /** Window of a split between two parts at a line, by its place from the inside; null for sizes that cannot be. */
  readonly windowOf: (
    place: ChamberPlace,
    below: MeasuredPart,
    above: MeasuredPart | null,
    line: number,
  ) => SplitWindow | null;
  /** What bars a part from a place, besides the slot. */
  readonly barredBy: (place: ChamberPlace, part: MeasuredPart) => Barred | null;
  /** How much higher each line's crest lies than the inner line's, inside to outside. */
  readonly lineHeights: readonly number[];
  /** What a batch is made of, measured in a place. */
  readonly stackOf: (place: ChamberPlace, batch: Batch) => MeasuredStack;
  /** The usual lower stack, for naming lengths that are missing. */
  readonly usual: (place: ChamberPlace) => MeasuredStack;
};

export type SiteOptions = {
  /** Chambers to leave as they are, besides those locked in the plan. */
  readonly locked?: readonly Id[];
  /** A site of the same job: what is the same for both is not laid out again. */
  readonly beside?: Site | undefined;
  /** Master pins are chosen anew as well; otherwise they stay. */
  readonly choosesMasterPins?: boolean;
};

export type CylinderWithPlan = { readonly cylinder: Id; readonly plan: Id };

/** Lays out a cylinder with a plan. Both must exist in the job. */
export function layOutSite(
  job: Job,
  selection: CylinderWithPlan,
  stock: Stock,
  { locked = [], beside, choosesMasterPins = false }: SiteOptions = {},
): Site {
  const bench = benchOf(job, selection, beside ?? null);
  const assembly = assemble(bench);
  const measured = measureCylinder(bench.cylinder, job.settings.numbering, bench.measuring);
  const places = assembly.chambers.flatMap((assembled, index): ChamberPlace[] => {
    const chamber = known(measured.chambers[index], 'measured chamber');
    const isLocked = locked.includes(assembled.id);
    return assembled.closed
      ? []
      : [placeOf(bench, assembly, assembled, chamber, isLocked, choosesMasterPins)];
  });
  const lines = linePlaces(measured.lines);
  const fits = new Fits(bench, assembly, lines);
  return {
    bench,
    measured,
    assembly,
    takesBall: takesBall(places, bench, stock),
    places,
    stock,
    kept: {
      plan: bench.plan,
      parts: places.flatMap((place) =>
        [...place.above, ...(place.isLocked ? place.present : [])].map((item) => item.part),
      ),
    },
    fitOf: (place, batch) => fits.ofBatch(place, batch),
    fitOfStack: (place, stack) => fits.ofStack(place, stack),
    windowOf: (place, below, above, line) => fits.windowOf(place, below, above, line),
    barredBy: (place, part) => fits.barredBy(place, [part]),
    lineHeights: lines.map(({ above }) => above.value),
    stackOf: (place, batch) => fits.stackOf(batch, holeRadius(place)),
    usual: (place) => standInStack(bench, radiusOf(assembly), holeRadius(place)),
  };
}

function benchOf(job: Job, { cylinder, plan }: CylinderWithPlan, beside: Site | null): Bench {
  if (beside === null) return layOut(job, { cylinder, plan, key: null });
  return {
    ...beside.bench,
    cylinder: known(
      job.cylinders.find((each) => each.id === cylinder),
      `cylinder ${cylinder}`,
    ),
    plan: known(
      job.plans.find((each) => each.id === plan),
      `plan ${plan}`,
    ),
    stacks: new Map(),
  };
}

function placeOf(
  bench: Bench,
  assembly: Assembly,
  assembled: AssemblyChamber,
  measured: MeasuredChamber,
  isLocked: boolean,
  choosesMasterPins: boolean,
): ChamberPlace {
  const stack = bench.plan.stacks.find((each) => each.chamber === assembled.id);
  const items = (stack?.items ?? []).filter((item) => bench.parts.has(item.part));
  const ids = new Set(items.map((item) => item.part));
  const groups = bench.groups.filter((group) => group.parts.every((part) => ids.has(part)));
  const radius = radiusOf(assembly);
  const hole = assembled.holes[0]?.radius ?? 1;
  const presentStack = measureStack(items, bench.parts, groups, radius, hole, bench.measuring);
  const end = lowerStackEnd(presentStack);
  const rest = presentStack.parts.findIndex(({ role }) => role === 'driver' || role === 'spring');
  const from = choosesMasterPins ? (rest < 0 ? items.length : rest) : end + 1;
  const over = presentStack.parts[from];
  return {
    chamber: assembled.id,
    number: assembled.number,
    assembled,
    measured,
    isLocked: isLocked || stack?.locked === true,
    present: items.slice(0, from),
    above: items.slice(from),
    presentStack,
    over: over === undefined || over.role === 'spring' ? null : over,
    across: isMeasured(bench, assembled.id) ? 2 * hole : null,
  };
}

function isMeasured({ cylinder }: Bench, id: Id): boolean {
  const chamber = cylinder.chambers.find((each) => each.id === id);
  const hole = chamber?.holes.find((each) => each.body === cylinder.bodies[0]?.id) ?? chamber?.holes[0];
  return (hole?.diameter ?? chamber?.holes[0]?.diameter) !== undefined;
}

/** A cylinder takes balls if its plan has any; with an empty plan, if there are balls on hand. */
function takesBall(places: readonly ChamberPlace[], bench: Bench, stock: Stock): boolean {
  const lowest = places.flatMap(({ present }) => present.slice(0, 1));
  if (lowest.length === 0) return stock.batches.some((batch) => batch.hasBall);
  return lowest.some((item) => bench.parts.get(item.part)?.kind === 'ball');
}
