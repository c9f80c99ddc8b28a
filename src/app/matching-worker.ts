/** The worker that chooses parts: reckons one order after the other. It is stopped by ending it. */
import { matchingDesk } from './matching-desk.ts';
import type { MatchingOrder } from './matching-messages.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;

const take = matchingDesk(
  (reply) => scope.postMessage(reply),
  () => performance.now(),
);

scope.addEventListener('message', (event) => take((event as MessageEvent<MatchingOrder>).data));
