/**
 * The answer in plain words, from the evaluation: which chamber, which way, by how much, what to use instead, what to do
 * next, and what it assumes. The same error everywhere comes first, and then the verdicts wait. No React here.
 */
import type { ChamberResult, Evaluation, LineResult, SplitResult } from '../../model/evaluate/evaluation.ts';
import { type WhatTurns, whatTurns } from '../../model/evaluate/what-turns.ts';
import { asRadians, toDegrees } from '../../model/radians.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import { assumptionSentences } from './assumption-words.ts';
import { numberWord, sayChambers } from './list-words.ts';
import {
  lineWording,
  type LineWording,
  mixtureWords,
  notMeantWords,
  otherLineWords,
} from './line-wording.ts';
import { type AnswerTone, splitThatMatters } from './verdict-words.ts';

/** One sentence or two about a chamber, or about none in particular. */
export type AnswerPoint = { readonly chamber: Id | null; readonly text: string };

export type Answer = {
  readonly tone: AnswerTone;
  readonly headline: string;
  /** One for each chamber that matters, then what else to know. */
  readonly points: readonly AnswerPoint[];
  readonly assumes: readonly string[];
  /** Under every "should turn". */
  readonly expected: string | null;
  /** The verdicts wait: one wrong measurement is likelier than so many wrong pins. */
  readonly verdictsWait: boolean;
};

export const EXPECTED =
  'Expected from your measurements. Try it on the bench, then with the door open and the key in your hand.';

/** Chambers told one by one; the others are counted. */
const MOST_POINTS = 3;

/** A cut that does not lie under its chamber. */
export type OffCut = { readonly chamber: Id; readonly number: number; readonly offBy: number };

export type AnswerOptions = {
  /** The line this key is meant to turn, where that is known. */
  readonly meant?: Id | null;
  readonly offCuts?: readonly OffCut[];
};

/** Words the answer: about the line that turns, or may turn, or was meant to; then what the other line means for it. */
export function answerText(evaluation: Evaluation, unit: JobUnit, options: AnswerOptions = {}): Answer {
  const meant = options.meant ?? null;
  const what = whatTurns(evaluation, meant);
  const main = mainAnswer(evaluation, unit, what);
  if (main.verdictsWait || main.tone === 'waiting') return main;
  const lines = [
    what.focus === null ? null : otherLineWords(evaluation, what.focus, what),
    notMeantWords(evaluation, meant, what),
  ].flatMap((text): AnswerPoint[] => (text === null ? [] : [{ chamber: null, text }]));
  // Where it turns, what stays behind comes first; where it does not, what holds it.
  const points = main.tone === 'turns' ? [...lines, ...main.points] : [...main.points, ...lines];
  return {
    ...main,
    points: [...points, ...warnings(evaluation), ...offCutPoints(options.offCuts ?? [], unit)],
  };
}

function mainAnswer(evaluation: Evaluation, unit: JobUnit, what: WhatTurns): Answer {
  const line = evaluation.lines.find((each) => each.line === what.focus);
  if (line === undefined || line.verdict === 'unknown')
    return stillToMeasure(evaluation, unit, line ?? null, what);
  if (evaluation.commonError !== null)
    return sameEverywhere(evaluation.commonError.offset, leastUncertainty(evaluation), unit);
  const all = placed(evaluation, line);
  const blocked = all.filter(({ chamber }) => line.blockedBy.includes(chamber.chamber));
  const words = lineWording(evaluation, line.line, what);
  switch (line.verdict) {
    case 'will not turn': {
      if (!what.isMixed)
        return answer('stops', willNotTurn(blocked, words), pointsOf(blocked, unit, words), blocked);
      const { headline, text } = mixtureWords(evaluation);
      return answer('stops', headline, [{ chamber: null, text }], blocked);
    }
    case "can't say yet": {
      const order = [...blocked].sort((one, other) => one.split.margin - other.split.margin);
      const told = answer(
        'unsure',
        cannotSay(line, order, all.length, words),
        openPoints(order, unit, words),
        blocked,
      );
      return line.lean === 'probably turns' ? { ...told, expected: EXPECTED } : told;
    }
    case 'turns': {
      const told = answer(
        'turns',
        shouldTurn(all.length, words),
        [...leastToSpare(all, unit), ...rubbing(all)],
        all,
      );
      return { ...told, expected: EXPECTED };
    }
  }
}

type Placed = { readonly chamber: ChamberResult; readonly split: SplitResult };

function placed(evaluation: Evaluation, line: LineResult): Placed[] {
  return evaluation.chambers.flatMap((chamber) => {
    const found = splitThatMatters(chamber, line.line);
    return found === null ? [] : [{ chamber, split: found.split }];
  });
}

function answer(
  tone: AnswerTone,
  headline: string,
  points: readonly AnswerPoint[],
  about: readonly Placed[],
): Answer {
  const assumes = assumptionSentences(about.flatMap(({ split }) => split.assumes));
  return { tone, headline, points, assumes, expected: null, verdictsWait: false };
}

