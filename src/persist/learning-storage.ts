/**
 * Where a learner's own things are kept: in `localStorage`, apart from preferences and from every job. Nothing of it leaves
 * the device unless its owner saves it as a file.
 */

/** !!! DO NOT CHANGE: what learners predicted lies under it. */
const KEY = 'shearsight-learning';

type KeyStorage = Pick<Storage, 'getItem' | 'setItem'>;

/** Reads what was kept, as unknown data; null when there is nothing that can be read. */
export function loadLearning(storage: KeyStorage | null = browserStorage()): unknown {
  try {
    const text = storage?.getItem(KEY) ?? null;
    return text === null ? null : (JSON.parse(text) as unknown);
  } catch {
    return null;
  }
}

/** Keeps it; false when the browser refuses. */
export function keepLearning(learning: object, storage: KeyStorage | null = browserStorage()): boolean {
  try {
    storage?.setItem(KEY, JSON.stringify(learning));
    return storage !== null;
  } catch {
    return false;
  }
}

/** Tells when another tab has changed it. */
export function watchLearning(listener: (kept: unknown) => void): void {
  window.addEventListener('storage', ({ key }) => {
    if (key === KEY) listener(loadLearning());
  });
}

/** Even looking at it may throw where a setting forbids it. */
function browserStorage(): KeyStorage | null {
  try {
    return typeof window === 'undefined' ? null : window.localStorage;
  } catch {
    return null;
  }
}
