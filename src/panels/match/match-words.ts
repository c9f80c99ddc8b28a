/** How choices of parts are said: parts, heights, offsets, to spare, proofs. Offsets + high, - low; mm. */
import { sayAmount, sayLength } from '../../model/evaluate/say.ts';
import type { ChamberResult } from '../../model/evaluate/evaluation.ts';
import type { KeyChoice } from '../../model/matching/choose-keys.ts';
import type { Score } from '../../model/matching/levels.ts';
import type { ChamberMatch, Match } from '../../model/matching/match.ts';
import type { PairCell } from '../../model/matching/match-many.ts';
import type { MissingPart } from '../../model/matching/missing-part.ts';
import { resolutionOf } from '../../model/matching/resolution.ts';
import type { Standing } from '../../model/matching/standing.ts';
import { sayWanted } from '../../model/matching/wanted-height.ts';
import { lengthOf } from '../../model/measured/part-ends.ts';
import { WINDOW_MM } from '../../model/tolerances.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { Item } from '../../model/schema/key-schema.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';

/** "L07 on B2": the pin, and the ball it stands on. */
export function partWords(job: Job, items: readonly Item[]): string {
  const labels = items.map(({ part }) => job.parts.find(({ id }) => id === part)?.label.trim() ?? '');
  const named = labels.map((label) => (label === '' ? 'a part without a label' : label));
  return named.reverse().join(' on ');
}

/** How a chosen stack will stand: the same words and the same order as in the table of the cylinder. */
export type StandsWords = {
  /** "level", "low .0010", "high, rubs .0015": to the half thousandth or 0.01 mm. */
  readonly words: string;
  /** High is never good. */
  readonly symbol: 'turns' | 'rubs' | 'stops';
};

/** Says where a stack will stand; within the shop rule it is level. */
export function standsWords({ offset, spare }: Standing, { unit, shopRule }: Job['settings']): StandsWords {
  const amount = formatLength(Math.abs(offset), { unit, form: 'bench', keepsPlaces: true });
  const isLevel = Math.abs(offset) <= lengthOf(shopRule, 0) + WINDOW_MM || Number(amount) === 0;
  if (spare < 0) return { words: `${offset > 0 ? 'high' : 'low'} ${amount}`, symbol: 'stops' };
  if (isLevel) return { words: 'level', symbol: 'turns' };
  return offset > 0
    ? { words: `high, rubs ${amount}`, symbol: 'rubs' }
    : { words: `low ${amount}`, symbol: 'turns' };
}

/**
 * Whether what would turn has less to spare than the ± of its chamber: what the table of the cylinder will call "can't say yet:
 * probably turns", and the bag's range leaves out.
 */
export function isOpen(
  { offset, lowest, highest, spare }: Standing,
  chamber: ChamberResult | undefined,
): boolean {
  const split = chamber?.splits[0];
  if (split === undefined || spare < 0) return false;
  return offset - lowest < split.toLowest - WINDOW_MM || highest - offset < split.toHighest - WINDOW_MM;
}

/** ".0045 to spare", or by how much it does not turn. */
export function spareWords({ margin, spare, offset, highest }: Standing, unit: JobUnit): string {
  const amount = formatLength(Math.abs(margin), { unit, form: 'bench', keepsPlaces: true });
  if (spare >= 0) return `${amount} to spare`;
  return `${amount} too ${offset > highest ? 'high' : 'low'}`;
}

/** What is special about what stands there; sentences. */
export function standingNotes(
  { standing, isLocked, why }: ChamberMatch,
  more: { readonly reason: string | null; readonly isHeld: boolean },
  unit: JobUnit,
): string[] {
  const filedOff = standing?.filedOff ?? 0;
  return [
    ...(isLocked && why === null ? ['Locked: it stays as it is.'] : []),
    ...(why === null ? [] : [why]),
    ...(more.isHeld ? ['Your choice: it stays, the others are chosen around it.'] : []),
    ...(filedOff > 0 ? [`File ${sayAmount(filedOff, unit)} off its crown, then measure it again.`] : []),
    ...(more.reason === null ? [] : [more.reason]),
  ];
}