/** Of all splits, how well the best known one is known. mm. */
function leastUncertainty({ chambers }: Evaluation): number {
  return Math.min(...chambers.flatMap(({ splits }) => splits.map((split) => split.expandedUncertainty)));
}

function sameEverywhere(offset: number, uncertainty: number, unit: JobUnit): Answer {
  const way = offset > 0 ? 'high' : 'low';
  const isWithin = Math.abs(offset) <= uncertainty;
  const text =
    (isWithin
      ? `That is no more than the readings leave open (±${amount(uncertainty, unit)}): no pin is wrong by it. ` +
        'What would tell is measured once for all: '
      : 'That is one wrong measurement, hardly so many wrong pins. ') +
    `${isWithin ? 'check' : 'Check'} the zero of the caliper, the plug diameter ` +
    'and how the key sits before changing any pin.';
  return {
    ...answer('unsure', `Every chamber is ${way} by about ${amount(offset, unit)}.`, [], []),
    points: [{ chamber: null, text }],
    verdictsWait: true,
  };
}

function stillToMeasure(
  evaluation: Evaluation,
  unit: JobUnit,
  line: LineResult | null,
  what: WhatTurns,
): Answer {
  const words = lineWording(evaluation, line?.line ?? null, what);
  const { chambers } = evaluation;
  const open = chambers.filter((chamber) => chamber.missing.length > 0);
  const next = open[0]?.missing[0] ?? 'Nothing is measured yet.';
  const done = chambers.length - open.length;
  const points: AnswerPoint[] = [];
  if (done > 0) {
    const count = `${numberWord(done)} of ${numberWord(chambers.length)} chambers`;
    points.push({ chamber: null, text: `Measured so far: ${count}.` });
  }
  const stopped =
    line === null
      ? []
      : placed(evaluation, line).filter(({ split }) => ['too low', 'too high'].includes(split.verdict));
  return {
    ...answer('waiting', next, [], stopped),
    points: [...points, ...pointsOf(stopped, unit, words)],
  };
}

function willNotTurn(blocked: readonly Placed[], { held, stops, at }: LineWording): string {
  const [only] = blocked;
  if (only !== undefined && blocked.length === 1) {
    const { verdict } = only.split;
    const what = verdict === 'never turns' ? 'cannot turn with these ends' : `is ${verdict}`;
    return `Chamber ${only.chamber.number} ${what}${at}: ${stops}.`;
  }
  const so = at === '' ? 'it will not turn' : stops;
  return `${sayChambers(numbersOf(blocked))} hold ${held}${at}: ${so}.`;
}

function cannotSay(
  line: LineResult,
  open: readonly Placed[],
  count: number,
  { probably, held, at }: LineWording,
): string {
  const they = at === '' ? 'it' : held;
  const against = open.filter(({ split }) => split.lean === 'probably not');
  const [only] = against;
  if (line.lean === 'probably not' && only !== undefined) {
    if (against.length > 1)
      return `${sayChambers(numbersOf(against))} probably hold ${held}${at}: ${they} will probably not turn.`;
    const way = only.split.offset > 0 ? 'too high' : 'too low';
    return `Chamber ${only.chamber.number} is probably ${way}${at}: ${held} will probably not turn.`;
  }
  if (open.length === count && count > 1) return `${probably}, but no chamber is certain yet.`;
  const verb = open.length === 1 ? 'decides' : 'decide';
  return `${probably}: ${sayChambers(numbersOf(open)).toLowerCase()} ${verb}.`;
}

function shouldTurn(count: number, { should, line }: LineWording): string {
  const all = count === 1 ? 'the one chamber meets' : `all ${numberWord(count)} chambers meet`;
  return `${should}: ${all} ${line}.`;
}

function pointsOf(about: readonly Placed[], unit: JobUnit, words: LineWording): AnswerPoint[] {
  const told = about.slice(0, MOST_POINTS).map(({ chamber, split }) => ({
    chamber: chamber.chamber,
    text: [whatIs(chamber, split, unit, about.length > 1, words), split.nextStep].filter(Boolean).join(' '),
  }));
  const rest = about.slice(MOST_POINTS);
  if (rest.length === 0) return told;
  const text = `${sayChambers(numbersOf(rest))} too: see the table.`;
  return [...told, { chamber: null, text }];
}

/** Ends the next step of a chamber where one reading would shrink the ± most. */
const HELPS_MOST = /\s*([A-Z][^.]*) would help most\.$/u;

/** Undecided chambers, the worst first. When most hang on the same thing, it is said once, and first. */
function openPoints(open: readonly Placed[], unit: JobUnit, words: LineWording): AnswerPoint[] {
  const helps = open.map(({ split }) => HELPS_MOST.exec(split.nextStep ?? '')?.[1] ?? null);
  const [help] = helps;
  const isCommon = help !== null && help !== undefined && helps.filter((each) => each === help).length > 2;
  if (!isCommon) return pointsOf(open, unit, words);
  const least = Math.min(...open.map(({ split }) => split.expandedUncertainty));
  const other = help.includes('root flat')
    ? ' Or lay a ball in each cut and read over it: that needs none.'
    : '';
  const text = `All of it is only good to about ±${amount(least, unit)}. ${help} would help most.${other}`;
  const worst = open
    .filter(({ split }) => split.lean === 'probably not')
    .map((each) => ({
      ...each,
      split: { ...each.split, nextStep: each.split.nextStep?.replace(HELPS_MOST, '') ?? null },
    }));
  return [{ chamber: null, text }, ...pointsOf(worst, unit, words)];
}

