/** What the panels ask of the app for choosing parts: reckoned beside the page, told how far it is, stopped when asked. */
import type {
  MatchingAnswers,
  MatchingKind,
  MatchingProgress,
  RequestOf,
} from '../../model/matching/matching-request.ts';
import type { Job } from '../../model/schema/job-schema.ts';

export type MatchingOutcome<T> =
  | { readonly type: 'done'; readonly answer: T }
  | { readonly type: 'cancelled' }
  /** One sentence. */
  | { readonly type: 'failed'; readonly message: string };

export type MatchingHooks = {
  readonly onProgress?: (progress: MatchingProgress) => void;
  /** It goes on on the page, slower: one sentence that says why. */
  readonly onSlower?: (message: string) => void;
};

export type MatchingRun<T> = {
  /** Never rejects. */
  readonly outcome: Promise<MatchingOutcome<T>>;
  /** The outcome is then `cancelled`, at once. */
  readonly cancel: () => void;
};

export type MatchingService = {
  readonly run: <K extends MatchingKind>(
    job: Job,
    request: RequestOf<K>,
    hooks?: MatchingHooks,
  ) => MatchingRun<MatchingAnswers[K]>;
};
