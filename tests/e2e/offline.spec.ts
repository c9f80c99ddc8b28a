/** The app without a network, and a newer build beside the running one. The server is our own and is stopped on purpose. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { expect, onTestFinished, test } from 'vitest';
import { startServer } from '../../tools/static-server.mjs';
import { openApp } from '../support/browser.ts';
import { startOwnJob } from '../support/own-job.ts';

const dist = fileURLToPath(new URL('../../dist', import.meta.url));

/** A server for a copy of the build, so that the build can change. */
async function serveCopy() {
  const folder = mkdtempSync(join(tmpdir(), 'shearsight-'));
  cpSync(dist, folder, { recursive: true });
  const server = await startServer({ root: folder });
  let isClosed = false;
  const close = async () => {
    if (!isClosed) await server.close();
    isClosed = true;
  };
  onTestFinished(async () => {
    await close();
    rmSync(folder, { recursive: true });
  });
  return { folder, close, url: server.url };
}

/** Until the app is kept whole and answers for itself. */
async function isKept(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const { serviceWorker } = navigator;
    await serviceWorker.ready;
    if (serviceWorker.controller === null)
      await new Promise((done) => serviceWorker.addEventListener('controllerchange', done, { once: true }));
  });
}

test('starts cold without a network, solids and all, and keeps what is edited', async () => {
  const { url, close } = await serveCopy();
  const { page, context } = await openApp({ baseUrl: url, context: { serviceWorkers: 'allow' } });
  await isKept(page);
  await close();
  const cold = await context.newPage();
  await page.close();
  await cold.goto(url);
  await startOwnJob(cold);
  const title = cold.getByRole('textbox', { name: 'Title of the job' });
  await title.fill('Back gate');
  await title.press('Enter');
  await cold.getByText(/^saved .* on this computer/).waitFor();
  await cold.reload();
  await expect
    .poll(() => cold.getByRole('textbox', { name: 'Title of the job' }).inputValue())
    .toBe('Back gate');
  await cold.getByRole('button', { name: 'Solid', exact: true }).click();
  await cold.locator('.solid-place canvas').waitFor();
});

test('a newer build waits, says so, and is used when the person says so, with nothing lost', async () => {
  const { url, folder } = await serveCopy();
  const { page } = await openApp({ baseUrl: url, context: { serviceWorkers: 'allow' } });
  await isKept(page);
  await startOwnJob(page);
  const newer = { name: 'service-worker.js', from: /(version:.)\w{4}/, to: '$10000' };
  const worker = readFileSync(join(folder, newer.name), 'utf8');
  expect(worker).toMatch(newer.from);
  writeFileSync(join(folder, newer.name), worker.replace(newer.from, newer.to));
  writeFileSync(
    join(folder, 'index.html'),
    readFileSync(join(folder, 'index.html'), 'utf8').replace('<title>Shearsight', '<title>Newer Shearsight'),
  );
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
  const use = page.getByRole('button', { name: 'Save and use it now' });
  await use.waitFor();
  expect(await page.title()).toBe('Shearsight');
  const title = page.getByRole('textbox', { name: 'Title of the job' });
  await title.fill('Coal cellar');
  await title.press('Enter');
  await use.click();
  await expect.poll(() => page.title()).toBe('Newer Shearsight');
  await expect
    .poll(() => page.getByRole('textbox', { name: 'Title of the job' }).inputValue())
    .toBe('Coal cellar');
});
