/** Waits until the page has nothing more urgent to do, or has had some time to. */
export function pageHasTime(): Promise<void> {
  return new Promise((resolve) => {
    if ('requestIdleCallback' in window) requestIdleCallback(() => resolve(), { timeout: 1500 });
    else setTimeout(resolve, 200);
  });
}

/** Ends a piece of work, so that what waits gets in between: a press, a scroll, a picture. */
export function breath(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve);
  });
}
