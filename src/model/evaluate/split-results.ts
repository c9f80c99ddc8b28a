/**
 * The splits of one stack at the lines of its cylinder: offset, window, to spare, verdict. One result per split and line,
 * the same code for one line or two and for any number of splits. Offsets + high, - low; mm.
 */
import type { Assembly, AssemblyChamber } from '../assembly/assembly.ts';
import { combine, type Estimate, expandedUncertainty, shift } from '../estimate/estimate.ts';
import type { MeasuredChamber } from '../measured/measured-cylinder.ts';
import type { Bench } from '../measured/selection.ts';
import { rubsFrom } from '../window/no-touch.ts';
import { assumptionsOf } from './assumptions.ts';
import type { SplitResult } from './evaluation.ts';
import { judged, type Judgement, type UsableRange, usable } from './judged.ts';
import { nextStep } from './next-step.ts';
import type { LinePlace, SplitPlace } from './split-place.ts';
import { estimateWindow } from './window-estimate.ts';
import { windowInputFor } from './window-input-for.ts';
import type { WindowOf } from './window-memo.ts';

export type SplitSetting = {
  readonly bench: Bench;
  readonly assembly: Assembly;
  readonly chamber: AssemblyChamber;
  readonly measured: MeasuredChamber;
  readonly windowOf: WindowOf;
  /** The lower stack that would stand level with the inner crest. */
  readonly needed: Estimate;
};

export type SplitAtLine = {
  readonly split: SplitResult;
  readonly use: UsableRange;
  /** The distances to the ends of the window with their causes of doubt. */
  readonly judgement: Judgement;
};

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
    useFrom: use.from,
    useTo: use.to,
    noneCertain: use.noneCertain,
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
      hasBall: hasBall(bench, chamber),
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
  return { split, use, judgement: result };
}

function hasBall(bench: Bench, chamber: AssemblyChamber): boolean {
  const items = bench.plan.stacks.find((each) => each.chamber === chamber.id)?.items ?? [];
  return items.some((item) => bench.parts.get(item.part)?.kind === 'ball');
}
