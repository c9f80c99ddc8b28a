/**
 * One table of the figures that tests and benchmarks come upon: npx tsx tools/figures.ts, after `npm run build`. The tests run in their
 * short form; SEEDED_JOBS=1000 makes the seeded ones long. Lighthouse is run where npx can fetch it.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { loadavg } from 'node:os';
import { gzipSync } from 'node:zlib';
import { fileURLToPath } from 'node:url';
import { bench as editToPicture } from '../bench/edit-to-picture.ts';
import { bench as frames } from '../bench/frames.ts';
import { meetsAim, type BenchRow } from '../bench/support/bench.ts';
import type { Figure } from '../tests/support/figure.ts';
import { lengthCorpus } from '../tests/support/length-corpus.ts';
import { firstLoad } from './first-load.ts';
import { lighthouseRows } from './lighthouse.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const file = `${root}reports/figures.jsonl`;

const TESTS = {
  unit: [
    'tests/model/units/parse-length.test.ts',
    'tests/model/units/parse-length.prop.test.ts',
    'tests/drawing/labels.test.ts',
    'tests/drawing/drawn-gap.test.ts',
    'tests/panels/described.test.tsx',
    'tests/panels/contrast.test.ts',
  ],
  e2e: [
    'tests/e2e/beyond-axe.spec.ts',
    'tests/e2e/crawl.spec.ts',
    'tests/e2e/first-load.spec.ts',
    'tests/e2e/hand.spec.ts',
  ],
};

function runTests(project: keyof typeof TESTS): boolean {
  const args = ['node_modules/vitest/vitest.mjs', 'run', '--project', project, ...TESTS[project]];
  const env = { ...process.env, FIGURES: file, SHEARSIGHT_BUILT: '1' };
  return (
    spawnSync(process.execPath, args, { cwd: root, env, stdio: ['ignore', 'ignore', 'inherit'] }).status === 0
  );
}

function line(row: BenchRow): string {
  const isMet = meetsAim(row);
  const { measured, unit, aim, note = '' } = row;
  const wanted =
    aim === undefined ? '' : 'atMost' in aim ? `≤ ${String(aim.atMost)}` : `≥ ${String(aim.atLeast)}`;
  const figure = `${Number.isInteger(measured) ? String(measured) : measured.toPrecision(3)} ${unit}`;
  const verdict = isMet === null ? '' : isMet ? 'met' : 'MISSED';
  return `${row.what.padEnd(70)} ${figure.padStart(14)}  ${wanted.padEnd(9)} ${verdict.padEnd(7)} ${note}`.trimEnd();
}

mkdirSync(`${root}reports`, { recursive: true });
rmSync(file, { force: true });
const passed = [runTests('unit'), runTests('e2e')];
const told: Figure[] = existsSync(file)
  ? readFileSync(file, 'utf8')
      .trim()
      .split('\n')
      .map((text) => JSON.parse(text) as Figure)
  : [];
const dist = `${root}dist`;
const firstLoadKb = firstLoad(dist)
  .needed.map((path) => gzipSync(readFileSync(`${dist}/${path}`), { level: 9 }).length / 1000)
  .reduce((sum, each) => sum + each, 0);
const rows: BenchRow[] = [
  {
    what: 'spellings of lengths read as meant',
    measured: lengthCorpus().length,
    unit: 'spellings',
    aim: { atLeast: 5000 },
  },
  ...told,
  ...(await editToPicture.run()),
  ...(await frames.run()),
  ...(await lighthouseRows().catch((error: unknown) => {
    console.log(`Lighthouse could not be run: ${String(error).split('\n', 1)[0] ?? ''}`);
    return [];
  })),
  { what: 'first load, gzipped', measured: firstLoadKb, unit: 'kB', aim: { atMost: 170 } },
];
console.log(
  `Load of the machine while measuring: ${loadavg()
    .map((each) => each.toFixed(1))
    .join(', ')}`,
);
for (const row of rows) console.log(line(row));
if (passed.includes(false)) {
  console.log('Some of these tests failed: run them by themselves.');
  process.exitCode = 1;
}
process.exit();
