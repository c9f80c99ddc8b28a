/**
 * `npm test`: every check of the project, cheap ones first. Each tool counts as one; tests are counted from their runner's own report.
 * Goes on after a failure, so that one run tells everything. The last line is `N passed, N failed`; the exit code says
 * the same.
 */
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { countResults, remarksOn } from './count-results.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const reports = join(root, 'reports');
/** A step that takes longer hangs, and counts as failed. */
const patienceMs = 30 * 60_000;

const bin = {
  tsc: 'node_modules/typescript/bin/tsc',
  biome: 'node_modules/@biomejs/biome/bin/biome',
  depcruise: 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs',
  eslint: 'node_modules/eslint/bin/eslint.js',
  vitest: 'node_modules/vitest/vitest.mjs',
  vite: 'node_modules/vite/bin/vite.js',
  tsx: 'node_modules/tsx/dist/cli.mjs',
};

const tools = [
  { name: 'format', run: [bin.biome, 'format', '.'] },
  { name: 'types', run: [bin.tsc, '-p', 'tsconfig.json'] },
  { name: 'types of the pure layers', run: [bin.tsc, '-p', 'tsconfig.pure.json'] },
  { name: 'import rules', run: [bin.depcruise, 'src', 'tests', '--config', '.dependency-cruiser.mjs'] },
  { name: 'build', run: [bin.vite, 'build', '--logLevel', 'warn'], env: { NODE_ENV: 'production' } },
  { name: 'size of the first load', needs: 'build', run: [bin.tsx, 'tools/size.ts'] },
];
const lint = { name: 'lint', run: [bin.eslint, '.'] };
const unitTests = {
  name: 'unit and outside tests',
  tests: 'unit',
  run: [bin.vitest, 'run', '--project', 'unit'],
};
const browserTests = {
  name: 'browser tests',
  tests: 'e2e',
  needs: 'build',
  run: [bin.vitest, 'run', '--project', 'e2e'],
  env: { SHEARSIGHT_BUILT: '1' },
};
/** One phase after the other; in a phase, its lanes side by side, since a linter keeps one core busy and not two. */
const phases = [[tools, [lint]], [[unitTests]], [[browserTests]]];

/** Runs one process. The output of tests is shown as it comes, that of a tool only when it fails. */
function run(args, env, isShown) {
  return new Promise((done) => {
    const child = spawn(process.execPath, args, {
      cwd: root,
      // CI: a missing golden fails instead of being written.
      env: { ...process.env, CI: '1', ...env },
      stdio: ['ignore', isShown ? 'inherit' : 'pipe', isShown ? 'inherit' : 'pipe'],
      timeout: patienceMs,
      killSignal: 'SIGKILL',
    });
    let output = '';
    child.stdout?.on('data', (piece) => (output += piece));
    child.stderr?.on('data', (piece) => (output += piece));
    child.on('error', (error) => done({ exitCode: null, output: `${output}${error.message}\n` }));
    child.on('close', (exitCode) => done({ exitCode, output }));
  });
}

function readReport(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return null;
  }
}

async function perform(step, results) {
  if (step.needs !== undefined && results.some(({ name, failed }) => name === step.needs && failed > 0)) {
    return { passed: 0, failed: 1, skipped: 0, note: `not run: ${step.needs} failed` };
  }
  if (step.tests === undefined) {
    const { exitCode, output } = await run(step.run, step.env, false);
    if (exitCode === 0) return { passed: 1, failed: 0, skipped: 0 };
    process.stdout.write(output);
    return { passed: 0, failed: 1, skipped: 0, note: exitCode === null ? 'was stopped' : '' };
  }
  const path = join(reports, `${step.tests}.json`);
  rmSync(path, { force: true });
  const args = [...step.run, '--reporter=default', '--reporter=json', `--outputFile.json=${path}`];
  const { exitCode } = await run(args, step.env, true);
  const report = readReport(path);
  return { ...countResults(report, exitCode), remarks: remarksOn(report, root) };
}

async function performLane(steps, results) {
  for (const step of steps) {
    const started = performance.now();
    const counts = await perform(step, results);
    const seconds = (performance.now() - started) / 1000;
    results.push({ name: step.name, seconds, ...counts });
    console.log(`== ${step.name}: ${seconds.toFixed(1)} s`);
  }
}

mkdirSync(reports, { recursive: true });
const results = [];
for (const lanes of phases) await Promise.all(lanes.map((steps) => performLane(steps, results)));

console.log('\n== Summary');
for (const { name, seconds, passed, failed, skipped, note = '' } of results) {
  const mark = failed === 0 ? 'ok    ' : 'FAILED';
  const rest = [`${passed} passed`, `${failed} failed`, ...(skipped > 0 ? [`${skipped} skipped`] : []), note];
  console.log(
    `${mark} ${name.padEnd(26)} ${seconds.toFixed(1).padStart(6)} s  ${rest.filter(Boolean).join(', ')}`,
  );
}
for (const remark of results.flatMap(({ remarks = [] }) => remarks)) console.log(remark);
const sum = (key) => results.reduce((total, result) => total + result[key], 0);
if (sum('failed') > 0) process.exitCode = 1;
console.log(`${sum('passed')} passed, ${sum('failed')} failed`);
