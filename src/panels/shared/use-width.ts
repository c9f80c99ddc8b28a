import { type RefCallback, useCallback, useState } from 'react';

/**
 * The width an element has, px; 0, or what it probably is, until it is known. Steps of a whole pixel, so that nothing is drawn
 * anew for less.
 */
export function useWidth<T extends HTMLElement>(probably = 0): [RefCallback<T>, number] {
  const [width, setWidth] = useState(probably);
  const [isGuessed] = useState(probably > 0);
  const watch = useCallback(
    (watched: T | null) => {
      if (watched === null) return undefined;
      const measure = () => setWidth(Math.floor(watched.clientWidth));
      // Asked at once the browser lays out the page in the middle of the work; the observer asks when that is done anyway.
      if (!isGuessed) measure();
      const observer = new ResizeObserver(measure);
      observer.observe(watched);
      return () => observer.disconnect();
    },
    [isGuessed],
  );
  return [watch, width];
}

/** A width in the page's text sizes, so that larger text counts as less room. */
export function inRem(px: number): number {
  return px / Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
}
