/**
 * Keeps a document saved: whatever is committed goes to the save queue at once, and what is left is pushed on when the page
 * hides. Knows of the document only what is written here, so that it serves any store of that shape.
 */
import type { History } from '../model/history/history.ts';
import type { SaveQueue } from './save-queue.ts';

/** A store that holds a history and tells when it may have changed. */
export type HistorySource = {
  readonly getState: () => { readonly history: History };
  readonly subscribe: (listener: () => void) => () => void;
};

/** The page, as far as hiding goes; the document in a browser. */
export type HidingPage = {
  readonly visibilityState: string;
  readonly addEventListener: (type: 'visibilitychange', listener: () => void) => void;
  readonly removeEventListener: (type: 'visibilitychange', listener: () => void) => void;
};

export type AutosaveOptions = {
  readonly source: HistorySource;
  readonly queue: SaveQueue;
  readonly page?: HidingPage;
  /** Save what is there already, without waiting for the first step: for a job that came from a file. */
  readonly fromNow?: boolean;
};

/**
 * Starts saving; the result ends it. A running gesture is not saved, its commit is. Steps made while a stored job was
 * being opened are saved at once.
 */
export function startAutosave({ source, queue, page, fromNow = false }: AutosaveOptions): () => void {
  let last = source.getState().history;
  if (fromNow || queue.misses(last)) queue.offer(last);
  const end = source.subscribe(() => {
    const { history } = source.getState();
    const isSame = history.entries === last.entries && history.present === last.present;
    last = history;
    if (!isSame) queue.offer(history);
  });
  // Hiding may be the last that is heard of a page; showing again is a good moment for what failed while it was hidden.
  const onVisibility = () => void queue.retry();
  page?.addEventListener('visibilitychange', onVisibility);
  return () => {
    end();
    page?.removeEventListener('visibilitychange', onVisibility);
  };
}
