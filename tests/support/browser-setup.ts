/**
 * Once before the browser tests: builds the app (unless SHEARSIGHT_BUILT=1 says that dist/ is fresh) and serves it on a free
 * port with the same server and headers as `npm start`.
 */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';
import { browserExecutable } from './browser-executable.ts';
import { startServer } from '../../tools/static-server.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    appUrl: string;
  }
}

const root = fileURLToPath(new URL('../../', import.meta.url));

export async function setup(project: TestProject): Promise<() => Promise<void>> {
  if (process.env['SHEARSIGHT_BUILT'] !== '1') {
    // A process of its own: under the test runner's NODE_ENV the bundle would not be the one that users get.
    const env = { ...process.env, NODE_ENV: 'production' };
    execFileSync(process.execPath, ['node_modules/vite/bin/vite.js', 'build', '--logLevel', 'warn'], {
      cwd: root,
      env,
    });
  }
  // Unpacks the browser now, if need be, and not in the time of the first test.
  await browserExecutable();
  const server = await startServer({ root: `${root}dist` });
  project.provide('appUrl', server.url);
  return () => server.close();
}
