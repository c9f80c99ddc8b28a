/**
 * Builds the page with nothing but the solid view (tests/support/scene-page) and serves it with the app's own headers, so that
 * what works here works under the app's policy.
 */
import { execFile } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import type { RunningServer } from '../../tools/static-server.mjs';
import { startServer } from '../../tools/static-server.mjs';
import type { Pose } from '../../src/model/assembly/pose.ts';
import type { SentPose, SolidViewPage } from './scene-page/main.tsx';

declare global {
  interface Window {
    solidView: SolidViewPage;
  }
}

const root = fileURLToPath(new URL('../../', import.meta.url));
const page = fileURLToPath(new URL('./scene-page/', import.meta.url));

export async function serveScenePage(): Promise<RunningServer> {
  const folder = await mkdtemp(join(tmpdir(), 'solid-view-'));
  // A process of its own: under the test runner's NODE_ENV the bundle would not be the one that users get.
  await promisify(execFile)(
    process.execPath,
    ['node_modules/vite/bin/vite.js', 'build', page, '--config', `${page}vite.config.ts`, '--outDir', folder],
    { cwd: root, env: { ...process.env, NODE_ENV: 'production' } },
  );
  const server = await startServer({ root: folder });
  return {
    ...server,
    close: async () => {
      await server.close();
      await rm(folder, { recursive: true });
    },
  };
}

export function sentPose(pose: Pose): SentPose {
  return { ...pose, turns: [...pose.turns] };
}
