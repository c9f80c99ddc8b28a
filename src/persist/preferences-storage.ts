/**
 * Where preferences are kept: in `localStorage`, because the theme and the unit are needed before the first picture, when
 * nothing that loads slowly may be waited for. A browser that refuses leaves everybody with the defaults.
 */

/** !!! DO NOT CHANGE: people's preferences lie under it. */
const KEY = 'shearsight-preferences';

type KeyStorage = Pick<Storage, 'getItem' | 'setItem'>;

/** Reads what was kept, as unknown data; null when there is nothing that can be read. */
export function loadPreferences(storage: KeyStorage | null = browserStorage()): unknown {
  try {
    const text = storage?.getItem(KEY) ?? null;
    return text === null ? null : (JSON.parse(text) as unknown);
  } catch {
    return null;
  }
}

/** Keeps preferences; false when the browser refuses, which is no reason to disturb anybody. */
export function keepPreferences(preferences: object, storage: KeyStorage | null = browserStorage()): boolean {
  try {
    storage?.setItem(KEY, JSON.stringify(preferences));
    return storage !== null;
  } catch {
    return false;
  }
}

/** Tells when another tab has changed them; the result ends it. */
export function watchPreferences(listener: (kept: unknown) => void): () => void {
  const onStorage = (event: StorageEvent) => {
    if (event.key === KEY) listener(loadPreferences());
  };
  window.addEventListener('storage', onStorage);
  return () => window.removeEventListener('storage', onStorage);
}

/** Even looking at it may throw where a setting forbids it. */
function browserStorage(): KeyStorage | null {
  try {
    return typeof window === 'undefined' ? null : window.localStorage;
  } catch {
    return null;
  }
}
