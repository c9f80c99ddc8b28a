/** Starts manifold-3d once. In the browser the caller gives the address of the WASM file; under Node it finds it itself. */
import createModule, { type ManifoldToplevel } from 'manifold-3d';

let loading: Promise<ManifoldToplevel> | null = null;

/** Gives the library, ready to use; a failed start is tried again by the next call. */
export function loadManifold(wasmUrl?: string): Promise<ManifoldToplevel> {
  loading ??= start(wasmUrl).catch((reason: unknown) => {
    loading = null;
    throw reason;
  });
  return loading;
}

async function start(wasmUrl: string | undefined): Promise<ManifoldToplevel> {
  const library = await (wasmUrl === undefined
    ? createModule()
    : createModule({ locateFile: () => wasmUrl }));
  library.setup();
  return library;
}
