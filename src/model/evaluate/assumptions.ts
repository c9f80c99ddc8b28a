/**
 * What a verdict hangs on. Assumed shapes are scenarios: each alternative is tried, and named when it would make a
 * turning split stop, or the other way round. Assumed sizes are named with their range.
 */
import type { EndShape } from '../end-shape.ts';
import { type Estimate } from '../estimate/estimate.ts';
import type { Bench } from '../measured/selection.ts';
import type { LengthValue } from '../schema/leaf.ts';
import { formatLength } from '../units/format-length.ts';
import type { WindowInput } from '../window/window-input.ts';
import type { Verdict } from './evaluation.ts';
import { holds } from './judge.ts';
import { sayAmount, sayEnd } from './say.ts';
import type { LinePlace, SplitPlace } from './split-place.ts';
import { judged } from './judged.ts';
import type { WindowEstimate } from './window-estimate.ts';
import type { WindowOf } from './window-memo.ts';

export type AssumptionInput = {
  readonly input: WindowInput;
  readonly window: WindowEstimate;
  readonly place: SplitPlace;
  readonly line: LinePlace;
  readonly offset: Estimate;
  readonly verdict: Verdict;
  readonly bench: Bench;
  readonly windowOf: WindowOf;
  readonly chamberNumber: number;
};

/** Lists what a split's verdict assumes, one sentence each; those that could flip it first. */
export function assumptionsOf(from: AssumptionInput): string[] {
  const { place, bench, input } = from;
  const unit = bench.job.settings.unit;
  const flips: string[] = [];
  const plain: string[] = [];
  const end = (
    what: string,
    shape: EndShape,
    alternatives: readonly EndShape[],
    swap: (shape: EndShape) => WindowInput,
  ) => {
    const base = `${what} ${sayEnd(shape, unit)}`;
    const flipped = alternatives.flatMap((each) => {
      const verdict = verdictWith(from, swap(each));
      return holds(verdict) === holds(from.verdict) ? [] : [flipSentence(each, verdict, from)];
    });
    if (flipped.length > 0) flips.push(`${base}; ${flipped.join('; ')}`);
    else plain.push(base);
  };
  const top = place.below.upper;
  if (top.basis === 'assumed') {
    end('pin top', top.shape, top.alternatives, (shape) => ({
      ...input,
      lower: { ...input.lower, top: shape },
    }));
  }
  const bottom = place.above?.lower;
  if (bottom === undefined || bottom.basis === 'assumed') {
    const alternatives = bottom?.alternatives ?? [{ kind: 'flat' } as const];
    end('driver', input.upper.bottom, alternatives, (shape) => ({
      ...input,
      upper: { ...input.upper, bottom: shape },
    }));
  }
  const play = bench.cylinder.lines[from.line.index]?.clearance;
  if (play?.basis === 'assumed') plain.push(`play ${sayRange(play, unit)}`);
  return [...flips, ...plain];
}

function verdictWith(from: AssumptionInput, input: WindowInput): Verdict {
  const other = from.windowOf(input);
  const window: WindowEstimate = {
    lowest: { ...from.window.lowest, value: other.lowest },
    highest: { ...from.window.highest, value: other.highest },
    noTouch: other.noTouch,
    empty: other.empty,
  };
  return judged(from.offset, window, from.bench).judgement.verdict;
}

function flipSentence(shape: EndShape, verdict: Verdict, { bench, chamberNumber }: AssumptionInput): string {
  const then = verdict === 'never turns' ? 'can never turn' : `is ${verdict}`;
  return `if ${sayEnd(shape, bench.job.settings.unit)}, chamber ${chamberNumber} ${then}`;
}

function sayRange(value: LengthValue, unit: 'in' | 'mm'): string {
  const middle = value.readings[0]?.value ?? 0;
  const { range } = value;
  const told = sayAmount(middle, unit);
  if (range === undefined) return told;
  const from = formatLength(range.from, { unit, form: 'bench' });
  const to = formatLength(range.to, { unit, form: 'bench' });
  return `${told} (${from} to ${to})`;
}
