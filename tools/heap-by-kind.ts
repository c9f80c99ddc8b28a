/**
 * What a page's heap holds, by who made it grow: what the page keeps, and what the engine compiled for it. From a heap snapshot, which
 * the browser takes after a collection of its own. Bytes of V8's heap, in MB of 2^20.
 */
import type { CDPSession } from 'playwright-core';

export type HeapByKind = {
  /** Objects, arrays, texts, functions, numbers: what the page's own code keeps alive. */
  readonly keptMb: number;
  /** Machine code, its tables, and what the engine learnt about types. */
  readonly codeMb: number;
};

/** The engine's own kinds of node; `native` is what lies outside V8's heap (elements, textures of the browser). */
const COMPILED = new Set(['code', 'hidden', 'object shape']);
const OUTSIDE = new Set(['native', 'synthetic']);

/** The part of a heap snapshot that is read here. */
type Snapshot = {
  readonly snapshot: {
    readonly meta: {
      readonly node_fields: readonly string[];
      readonly node_types: readonly [readonly string[]];
    };
  };
  readonly nodes: readonly number[];
};

/** Takes a snapshot and sums it up. */
export async function heapByKind(session: CDPSession): Promise<HeapByKind> {
  const pieces: string[] = [];
  const take = ({ chunk }: { readonly chunk: string }) => void pieces.push(chunk);
  session.on('HeapProfiler.addHeapSnapshotChunk', take);
  await session.send('HeapProfiler.takeHeapSnapshot', { reportProgress: false });
  session.off('HeapProfiler.addHeapSnapshotChunk', take);
  return sumByKind(JSON.parse(pieces.join('')) as Snapshot);
}

function sumByKind({ snapshot, nodes }: Snapshot): HeapByKind {
  const { node_fields: fields, node_types: types } = snapshot.meta;
  const [kindAt, sizeAt] = [fields.indexOf('type'), fields.indexOf('self_size')];
  let [kept, code] = [0, 0];
  for (let i = 0; i < nodes.length; i += fields.length) {
    const kind = types[0][nodes[i + kindAt] ?? -1] ?? 'unknown';
    const size = nodes[i + sizeAt] ?? 0;
    if (COMPILED.has(kind)) code += size;
    else if (!OUTSIDE.has(kind)) kept += size;
  }
  return { keptMb: kept / 2 ** 20, codeMb: code / 2 ** 20 };
}
