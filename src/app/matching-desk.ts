/** The worker's work without the worker: takes orders, says how far it is now and then, and gives answers. */
import { answerRequest, type MatchingProgress } from '../model/matching/matching-request.ts';
import type { Job } from '../model/schema/job-schema.ts';
import type { MatchingOrder, MatchingReply } from './matching-messages.ts';

/** ms between two reports. More would only keep the page busy. */
const REPORT_MS = 80;

/** Makes a desk. `now` gives ms of any clock that runs. */
export function matchingDesk(
  say: (reply: MatchingReply) => void,
  now: () => number,
): (order: MatchingOrder) => void {
  let held: Job | null = null;
  return ({ order, job, request }) => {
    try {
      held = job ?? held;
      if (held === null) throw new Error('an order without a job');
      let reported = now();
      const steps = answerRequest(held, request);
      for (;;) {
        const step = steps.next();
        if (step.done === true) {
          say({ kind: 'answer', order, answer: step.value });
          return;
        }
        const progress: MatchingProgress = step.value;
        if (now() - reported < REPORT_MS) continue;
        reported = now();
        say({ kind: 'progress', order, progress });
      }
    } catch (reason) {
      say({ kind: 'failed', order, reason: reason instanceof Error ? reason.message : String(reason) });
    }
  };
}