/** The single parts of which any one would complete it, as one sentence; null when there is none. */
export function missingWords(missing: readonly MissingPart[], unit: JobUnit): string | null {
  const [best, ...others] = missing;
  if (best === undefined) return null;
  const first = `One part would complete it: ${sayWanted(best, best.sure, unit)}, in chamber ${best.number}.`;
  if (others.length === 0) return first;
  const rest = others.map((each) => `${sayWanted(each, each.sure, unit)}, in chamber ${each.number}`);
  return `${first} Or instead ${rest.join('; or ')}.`;
}

/** A line for the work to do, for each pin that has to be filed. */
export function filingLines(job: Job, { cylinder, chambers }: Match): string[] {
  const name = job.cylinders.find(({ id }) => id === cylinder)?.label ?? '';
  const { unit } = job.settings;
  return chambers.flatMap(({ standing, number }) => {
    const pin = standing?.items.at(-1);
    if (standing === null || pin === undefined || standing.filedOff <= 0) return [];
    const label = partWords(job, [pin]);
    return [
      `File ${sayAmount(standing.filedOff, unit)} off the crown of ${label} (chamber ${number} of ${name}), then measure it again.`,
    ];
  });
}

/** What is to be filed before the section agrees; null when nothing is. */
export function untilFiled({ chambers }: Match): string | null {
  const numbers = chambers.flatMap(({ standing, number }) => ((standing?.filedOff ?? 0) > 0 ? [number] : []));
  if (numbers.length === 0) return null;
  const which =
    numbers.length === 1 ? `chamber ${numbers[0] ?? ''} stands` : `chambers ${listed(numbers)} stand`;
  return `Until filed and measured again, ${which} high in the section.`;
}

/** "6 of 6" with what else a cell of the table says. */
export function cellWords(
  cell: PairCell,
  unit: JobUnit,
): { readonly filled: string; readonly detail: string } {
  const { filled, of, filed, smallestToSpare, missing } = cell;
  const spare =
    smallestToSpare === null
      ? ''
      : `${formatLength(smallestToSpare, { unit, form: 'bench', keepsPlaces: true })} to spare`;
  const files = filed === 0 ? '' : filed === 1 ? '1 to file' : `${filed} to file`;
  const [short] = missing;
  const lacks = short === undefined ? '' : `chamber ${short.number} lacks ${sayLength(short.best, unit)}`;
  return {
    filled: `${filled} of ${of}`,
    detail: [spare, files, lacks].filter((words) => words !== '').join(', '),
  };
}

/** Whether keys that were chosen freely are the best there are; if not known, what nothing can beat. */
export function proofWords({ isProved, score, bound }: KeyChoice, unit: JobUnit): string {
  if (isProved) return 'No other choice of keys is better.';
  return `The best found; not every choice was looked at. None can beat ${scoreWords(bound, unit)}; this one has ${scoreWords(score, unit)}.`;
}

function scoreWords({ filled, filed, smallestToSpare, squares }: Score, unit: JobUnit): string {
  const chambers = filled === 1 ? '1 chamber filled' : `${filled} chambers filled`;
  const files = filed === 0 ? '' : `, ${filed} to file`;
  const spare = Number.isFinite(smallestToSpare)
    ? `, ${sayAmount(smallestToSpare * resolutionOf(unit), unit)} to spare at the tightest`
    : '';
  // squared steps tell apart what is alike in everything else
  return `${chambers}${files}${spare}, deviations squared ${squares}`;
}

/** What the whole of several cylinders comes to. */
export function togetherWords(complete: number, of: number): string {
  if (of === 1) return complete === 1 ? 'The cylinder can be built.' : 'The cylinder cannot be built whole.';
  if (complete === of) return `All ${of} cylinders can be built at the same time from this bag.`;
  if (complete === 0) return `None of the ${of} cylinders can be built whole, when they share this bag.`;
  return `${complete} of ${of} cylinders can be built whole, when they share this bag.`;
}

export function listed(numbers: readonly (number | string)[]): string {
  return numbers.length < 2
    ? numbers.join('')
    : `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1) ?? ''}`;
}

/** The number of a chamber in a match, as counted on screen. */
export function numberIn({ chambers }: Match, chamber: Id): number {
  return chambers.find((each) => each.chamber === chamber)?.number ?? 0;
}
