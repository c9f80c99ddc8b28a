import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';
import { pageShell } from './tools/page-shell.ts';

const patience = { testTimeout: 120_000, hookTimeout: 120_000 };

export default defineConfig({
  // Relative addresses: dist/ works from any folder of any static host.
  base: './',
  plugins: [react(), pageShell()],
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
          // React apart, so that a new version of the app leaves it in the browser's cache. Everything else follows from what
          // is imported and what is loaded on demand: a group that took in three or Dexie by name would take their
          // dependencies along, and one that the first screen shares would pull the whole group into the first load.
          groups: [{ name: 'react', test: /node_modules[\\/](react|react-dom|scheduler)[\\/]/ }],
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
          ...patience,
        },
      },
      {
        test: {
          name: 'e2e',
          environment: 'node',
          include: ['tests/e2e/**/*.spec.ts'],
          globalSetup: ['tests/support/browser-setup.ts'],
          // One browser at a time: software drawing takes both cores.
          fileParallelism: false,
          sequence: { groupOrder: 1 },
          ...patience,
        },
      },
    ],
  },
});
