/**
 * The page's side of the worker that makes the solids. Asks only for what it does not hold; while a request is under way
 * the newest one waits and older ones are dropped. A worker that cannot start, fails or stays silent ends in one failure
 * with a sentence, and nothing is asked of it again.
 */
import type { MeshBuffers } from './mesh-buffers.ts';
import type { Recipe } from './recipe.ts';
import { planeKey, type SectionPlane } from './section-plane.ts';
import type { SolidsReply, SolidsRequest } from './solids-messages.ts';

/** A part's mesh as the view wants it now. */
export type MeshWish = {
  readonly partKey: string;
  readonly recipe: Recipe;
  readonly recipeKey: string;
  /** In the part's frame. */
  readonly plane: SectionPlane | null;
};

export type ReadyMesh = { readonly meshKey: string; readonly buffers: MeshBuffers };

export type SolidsFailure = {
  readonly stage: 'start' | 'solids' | 'silent';
  readonly sentence: string;
};

/** What a worker must offer; the real one, or a stand-in for tests. */
export type SolidsWorker = Pick<Worker, 'postMessage' | 'terminate' | 'addEventListener'>;

export type SolidsClientOptions = {
  readonly createWorker: () => SolidsWorker;
  /** Called with the mesh of each part, all of one wish list together. */
  readonly onMeshes: (meshes: ReadonlyMap<string, ReadyMesh>) => void;
  readonly onFailure: (failure: SolidsFailure) => void;
  /** ms a request may take before the worker counts as gone. */
  readonly patience?: number;
};

/** ms. Twenty times the slowest first build seen in software rendering on two busy cores. */
const PATIENCE = 20_000;

export class SolidsClient {
  readonly #options: SolidsClientOptions;
  readonly #worker: SolidsWorker | null;
  readonly #known = new Set<string>();
  #held = new Map<string, MeshBuffers>();
  #underWay: readonly MeshWish[] | null = null;
  #waiting: readonly MeshWish[] | null = null;
  #request = 0;
  #madeCount = 0;
  #timer: ReturnType<typeof setTimeout> | null = null;
  #isOver = false;

  constructor(options: SolidsClientOptions) {
    this.#options = options;
    this.#worker = this.#start();
  }

  /** Solids made anew so far, as the worker counts them. */
  get madeCount(): number {
    return this.#madeCount;
  }

  /** Asks for the meshes of all parts. What is held already is given at once if nothing else is missing. */
  want(wishes: readonly MeshWish[]): void {
    if (this.#isOver) return;
    if (this.#underWay !== null) {
      this.#waiting = wishes;
      return;
    }
    const missing = wishes.filter((wish) => !this.#held.has(meshKeyOf(wish)));
    if (missing.length === 0) this.#deliver(wishes);
    else this.#ask(wishes, missing);
  }

  dispose(): void {
    this.#isOver = true;
    this.#stopTimer();
    this.#worker?.terminate();
    this.#held.clear();
  }

  #start(): SolidsWorker | null {
    try {
      const worker = this.#options.createWorker();
      worker.addEventListener('message', (event) => this.#take((event as MessageEvent<SolidsReply>).data));
      worker.addEventListener('error', (event) => {
        event.preventDefault();
        this.#fail('start', event.message || 'its script did not load');
      });
      worker.addEventListener('messageerror', () => this.#fail('solids', 'an answer could not be read'));
      return worker;
    } catch (reason) {
      // Listeners of the caller are not ready inside its own constructor call.
      queueMicrotask(() => this.#fail('start', reason instanceof Error ? reason.message : String(reason)));
      return null;
    }
  }

  #ask(wishes: readonly MeshWish[], missing: readonly MeshWish[]): void {
    this.#request += 1;
    this.#underWay = wishes;
    const orders = new Map(missing.map((wish) => [meshKeyOf(wish), wish]));
    const fresh = new Map(missing.map((wish) => [wish.recipeKey, wish.recipe]));
    for (const key of fresh.keys()) if (this.#known.has(key)) fresh.delete(key);
    const keep = new Set(wishes.map((wish) => wish.recipeKey));
    for (const key of this.#known) if (!keep.has(key)) this.#known.delete(key);
    for (const key of fresh.keys()) this.#known.add(key);
    const request: SolidsRequest = {
      kind: 'make',
      request: this.#request,
      orders: [...orders].map(([meshKey, { recipeKey, plane }]) => ({ meshKey, recipeKey, plane })),
      recipes: [...fresh].map(([recipeKey, recipe]) => ({ recipeKey, recipe })),
      keep: [...keep],
    };
    this.#startTimer();
    this.#worker?.postMessage(request);
  }

  #take(reply: SolidsReply): void {
    if (this.#isOver) return;
    if (reply.kind === 'failed') {
      this.#fail(reply.stage, reply.reason);
      return;
    }
    if (this.#underWay !== null) this.#startTimer();
    if (reply.kind === 'ready' || reply.request !== this.#request) return;
    this.#stopTimer();
    this.#madeCount = reply.madeCount;
    for (const { meshKey, buffers } of reply.meshes) this.#held.set(meshKey, buffers);
    const answered = this.#underWay;
    const waiting = this.#waiting;
    this.#underWay = null;
    this.#waiting = null;
    if (answered) this.#deliver(answered);
    if (waiting) this.want(waiting);
  }

  #deliver(wishes: readonly MeshWish[]): void {
    const held = new Map<string, MeshBuffers>();
    const ready = new Map<string, ReadyMesh>();
    for (const wish of wishes) {
      const meshKey = meshKeyOf(wish);
      const buffers = this.#held.get(meshKey);
      if (!buffers) continue;
      held.set(meshKey, buffers);
      ready.set(wish.partKey, { meshKey, buffers });
    }
    // Only what is shown is kept: the plane may be moved through thousands of cuts.
    this.#held = held;
    this.#options.onMeshes(ready);
  }

  #fail(stage: SolidsFailure['stage'], reason: string): void {
    if (this.#isOver) return;
    this.dispose();
    this.#options.onFailure({ stage, sentence: SENTENCES[stage](reason) });
  }

  #startTimer(): void {
    this.#stopTimer();
    const patience = this.#options.patience ?? PATIENCE;
    this.#timer = setTimeout(() => this.#fail('silent', `${patience} ms`), patience);
  }

  #stopTimer(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
  }
}

const SENTENCES: Readonly<Record<SolidsFailure['stage'], (reason: string) => string>> = {
  start: (reason) =>
    `The solid view could not start (${reason}). The drawing shows the same section with the same numbers.`,
  solids: (reason) =>
    `The solids could not be made from these numbers (${reason}). The drawing shows the same section.`,
  silent: () =>
    'The solid view stopped answering. The drawing shows the same section; load the page again to try the solids once more.',
};

function meshKeyOf({ recipeKey, plane }: MeshWish): string {
  return `${recipeKey} | ${planeKey(plane)}`;
}
