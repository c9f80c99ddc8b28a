/**
 * Everything the station of the parts asks of the matching, as plain messages, so that it can be reckoned elsewhere than
 * on the page: in a worker, or in small slices. Each is worked off step by step and tells how far it is.
 */
import { known } from '../assert.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import { type Alternative, alternativesFor } from './alternatives.ts';
import { buildTogether, type Together } from './build-together.ts';
import { chooseKeys, type KeyChoice, type KeyChoiceAsk } from './choose-keys.ts';
import { type DeeperCut, deeperCut, type NoCut } from './deeper-cut.ts';
import { assignAround, type Held } from './held.ts';
import { type Match, type MatchAsk, matchOf, type MatchSelection, prepareMatch } from './match.ts';
import { type ManyAsk, type PairCell, pairTable } from './match-many.ts';
import { type MissingPart, missingParts } from './missing-part.ts';
import { sureHeight } from './wanted-height.ts';
import { tieReason } from './tie-reasons.ts';
import { matchTwoKeys, type TwoKeysMatch, type TwoKeysSelection } from './two-keys.ts';

export type HeldAsk = MatchAsk & { readonly held: readonly Held[] };

export type MatchingRequest =
  | { readonly kind: 'match'; readonly selection: MatchSelection; readonly ask: HeldAsk }
  | {
      readonly kind: 'alternatives';
      readonly selection: MatchSelection;
      readonly ask: HeldAsk;
      readonly chamber: Id;
    }
  | { readonly kind: 'two keys'; readonly selection: TwoKeysSelection }
  | { readonly kind: 'deeper cut'; readonly selection: MatchSelection; readonly chamber: Id }
  | { readonly kind: 'table'; readonly ask: ManyAsk }
  | {
      readonly kind: 'together';
      readonly selections: readonly MatchSelection[];
      readonly mostFiled: number | null;
    }
  | { readonly kind: 'keys'; readonly ask: KeyChoiceAsk };

export type MatchAnswer = {
  readonly match: Match;
  /** Where something else than lengths decided: one sentence, by chamber. */
  readonly reasons: ReadonlyMap<Id, string>;
  /** Any one of these would complete it. */
  readonly missing: readonly MissingPart[];
};

export type KeysAnswer = {
  readonly choice: KeyChoice;
  /** The chosen pairs built; null when no cylinder got a key. */
  readonly together: Together | null;
};

export type MatchingAnswers = {
  readonly match: MatchAnswer;
  readonly alternatives: readonly Alternative[];
  readonly 'two keys': TwoKeysMatch;
  readonly 'deeper cut': DeeperCut | NoCut;
  readonly table: readonly PairCell[];
  readonly together: Together;
  readonly keys: KeysAnswer;
};

export type MatchingKind = MatchingRequest['kind'];
export type RequestOf<K extends MatchingKind> = Extract<MatchingRequest, { kind: K }>;
export type MatchingAnswer = MatchingAnswers[MatchingKind];

/** How far it is: steps done, of how many where that can be known. */
export type MatchingProgress = { readonly done: number; readonly of: number | null };
type Steps<T> = Generator<MatchingProgress, T, void>;

/** Works a request off. What it refers to must exist in the job. */
export function answerRequest<K extends MatchingKind>(
  job: Job,
  request: RequestOf<K>,
): Steps<MatchingAnswers[K]>;
export function* answerRequest(job: Job, request: MatchingRequest): Steps<MatchingAnswer> {
  switch (request.kind) {
    case 'match':
      return matchAnswer(job, request);
    case 'alternatives':
      return alternativesAnswer(job, request);
    case 'two keys':
      return matchTwoKeys(job, request.selection);
    case 'deeper cut':
      return deeperCut(job, request.selection, request.chamber);
    case 'table':
      return yield* pairTable(job, request.ask);
    case 'together':
      return buildTogether(job, request.selections, request.mostFiled);
    case 'keys':
      return yield* keysAnswer(job, request);
  }
}

function matchAnswer(job: Job, { selection, ask }: RequestOf<'match'>): MatchAnswer {
  const { pair, filling } = prepareMatch(job, selection, ask);
  const { rows, assignment } = assignAround(pair, filling, ask.held);
  const reasons = new Map<Id, string>();
  for (const [at, { place }] of pair.toFill.entries()) {
    const row = known(rows[at], 'row of a chamber');
    const reason = tieReason(row, assignment.chosen, at, pair.keyIn.site.stock, filling);
    if (reason !== null) reasons.set(place.chamber, reason);
  }
  return {
    match: matchOf(pair, filling, assignment),
    reasons,
    missing: missingParts(pair, filling, rows, assignment, (place) => sureHeight(pair.keyIn, place)),
  };
}

/** So many are worth showing. */
const MOST_ALTERNATIVES = 12;

function alternativesAnswer(
  job: Job,
  { selection, ask, chamber }: RequestOf<'alternatives'>,
): readonly Alternative[] {
  const { pair, filling } = prepareMatch(job, selection, ask);
  const { rows, assignment } = assignAround(pair, filling, ask.held);
  return alternativesFor(pair, filling, assignment, chamber, MOST_ALTERNATIVES, rows);
}

function* keysAnswer(job: Job, { ask }: RequestOf<'keys'>): Steps<KeysAnswer> {
  const search = chooseKeys(job, ask);
  for (;;) {
    const step = search.next();
    if (step.done !== true) {
      yield { done: step.value.cases, of: null };
      continue;
    }
    const choice = step.value;
    const pairs = choice.keys.flatMap(({ cylinder, plan, key }) =>
      key === null ? [] : [{ cylinder, plan, key }],
    );
    const together = pairs.length === 0 ? null : buildTogether(job, pairs, ask.mostFiled ?? null);
    return { choice, together };
  }
}
