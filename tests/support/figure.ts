/**
 * Figures that tests come upon while they check: how many jobs, how large the largest error was. Kept only when tools/figures.ts
 * asks for them, by the name of a file in FIGURES; a test never depends on them.
 */
import { appendFileSync } from 'node:fs';

export type Figure = {
  readonly what: string;
  readonly measured: number;
  readonly unit: string;
  readonly aim?: { readonly atMost: number } | { readonly atLeast: number };
  readonly note?: string;
};

/** Keeps a figure for the table. */
export function recordFigure(figure: Figure): void {
  const file = process.env['FIGURES'];
  if (file !== undefined && file !== '') appendFileSync(file, `${JSON.stringify(figure)}\n`);
}
