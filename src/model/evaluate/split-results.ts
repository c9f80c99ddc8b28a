/**
 * The splits of one stack at the lines of its cylinder: offset, window, to spare, verdict. One result per split and line,
 * the same code for one line or two and for any number of splits. Offsets + high, - low; mm.
 */
import type { Assembly, AssemblyChamber } from '../assembly/assembly.ts';
import { combine, type Estimate, exact, expandedUncertainty, shift } from '../estimate/estimate.ts';
import type { MeasuredChamber, MeasuredLine } from '../measured/measured-cylinder.ts';
import { lowerStackEnd, type MeasuredPart, type MeasuredStack } from '../measured/measured-stack.ts';
import type { Bench } from '../measured/selection.ts';
import { lengthOf } from '../measured/part-ends.ts';
import { rubsFrom } from '../window/no-touch.ts';
import { assumptionsOf } from './assumptions.ts';
import type { SplitResult } from './evaluation.ts';
import { judge } from './judge.ts';
import { nextStep } from './next-step.ts';
import { estimateWindow, type WindowEstimate } from './window-estimate.ts';
import { windowInputFor } from './window-input-for.ts';
import type { WindowOf } from './window-memo.ts';

export type SplitPlace = {
  readonly below: MeasuredPart;
  readonly above: MeasuredPart | null;
  /** Top of `below` above the foot. */
  readonly top: Estimate;
  readonly isLowerStack: boolean;
};

/** The places of a stack that can reach a line: the top of the lower stack and of every master pin. */
export function splitPlaces(stack: MeasuredStack): SplitPlace[] {
  const first = lowerStackEnd(stack);
  if (first < 0) return [];
  return stack.parts.flatMap((below, i): SplitPlace[] => {
    const top = stack.tops[i];
    if (i < first || top == null || below.role === 'driver' || below.role === 'spring') return [];
    const next = stack.parts[i + 1];
    return [
      {
        below,
        above: next === undefined || next.role === 'spring' ? null : next,
        top,
        isLowerStack: i === first,
      },
    ];
  });
}

export type LinePlace = {
  readonly index: number;
  readonly measured: MeasuredLine;
  /** How much higher this line's crest lies than the inner line's, above the plug's axis. */
  readonly above: Estimate;
};

/** Heights of the lines' crests over the inner line's. */
export function linePlaces(lines: readonly MeasuredLine[]): LinePlace[] {
  const first = lines[0];
  let axis: Estimate = exact(0);
  return lines.map((measured, index): LinePlace => {
    const above =
      first === undefined
        ? exact(0)
        : combine([
            [1, measured.radius],
            [1, axis],
            [-1, first.radius],
          ]);
    const lift = measured.lies === 'centred' ? 0 : 0.5;
    axis = combine([
      [1, axis],
      [lift, measured.clearance],
    ]);
    return { index, measured, above };
  });
}

export type SplitSetting = {
  readonly bench: Bench;
  readonly assembly: Assembly;
  readonly chamber: AssemblyChamber;
  readonly measured: MeasuredChamber;
  readonly windowOf: WindowOf;
  /** The lower stack that would stand level with the inner crest. */
  readonly needed: Estimate;
};

export type SplitAtLine = { readonly split: SplitResult; readonly use: UsableRange };

/** Evaluates one split at one line, and which heights of it would do. */
export function splitAtLine(place: SplitPlace, line: LinePlace, setting: SplitSetting): SplitAtLine {
  const { bench, assembly, chamber, needed } = setting;
  const innerDrop = chamber.crestDrops[0] ?? 0;
  const offset = shift(
    combine([
      [1, place.top],
      [-1, needed],
      [-1, line.above],
    ]),
    -innerDrop,
  );
  const input = windowInputFor({ place, line, bench, assembly, chamber });
  const window = estimateWindow(input, { line, place, chamber: setting.measured }, setting.windowOf);
  const result = judged(offset, window, bench);
  const { toLowest, toHighest, toLowestUncertainty, toHighestUncertainty, judgement } = result;
  const unit = bench.job.settings.unit;
  const use = usable(place.top.value - offset.value, window, result);
  const aboveAxis = (assembly.lines[line.index]?.innerAxisY ?? 0) + (assembly.lines[line.index]?.radius ?? 0);
  const split: SplitResult = {
    below: place.below.part.id,
    above: place.above?.part.id ?? null,
    height: aboveAxis + offset.value,
    line: line.measured.id,
    offset: offset.value,
    window: { lowest: window.lowest.value, noTouch: window.noTouch, highest: window.highest.value },
    margin: judgement.margin,
    expandedUncertainty: expandedUncertainty(offset),
    toLowest: toLowestUncertainty,
    toHighest: toHighestUncertainty,
    rubsFrom: offset.value > window.noTouch ? rubsFrom(input, offset.value) : null,
    verdict: judgement.verdict,
    lean: judgement.lean,
    nextStep: nextStep({
      ...judgement,
      unit,
      toLowest,
      toHighest,
      toLowestUncertainty,
      toHighestUncertainty,
      useFrom: use.from,
      useTo: use.to,
      noneCertain: use.noneCertain,
      isLowerStack: place.isLowerStack,
    }),
    assumes: assumptionsOf({
      input,
      window,
      place,
      line,
      offset,
      verdict: judgement.verdict,
      bench,
      windowOf: setting.windowOf,
      chamberNumber: chamber.number,
    }),
  };
  return { split, use };
}

export type Judgement = {
  readonly toLowest: Estimate;
  readonly toHighest: Estimate;
  readonly toLowestUncertainty: number;
  readonly toHighestUncertainty: number;
  readonly judgement: ReturnType<typeof judge>;
};

/** Judges an offset in a window. */
export function judged(offset: Estimate, window: WindowEstimate, bench: Bench): Judgement {
  const toLowest = combine([
    [1, offset],
    [-1, window.lowest],
  ]);
  const toHighest = combine([
    [1, window.highest],
    [-1, offset],
  ]);
  const toLowestUncertainty = expandedUncertainty(toLowest);
  const toHighestUncertainty = expandedUncertainty(toHighest);
  const judgement = window.empty
    ? ({ verdict: 'never turns', lean: null, margin: Math.min(toLowest.value, toHighest.value) } as const)
    : judge({
        offset: offset.value,
        toLowest: toLowest.value,
        toLowestUncertainty,
        toHighest: toHighest.value,
        toHighestUncertainty,
        shopRule: lengthOf(bench.job.settings.shopRule, 0.0254),
      });
  return { toLowest, toHighest, toLowestUncertainty, toHighestUncertainty, judgement };
}

export type UsableRange = {
  readonly from: number;
  readonly to: number;
  readonly best: number;
  readonly noneCertain: boolean;
};

/**
 * The heights of this split that surely turn and are never above level; the middle when none is sure.
 *
 * @param level the height that would stand at the line's radius
 */
export function usable(
  level: number,
  window: WindowEstimate,
  { toLowestUncertainty, toHighestUncertainty }: Judgement,
): UsableRange {
  const from = level + window.lowest.value + toLowestUncertainty;
  const to = level + Math.min(0, window.highest.value - toHighestUncertainty);
  const best = level + Math.min(0, window.highest.value);
  if (from <= to) return { from, to, best, noneCertain: false };
  const middle = level + Math.min(0, (window.lowest.value + window.highest.value) / 2);
  return { from: middle, to: middle, best, noneCertain: true };
}
