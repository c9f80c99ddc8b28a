/** The browser tests are only worth what their harness notices: each kind of problem is brought about once on purpose. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startServer } from '../../tools/static-server.mjs';
import type { RunningServer } from '../../tools/static-server.mjs';
import { openApp } from '../support/browser.ts';
import type { Problem } from '../support/browser-watch.ts';

let folder: string;
let server: RunningServer;

const pages: Record<string, string> = {
  'clean.js': 'document.title = "ran";',
  'console.js': 'console.error("bad news");',
  'uncaught.js': 'setTimeout(() => { throw new Error("nobody caught this"); });',
  'missing.js': 'fetch("nothing-here.json");',
  'sink.js': 'document.body.innerHTML = "<b>markup</b>";',
  'eval.js': 'try { new Function("return 1"); } catch { document.title = "refused"; }',
  'outside.js': 'new Image().src = "http://elsewhere.example/pixel.png";',
  'loopback.js': 'fetch("http://127.0.0.1:9/").catch(() => undefined);',
  'worker.js':
    'const policy = trustedTypes.createPolicy("shearsight", { createScriptURL: (url) => url });' +
    'new Worker(policy.createScriptURL("in-worker.js"));',
  'in-worker.js': 'try { new Function("return 1"); } catch { console.error("worker refused"); }',
};

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'harness-'));
  for (const [name, text] of Object.entries(pages)) {
    await writeFile(join(folder, name), text);
    const html = `<!doctype html><title>page</title><body><script src="${name}"></script>`;
    await writeFile(join(folder, name.replace('.js', '.html')), html);
  }
  await writeFile(
    join(folder, 'inline.html'),
    '<!doctype html><body><script>1</script><p style="color:red">x',
  );
  server = await startServer({ root: folder });
});

afterAll(async () => {
  await server.close();
  await rm(folder, { recursive: true });
});

const kinds = (problems: readonly Problem[]) => new Set(problems.map(({ kind }) => kind));

test.each([
  ['console.html', 'console', /bad news/],
  ['uncaught.html', 'uncaught', /nobody caught this/],
  ['missing.html', 'failed request', /nothing-here\.json 404/],
  ['sink.html', 'policy', /require-trusted-types-for blocked trusted-types-sink/],
  ['eval.html', 'policy', /trusted-types-sink Function/],
  ['inline.html', 'policy', /script-src-elem blocked inline/],
  ['inline.html', 'policy', /style-src-attr blocked inline/],
  ['outside.html', 'policy', /img-src blocked http:\/\/elsewhere\.example/],
  ['loopback.html', 'policy', /connect-src blocked http:\/\/127\.0\.0\.1:9/],
  ['worker.html', 'console', /worker refused/],
])('the harness notices what %s does: %s %s', async (path, kind, text) => {
  const { problems } = await openApp({ baseUrl: server.url, path, expected: [/[^]*/] });
  const seen = () => problems.some((problem) => problem.kind === kind && text.test(problem.text));
  await expect.poll(seen, { timeout: 5000, message: `${kind} ${String(text)}` }).toBe(true);
});

test('a request that leaves the origin is noticed even where the policy lets it pass', async () => {
  const { page, problems } = await openApp({
    baseUrl: server.url,
    path: 'clean.html',
    expected: [/elsewhere/],
  });
  await page.goto('http://elsewhere.example/').catch(() => undefined);
  expect(kinds(problems)).toContain('off origin');
});

test.fails('a test whose page had a problem fails at its end', { retry: 0 }, async () => {
  const { problems } = await openApp({ baseUrl: server.url, path: 'console.html' });
  await expect.poll(() => problems.length, { timeout: 5000 }).toBeGreaterThan(0);
});

test('a clean page has no problems', async () => {
  const { page, unexpected } = await openApp({ baseUrl: server.url, path: 'clean.html' });
  await page.waitForFunction(() => document.title === 'ran');
  expect(await unexpected()).toEqual([]);
});

test('software WebGL draws, and is gone when switched off', async () => {
  const hasWebgl = (webgl: boolean) =>
    openApp({ baseUrl: server.url, path: 'clean.html', webgl }).then(({ page }) =>
      page.evaluate(() => {
        const context = document.createElement('canvas').getContext('webgl2');
        if (context === null) return 'none';
        context.clearColor(1, 0, 0, 1);
        context.clear(context.COLOR_BUFFER_BIT);
        const pixel = new Uint8Array(4);
        context.readPixels(0, 0, 1, 1, context.RGBA, context.UNSIGNED_BYTE, pixel);
        return pixel.join(' ');
      }),
    );
  expect(await hasWebgl(true)).toBe('255 0 0 255');
  expect(await hasWebgl(false)).toBe('none');
});
