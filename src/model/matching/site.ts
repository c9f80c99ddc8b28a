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
import type { EndShape } from '../end-shape.ts';
import { exact } from '../estimate/estimate.ts';
import { type LinePlace, linePlaces } from '../evaluate/split-place.ts';
import { windowTrouble } from '../evaluate/size-trouble.ts';
import { windowInputFor } from '../evaluate/window-input-for.ts';
import { windowMemo, type WindowOf } from '../evaluate/window-memo.ts';
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
import type { Item } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { Batch, Stock } from './stock.ts';
import type { Kept } from './used-parts.ts';

/** Why a batch cannot stand in a chamber whatever its length. */
export type Barred = 'too wide' | 'too loose' | 'falls through' | 'never turns' | 'cannot be';

/** What stands lowest, told apart by shape and size only. */
export type Standing = { readonly number: number; readonly part: MeasuredPart };

export type Fit = {
  readonly barred: Barred | null;
  readonly foot: Standing;
  readonly lowest: number;
  readonly highest: number;
};

export type ChamberPlace = {
  readonly chamber: Id;
  readonly number: number;
  readonly assembled: AssemblyChamber;
  readonly measured: MeasuredChamber;
  readonly isLocked: boolean;
  /** Lower stack that is in the plan now, and what stands on it. */
  readonly present: readonly Item[];
  readonly above: readonly Item[];
  readonly presentStack: MeasuredStack;
  /** Diameter of the plug's hole; null when nobody measured it. */
  readonly across: number | null;
};

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
  /** What a batch is made of, measured in a place. */
  readonly stackOf: (place: ChamberPlace, batch: Batch) => MeasuredStack;
  /** The usual lower stack, for naming lengths that are missing. */
  readonly usual: (place: ChamberPlace) => MeasuredStack;
};

export type CylinderWithPlan = { readonly cylinder: Id; readonly plan: Id };

/** A part narrower than this share of its chamber leans over in it. Common practice, no source. */
const LOOSE_SHARE = 0.9;

/**
 * Lays out a cylinder with a plan. Both must exist in the job.
 *
 * @param alsoLocked chambers to leave as they are, besides those locked in the plan
 * @param beside a site of the same job: what is the same for both is not laid out again
 */
