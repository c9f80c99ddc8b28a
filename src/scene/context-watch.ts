/**
 * The graphics card can take the picture away at any time (another program, sleep, a driver that starts anew). Usually it
 * gives it back; when it does not, or keeps taking it, the view gives up and says so.
 */
export type ContextWatchOptions = {
  readonly onLost: () => void;
  readonly onRestored: () => void;
  readonly onGivenUp: () => void;
  /** ms to wait for the picture to come back. */
  readonly patience?: number;
};

/** ms. A driver that starts anew takes two or three seconds. */
const PATIENCE = 10_000;
/** This many losses within this many ms: the picture would only come and go. */
const TOO_MANY = { losses: 2, within: 60_000 } as const;

/** Listens on a canvas; gives the way to stop. */
export function watchContext(canvas: HTMLCanvasElement, options: ContextWatchOptions): () => void {
  const losses: number[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;
  const lost = (event: Event): void => {
    // Without this the browser never gives the context back.
    event.preventDefault();
    losses.push(event.timeStamp);
    const recent = losses.filter((at) => event.timeStamp - at < TOO_MANY.within).length;
    if (recent >= TOO_MANY.losses) {
      options.onGivenUp();
      return;
    }
    options.onLost();
    timer = setTimeout(options.onGivenUp, options.patience ?? PATIENCE);
  };
  const restored = (): void => {
    clearTimeout(timer);
    options.onRestored();
  };
  canvas.addEventListener('webglcontextlost', lost);
  canvas.addEventListener('webglcontextrestored', restored);
  return () => {
    clearTimeout(timer);
    canvas.removeEventListener('webglcontextlost', lost);
    canvas.removeEventListener('webglcontextrestored', restored);
  };
}
