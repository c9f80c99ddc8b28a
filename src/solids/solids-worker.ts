/** The worker that makes the solids: loads manifold-3d, then answers one request after the other. */
import wasmUrl from 'manifold-3d/manifold.wasm?url';
import { loadManifold } from './load-manifold.ts';
import { transferables } from './mesh-buffers.ts';
import type { FileReply, FileRequest, SolidsReply, SolidsRequest } from './solids-messages.ts';
import { SolidsSession } from './solids-session.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;

const library = loadManifold(new URL(wasmUrl, scope.location.href).href);
const session = library.then(
  (loaded) => {
    say({ kind: 'ready' });
    return new SolidsSession(loaded);
  },
  (reason: unknown) => {
    say({ kind: 'failed', stage: 'start', reason: textOf(reason) });
    return null;
  },
);

scope.addEventListener('message', ({ data }: MessageEvent<SolidsRequest | FileRequest>) => {
  void session.then(async (running) => {
    if (running === null) return;
    try {
      if (data.kind !== 'make') {
        const { answerFile } = await import('./print/answer-file.ts');
        const reply = answerFile(await library, data);
        say(reply, [reply.bytes.buffer]);
        return;
      }
      const reply = running.answer(data);
      say(
        reply,
        reply.meshes.flatMap(({ buffers }) => transferables(buffers)),
      );
    } catch (reason) {
      say({ kind: 'failed', stage: 'solids', reason: textOf(reason) });
    }
  });
});

function say(reply: SolidsReply | FileReply, transfer: Transferable[] = []): void {
  scope.postMessage(reply, transfer);
}

function textOf(reason: unknown): string {
  return reason instanceof Error ? reason.message : String(reason);
}
