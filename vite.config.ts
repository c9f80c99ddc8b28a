import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';
import { offlineFiles } from './tools/offline-files.ts';
import { pageShell } from './tools/page-shell.ts';

const patience = { testTimeout: 120_000, hookTimeout: 120_000 };

type ModuleInfoOf = (id: string) => {
  readonly isEntry: boolean;
  readonly importers: readonly string[];
} | null;

/** What the page's script loads as soon as the first picture is painted. */
const START = '/src/app/start.tsx';

/** Tells whether a module belongs to the page's own script, which is there before the app. */
function isOfPage(id: string, infoOf: ModuleInfoOf): boolean {
  const isOfEntry = infoOf(id)?.importers.some((importer) => infoOf(importer)?.isEntry === true) ?? false;
  return isOfEntry || id.includes('vite/preload-helper');
}

const inFirstLoad = new Map<string, boolean>();

/** Tells whether the page imports a module statically, through whatever others. */
function isInFirstLoad(id: string, infoOf: ModuleInfoOf): boolean {
  const known = inFirstLoad.get(id);
  if (known !== undefined) return known;
  inFirstLoad.set(id, false);
  const info = infoOf(id);
  const answer =
    info !== null &&
    (id.endsWith(START) || info.importers.some((importer) => isInFirstLoad(importer, infoOf)));
  inFirstLoad.set(id, answer);
  return answer;
}

export default defineConfig({
  // Relative addresses: dist/ works from any folder of any static host.
  base: './',
  plugins: [react(), pageShell(), offlineFiles()],
  worker: { format: 'es' },
  build: {
    target: 'es2022',
    // Every browser of that target preloads modules by itself.
    modulePreload: { polyfill: false },
    // Nothing inline: the page's policy allows no data: script, style or font.
    assetsInlineLimit: 0,
    // three alone is larger than the bundler likes; what counts is the first load, which `npm run size` holds to its budget.
    chunkSizeWarningLimit: 1500,
    rolldownOptions: {
      checks: { bundlerTimings: false },
      output: {
        codeSplitting: {
          // React apart, so that a new version of the app leaves it in the browser's cache; and everything else that the page
          // imports statically in one piece, because a piece for each set of stations that share it packs worse, and every
          // station added later would split it again. Everything else follows from what is loaded on demand: a group that took
          // in three or Dexie by name would take their dependencies along.
          groups: [
            // What the page's own script needs, alone: what loads the rest, and the style of the first picture.
            {
              name: (id, graph) => (isOfPage(id, (each) => graph.getModuleInfo(each)) ? 'page' : null),
            },
            { name: 'react', test: /node_modules[\\/](react|react-dom|scheduler)[\\/]/ },
            {
              name: (id, graph) => (isInFirstLoad(id, (each) => graph.getModuleInfo(each)) ? 'first' : null),
            },
          ],
        },
      },
    },
  },
  test: {
    maxWorkers: 2,
    reporters: ['default'],
    // Two projects under one reporter: everything that runs in Node, and the browser tests against the built app.
    projects: [
      {
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.{ts,tsx}'],
          setupFiles: ['tests/support/fixed-seed.ts'],
          // One process reads the model once, not for every file: half of the time went there. Nothing is kept between files,
          // and what a test puts in place of a global or a function goes back by itself.
          isolate: false,
          unstubGlobals: true,
          restoreMocks: true,
          ...patience,
        },
      },
      {
        test: {
          name: 'e2e',
          environment: 'node',
          include: ['tests/e2e/**/*.spec.ts'],
          globalSetup: ['tests/support/browser-setup.ts'],
          setupFiles: ['tests/support/tried-again.ts'],
          // Once more for what a busy machine spoiled; `npm test` names each of them.
          retry: 1,
          sequence: { groupOrder: 1 },
          // One more than cores: a page waits for its clock and its disk while another is busy.
          maxWorkers: 3,
          // A page that is loading again, or a busy machine, takes longer than the usual second.
          expect: { poll: { timeout: 20_000 } },
          ...patience,
        },
      },
    ],
  },
});
