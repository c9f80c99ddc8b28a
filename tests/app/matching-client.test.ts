/** The page's side of the matching worker, with a stand-in for the worker that works only when told to. */
import { describe, expect, test } from 'vitest';
import { MatchingClient } from '../../src/app/matching-client.ts';
import { matchingDesk } from '../../src/app/matching-desk.ts';
import type { MatchingOrder, MatchingReply } from '../../src/app/matching-messages.ts';
import { pairTable, runToEnd } from '../../src/model/matching/match-many.ts';
import { matchParts } from '../../src/model/matching/match.ts';
import type { MatchingProgress, RequestOf } from '../../src/model/matching/matching-request.ts';
import { loose, withBag } from '../support/bag-job.ts';
import { buildJob } from '../support/job-builder.ts';
import { manyJob } from '../support/many-job.ts';

const SELECTION = { cylinder: 'cylinder', key: 'key', plan: 'plan' };
const job = withBag(buildJob({ chambers: 3 }), [loose('one', { length: 0.172 })]);
const MATCH: RequestOf<'match'> = { kind: 'match', selection: SELECTION, ask: { held: [] } };
const many = manyJob({ keys: 2, cylinders: 2, chambers: 3, parts: 40, seed: 3 });
const TABLE: RequestOf<'table'> = {
  kind: 'table',
  ask: {
    cylinders: many.plans.map(({ id, cylinder }) => ({ plan: id, cylinder })),
    keys: many.keys.map(({ id }) => id),
  },
};

/** Copies what is posted as a real worker's channel does, and answers when it is let. */
class FakeWorker {
  readonly orders: MatchingOrder[] = [];
  isEnded = false;
  private readonly listeners = new Map<string, ((event: Event) => void)[]>();
  private clock = 0;
  private readonly desk = matchingDesk(
    (reply) => this.say(reply),
    () => (this.clock += 100),
  );

  postMessage(order: MatchingOrder): void {
    this.orders.push(structuredClone(order));
  }

  addEventListener(kind: string, listener: (event: Event) => void): void {
    this.listeners.set(kind, [...(this.listeners.get(kind) ?? []), listener]);
  }

  terminate(): void {
    this.isEnded = true;
  }

  work(): void {
    for (const order of this.orders.splice(0)) this.desk(order);
  }

  say(reply: MatchingReply): void {
    this.emit('message', { data: structuredClone(reply) });
  }

  emit(kind: string, more: object): void {
    const event = Object.assign(new Event(kind, { cancelable: true }), more);
    for (const listener of this.listeners.get(kind) ?? []) listener(event);
  }
}

function bench(options: { patience?: number; onStart?: () => void } = {}) {
  const workers: FakeWorker[] = [];
  const client = new MatchingClient({
    patience: options.patience ?? 60_000,
    slice: 0,
    createWorker: () => {
      options.onStart?.();
      const worker = new FakeWorker();
      workers.push(worker);
      return worker;
    },
  });
  return { client, workers };
}

