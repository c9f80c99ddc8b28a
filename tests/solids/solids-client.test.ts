/** The client against the real session in the same thread, and against workers that fail in every way. */
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { poseAt } from '../../src/model/assembly/pose-at.ts';
import type { Assembly } from '../../src/model/assembly/assembly.ts';
import { loadManifold } from '../../src/solids/load-manifold.ts';
import { axisPlane, planeForPart } from '../../src/solids/section-plane.ts';
import { buildPartSet, placeParts } from '../../src/solids/solid-parts.ts';
import {
  type MeshWish,
  type ReadyMesh,
  SolidsClient,
  type SolidsFailure,
  type SolidsWorker,
} from '../../src/solids/solids-client.ts';
import type { SolidsReply, SolidsRequest } from '../../src/solids/solids-messages.ts';
import { SolidsSession } from '../../src/solids/solids-session.ts';
import { sampleAssembly } from '../support/sample-assembly.ts';

let library: Awaited<ReturnType<typeof loadManifold>>;

beforeAll(async () => {
  library = await loadManifold();
});

/** A worker without a thread: answers when it is told to. */
class HandWorker implements SolidsWorker {
  readonly requests: SolidsRequest[] = [];
  isTerminated = false;
  readonly #listeners = new Map<string, ((event: never) => void)[]>();
  readonly #session = new SolidsSession(library);

  addEventListener(type: string, listener: unknown): void {
    this.#listeners.set(type, [...(this.#listeners.get(type) ?? []), listener as (event: never) => void]);
  }

  postMessage(message: unknown): void {
    this.requests.push(structuredClone(message) as SolidsRequest);
  }

  terminate(): void {
    this.isTerminated = true;
  }

  say(reply: SolidsReply): void {
    this.fire('message', { data: reply });
  }

