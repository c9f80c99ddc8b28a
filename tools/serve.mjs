/**
 * The second half of `npm start`: serves the built app and prints where. PORT and HOST may be set in the environment; a
 * taken port moves on to the next free one.
 */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { startServer } from './static-server.mjs';

const root = fileURLToPath(new URL('../dist/', import.meta.url));
const usualPort = 4173;

function wantedPort() {
  const wish = process.env.PORT ?? '';
  if (wish === '') return usualPort;
  if (/^\d{1,5}$/.test(wish) && Number(wish) <= 65535) return Number(wish);
  console.error(`PORT=${wish} is not a port: using ${usualPort}.`);
  return usualPort;
}

if (existsSync(`${root}index.html`)) {
  const server = await startServer({ root, port: wantedPort(), host: process.env.HOST ?? 'localhost' });
  console.log(`Shearsight is running at ${server.url}`);
  for (const signal of ['SIGINT', 'SIGTERM']) {
    process.once(signal, () => {
      server.close().finally(() => process.exit(0));
    });
  }
} else {
  console.error('Nothing is built yet: `npm start` builds and serves.');
  process.exitCode = 1;
}
