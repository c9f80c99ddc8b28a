/**
 * One key and one cylinder: the best of the bag in every chamber. What is chosen, by what levels and why it cannot be better
 * is in assign.ts; what a part does in a chamber in candidate-heights.ts. Lengths mm, offsets + high, - low.
 */
import type { Measuring } from '../estimate/read-value.ts';
import { sayAmount } from '../evaluate/say.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import { assign, type Assignment } from './assign.ts';
import type { Candidate } from './candidate-heights.ts';
import type { Score } from './levels.ts';
import { type Filling, fillingOf, type PairToFill, pairToFill, rowsOf } from './pair-to-fill.ts';
import { layOutSite } from './site.ts';
import { lockedIn, type Standing, standingOf } from './standing.ts';
import { takeStock } from './stock.ts';
import { whyEmpty } from './why-empty.ts';

export type MatchAsk = {
  /** The most that may be filed off the crown of a loose pin that is not an original, mm. Null, or absent: none. */
  readonly mostFiled?: number | null;
  /** Chambers to leave as they are, besides those locked in the plan. */
  readonly locked?: readonly Id[];
};

export type ChamberMatch = {
  readonly chamber: Id;
  /** As counted on screen. */
  readonly number: number;
  readonly isLocked: boolean;
  /** Null when nothing fits, or the height is not known. */
  readonly standing: Standing | null;
  /** For an empty chamber, or a locked one that does not turn: one sentence. */
  readonly why: string | null;
};

export type Match = {
  readonly cylinder: Id;
  readonly key: Id;
  readonly plan: Id;
  readonly chambers: readonly ChamberMatch[];
  /** Chambers that turn, of how many. */
  readonly filled: number;
  readonly of: number;
  /** Of the tightest chamber that turns, mm. Null when none does. */
  readonly smallestToSpare: number | null;
  /** Of the chambers that were free to choose. */
  readonly score: Score;
  readonly isProved: boolean;
  /** No choice is better than this. */
  readonly bound: Score;
  /** One sentence. */
  readonly answer: string;
  /** What else to know about the bag, one sentence each. */
  readonly notes: readonly string[];
};

export type MatchSelection = { readonly cylinder: Id; readonly key: Id; readonly plan: Id };

/** Finds the best parts on hand for a key in a cylinder. Cylinder, key and plan must exist in the job. */
export function matchParts(job: Job, selection: MatchSelection, ask: MatchAsk = {}): Match {
  const { pair, filling } = prepareMatch(job, selection, ask);
  return matchOf(
    pair,
    filling,
    assign(rowsOf(pair, filling), (part) => filling.copies[part] ?? 0),
  );
}

/** Everything a match is made from, for asking more of it (alternatives, missing parts). */
export function prepareMatch(
  job: Job,
  selection: MatchSelection,
  { mostFiled = null, locked = [] }: MatchAsk = {},
): { readonly pair: PairToFill; readonly filling: Filling } {
  const stock = takeStock(job, measuringOf(job));
  const site = layOutSite(job, selection, stock, { locked });
  const pair = pairToFill(site, selection.key);
  return { pair, filling: fillingOf(job, [site], pair.toFill.length, mostFiled) };
}

export function measuringOf(job: Job): Measuring {
  return {
    instruments: new Map(job.instruments.map((each) => [each.id, each])),
    sessions: new Map(job.sessions.map((each) => [each.id, each])),
  };
}

/** Words a choice for the chambers of a pair. */
export function matchOf(pair: PairToFill, filling: Filling, assignment: Assignment<Candidate>): Match {
  const { site, bench } = pair.keyIn;
  const { chosen, score, isProved, bound } = assignment;
  const chambers = site.places.map((place): ChamberMatch => {
    const { chamber, number, isLocked } = place;
    if (isLocked) return { chamber, number, isLocked, ...lockedIn(pair.keyIn, place, filling.step) };
    const at = pair.toFill.findIndex((each) => each.place === place);
    const toFill = pair.toFill[at];
    const candidate = chosen[at] ?? null;
    const why = candidate !== null || toFill === undefined ? null : whyEmpty(pair, toFill, filling, chosen);
    const standing = candidate === null ? null : standingOf(candidate, site.stock, filling.step);
    return { chamber, number, isLocked, standing, why };
  });
  const margins = chambers.flatMap(({ standing }) =>
    standing !== null && standing.spare >= 0 ? [standing.margin] : [],
  );
  const smallestToSpare = margins.length === 0 ? null : Math.min(...margins);
  return {
    cylinder: bench.cylinder.id,
    key: bench.key?.id ?? '',
    plan: bench.plan.id,
    chambers,
    filled: margins.length,
    of: chambers.length,
    smallestToSpare,
    score,
    isProved,
    bound,
    answer: answerOf(pair, chambers, margins.length, smallestToSpare),
    notes: notesOf(pair),
  };
}

function answerOf(
  { keyIn }: PairToFill,
  chambers: readonly ChamberMatch[],
  filled: number,
  smallestToSpare: number | null,
): string {
  const { job } = keyIn.bench;
  if (chambers.length === 0) return 'This cylinder has no open chamber.';
  if (keyIn.readings.length === 0) return 'The key has no measured cut yet: measure its cuts first.';
  const filed = chambers.filter(({ standing }) => (standing?.filedOff ?? 0) > 0).length;
  const filing =
    filed === 0 ? '' : filed === 1 ? ' One pin has to be filed.' : ` ${filed} pins have to be filed.`;
  const tight =
    smallestToSpare === null
      ? ''
      : ` The tightest has ${sayAmount(smallestToSpare, job.settings.unit)} to spare.`;
  if (filled === chambers.length) {
    const all = filled === 1 ? 'The chamber' : `All ${filled} chambers`;
    return `${all} can be filled.${tight}${filing}`;
  }
  const empty = chambers.find(({ why }) => why !== null);
  return `${filled} of ${chambers.length} chambers can be filled.${tight}${filing} ${empty?.why ?? ''}`.trimEnd();
}

function notesOf({ keyIn }: PairToFill): string[] {
  const { stock, takesBall } = keyIn.site;
  const notes: string[] = [];
  const labels = new Map<string, number>();
  for (const { label } of stock.parts) labels.set(label, (labels.get(label) ?? 0) + 1);
  const twice = [...labels].filter(([label, count]) => count > 1 && label.trim() !== '');
  if (twice.length > 0) {
    const [label, count] = twice[0] ?? ['', 0];
    const more = counted(twice.length - 1, 'other label is', 'other labels are');
    const others = twice.length === 1 ? '' : `, and ${more} used more than once`;
    notes.push(
      `${count} parts are called ${label}${others}: give each its own label, or you may take the wrong one.`,
    );
  }
  const count = (why: string) => stock.setAside.filter((each) => each.why === why).length;
  const open = count('not measured');
  if (open > 0) notes.push(`${counted(open, 'part has', 'parts have')} no length yet and cannot be chosen.`);
  const none = count('no length');
  if (none > 0)
    notes.push(`${counted(none, 'part has', 'parts have')} a length of nothing or less: read again.`);
  const dimples = takesBall ? count('dimple not measured') : 0;
  if (dimples > 0) {
    notes.push(
      `${counted(dimples, 'pin has', 'pins have')} a dimple that was not measured: measure ball + bottom pin together.`,
    );
  }
  return notes;
}

function counted(count: number, one: string, several: string): string {
  return count === 1 ? `1 ${one}` : `${count} ${several}`;
}
