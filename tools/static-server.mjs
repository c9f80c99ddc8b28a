/**
 * A server for one folder of static files, with nothing but Node: `npm start` serves dist/ with it, the browser tests and
 * benchmarks start it on a free port.
 */
import { createReadStream } from 'node:fs';
import { readFile, realpath, stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import { securityHeaders } from './security-headers.mjs';

const types = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.woff2': 'font/woff2',
};

const portsToTry = 50;

/** What gets smaller when packed; pictures and fonts are packed already. Bytes from which it is worth it. */
const packable = new Set([
  '.css',
  '.html',
  '.js',
  '.json',
  '.map',
  '.mjs',
  '.svg',
  '.txt',
  '.wasm',
  '.webmanifest',
]);
const worthPacking = 1024;

/** Packed files of this process, by path; packed again when the file has changed. */
const packed = new Map();

async function packedFile({ path, modified }) {
  const before = packed.get(path);
  if (before?.modified === modified.getTime()) return before.body;
  const body = await promisify(gzip)(await readFile(path), { level: 9 });
  packed.set(path, { body, modified: modified.getTime() });
  return body;
}

/** Whether the other side takes gzip: named without being refused by a weight of nothing. */
function takesGzip(request) {
  const accepted = String(request.headers['accept-encoding'] ?? '');
  return accepted.split(',').some((each) => /^\s*gzip\s*(;\s*q=(?!0(\.0*)?\s*$).*)?$/i.test(each));
}

/** The file behind an address, or null: outside the folder, hidden, or not there. Throws URIError on bad escapes. */
async function fileFor(root, address) {
  const path = decodeURIComponent(address.split(/[?#]/, 1)[0] ?? '/');
  const parts = path.split('/').filter((part) => part !== '');
  const odd = parts.some((part) => part.startsWith('.') || /[\\\0]/.test(part));
  if (!path.startsWith('/') || odd) return null;
  const wanted = path === '/' ? join(root, 'index.html') : join(root, ...parts);
  try {
    // A link inside the folder must not lead out of it either.
    const real = await realpath(wanted);
    const facts = await stat(real);
    return real.startsWith(root + sep) && facts.isFile() && (path === '/' || !path.endsWith('/'))
      ? { path: real, size: facts.size, modified: facts.mtime }
      : null;
  } catch {
    return null;
  }
}

function plain(response, status, text, headers = {}) {
  const body = `${text}\n`;
  response.writeHead(status, {
    ...securityHeaders,
    ...headers,
    'Content-Type': 'text/plain; charset=utf-8',
    'Content-Length': Buffer.byteLength(body),
  });
  response.end(response.req.method === 'HEAD' ? undefined : body);
}

async function answer(root, request, response) {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    plain(response, 405, 'Only GET and HEAD are answered here.', { Allow: 'GET, HEAD' });
    return;
  }
  let file;
  try {
    file = await fileFor(root, request.url ?? '/');
  } catch {
    plain(response, 400, 'This address cannot be read.');
    return;
  }
  if (file === null) {
    plain(response, 404, 'Nothing here.');
    return;
  }
  // Names under assets/ carry a hash of their content; everything else is asked for again each time.
  const hashed = file.path.startsWith(join(root, 'assets') + sep);
  const mayPack = packable.has(extname(file.path)) && file.size >= worthPacking;
  const isPacked = mayPack && takesGzip(request);
  const tag = `${file.size.toString(16)}-${file.modified.getTime().toString(16)}`;
  const etag = isPacked ? `"${tag}-gzip"` : `"${tag}"`;
  const headers = {
    ...securityHeaders,
    'Cache-Control': hashed ? 'public, max-age=31536000, immutable' : 'no-cache',
    ETag: etag,
    ...(mayPack ? { Vary: 'Accept-Encoding' } : {}),
  };
  if (request.headers['if-none-match'] === etag) {
    response.writeHead(304, headers);
    response.end();
    return;
  }
  const body = isPacked ? await packedFile(file) : null;
  response.writeHead(200, {
    ...headers,
    'Content-Type': types[extname(file.path)] ?? 'application/octet-stream',
    'Content-Length': body?.length ?? file.size,
    ...(isPacked ? { 'Content-Encoding': 'gzip' } : {}),
  });
  if (request.method === 'HEAD') {
    response.end();
    return;
  }
  if (body !== null) {
    response.end(body);
    return;
  }
  createReadStream(file.path)
    .on('error', () => response.destroy())
    .pipe(response);
}

const listen = (handler, host, port) =>
  new Promise((done, failed) => {
    const server = createServer(handler);
    server.once('error', failed);
    server.listen({ host, port, exclusive: true }, () => {
      server.off('error', failed);
      done(server);
    });
  });

/**
 * `localhost` may mean either loopback address, so both are taken: otherwise a stranger on the other one could answer.
 * A machine without IPv6 has only the first.
 */
async function listenOnLoopback(handler, port) {
  const four = await listen(handler, '127.0.0.1', port);
  try {
    return [four, await listen(handler, '::1', four.address().port)];
  } catch (error) {
    if (error.code !== 'EADDRINUSE') return [four];
    four.close();
    throw error;
  }
}

/**
 * Starts serving `root`. Port 0 takes any free port; another port moves on while it is taken. Resolves when the first request
 * can be answered.
 */
export async function startServer({ root, port = 0, host = 'localhost' }) {
  const realRoot = await realpath(resolve(root));
  const handler = (request, response) => {
    answer(realRoot, request, response).catch(() => response.destroy());
  };
  const last = port === 0 ? 0 : Math.min(port + portsToTry - 1, 65535);
  for (let tried = port; ; tried += 1) {
    try {
      const servers =
        host === 'localhost' ? await listenOnLoopback(handler, tried) : [await listen(handler, host, tried)];
      const taken = servers[0].address().port;
      return {
        port: taken,
        url: `http://${host.includes(':') ? `[${host}]` : host}:${taken}/`,
        close: async () => {
          for (const server of servers) server.closeAllConnections();
          await Promise.all(servers.map((server) => new Promise((done) => server.close(done))));
        },
      };
    } catch (error) {
      if (error.code !== 'EADDRINUSE' || (port !== 0 && tried >= last)) throw error;
      // With port 0 the other loopback address may hold the same number: ask for another.
      if (port === 0) tried = -1;
    }
  }
}
