/**
 * Changes src/model in small ways, one at a time, and sees whether a test notices:
 *
 *     npm run mutants                                  everything, folder by folder (a day or longer); keeps what it found
 *     npm run mutants -- src/model/rest …              these files and folders
 *     npm run mutants -- --sample 1000 --seed 7 …      so many changes drawn at random, each as likely as any other
 *     npm run mutants -- --list …                      how many changes there are
 *
 * `--workers N` runs N at a time (1). Results are kept under node_modules/.cache/mutants, a file for each folder or sample: what a test
 * noticed is not run again while that test is there, nor what got away until a test of a new name comes by; `--fresh` runs all.
 * What came out is printed, and written to reports/mutants/. docs/mutation.md says how to read it.
 */
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { Stryker } from '@stryker-mutator/core';
import { filesToMutate, keyOf, listMutants, type Mutant, rangeOf, sample, SCOPE } from './mutant-list.ts';
import { byFolder, groupBy, type Outcome, sayMissed, sayScore, scoreOf } from './mutant-score.ts';

process.chdir(fileURLToPath(new URL('..', import.meta.url)));

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: 'string' },
    seed: { type: 'string', default: '1' },
    workers: { type: 'string', default: '1' },
    fresh: { type: 'boolean', default: false },
    list: { type: 'boolean', default: false },
  },
});

const whole = (name: 'sample' | 'seed' | 'workers', text: string): number => {
  if (/^[1-9]\d{0,6}$/u.test(text)) return Number(text);
  console.error(`--${name}: "${text}" is no whole number from 1 on, for example --${name} 7.`);
  process.exit(1);
};
const wanted = values.sample === undefined ? null : whole('sample', values.sample);
const seed = whole('seed', values.seed);
const workers = whole('workers', values.workers);
const lost = positionals.find((path) => !existsSync(path));
if (lost !== undefined) {
  console.error(`There is no file or folder ${lost}; for example src/model/window.`);
  process.exit(1);
}

const CACHE = 'node_modules/.cache/mutants';
const REPORTS = 'reports/mutants';

/** Runs the tests against the picked changes. */
async function run(name: string, picked: readonly Mutant[]): Promise<Outcome[]> {
  if (picked.length === 0) return [];
  process.env['MUTANTS_PICKED'] = `${process.cwd()}/${CACHE}/${name}-picked.json`;
  process.env['MUTANTS_LOG'] = `${process.cwd()}/${REPORTS}/${name}.jsonl`;
  writeFileSync(process.env['MUTANTS_PICKED'], JSON.stringify(picked.map(keyOf)));
  writeFileSync(process.env['MUTANTS_LOG'], '');
  const results = await new Stryker({
    testRunner: 'picked',
    plugins: ['@stryker-mutator/vitest-runner', './tools/mutant-runner.mjs'],
    vitest: { configFile: 'tools/mutant-tests.config.ts', related: false },
    mutate: [...new Set(picked.map(rangeOf))],
    coverageAnalysis: 'perTest',
    // What runs only while a file is loaded would ask for a fresh process and every test, each time.
    ignoreStatic: true,
    incremental: true,
    force: values.fresh,
    incrementalFile: `${CACHE}/${name}.json`,
    concurrency: workers,
    // A loop that never ends is cut off by its count of rounds; the time is for the rest, on a machine that is busy.
    timeoutMS: 15_000,
    timeoutFactor: 2,
    dryRunTimeoutMinutes: 20,
    reporters: ['progress-append-only'],
    tempDirName: 'reports/mutants-tmp',
    ignorePatterns: [
      '/dist',
      '/reports',
      '/docs',
      '/bench',
      '/public/fonts',
      '/tests/e2e',
      '/src/app',
      '/biome.json',
    ],
    disableTypeChecks: false,
    warnings: false,
    allowConsoleColors: false,
  }).runMutationTest();
  const byKey = new Map(picked.map((mutant) => [keyOf(mutant), mutant]));
  return results.flatMap(({ fileName, mutatorName, location: { start, end }, replacement = '', status }) => {
    const file = fileName.slice(process.cwd().length + 1).replaceAll('\\', '/');
    // Reports count lines and columns from 1.
    const [from, to] = [start, end].map(({ line, column }) => ({ line: line - 1, column: column - 1 }));
    const key = keyOf({ file, kind: mutatorName, from: from!, to: to!, original: '', replacement });
    const mutant = byKey.get(key);
    return mutant === undefined ? [] : [{ mutant, status }];
  });
}

const files = filesToMutate(positionals.length > 0 ? positionals : [SCOPE]);
const all = await listMutants(files);
console.log(`${String(all.length)} changes in ${String(files.length)} files`);
if (!values.list) {
  mkdirSync(CACHE, { recursive: true });
  mkdirSync(REPORTS, { recursive: true });
  const name = wanted === null ? 'all' : `sample-${seed}-of-${wanted}`;
  const outcomes = wanted === null ? await runFolders() : await run(name, sample(all, wanted, seed));
  const text = [sayScore(scoreOf(outcomes)), byFolder(outcomes), sayMissed(outcomes)].join('\n\n');
  writeFileSync(`${REPORTS}/${name}.txt`, `${text}\n`);
  console.log(text);
}

/** One folder after the other: what a stopped run had done by then stays. */
async function runFolders(): Promise<Outcome[]> {
  const outcomes: Outcome[] = [];
  for (const [folder, picked] of groupBy(all, ({ file }) => file.split('/').slice(2, -1).join('-') || 'top'))
    outcomes.push(...(await run(folder, picked)));
  return outcomes;
}