/** What is the matter with one chamber. */
function whatIs(
  chamber: ChamberResult,
  split: SplitResult,
  unit: JobUnit,
  isNamed: boolean,
  { line, body }: LineWording,
): string {
  const { below, above } = partsAround(chamber, split);
  const { offset, window } = split;
  const who = isNamed ? `Chamber ${chamber.number}: its` : 'Its';
  switch (split.verdict) {
    case 'too high': {
      const over = amount(offset - window.highest, unit);
      return `${who} ${below} stands ${placeOf(offset, unit, line)}, ${over} higher than lets it turn.`;
    }
    case 'too low': {
      const over = amount(window.lowest - offset, unit);
      return `${who} ${above} hangs ${amount(offset, unit)} into the ${body}, ${over} deeper than the ${body}'s edge lifts.`;
    }
    case "can't say yet": {
      return `${who} ${below} stands ${placeOf(offset, unit, line)}, good to about ±${amount(split.expandedUncertainty, unit)}: too close to a limit to say.`;
    }
    case 'never turns':
    case 'level':
    case 'low, turns':
    case 'high, rubs':
    case 'unknown':
      return isNamed ? `Chamber ${chamber.number}:` : '';
  }
}

/** The parts a split lies between: every other part between bottom pin and driver is a master pin. */
function partsAround(chamber: ChamberResult, split: SplitResult): { below: string; above: string } {
  const isLower = chamber.splits[0]?.below === split.below;
  const isUnderMaster = chamber.splits.some(({ below }) => below === split.above);
  return { below: isLower ? 'bottom pin' : 'master pin', above: isUnderMaster ? 'master pin' : 'driver' };
}

/** "level with the line", ".0095 in above the line". A flat top may be too high although it stands below the crest. */
function placeOf(offset: number, unit: JobUnit, line: string): string {
  const rounded = formatLength(Math.abs(offset), { unit, form: 'bench' });
  if (Number(rounded) === 0) return `level with ${line}`;
  return `${amount(offset, unit)} ${offset > 0 ? 'above' : 'below'} ${line}`;
}

function leastToSpare(all: readonly Placed[], unit: JobUnit): AnswerPoint[] {
  const [least] = [...all].sort((a, b) => a.split.margin - b.split.margin);
  if (least === undefined || all.length < 2) return [];
  const text = `Chamber ${least.chamber.number} has the least to spare: ${amount(least.split.margin, unit)}.`;
  return [{ chamber: least.chamber.chamber, text }];
}

/** Friction is a guess, so the angle is only told to ten degrees. */
const TOLD_ANGLE_DEG = 10;

function rubbing(all: readonly Placed[]): AnswerPoint[] {
  const rubs = all.filter(({ split }) => split.verdict === 'high, rubs');
  if (rubs.length === 0) return [];
  const from = Math.min(...rubs.map(({ split }) => toDegrees(asRadians(split.rubsFrom ?? 0))));
  const told = Math.round(from / TOLD_ANGLE_DEG) * TOLD_ANGLE_DEG;
  const verb = rubs.length === 1 ? 'is high and rubs' : 'are high and rub';
  const when = told === 0 ? 'from the start' : `from about ${told}°`;
  const text = `${sayChambers(numbersOf(rubs))} ${verb} ${when}: a slightly shorter stack is better.`;
  return [{ chamber: rubs[0]?.chamber.chamber ?? null, text }];
}

/** What the evaluation found beside the verdicts, unless it is only a note. */
function warnings({ findings }: Evaluation): AnswerPoint[] {
  return findings
    .filter((finding) => finding.severity !== 'notes')
    .slice(0, MOST_POINTS)
    .map((finding) => ({ chamber: finding.chambers[0] ?? null, text: finding.message }));
}

function offCutPoints(offCuts: readonly OffCut[], unit: JobUnit): AnswerPoint[] {
  const [first] = offCuts;
  if (first === undefined) return [];
  if (offCuts.length === 1) {
    const text = `Chamber ${first.number} sits ${amount(first.offBy, unit)} off its cut: what rides on the key rests high on one side.`;
    return [{ chamber: first.chamber, text }];
  }
  const most = Math.max(...offCuts.map((each) => Math.abs(each.offBy)));
  const who = sayChambers(offCuts.map((each) => each.number));
  const text = `${who} sit off their cuts, by up to ${amount(most, unit)}: what rides on the key rests high on one side.`;
  return [{ chamber: first.chamber, text }];
}

function numbersOf(about: readonly Placed[]): number[] {
  return about.map(({ chamber }) => chamber.number);
}

function amount(mm: number, unit: JobUnit): string {
  return formatLength(Math.abs(mm), { unit, form: 'bench', hasUnit: true });
}
