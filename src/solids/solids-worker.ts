/** The worker that makes the solids: loads manifold-3d, then answers one request after the other. */
import wasmUrl from 'manifold-3d/manifold.wasm?url';
import { loadManifold } from './load-manifold.ts';
import { transferables } from './mesh-buffers.ts';
import type { SolidsReply, SolidsRequest } from './solids-messages.ts';
import { SolidsSession } from './solids-session.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;

const session = loadManifold(new URL(wasmUrl, scope.location.href).href).then(
  (library) => {
    say({ kind: 'ready' });
    return new SolidsSession(library);
  },
  (reason: unknown) => {
    say({ kind: 'failed', stage: 'start', reason: textOf(reason) });
    return null;
  },
);

scope.addEventListener('message', (event: MessageEvent<SolidsRequest>) => {
  void session.then((running) => {
    if (running === null) return;
    try {
      const reply = running.answer(event.data);
      say(
        reply,
        reply.meshes.flatMap(({ buffers }) => transferables(buffers)),
      );
    } catch (reason) {
      say({ kind: 'failed', stage: 'solids', reason: textOf(reason) });
    }
  });
});

function say(reply: SolidsReply, transfer: Transferable[] = []): void {
  scope.postMessage(reply, transfer);
}

function textOf(reason: unknown): string {
  return reason instanceof Error ? reason.message : String(reason);
}
