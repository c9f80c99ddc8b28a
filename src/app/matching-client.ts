/**
 * The page's side of the matching worker. Orders are worked off one after the other; each can be cancelled, and the one
 * under way is cancelled by ending the worker, since it listens only between orders. A worker that cannot start, breaks
 * off or falls silent is given up for good: what it owes is reckoned on the page, in slices short enough to type and
 * scroll between them.
 */
import {
  answerRequest,
  type MatchingAnswer,
  type MatchingProgress,
  type MatchingRequest,
} from '../model/matching/matching-request.ts';
import type { Job } from '../model/schema/job-schema.ts';
import type {
  MatchingHooks,
  MatchingOutcome,
  MatchingRun,
  MatchingService,
} from '../panels/match/matching-service.ts';
import type { MatchingOrder, MatchingReply } from './matching-messages.ts';

/** What a worker must offer; the real one, or a stand-in for tests. */
export type MatchingWorker = Pick<Worker, 'postMessage' | 'terminate' | 'addEventListener'>;

export type MatchingClientOptions = {
  readonly createWorker: () => MatchingWorker;
  /** ms without a sign before the worker counts as gone. */
  readonly patience?: number;
  /** ms of work on the page between two pauses. */
  readonly slice?: number;
};

/** ms. Far more than one step of the largest bag takes. */
const PATIENCE_MS = 30_000;
/** ms. A frame at 60 Hz with room to draw. */
const SLICE_MS = 10;

type Order = {
  readonly number: number;
  readonly job: Job;
  readonly request: MatchingRequest;
  readonly hooks: MatchingHooks;
  readonly settle: (outcome: MatchingOutcome<MatchingAnswer>) => void;
  isOver: boolean;
};

export class MatchingClient implements MatchingService {
  readonly #options: MatchingClientOptions;
  readonly #waiting: Order[] = [];
  #underWay: Order | null = null;
  #worker: MatchingWorker | null = null;
  /** The job the worker has. */
  #sent: Job | null = null;
  #count = 0;
  #timer: ReturnType<typeof setTimeout> | null = null;
  /** Why there is no worker any more. */
  #givenUp: string | null = null;

  constructor(options: MatchingClientOptions) {
    this.#options = options;
  }

  readonly run = ((job: Job, request: MatchingRequest, hooks: MatchingHooks = {}) =>
    this.#order(job, request, hooks)) as MatchingService['run'];

  #order(job: Job, request: MatchingRequest, hooks: MatchingHooks): MatchingRun<MatchingAnswer> {
    let order: Order | null = null;
    const outcome = new Promise<MatchingOutcome<MatchingAnswer>>((resolve) => {
      this.#count += 1;
      order = { number: this.#count, job, request, hooks, settle: resolve, isOver: false };
      this.#waiting.push(order);
    });
    this.#next();
    return {
      outcome,
      cancel: () => {
        if (order !== null) this.#cancel(order);
      },
    };
  }

  #cancel(order: Order): void {
    if (order.isOver) return;
    order.isOver = true;
    order.settle({ type: 'cancelled' });
    const place = this.#waiting.indexOf(order);
    if (place >= 0) this.#waiting.splice(place, 1);
    if (this.#underWay !== order) return;
    // only a new worker is free at once
    if (this.#givenUp === null) this.#endWorker();
    this.#underWay = null;
    this.#next();
  }

  #next(): void {
    if (this.#underWay !== null) return;
    const order = this.#waiting.shift();
    if (order === undefined) return;
    this.#underWay = order;
    if (this.#givenUp !== null) void this.#reckonHere(order);
    else this.#post(order);
  }

  #post(order: Order): void {
    try {
      this.#worker ??= this.#start();
      const job = order.job === this.#sent ? null : order.job;
      this.#worker.postMessage({
        order: order.number,
        job,
        request: order.request,
      } satisfies MatchingOrder);
      this.#sent = order.job;
      this.#startTimer();
    } catch (reason) {
      this.#giveUp(`it could not start: ${textOf(reason)}`);
    }
  }

  #start(): MatchingWorker {
    const worker = this.#options.createWorker();
    const ifStillMine = (act: () => void) => {
      if (worker === this.#worker) act();
    };
    worker.addEventListener('message', (event) =>
      ifStillMine(() => this.#take((event as MessageEvent<MatchingReply>).data)),
    );
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      ifStillMine(() => this.#giveUp(event.message === '' ? 'its script did not load' : event.message));
    });
    worker.addEventListener('messageerror', () =>
      ifStillMine(() => this.#giveUp('an answer could not be read')),
    );
    return worker;
  }

  #take(reply: MatchingReply): void {
    const order = this.#underWay;
    if (order === null || reply.order !== order.number) return;
    if (reply.kind === 'progress') {
      this.#startTimer();
      order.hooks.onProgress?.(reply.progress);
      return;
    }
    this.#finish(
      order,
      reply.kind === 'answer' ? { type: 'done', answer: reply.answer } : failed(reply.reason),
    );
  }

  #finish(order: Order, outcome: MatchingOutcome<MatchingAnswer>): void {
    this.#stopTimer();
    if (this.#underWay === order) this.#underWay = null;
    if (!order.isOver) {
      order.isOver = true;
      order.settle(outcome);
    }
    this.#next();
  }

  #giveUp(why: string): void {
    this.#givenUp = `The worker that chooses parts is not there (${why}). It is reckoned on this page instead, in small steps, which takes longer.`;
    this.#endWorker();
    const order = this.#underWay;
    if (order !== null) void this.#reckonHere(order);
  }

  async #reckonHere(order: Order): Promise<void> {
    order.hooks.onSlower?.(this.#givenUp ?? '');
    const slice = this.#options.slice ?? SLICE_MS;
    try {
      const steps = answerRequest(order.job, order.request);
      let last: MatchingProgress | null = null;
      await pause();
      while (!order.isOver) {
        const until = performance.now() + slice;
        do {
          const step = steps.next();
          if (step.done === true) {
            this.#finish(order, { type: 'done', answer: step.value });
            return;
          }
          last = step.value;
        } while (performance.now() < until);
        order.hooks.onProgress?.(last);
        await pause();
      }
    } catch (reason) {
      this.#finish(order, failed(textOf(reason)));
    }
  }

  #endWorker(): void {
    this.#stopTimer();
    this.#worker?.terminate();
    this.#worker = null;
    this.#sent = null;
  }

  #startTimer(): void {
    this.#stopTimer();
    this.#timer = setTimeout(() => this.#giveUp('it fell silent'), this.#options.patience ?? PATIENCE_MS);
  }

  #stopTimer(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
  }
}

function failed(reason: string): MatchingOutcome<MatchingAnswer> {
  return {
    type: 'failed',
    message: `The choice could not be reckoned from these numbers (${reason}). Nothing was changed.`,
  };
}

function pause(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}

function textOf(reason: unknown): string {
  return reason instanceof Error ? reason.message : String(reason);
}
