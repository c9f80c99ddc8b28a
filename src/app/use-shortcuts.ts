import { useEffect } from 'react';
import type { Workshop } from './create-workshop.ts';

/** Ctrl+Z and Ctrl+Shift+Z everywhere but inside a text that is being written, where they are the browser's. */
export function useShortcuts({ document: store, preferences }: Workshop): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const isUndoKey = (event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === 'z';
      const isRedoKey = event.ctrlKey && !event.altKey && event.key.toLowerCase() === 'y';
      if (!isUndoKey && !isRedoKey) return;
      if (preferences.getState().shortcuts === 'off' || isBeingWritten(event.target)) return;
      event.preventDefault();
      const { undo, redo } = store.getState();
      if (isRedoKey || event.shiftKey) redo();
      else undo();
    };
    document.addEventListener('keydown', onKeyDown);
    return () => document.removeEventListener('keydown', onKeyDown);
  }, [store, preferences]);
}

/** A field whose text is not stored yet: undo there takes back what was typed. */
function isBeingWritten(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement && target.dataset['dirty'] === 'true';
}
