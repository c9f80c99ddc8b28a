/** px. How high the window is, kept up to date. */
import { useSyncExternalStore } from 'react';

/** Read once and when it changes: every reading makes the browser lay out the page first. */
let height: number | null = null;

function readHeight(): number {
  if (height !== null) return height;
  // Before every other listener there is, and for good: whoever asks later finds it right.
  window.addEventListener('resize', () => {
    height = window.innerHeight;
  });
  height = window.innerHeight;
  return height;
}

export function useWindowHeight(): number {
  return useSyncExternalStore((onChange) => {
    window.addEventListener('resize', onChange);
    return () => window.removeEventListener('resize', onChange);
  }, readHeight);
}