describe('a worker that works', () => {
  test('answers what the model answers, the job being sent once', async () => {
    const { client, workers } = bench();
    const run = client.run(job, MATCH);
    expect(workers[0]?.orders[0]?.job).not.toBeNull();
    workers[0]?.work();
    const outcome = await run.outcome;
    expect(outcome).toMatchObject({
      type: 'done',
      answer: { match: { answer: matchParts(job, SELECTION).answer } },
    });
    void client.run(job, MATCH);
    expect(workers[0]?.orders[0]?.job).toBeNull();
    expect(workers).toHaveLength(1);
  });

  test('says how far it is', async () => {
    const { client, workers } = bench();
    const seen: MatchingProgress[] = [];
    const run = client.run(many, TABLE, { onProgress: (progress) => seen.push(progress) });
    workers[0]?.work();
    expect(await run.outcome).toEqual({ type: 'done', answer: runToEnd(pairTable(many, TABLE.ask)) });
    // two cylinders laid out, four pairs
    expect(seen.at(-1)).toEqual({ done: 6, of: 6 });
    expect(seen.map(({ done }) => done)).toEqual([...seen.map(({ done }) => done)].sort((a, b) => a - b));
  });

  test('one order after the other', async () => {
    const { client, workers } = bench();
    const runs = [client.run(job, MATCH), client.run(many, TABLE)];
    expect(workers[0]?.orders).toHaveLength(1);
    workers[0]?.work();
    await runs[0]?.outcome;
    expect(workers[0]?.orders).toMatchObject([{ request: { kind: 'table' } }]);
  });

  test('what it cannot reckon is told as a sentence, and the next order goes on', async () => {
    const { client, workers } = bench();
    const wrong = client.run(job, { ...MATCH, selection: { ...SELECTION, key: 'gone' } });
    const right = client.run(job, MATCH);
    workers[0]?.work();
    const outcome = await wrong.outcome;
    expect(outcome.type === 'failed' ? outcome.message : '').toMatch(/key gone.*Nothing was changed\.$/);
    workers[0]?.work();
    expect(await right.outcome).toMatchObject({ type: 'done' });
  });
});

describe('cancelled', () => {
  test('under way: the worker is ended, the next order gets a new one, late answers count for nothing', async () => {
    const { client, workers } = bench();
    const slow = client.run(many, TABLE);
    const next = client.run(job, MATCH);
    slow.cancel();
    expect(await slow.outcome).toEqual({ type: 'cancelled' });
    expect(workers.map(({ isEnded }) => isEnded)).toEqual([true, false]);
    workers[0]?.work();
    workers[1]?.work();
    expect(await next.outcome).toMatchObject({ type: 'done', answer: { match: { of: 3 } } });
  });

  test('still waiting: the one under way is left alone', async () => {
    const { client, workers } = bench();
    const first = client.run(job, MATCH);
    const second = client.run(many, TABLE);
    second.cancel();
    expect(await second.outcome).toEqual({ type: 'cancelled' });
    expect(workers[0]?.isEnded).toBe(false);
    workers[0]?.work();
    expect(await first.outcome).toMatchObject({ type: 'done' });
    first.cancel();
    expect(workers[0]?.isEnded).toBe(false);
  });
});

describe('without a worker', () => {
  const expectHere = async (client: MatchingClient, before: (run: unknown) => void) => {
    const said: string[] = [];
    const seen: MatchingProgress[] = [];
    const run = client.run(many, TABLE, {
      onSlower: (message) => said.push(message),
      onProgress: (progress) => seen.push(progress),
    });
    before(run);
    expect(await run.outcome).toEqual({ type: 'done', answer: runToEnd(pairTable(many, TABLE.ask)) });
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/^The worker that chooses parts is not there \(.+\)\. .*takes longer\.$/);
    // in slices: it pauses between steps, and says how far it is
    expect(seen.length).toBeGreaterThan(3);
    return said[0];
  };

  test('it cannot start', async () => {
    const { client } = bench({
      onStart: () => {
        throw new Error('workers are switched off');
      },
    });
    expect(await expectHere(client, () => undefined)).toContain('workers are switched off');
  });

  test('it breaks off in the middle', async () => {
    const { client, workers } = bench();
    await expectHere(client, () => workers[0]?.emit('error', { message: '' }));
    expect(workers[0]?.isEnded).toBe(true);
    // given up for good: nothing starts it again
    const run = client.run(job, MATCH);
    expect(await run.outcome).toMatchObject({ type: 'done' });
    expect(workers).toHaveLength(1);
  });

  test('it falls silent', async () => {
    const { client } = bench({ patience: 5 });
    expect(await expectHere(client, () => undefined)).toContain('silent');
  });

  test('cancelled on the page too', async () => {
    const { client, workers } = bench();
    const run = client.run(many, TABLE);
    workers[0]?.emit('error', { message: 'out of memory' });
    run.cancel();
    expect(await run.outcome).toEqual({ type: 'cancelled' });
  });
});
