/**
 * What a benchmark is: a module bench/NAME.ts with `export const bench: Bench`. bench/run.ts runs them all, or those named,
 * and prints one table. An aim that is missed is shown, not an error: the machine may be a slow one.
 */
export type BenchRow = {
  readonly what: string;
  readonly measured: number;
  /** 'ms', '×', 'frames' … */
  readonly unit: string;
  readonly aim?: { readonly atMost: number } | { readonly atLeast: number };
  /** What it was measured against, or on. */
  readonly note?: string;
};

export type Bench = {
  readonly title: string;
  readonly run: () => Promise<readonly BenchRow[]>;
};

export function meetsAim({ measured, aim }: BenchRow): boolean | null {
  if (aim === undefined) return null;
  return 'atMost' in aim ? measured <= aim.atMost : measured >= aim.atLeast;
}

/** The middle one, or the mean of the two in the middle. */
export function median(values: readonly number[]): number {
  const inOrder = [...values].sort((a, b) => a - b);
  const half = inOrder.length / 2;
  const upper = inOrder[Math.floor(half)] ?? NaN;
  const lower = inOrder[Math.ceil(half) - 1] ?? NaN;
  return (lower + upper) / 2;
}

/** Median time of one call, after calls that let the machine warm up. */
export async function medianMs(
  call: () => unknown,
  { warmUp, rounds }: { readonly warmUp: number; readonly rounds: number },
): Promise<number> {
  for (let i = 0; i < warmUp; i += 1) await call();
  const times: number[] = [];
  for (let i = 0; i < rounds; i += 1) {
    const started = performance.now();
    // A promise is waited for; anything else must not pay for a turn of the event loop.
    const result = call();
    if (result instanceof Promise) await result;
    times.push(performance.now() - started);
  }
  return median(times);
}
