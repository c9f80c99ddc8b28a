/**
 * Web Locks and a channel between tabs, in memory: exclusive locks only, first come first served, with `ifAvailable`,
 * `steal` and `signal` as the W3C Web Locks API describes them.
 */
import type { LockChannel } from '../../src/persist/job-lock.ts';

type Held = { readonly steal: (reason: DOMException) => void; readonly done: Promise<void> };

export class FakeLocks {
  private readonly held = new Map<string, Held>();

  request = (async (name: string, options: LockOptions, callback: (lock: Lock | null) => unknown) => {
    const lock: Lock = { name, mode: 'exclusive' };
    if (options.steal === true) this.held.get(name)?.steal(new DOMException('stolen', 'AbortError'));
    else if (options.ifAvailable === true && this.held.has(name)) return callback(null);
    else while (this.held.has(name)) await this.turn(name, options.signal);

    let steal: Held['steal'] = () => undefined;
    const stolen = new Promise<never>((_, reject) => {
      steal = reject;
    });
    stolen.catch(() => undefined);
    let end: () => void = () => undefined;
    const mine: Held = { steal, done: new Promise((resolve) => (end = resolve)) };
    this.held.set(name, mine);
    try {
      return await Promise.race([stolen, Promise.resolve(callback(lock))]);
    } finally {
      if (this.held.get(name) === mine) this.held.delete(name);
      end();
    }
  }) as LockManager['request'];

  private async turn(name: string, signal: AbortSignal | undefined): Promise<void> {
    const aborted = new Promise<never>((_, reject) => {
      signal?.addEventListener('abort', () => reject(new DOMException('aborted', 'AbortError')));
    });
    aborted.catch(() => undefined);
    await Promise.race([this.held.get(name)?.done, aborted]);
  }
}

/** A channel on which every tab hears the others, never itself. */
export class FakeChannels {
  private readonly tabs = new Set<{ hear: (data: unknown) => void }>();

  open = (): LockChannel => {
    const listeners: ((event: { readonly data: unknown }) => void)[] = [];
    const tab = { hear: (data: unknown) => listeners.forEach((listener) => listener({ data })) };
    this.tabs.add(tab);
    return {
      postMessage: (data) => {
        for (const other of this.tabs) if (other !== tab) queueMicrotask(() => other.hear(data));
      },
      addEventListener: (_, listener) => void listeners.push(listener),
      close: () => void this.tabs.delete(tab),
    };
  };

  get openCount(): number {
    return this.tabs.size;
  }
}
