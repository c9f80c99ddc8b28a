/**
 * Runs the tests against those changes only that were picked. A place that is picked brings along every other change of the same
 * place; those are turned down at once, and count for nothing. The file named by MUTANTS_PICKED holds the keys of the picked ones
 * (keyOf in mutant-list.ts), the one named by MUTANTS_LOG gets a line for each result, so that a run that is stopped leaves word.
 */
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { commonTokens, declareFactoryPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import { strykerPlugins as vitestPlugins } from '@stryker-mutator/vitest-runner';

/**
 * The quickest tests that come by a place, as many as take this long together. A change that many slow tests come by would cost minutes
 * where none of them notices it. What is left out could only find more.
 */
const TOGETHER_MS = 15_000;

const root = resolve(dirname(fileURLToPath(import.meta.url)), '..');

const keyOf = ({ fileName, mutatorName, location: { start, end }, replacement }) =>
  `${relative(root, fileName).replaceAll('\\', '/')}|${mutatorName}|${start.line}:${start.column}-${end.line}:${end.column}|${replacement}`;

function createPickedRunner(injector) {
  const inner = vitestPlugins.find(({ name }) => name === 'vitest').factory(injector);
  // In a file: after a loop that never ends, another process goes on.
  const times = `${process.env.MUTANTS_LOG}.times.json`;
  const took = new Map(existsSync(times) ? JSON.parse(readFileSync(times, 'utf8')) : []);
  const quickest = (ids) => {
    let together = 0;
    return ids
      .toSorted((one, other) => (took.get(one) ?? 0) - (took.get(other) ?? 0))
      .filter((id, i) => (together += took.get(id) ?? 0) <= TOGETHER_MS || i === 0);
  };
  const picked = new Set(JSON.parse(readFileSync(process.env.MUTANTS_PICKED, 'utf8')));
  return {
    capabilities: () => inner.capabilities(),
    init: () => inner.init(),
    async dryRun(options) {
      const result = await inner.dryRun(options);
      for (const { id, timeSpentMs } of result.tests ?? []) took.set(id, timeSpentMs);
      writeFileSync(times, JSON.stringify([...took]));
      return result;
    },
    dispose: () => inner.dispose(),
    async mutantRun(options) {
      const key = keyOf(options.activeMutant);
      if (!picked.has(key)) return { status: 'error', errorMessage: 'not picked' };
      const start = performance.now();
      const testFilter = options.testFilter && quickest(options.testFilter);
      const result = await inner.mutantRun({ ...options, testFilter });
      const seconds = Number(((performance.now() - start) / 1000).toFixed(2));
      const line = {
        key,
        status: result.status,
        seconds,
        killedBy: result.killedBy,
        message: result.errorMessage,
      };
      appendFileSync(process.env.MUTANTS_LOG, `${JSON.stringify(line)}\n`);
      return result;
    },
  };
}
createPickedRunner.inject = [commonTokens.injector];

export const strykerPlugins = [declareFactoryPlugin(PluginKind.TestRunner, 'picked', createPickedRunner)];
