import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { request } from 'node:http';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { contentSecurityPolicy, headersFile, securityHeaders } from '../../tools/security-headers.mjs';
import { startServer } from '../../tools/static-server.mjs';
import type { RunningServer } from '../../tools/static-server.mjs';

const LARGE = 'export const same = true;\n'.repeat(400);

let folder: string;
let server: RunningServer;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'static-server-'));
  const root = join(folder, 'site');
  await mkdir(join(root, 'assets'), { recursive: true });
  await mkdir(join(root, '.hidden'));
  await writeFile(join(folder, 'secret.txt'), 'outside');
  await symlink(join(folder, 'secret.txt'), join(root, 'link.txt'));
  await writeFile(join(root, '.hidden', 'x.txt'), 'hidden');
  await writeFile(join(root, 'index.html'), '<!doctype html><title>x</title>');
  await writeFile(join(root, 'assets', 'a b.js'), 'export {};');
  for (const name of ['m.wasm', 's.css', 'i.svg', 'j.json', 'f.woff2', 'app.webmanifest']) {
    await writeFile(join(root, 'assets', name), name);
  }
  await writeFile(join(root, 'assets', 'large.js'), LARGE);
  server = await startServer({ root });
});

afterAll(async () => {
  await server.close();
  await rm(folder, { recursive: true });
});

/** Sends the path as written: fetch would tidy `..` away. */
function ask(path: string, method = 'GET', headers: Record<string, string> = {}) {
  return new Promise<{ status: number; headers: Record<string, unknown>; body: string }>((done, failed) => {
    const asked = request({ host: '127.0.0.1', port: server.port, path, method, headers }, (response) => {
      let body = '';
      response.setEncoding('utf8').on('data', (piece: string) => (body += piece));
      response.on('end', () => {
        done({ status: response.statusCode ?? 0, headers: response.headers, body });
      });
    });
    asked.on('error', failed).end();
  });
}

test('answers the front page with the policy and no way to be framed', async () => {
  const page = await ask('/?job=1');
  expect(page.status).toBe(200);
  expect(page.body).toContain('<title>x</title>');
  expect(page.headers['content-type']).toBe('text/html; charset=utf-8');
  expect(page.headers['content-security-policy']).toBe(contentSecurityPolicy);
  expect(page.headers['cache-control']).toBe('no-cache');
});

test.each([
  ['/assets/m.wasm', 'application/wasm'],
  ['/assets/a%20b.js', 'text/javascript; charset=utf-8'],
  ['/assets/s.css', 'text/css; charset=utf-8'],
  ['/assets/i.svg', 'image/svg+xml; charset=utf-8'],
  ['/assets/j.json', 'application/json; charset=utf-8'],
  ['/assets/f.woff2', 'font/woff2'],
  ['/assets/app.webmanifest', 'application/manifest+json; charset=utf-8'],
])('serves %s as %s, kept by the browser for good', async (path, type) => {
  const file = await ask(path);
  expect(file.status).toBe(200);
  expect(file.headers['content-type']).toBe(type);
  expect(file.headers['cache-control']).toContain('immutable');
});

test.each([
  '/../secret.txt',
  '/%2e%2e/secret.txt',
  '/assets/..%2f..%2fsecret.txt',
  '/..%5csecret.txt',
  '/link.txt',
  '/.hidden/x.txt',
  '/assets',
  '/assets/',
  '/assets/m.wasm/',
  '/index.html%00',
  '/nothing.js',
])('answers %s with 404 and the same headers', async (path) => {
  const answer = await ask(path);
  expect(answer.status).toBe(404);
  expect(answer.body).toBe('Nothing here.\n');
  expect(answer.headers['content-security-policy']).toBe(contentSecurityPolicy);
});

test('refuses bad escapes and other methods', async () => {
  expect((await ask('/%zz')).status).toBe(400);
  const posted = await ask('/', 'POST');
  expect(posted.status).toBe(405);
  expect(posted.headers['allow']).toBe('GET, HEAD');
});

test('answers HEAD without a body and a known tag with 304', async () => {
  const head = await ask('/assets/m.wasm', 'HEAD');
  expect(head).toMatchObject({ status: 200, body: '' });
  expect(head.headers['content-length']).toBe('6');
  const again = await ask('/assets/m.wasm', 'GET', { 'If-None-Match': String(head.headers['etag']) });
  expect(again).toMatchObject({ status: 304, body: '' });
});

test('packs what gets smaller for those who take it, with a tag of its own', async () => {
  const url = new URL('assets/large.js', server.url);
  // Node's fetch takes gzip and unpacks it.
  const packed = await fetch(url);
  expect(packed.headers.get('content-encoding')).toBe('gzip');
  expect(Number(packed.headers.get('content-length'))).toBeLessThan(LARGE.length / 10);
  expect(await packed.text()).toBe(LARGE);
  const plain = await ask('/assets/large.js');
  expect(plain.headers['content-encoding']).toBeUndefined();
  expect(plain.body).toBe(LARGE);
  expect(plain.headers['vary']).toBe('Accept-Encoding');
  expect(plain.headers['etag']).not.toBe(packed.headers.get('etag'));
  const refused = await ask('/assets/large.js', 'GET', { 'Accept-Encoding': 'gzip;q=0, br' });
  expect(refused.headers['content-encoding']).toBeUndefined();
  const again = await ask('/assets/large.js', 'GET', {
    'Accept-Encoding': 'br, gzip;q=0.5',
    'If-None-Match': packed.headers.get('etag') ?? '',
  });
  expect(again.status).toBe(304);
});

test('moves on when the port is taken', async () => {
  const blocker = createServer();
  await new Promise<void>((done) => blocker.listen({ host: '127.0.0.1', port: 0 }, done));
  const address = blocker.address();
  const taken = typeof address === 'object' && address !== null ? address.port : 0;
  const second = await startServer({ root: join(folder, 'site'), port: taken });
  expect(second.port).toBeGreaterThan(taken);
  expect((await fetch(second.url)).status).toBe(200);
  await second.close();
  await new Promise((done) => blocker.close(done));
});

test('the file for static hosts carries every header of the server', () => {
  for (const [name, value] of Object.entries(securityHeaders)) {
    expect(headersFile()).toContain(`  ${name}: ${value}\n`);
  }
});
