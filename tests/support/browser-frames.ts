/**
 * Counts what a page does while something runs, from Chromium's own trace: frames put on screen (canvas, SVG, CSS and text caret
 * alike), animation callbacks, and the time the main thread spends in scripts.
 */
import type { Page } from 'playwright-core';

export type FrameCount = {
  /** Frames that the compositor drew, whatever caused them. */
  readonly drawnFrames: number;
  /** Frames in which a script had asked for an animation callback. */
  readonly animationFrames: number;
  /** Processor time in scripts on the main thread: callbacks, handlers, timers, promises. */
  readonly scriptMs: number;
};

type TraceEvent = {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds. */
  readonly ts: number;
  readonly dur?: number;
  /** Processor time of the thread; the wall time `dur` grows when the machine is busy elsewhere. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
};

const categories = [
  'devtools.timeline',
  'disabled-by-default-devtools.timeline',
  'disabled-by-default-devtools.timeline.frame',
];
const scriptEvents = new Set([
  'FireAnimationFrame',
  'FunctionCall',
  'EvaluateScript',
  'v8.evaluateModule',
  'TimerFire',
  'EventDispatch',
  'RunMicrotasks',
  'FireIdleCallback',
]);

/** Only one page may be open in the browser: the trace covers all of it. */
export async function countFrames(page: Page, during: () => Promise<unknown>): Promise<FrameCount> {
  const browser = page.context().browser();
  if (browser === null) throw new Error('The page has no browser to trace.');
  await browser.startTracing(page, { categories });
  try {
    await during();
  } catch (error) {
    await browser.stopTracing();
    throw error;
  }
  const trace = JSON.parse((await browser.stopTracing()).toString('utf8')) as { traceEvents: TraceEvent[] };
  return countIn(trace.traceEvents);
}

export function countIn(events: readonly TraceEvent[]): FrameCount {
  const thread = ({ pid, tid }: TraceEvent) => `${String(pid)}/${String(tid)}`;
  const isMainName = ({ name, args }: TraceEvent) =>
    name === 'thread_name' && args?.name === 'CrRendererMain';
  const main = new Set(events.filter(isMainName).map(thread));
  const onMain = events.filter((event) => main.has(thread(event)));
  const callbacks = onMain.filter(({ name }) => name === 'FireAnimationFrame');
  const starts = onMain.filter(({ name }) => name === 'BeginMainThreadFrame').map(({ ts }) => ts);
  // A trace is not in order of time.
  starts.sort((a, b) => a - b);
  // Several callbacks may run in one frame: count the frames they fall in.
  const framesWithCallbacks = new Set(callbacks.map(({ ts }) => starts.findLast((start) => start <= ts)));
  return {
    drawnFrames: events.filter(({ name }) => name === 'DrawFrame').length,
    animationFrames: framesWithCallbacks.size,
    scriptMs: outermostMicroseconds(onMain.filter(({ name }) => scriptEvents.has(name))) / 1000,
  };
}

/** Time in events that lie in no other one: a call inside a callback is not counted twice. */
function outermostMicroseconds(events: readonly TraceEvent[]): number {
  const inOrder = [...events].sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0));
  let coveredTo = -Infinity;
  let total = 0;
  for (const { ts, dur = 0, tdur } of inOrder) {
    if (ts < coveredTo) continue;
    coveredTo = ts + dur;
    total += tdur ?? dur;
  }
  return total;
}