  answerLast(): void {
    this.say(this.#session.answer(this.requests.at(-1)!));
  }

  fire(type: string, event: object): void {
    for (const listener of this.#listeners.get(type) ?? [])
      listener({ preventDefault: () => undefined, ...event } as never);
  }
}

function wishesOf(assembly: Assembly, planeX: number): MeshWish[] {
  const places = placeParts(assembly, poseAt(assembly, { travel: 0 }));
  return buildPartSet(assembly).solids.map(({ key, recipe, recipeKey }) => ({
    partKey: key,
    recipe,
    recipeKey,
    plane: planeForPart(axisPlane('x', planeX), places.get(key)!),
  }));
}

function startClient(patience?: number) {
  const worker = new HandWorker();
  const answers: ReadonlyMap<string, ReadyMesh>[] = [];
  const failures: SolidsFailure[] = [];
  const client = new SolidsClient({
    createWorker: () => worker,
    onMeshes: (meshes) => answers.push(meshes),
    onFailure: (failure) => failures.push(failure),
    ...(patience === undefined ? {} : { patience }),
  });
  return { worker, client, answers, failures };
}

describe('a client asks', () => {
  test('for every different mesh once, and gives one to every part', () => {
    const { worker, client, answers } = startClient();
    const wishes = wishesOf(sampleAssembly(), 0);
    client.want(wishes);
    worker.answerLast();
    expect(answers).toHaveLength(1);
    expect([...answers[0]!.keys()]).toEqual(wishes.map(({ partKey }) => partKey));
    const keys = worker.requests[0]!.orders.map(({ meshKey }) => meshKey);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys.length).toBeLessThan(wishes.length);
  });

  test('after an edit only for what changed, and says nothing twice', () => {
    const { worker, client } = startClient();
    const before = sampleAssembly();
    client.want(wishesOf(before, 0));
    worker.answerLast();
    const after = {
      ...before,
      stacks: before.stacks.map((stack, i) =>
        i === 0
          ? { ...stack, parts: stack.parts.map((part, k) => (k === 1 ? { ...part, length: 5.5 } : part)) }
          : stack,
      ),
    };
    client.want(wishesOf(after, 0));
    worker.answerLast();
    expect(worker.requests[1]!.orders).toHaveLength(1);
    expect(worker.requests[1]!.recipes).toHaveLength(1);
    // Moving the plane asks for cuts, not for recipes.
    client.want(wishesOf(after, 0.4));
    worker.answerLast();
    expect(worker.requests[2]!.recipes).toHaveLength(0);
    expect(client.madeCount).toBe(worker.requests[0]!.recipes.length + 1);
  });

  test('nothing when it holds everything', () => {
    const { worker, client, answers } = startClient();
    client.want(wishesOf(sampleAssembly(), 0));
    worker.answerLast();
    client.want(wishesOf(sampleAssembly(), 0));
    expect(worker.requests).toHaveLength(1);
    expect(answers).toHaveLength(2);
  });

  test('for the newest wish only, when many come while one is under way', () => {
    const { worker, client, answers } = startClient();
    for (const planeX of [0, 0.1, 0.2, 0.3]) client.want(wishesOf(sampleAssembly(), planeX));
    expect(worker.requests).toHaveLength(1);
    worker.answerLast();
    expect(worker.requests).toHaveLength(2);
    expect(worker.requests[1]!.orders.every(({ plane }) => Math.abs(plane!.offset) === 0.3)).toBe(true);
    worker.answerLast();
    expect(answers).toHaveLength(2);
  });

  test('again for a solid that was dropped and comes back', () => {
    const { worker, client, answers } = startClient();
    const whole = wishesOf(sampleAssembly(), 0);
    client.want(whole);
    worker.answerLast();
    client.want(whole.slice(0, 2));
    // What is not wanted any more is told to the worker with the next thing it is asked for.
    client.want([...wishesOf(sampleAssembly(), 0.1)].slice(0, 2));
    worker.answerLast();
    client.want(whole);
    worker.answerLast();
    expect(answers.at(-1)!.size).toBe(whole.length);
  });
});

describe('a client fails once, with a sentence, when', () => {
  test.each([
    [
      'the library does not start',
      (worker: HandWorker) => worker.say({ kind: 'failed', stage: 'start', reason: 'refused by the policy' }),
      'start',
      /refused by the policy.*drawing shows the same section/,
    ],
    [
      'the script does not load',
      (worker: HandWorker) => worker.fire('error', { message: '' }),
      'start',
      /did not load/,
    ],
    [
      'a solid cannot be made',
      (worker: HandWorker) => worker.say({ kind: 'failed', stage: 'solids', reason: 'NotManifold' }),
      'solids',
      /NotManifold/,
    ],
    [
      'an answer cannot be read',
      (worker: HandWorker) => worker.fire('messageerror', {}),
      'solids',
      /could not be read/,
    ],
  ] as const)('%s', (_, bringAbout, stage, sentence) => {
    const { worker, client, failures, answers } = startClient();
    client.want(wishesOf(sampleAssembly(), 0));
    bringAbout(worker);
    bringAbout(worker);
    expect(failures).toHaveLength(1);
    expect(failures[0]!.stage).toBe(stage);
    expect(failures[0]!.sentence).toMatch(sentence);
    expect(worker.isTerminated).toBe(true);
    // Nothing is asked of a worker that failed.
    client.want(wishesOf(sampleAssembly(), 0.5));
    expect(worker.requests).toHaveLength(1);
    expect(answers).toHaveLength(0);
  });

  test('the worker was killed and stays silent', () => {
    vi.useFakeTimers();
    try {
      const { worker, client, failures } = startClient(5000);
      client.want(wishesOf(sampleAssembly(), 0));
      vi.advanceTimersByTime(4999);
      expect(failures).toEqual([]);
      vi.advanceTimersByTime(2);
      expect(failures.map(({ stage }) => stage)).toEqual(['silent']);
      expect(worker.isTerminated).toBe(true);
    } finally {
      vi.useRealTimers();
    }
  });

  test('the page does not let it create the worker', async () => {
    const failures: SolidsFailure[] = [];
    const client = new SolidsClient({
      createWorker: () => {
        throw new Error('blocked');
      },
      onMeshes: () => undefined,
      onFailure: (failure) => failures.push(failure),
    });
    client.want(wishesOf(sampleAssembly(), 0));
    await Promise.resolve();
    expect(failures).toHaveLength(1);
    expect(failures[0]!.sentence).toMatch(/blocked/);
  });
});

test('a client that was disposed of says nothing more', () => {
  const { worker, client, answers, failures } = startClient();
  client.want(wishesOf(sampleAssembly(), 0));
  client.dispose();
  worker.answerLast();
  worker.fire('error', { message: 'late' });
  expect(answers).toEqual([]);
  expect(failures).toEqual([]);
});
