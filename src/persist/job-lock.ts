/**
 * One writer for each job across tabs and windows, by Web Locks. Another tab can take a job over: the one that has it is
 * asked to finish saving and let go, and if it does not answer in time it is cut off. Where the browser has no locks
 * (an insecure address) every tab may write; the save queue still never overwrites what it has not seen.
 */

export type JobLock = {
  /** Mine: this tab may write. Elsewhere: another one does. Unguarded: the browser cannot tell. */
  readonly kind: 'mine' | 'elsewhere' | 'unguarded';
  /** Lets another tab have it, or this one anew; resolves when it can be had. */
  readonly release: () => Promise<unknown>;
  /** Takes the job over from the tab that has it; resolves with the new lock. */
  readonly takeOver: () => Promise<JobLock>;
};

export type JobLockOptions = {
  /** Finish what is being written: another tab takes this job over. Writing must have ended when it resolves. */
  readonly onAsked: () => Promise<unknown>;
  /** The lock is gone; the message is for the person. */
  readonly onLost: (message: string) => void;
  /** Null where the browser has none. */
  readonly locks?: Pick<LockManager, 'request'> | null;
  readonly openChannel?: () => LockChannel | null;
  /** How long the tab that has the job may take to let go. */
  readonly patienceMs?: number;
};

/** What tabs talk over. */
export type LockChannel = {
  readonly postMessage: (message: unknown) => void;
  readonly addEventListener: (type: 'message', listener: (event: { readonly data: unknown }) => void) => void;
  readonly close: () => void;
};

export const TAKEN_OVER =
  'Another tab took this job over. Here it can be looked at, not changed; take it back to go on here.';

/** Enough for a slow disk to finish one write. */
const PATIENCE_MS = 3000;

/** Takes the job's lock if no other tab has it. */
export async function lockJob(id: string, options: JobLockOptions): Promise<JobLock> {
  const locks = options.locks === undefined ? browserLocks() : options.locks;
  if (locks === null) {
    const unguarded: JobLock = {
      kind: 'unguarded',
      release: () => Promise.resolve(),
      takeOver: () => Promise.resolve(unguarded),
    };
    return unguarded;
  }
  return request(id, { ...options, locks }, { ifAvailable: true });
}

type Guarded = JobLockOptions & { readonly locks: Pick<LockManager, 'request'> };

/** Asks for the lock once; resolves as soon as it is known who has it. */
function request(id: string, options: Guarded, how: LockOptions): Promise<JobLock> {
  return new Promise((resolve, reject) => {
    let letGo: () => void = () => undefined;
    let over: Promise<unknown> = Promise.resolve();
    let isMine = false;
    const lose = () => {
      if (isMine) options.onLost(TAKEN_OVER);
      isMine = false;
    };
    const held = (granted: Lock | null): Promise<void> | undefined => {
      if (granted === null) {
        resolve(elsewhere(id, options));
        return undefined;
      }
      isMine = true;
      const ends = new Promise<void>((end) => {
        letGo = end;
      });
      const channel = listen(id, options, () => {
        lose();
        letGo();
      });
      const release = () => {
        letGo();
        return over;
      };
      const lock: JobLock = { kind: 'mine', release, takeOver: () => Promise.resolve(lock) };
      resolve(lock);
      return ends.finally(() => channel?.close());
    };
    over = options.locks.request(lockName(id), how, held).catch((error: unknown) => {
      // Once held, the only way to fail is that another tab stole it.
      if (!isMine) reject(error instanceof Error ? error : new Error(String(error)));
      lose();
      letGo();
    });
  });
}

/** Answers a tab that wants the job: finishes what is being written, then lets go. */
function listen(id: string, options: Guarded, letGo: () => void): LockChannel | null {
  const channel = (options.openChannel ?? browserChannel)();
  channel?.addEventListener('message', ({ data }) => {
    if (!isAsking(data, id)) return;
    options.onAsked().then(letGo, letGo);
  });
  return channel;
}

function elsewhere(id: string, options: Guarded): JobLock {
  return { kind: 'elsewhere', release: () => Promise.resolve(), takeOver: () => takeOver(id, options) };
}

async function takeOver(id: string, options: Guarded): Promise<JobLock> {
  const channel = (options.openChannel ?? browserChannel)();
  channel?.postMessage({ kind: ASKING, id });
  const patience = new AbortController();
  const timer = setTimeout(() => patience.abort(), options.patienceMs ?? PATIENCE_MS);
  try {
    return await request(id, options, { signal: patience.signal });
  } catch (error) {
    if (!patience.signal.aborted) throw error;
    return await request(id, options, { steal: true });
  } finally {
    clearTimeout(timer);
    channel?.close();
  }
}

/** !!! Tabs of different versions talk and lock by these names: DO NOT CHANGE them. */
const ASKING = 'shearsight: let go of job';
const CHANNEL = 'shearsight-locks';
function lockName(id: string): string {
  return `shearsight-job-${id}`;
}

function isAsking(data: unknown, id: string): boolean {
  if (typeof data !== 'object' || data === null) return false;
  const { kind, id: asked } = data as { kind?: unknown; id?: unknown };
  return kind === ASKING && asked === id;
}

function browserLocks(): Pick<LockManager, 'request'> | null {
  return typeof navigator !== 'undefined' && 'locks' in navigator ? navigator.locks : null;
}

function browserChannel(): LockChannel | null {
  return typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(CHANNEL);
}
