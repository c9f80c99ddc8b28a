/** `npm run bench [-- NAME…]`: runs the benchmarks of this folder, all or those named, and prints one table. */
import { readdirSync } from 'node:fs';
import { cpus } from 'node:os';
import { meetsAim } from './support/bench.ts';
import type { Bench, BenchRow } from './support/bench.ts';

const names = readdirSync(new URL('.', import.meta.url))
  .filter((file) => file.endsWith('.ts') && file !== 'run.ts')
  .map((file) => file.replace(/\.ts$/, ''))
  .sort();

const shown = (value: number) =>
  Math.abs(value) >= 100 || Number.isInteger(value) ? value.toFixed(0) : value.toPrecision(3);

function line({ what, measured, unit, aim, note = '' }: BenchRow, isMet: boolean | null): string {
  const wanted =
    aim === undefined ? '' : 'atMost' in aim ? `≤ ${String(aim.atMost)}` : `≥ ${String(aim.atLeast)}`;
  const verdict = isMet === null ? '' : isMet ? 'met' : 'MISSED';
  const figure = `${shown(measured)} ${unit}`.padStart(14);
  return `  ${what.padEnd(58)}${figure}  ${wanted.padEnd(9)}${verdict.padEnd(8)}${note}`.trimEnd();
}

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !names.includes(name));
if (unknown.length > 0 || names.length === 0) {
  const asked = unknown.length > 0 ? ` called ${unknown.join(', ')}` : '';
  console.error(`No benchmark${asked}. There are: ${names.join(', ') || 'none'}.`);
  process.exitCode = 1;
} else {
  console.log(
    `Node ${process.version}, ${String(cpus().length)} × ${cpus()[0]?.model ?? 'unknown processor'}`,
  );
  let missed = 0;
  for (const name of wanted.length > 0 ? wanted : names) {
    try {
      const { bench } = (await import(`./${name}.ts`)) as { bench: Bench };
      console.log(`\n${bench.title}`);
      for (const row of await bench.run()) {
        const isMet = meetsAim(row);
        if (isMet === false) missed += 1;
        console.log(line(row, isMet));
      }
    } catch (error) {
      console.error(`\n${name} broke off:`, error);
      process.exitCode = 1;
    }
  }
  if (missed > 0) console.log(`\n${String(missed)} aims missed`);
}
process.exit();
