/** One sentence for what would decide a split, or what to put there instead. */
import { type Estimate, type FieldRef, type Term, variance } from '../estimate/estimate.ts';
import type { JobUnit } from '../units/length-unit.ts';
import type { Lean, Verdict } from './evaluation.ts';
import { formatLength } from '../units/format-length.ts';
import { formatAtMost } from '../units/format-range.ts';
import { sayAmount, sayField, sayRange } from './say.ts';

export type NextStepInput = {
  readonly verdict: Verdict;
  readonly lean: Lean;
  readonly unit: JobUnit;
  readonly toLowest: Estimate;
  readonly toHighest: Estimate;
  readonly toLowestUncertainty: number;
  readonly toHighestUncertainty: number;
  readonly useFrom: number;
  readonly useTo: number;
  readonly noneCertain: boolean;
  readonly isLowerStack: boolean;
  readonly hasBall: boolean;
};

/** Says what to do next about a split; null when nothing needs doing. */
export function nextStep(input: NextStepInput): string | null {
  switch (input.verdict) {
    case 'too low':
    case 'too high':
      return insteadOf(input);
    case 'never turns':
      return 'No length turns with these ends: dome or bevel the pin, or take a driver with a broken edge.';
    case "can't say yet":
      return decide(input);
    case 'high, rubs':
      return 'It works but pushes the plug aside as it turns: a slightly shorter stack is better.';
    case 'level':
    case 'low, turns':
    case 'unknown':
      return null;
  }
}

const PARTS_UP_TO_THE_SPLIT = 'parts that add up to a stack';

function insteadOf({ useFrom, useTo, unit, isLowerStack, hasBall, noneCertain }: NextStepInput): string {
  const what = isLowerStack ? (hasBall ? 'a ball + bottom pin' : 'a bottom pin') : PARTS_UP_TO_THE_SPLIT;
  // Below nothing there is no pin: a driver whose end the plug lifts from any depth sets no lower end.
  if (useTo <= 0) return 'No stack is short enough: check the root depth and the metal under the key.';
  if (noneCertain) {
    const about = formatLength(useFrom, { unit, form: 'bench', keepsPlaces: true, hasUnit: true });
    return `No length is certain with these readings: try ${what} of about ${about}.`;
  }
  if (useFrom <= 0) return `Use ${what} of up to ${formatAtMost(useTo, unit)} ${unit}.`;
  return `Use ${what} of ${sayRange(useFrom, useTo, unit)}.`;
}

function decide(input: NextStepInput): string {
  const { toLowest, toHighest, toLowestUncertainty, toHighestUncertainty, unit } = input;
  const spareLow = toLowest.value - toLowestUncertainty;
  const spareHigh = toHighest.value - toHighestUncertainty;
  const isLowSide = spareLow < spareHigh;
  const lacking = -Math.min(spareLow, spareHigh);
  const room = Math.max(spareLow, spareHigh);
  const test = isLowSide
    ? 'Only the driver test tells: try it with its driver'
    : 'Try it alone in the empty shell, without driver';
  const settle =
    room >= lacking && lacking > 0
      ? `; a stack ${sayAmount(lacking, unit)} ${isLowSide ? 'longer' : 'shorter'} would settle it`
      : '';
  const help = whatHelps(isLowSide ? toLowest : toHighest);
  return `${test}${settle}${help === null ? '' : `. ${help}`}.`;
}

/** Names the reading behind most of the doubt, and what to do about it. */
function whatHelps(distance: Estimate): string | null {
  const biggest = largestDoubt(distance);
  if (biggest === null) return null;
  const what = sayField(biggest.field);
  if (biggest.kind === 'assumed') return `Measuring ${what} would help most`;
  if (biggest.kind === 'scale') return 'A stands-up-by reading would help most';
  return `Reading ${what} again would help most`;
}

export type Doubt = {
  readonly field: FieldRef;
  readonly kind: string /** Share of the variance. */;
  readonly share: number;
};

/** The entered quantity without which the ± would shrink most. */
export function largestDoubt(estimate: Estimate): Doubt | null {
  const total = variance(estimate.terms);
  if (total <= 0) return null;
  const byField = new Map<string, Term[]>();
  for (const term of estimate.terms) {
    const { owner, id, name } = term.cause.field;
    const key = `${owner}/${id}/${name}`;
    const own = byField.get(key);
    if (own === undefined) byField.set(key, [term]);
    else own.push(term);
  }
  let best: Doubt | null = null;
  for (const own of byField.values()) {
    const first = own[0];
    const share = 1 - variance(estimate.terms.filter((term) => !own.includes(term))) / total;
    if (first !== undefined && (best === null || share > best.share)) {
      best = { field: first.cause.field, kind: mainKind(own), share };
    }
  }
  return best;
}

function mainKind(terms: readonly Term[]): string {
  let kind = 'repeatability';
  let most = -1;
  for (const term of terms) {
    if (Math.abs(term.weight) > most) {
      most = Math.abs(term.weight);
      kind = term.cause.kind;
    }
  }
  return kind;
}
