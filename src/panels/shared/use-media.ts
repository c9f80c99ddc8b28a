import { useSyncExternalStore } from 'react';

/** Whether a media query holds, and again when that changes. */
export function useMedia(query: string): boolean {
  return useSyncExternalStore(
    (onChange) => {
      const list = window.matchMedia(query);
      list.addEventListener('change', onChange);
      return () => list.removeEventListener('change', onChange);
    },
    () => window.matchMedia(query).matches,
  );
}

/** Section and station one under the other. The same widths as in the style sheets. */
export const ONE_COLUMN = '(max-width: 67.99rem)';
/** A phone, or very large text. */
export const ONE_HAND = '(max-width: 37.99rem)';
