/** The worker that locks and opens with a passphrase: one order, one answer. */
import { passphraseLock, type Unlocked } from '../persist/locked/passphrase-lock.ts';

export type LockOrder = {
  readonly kind: 'seal' | 'open';
  readonly bytes: Uint8Array;
  readonly passphrase: string;
};
export type LockReply =
  | { readonly kind: 'sealed'; readonly bytes: Uint8Array }
  | { readonly kind: 'opened'; readonly result: Unlocked }
  /** For want of memory, perhaps: the page tries it itself. */
  | { readonly kind: 'failed' };

const scope = self as unknown as DedicatedWorkerGlobalScope;
const lock = passphraseLock();

scope.addEventListener('message', (event) => {
  const { kind, bytes, passphrase } = (event as MessageEvent<LockOrder>).data;
  const answer = async (): Promise<LockReply> =>
    kind === 'seal'
      ? { kind: 'sealed', bytes: await lock.seal(bytes, passphrase) }
      : { kind: 'opened', result: await lock.open(bytes, passphrase) };
  void answer()
    .catch((): LockReply => ({ kind: 'failed' }))
    .then((reply) => scope.postMessage(reply));
});
