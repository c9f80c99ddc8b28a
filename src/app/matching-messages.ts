/** What page and matching worker say to each other. A job is sent once; after that its number stands for it. */
import type {
  MatchingAnswer,
  MatchingProgress,
  MatchingRequest,
} from '../model/matching/matching-request.ts';
import type { Job } from '../model/schema/job-schema.ts';

export type MatchingOrder = {
  readonly order: number;
  /** Null: the job of the order before. */
  readonly job: Job | null;
  readonly request: MatchingRequest;
};

export type MatchingReply =
  | { readonly kind: 'progress'; readonly order: number; readonly progress: MatchingProgress }
  | { readonly kind: 'answer'; readonly order: number; readonly answer: MatchingAnswer }
  | { readonly kind: 'failed'; readonly order: number; readonly reason: string };
