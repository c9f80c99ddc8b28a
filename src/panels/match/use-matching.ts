/** Runs one question to the matching at a time for a panel, and holds where it stands. */
import { useCallback, useEffect, useRef, useState } from 'react';
import type {
  MatchingAnswers,
  MatchingKind,
  MatchingProgress,
  RequestOf,
} from '../../model/matching/matching-request.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import { useServices } from '../shared/services.tsx';
import type { MatchingRun } from './matching-service.ts';

export type MatchingState<T> =
  | { readonly type: 'idle' }
  | {
      readonly type: 'running';
      /** It takes long enough to be shown. */
      readonly isLong: boolean;
      readonly progress: MatchingProgress | null;
      readonly slower: string | null;
    }
  /** `job`: what it was reckoned from. */
  | { readonly type: 'done'; readonly answer: T; readonly job: Job }
  | { readonly type: 'cancelled' }
  | { readonly type: 'failed'; readonly message: string };

export type Matching<K extends MatchingKind> = {
  readonly state: MatchingState<MatchingAnswers[K]>;
  readonly start: (job: Job, request: RequestOf<K>) => void;
  readonly cancel: () => void;
  readonly clear: () => void;
  /** The answer holds for this job too: it is what was done with it. */
  readonly carryOver: (job: Job) => void;
};

/** ms. What is quicker needs no progress. */
const LONG_MS = 200;

export function useMatching<K extends MatchingKind>(): Matching<K> {
  const { matching } = useServices();
  const [state, setState] = useState<MatchingState<MatchingAnswers[K]>>({ type: 'idle' });
  /** What is asked now; an answer to anything before it is late. */
  const asked = useRef<{ run: MatchingRun<unknown> | null }>({ run: null });

  const letGo = useCallback(() => {
    asked.current.run?.cancel();
    asked.current = { run: null };
    return asked.current;
  }, []);
  useEffect(() => () => void letGo(), [letGo]);

  const start = useCallback(
    (job: Job, request: RequestOf<K>) => {
      const mine = letGo();
      const update = (more: Partial<Extract<MatchingState<never>, { type: 'running' }>>) => {
        if (asked.current === mine) setState((now) => (now.type === 'running' ? { ...now, ...more } : now));
      };
      setState({ type: 'running', isLong: false, progress: null, slower: null });
      const timer = setTimeout(() => update({ isLong: true }), LONG_MS);
      const reckon = async () => {
        const service = await matching();
        if (asked.current !== mine) return;
        const run = service.run(job, request, {
          onProgress: (progress) => update({ progress }),
          onSlower: (slower) => update({ slower }),
        });
        mine.run = run;
        const outcome = await run.outcome;
        if (asked.current !== mine) return;
        setState(outcome.type === 'done' ? { ...outcome, job } : outcome);
      };
      void reckon()
        .catch((reason: unknown) => {
          const why = reason instanceof Error ? reason.message : String(reason);
          const message = `What chooses parts could not be loaded (${why}). Look whether you are online, then try again.`;
          if (asked.current === mine) setState({ type: 'failed', message });
        })
        .finally(() => clearTimeout(timer));
    },
    [letGo, matching],
  );
  const cancel = useCallback(() => {
    letGo();
    setState({ type: 'cancelled' });
  }, [letGo]);
  const clear = useCallback(() => {
    letGo();
    setState({ type: 'idle' });
  }, [letGo]);
  const carryOver = useCallback((job: Job) => {
    setState((now) => (now.type === 'done' ? { ...now, job } : now));
  }, []);
  return { state, start, cancel, clear, carryOver };
}