export function layOutSite(
  job: Job,
  selection: CylinderWithPlan,
  stock: Stock,
  alsoLocked: readonly Id[] = [],
  beside: Site | null = null,
): Site {
  const bench = benchOf(job, selection, beside);
  const assembly = assemble(bench);
  const measured = measureCylinder(bench.cylinder, job.settings.numbering, bench.measuring);
  const places = assembly.chambers
    .flatMap((assembled, index): ChamberPlace[] =>
      assembled.closed
        ? []
        : [placeOf(bench, assembly, assembled, known(measured.chambers[index], 'measured chamber'))],
    )
    .map((place) => (alsoLocked.includes(place.chamber) ? { ...place, isLocked: true } : place));
  const fits = new Fits(bench, assembly, linePlaces(measured.lines));
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

function radiusOf(assembly: Assembly): number {
  return assembly.lines[0]?.radius ?? 1;
}

function holeRadius({ assembled }: Pick<ChamberPlace, 'assembled'>): number {
  return assembled.holes[0]?.radius ?? 1;
}

function placeOf(
  bench: Bench,
  assembly: Assembly,
  assembled: AssemblyChamber,
  measured: MeasuredChamber,
): ChamberPlace {
  const stack = bench.plan.stacks.find((each) => each.chamber === assembled.id);
  const items = (stack?.items ?? []).filter((item) => bench.parts.has(item.part));
  const ids = new Set(items.map((item) => item.part));
  const groups = bench.groups.filter((group) => group.parts.every((part) => ids.has(part)));
  const radius = radiusOf(assembly);
  const hole = assembled.holes[0]?.radius ?? 1;
  const presentStack = measureStack(items, bench.parts, groups, radius, hole, bench.measuring);
  const end = lowerStackEnd(presentStack);
  return {
    chamber: assembled.id,
    number: assembled.number,
    assembled,
    measured,
    isLocked: stack?.locked === true,
    present: items.slice(0, end + 1),
    above: items.slice(end + 1),
    presentStack,
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

/** Fits found so far: batches whose ends and diameters are alike share them, and so do chambers that are alike. */
class Fits {
  private readonly bench: Bench;
  private readonly assembly: Assembly;
  private readonly lines: readonly LinePlace[];
  private readonly windowOf: WindowOf = windowMemo();
  private readonly feet = new Map<string, Standing>();
  private readonly stacks = new Map<number, Map<Batch, MeasuredStack>>();
  private readonly found = new Map<ChamberPlace, Map<Batch, Fit | null>>();

  constructor(bench: Bench, assembly: Assembly, lines: readonly LinePlace[]) {
    this.bench = bench;
    this.assembly = assembly;
    this.lines = lines;
  }

  ofBatch(place: ChamberPlace, batch: Batch): Fit | null {
    const inPlace = this.found.get(place) ?? new Map<Batch, Fit | null>();
    this.found.set(place, inPlace);
    const before = inPlace.get(batch);
    if (before !== undefined) return before;
    const fit = this.ofStack(place, this.stackOf(batch, holeRadius(place)));
    inPlace.set(batch, fit);
    return fit;
  }

  ofStack(place: ChamberPlace, stack: MeasuredStack): Fit | null {
    const lowest = stack.parts[0];
    const below = stack.parts[lowerStackEnd(stack)];
    if (lowest === undefined || below === undefined) return null;
    const foot = this.footOf(lowest);
    const barred = this.barredBy(place, lowest, below);
    if (barred !== null) return { barred, foot, lowest: 0, highest: 0 };
    const above = place.presentStack.parts[lowerStackEnd(place.presentStack) + 1];
    const over = above === undefined || above.role === 'spring' ? null : above;
    const inputs = this.lines.map((line) =>
      windowInputFor({
        place: { below, above: over, top: exact(0), isLowerStack: true },
        line,
        bench: this.bench,
        assembly: this.assembly,
        chamber: place.assembled,
      }),
    );
    const inner = inputs[0];
    const unit = this.bench.job.settings.unit;
    if (inner === undefined || inputs.some((input) => windowTrouble(input, unit) !== null)) {
      return { barred: 'cannot be', foot, lowest: 0, highest: 0 };
    }
    const { empty, lowest: least, highest } = this.windowOf(inner);
    return { barred: empty ? 'never turns' : null, foot, lowest: least, highest };
  }

  stackOf(batch: Batch, hole: number): MeasuredStack {
    const ofHole = this.stacks.get(hole) ?? new Map<Batch, MeasuredStack>();
    this.stacks.set(hole, ofHole);
    const before = ofHole.get(batch);
    if (before !== undefined) return before;
    const items = batch.example.map((part): Item => ({ part: part.id }));
    const stack = measureStack(
      items,
      this.bench.parts,
      [],
      radiusOf(this.assembly),
      hole,
      this.bench.measuring,
    );
    ofHole.set(batch, stack);
    return stack;
  }

  private footOf(part: MeasuredPart): Standing {
    const key = `${part.radius.value} ${shapeKey(part.lower.shape)}`;
    const before = this.feet.get(key);
    if (before !== undefined) return before;
    const standing = { number: this.feet.size, part };
    this.feet.set(key, standing);
    return standing;
  }

  /** Only what was measured can bar a part. */
  private barredBy({ across }: ChamberPlace, lowest: MeasuredPart, below: MeasuredPart): Barred | null {
    const { cylinder } = this.bench;
    for (const { part, radius } of [lowest, below]) {
      if (part.diameter === undefined || across === null) continue;
      const diameter = 2 * radius.value;
      if (diameter >= across) return 'too wide';
      if (diameter < across * LOOSE_SHARE) return 'too loose';
    }
    const isKnown = lowest.part.diameter !== undefined && cylinder.keywayWidth !== undefined;
    return isKnown && 2 * lowest.radius.value <= this.assembly.keywayWidth ? 'falls through' : null;
  }
}

function shapeKey(shape: EndShape): string {
  return Object.entries(shape)
    .map(([name, value]) => `${name} ${value}`)
    .join(' ');
}
