/**
 * The last step of the build: lists every file of dist/ with a version made from their contents, and builds the service
 * worker around that list. Files that only servers and other sites read are left out.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, type Plugin, type ResolvedConfig } from 'vite';

const entry = fileURLToPath(new URL('../src/offline/service-worker.ts', import.meta.url));
const NAME = 'service-worker.js';
const FOR_SERVERS = new Set(['_headers', 'social.png', NAME]);

export function offlineFiles(): Plugin {
  let config: ResolvedConfig | null = null;
  return {
    name: 'shearsight-offline-files',
    apply: 'build',
    configResolved: (resolved) => {
      config = resolved;
    },
    closeBundle: {
      order: 'post',
      sequential: true,
      async handler() {
        if (config === null) return;
        const folder = join(config.root, config.build.outDir);
        const code = await serviceWorkerCode(listBuild(folder));
        writeFileSync(join(folder, NAME), code);
      },
    },
  };
}

/** Lists the files of a build folder, the page as the empty address, with a version of their contents. */
export function listBuild(folder: string): { version: string; files: string[] } {
  const paths = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .map((each) => relative(folder, join(each.parentPath, each.name)).split(sep).join('/'))
    .filter((path) => !FOR_SERVERS.has(path))
    .sort();
  const hash = createHash('sha256');
  for (const path of paths)
    hash
      .update(path)
      .update('\0')
      .update(readFileSync(join(folder, path)));
  return {
    version: hash.digest('hex').slice(0, 16),
    files: paths.map((path) => (path === 'index.html' ? './' : path)),
  };
}

async function serviceWorkerCode(files: ReturnType<typeof listBuild>): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    define: { __BUILD__: JSON.stringify(files) },
    build: {
      write: false,
      target: 'es2022',
      lib: { entry, formats: ['iife'], name: 'shearsight' },
    },
  });
  const output = (Array.isArray(built) ? built : [built]).flatMap((each) =>
    'output' in each ? each.output : [],
  );
  const chunk = output.find((each) => each.type === 'chunk');
  if (chunk?.type !== 'chunk') throw new Error('The service worker was not built.');
  return chunk.code;
}
