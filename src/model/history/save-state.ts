/**
 * Where the job's saving stands, as told in the one line "where is my work". Told by what saves (src/persist), kept by the
 * document store (src/state): both know the model only, so the words they share live here. No lengths here.
 */

/** Why a save did not happen. */
export type SaveTrouble =
  /** The browser has no room left for this page. */
  | 'full'
  /** The browser lets this page keep nothing (private window, settings). */
  | 'denied'
  /** What was read back is not what was written. */
  | 'not verified'
  /** Another tab or a newer version holds the storage. */
  | 'closed'
  | 'other';

export type SaveState =
  /** Nothing has been asked to be kept yet. */
  | { readonly kind: 'not kept' }
  | { readonly kind: 'saving' }
  /** Written, read back and found the same. */
  | { readonly kind: 'saved'; readonly revision: number; readonly at: string }
  /** Somebody else wrote a revision that was never seen here; nothing was overwritten. */
  | { readonly kind: 'conflict'; readonly found: number; readonly message: string }
  | { readonly kind: 'failed'; readonly trouble: SaveTrouble; readonly message: string };

export const NOT_KEPT: SaveState = { kind: 'not kept' };
