/** The one matching service of a page, loaded when parts are first chosen. */
import type { MatchingService } from '../panels/match/matching-service.ts';
import { MatchingClient } from './matching-client.ts';
import workerUrl from './matching-worker.ts?worker&url';
import { startWorker } from './own-worker.ts';

export const matching: MatchingService = new MatchingClient({ createWorker: () => startWorker(workerUrl) });
