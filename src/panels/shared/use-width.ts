import { type RefCallback, useCallback, useState } from 'react';

/** The width an element has, px; 0 until it is known. Steps of a whole pixel, so that nothing is drawn anew for less. */
export function useWidth<T extends HTMLElement>(): [RefCallback<T>, number] {
  const [width, setWidth] = useState(0);
  const watch = useCallback((watched: T | null) => {
    if (watched === null) return undefined;
    const measure = () => setWidth(Math.floor(watched.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(watched);
    return () => observer.disconnect();
  }, []);
  return [watch, width];
}

/** A width in the page's text sizes, so that larger text counts as less room. */
export function inRem(px: number): number {
  return px / Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
}
