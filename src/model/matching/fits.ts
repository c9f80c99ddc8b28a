/**
 * How parts stand in chambers, whatever their height: what bars them, and between which offsets a split of theirs lets its
 * line turn. A window comes from the window engine with the parts' own ends and diameters; it is the one that an evaluation of
 * the finished plan finds. Offsets + high, - low; mm.
 */
import { known } from '../assert.ts';
import type { Assembly, AssemblyChamber } from '../assembly/assembly.ts';
import type { EndShape } from '../end-shape.ts';
import { exact } from '../estimate/estimate.ts';
import { windowTrouble } from '../evaluate/size-trouble.ts';
import type { LinePlace } from '../evaluate/split-place.ts';
import { windowInputFor } from '../evaluate/window-input-for.ts';
import { windowMemo, type WindowOf } from '../evaluate/window-memo.ts';
import type { MeasuredChamber } from '../measured/measured-cylinder.ts';
import {
  lowerStackEnd,
  type MeasuredPart,
  type MeasuredStack,
  measureStack,
} from '../measured/measured-stack.ts';
import type { Bench } from '../measured/selection.ts';
import type { Item } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { WindowInput } from '../window/window-input.ts';
import type { Batch } from './stock.ts';

/** Why a batch cannot stand in a chamber whatever its length. */
export type Barred = 'too wide' | 'too loose' | 'falls through' | 'never turns' | 'cannot be';

/** What stands lowest, told apart by shape and size only. */
export type StandingFoot = { readonly number: number; readonly part: MeasuredPart };

export type Fit = {
  readonly barred: Barred | null;
  readonly foot: StandingFoot;
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
  /** What will stand on the parts that are chosen; null for the usual driver. */
  readonly over: MeasuredPart | null;
  /** Diameter of the plug's hole; null when nobody measured it. */
  readonly across: number | null;
};

export type SplitWindow = { readonly lowest: number; readonly highest: number; readonly empty: boolean };

/** A part narrower than this share of its chamber leans over in it. Common practice, no source. */
const LOOSE_SHARE = 0.9;

export function radiusOf(assembly: Assembly): number {
  return assembly.lines[0]?.radius ?? 1;
}

export function holeRadius({ assembled }: Pick<ChamberPlace, 'assembled'>): number {
  return assembled.holes[0]?.radius ?? 1;
}

/** Fits found so far: batches whose ends and diameters are alike share them, and so do chambers that are alike. */
export class Fits {
  private readonly bench: Bench;
  private readonly assembly: Assembly;
  private readonly lines: readonly LinePlace[];
  private readonly shearWindowOf: WindowOf = windowMemo();
  private readonly feet = new Map<string, StandingFoot>();
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
    const barred = this.barredBy(place, [lowest, below]) ?? this.slotBars(lowest);
    if (barred !== null) return { barred, foot, lowest: 0, highest: 0 };
    const windows = this.lines.map((_, line) => this.inputOf(place, below, place.over, line));
    const inner = windows[0];
    if (inner === undefined || windows.some((input) => this.isTrouble(input))) {
      return { barred: 'cannot be', foot, lowest: 0, highest: 0 };
    }
    const { empty, lowest: least, highest } = this.shearWindowOf(inner);
    return { barred: empty ? 'never turns' : null, foot, lowest: least, highest };
  }

  windowOf(
    place: ChamberPlace,
    below: MeasuredPart,
    above: MeasuredPart | null,
    line: number,
  ): SplitWindow | null {
    const input = this.inputOf(place, below, above, line);
    return this.isTrouble(input) ? null : this.shearWindowOf(input);
  }

  private inputOf(
    place: ChamberPlace,
    below: MeasuredPart,
    above: MeasuredPart | null,
    line: number,
  ): WindowInput {
    return windowInputFor({
      place: { below, above, top: exact(0), isLowerStack: true },
      line: known(this.lines[line], `line ${line}`),
      bench: this.bench,
      assembly: this.assembly,
      chamber: place.assembled,
    });
  }

  private isTrouble(input: WindowInput): boolean {
    return windowTrouble(input, this.bench.job.settings.unit) !== null;
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

  private footOf(part: MeasuredPart): StandingFoot {
    const key = `${part.radius.value} ${shapeKey(part.lower.shape)}`;
    const before = this.feet.get(key);
    if (before !== undefined) return before;
    const standing = { number: this.feet.size, part };
    this.feet.set(key, standing);
    return standing;
  }

  /** Only what was measured can bar a part. */
  barredBy({ across }: ChamberPlace, parts: readonly MeasuredPart[]): Barred | null {
    for (const { part, radius } of parts) {
      if (part.diameter === undefined || across === null) continue;
      const diameter = 2 * radius.value;
      if (diameter >= across) return 'too wide';
      if (diameter < across * LOOSE_SHARE) return 'too loose';
    }
    return null;
  }

  private slotBars({ part, radius }: MeasuredPart): Barred | null {
    const isKnown = part.diameter !== undefined && this.bench.cylinder.keywayWidth !== undefined;
    return isKnown && 2 * radius.value <= this.assembly.keywayWidth ? 'falls through' : null;
  }
}

function shapeKey(shape: EndShape): string {
  return Object.entries(shape)
    .map(([name, value]) => `${name} ${value}`)
    .join(' ');
}
