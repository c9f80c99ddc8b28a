/**
 * `npm run size`, after a build: how much has to arrive, gzipped, before the first picture and the first editable field.
 * Prints the files; fails above the budget.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { firstLoad } from './first-load.ts';

const budgetKb = 170;
const dist = fileURLToPath(new URL('../dist', import.meta.url));

const rawKb = (path: string) => readFileSync(join(dist, path)).length / 1000;
const gzipKb = (path: string) => gzipSync(readFileSync(join(dist, path)), { level: 9 }).length / 1000;

function table(title: string, paths: readonly string[], size: (path: string) => number): number {
  const rows = paths.map((path) => ({ path, size: size(path) })).sort((a, b) => b.size - a.size);
  const total = rows.reduce((sum, row) => sum + row.size, 0);
  console.log(`\n${title}`);
  for (const row of rows) console.log(`${row.size.toFixed(1).padStart(9)} kB  ${row.path}`);
  console.log(`${total.toFixed(1).padStart(9)} kB  together`);
  return total;
}

if (existsSync(join(dist, 'index.html'))) {
  const { needed, fonts, later } = firstLoad(dist);
  table('Loaded when asked for (gzip)', later, gzipKb);
  table('Fonts, as they are (each fetched only if used; text shows before)', fonts, rawKb);
  const total = table('Needed for the first picture and the first editable field (gzip)', needed, gzipKb);
  const verdict = total <= budgetKb ? 'within' : 'ABOVE';
  console.log(`\n${total.toFixed(1)} kB of ${String(budgetKb)} kB: ${verdict} the budget`);
  if (total > budgetKb) process.exitCode = 1;
} else {
  console.error('Nothing is built yet: run `npm run build` first.');
  process.exitCode = 1;
}
