/** px. How high the window is, kept up to date. */
import { useSyncExternalStore } from 'react';

export function useWindowHeight(): number {
  return useSyncExternalStore(
    (onChange) => {
      window.addEventListener('resize', onChange);
      return () => window.removeEventListener('resize', onChange);
    },
    () => window.innerHeight,
  );
}
