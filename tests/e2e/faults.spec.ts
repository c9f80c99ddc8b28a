/**
 * Faults, one by one (docs/faults.md): in each the numbers and the entry stay usable, nothing is lost, and a sentence says what is
 * the matter and what next. Storage that is denied or full, second tabs, waiting updates: storage.spec.ts, offline.spec.ts.
 */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { type OpenOptions, openApp } from '../support/browser.ts';
import { startOwnJob } from '../support/own-job.ts';

const title = (page: Page) => page.getByRole('textbox', { name: 'Title of the job' });

async function rename(page: Page, text: string): Promise<void> {
  await title(page).fill(text);
  await title(page).press('Enter');
  await page.getByText(/^saved .* on this computer/).waitFor();
}

/** An edit, its picture in words, and its saving all still work. */
async function isUsable(page: Page): Promise<void> {
  await rename(page, 'After the fault');
  expect(await page.locator('output.answer-headline').first().innerText()).toMatch(/\w/);
}

async function openSolid(options: OpenOptions = {}) {
  const opened = await openApp(options);
  const { page } = opened;
  await page.getByRole('button', { name: 'Solid', exact: true }).click();
  return opened;
}

const canvas = (page: Page) => page.locator('.solid-canvas canvas').first();

/** Takes the picture away as a graphics driver does; gives it back if asked. */
const loseContext = (page: Page, isBack: boolean) =>
  canvas(page).evaluate((element, back) => {
    const context = (element as HTMLCanvasElement).getContext('webgl2');
    const lose = context?.getExtension('WEBGL_lose_context');
    lose?.loseContext();
    if (back) setTimeout(() => lose?.restoreContext(), 300);
  }, isBack);

/** Console lines that the browser or three write themselves when a context goes. */
const CONTEXT_TALK = [/context/i];

test('graphics lost once: the picture comes back', async () => {
  const { page } = await openSolid({ expected: CONTEXT_TALK });
  await canvas(page).waitFor();
  await page.waitForTimeout(1500);
  await loseContext(page, true);
  await expect
    .poll(() =>
      canvas(page).evaluate(
        (element) => (element as HTMLCanvasElement).getContext('webgl2')?.isContextLost() === false,
      ),
    )
    .toBe(true);
  expect(await page.locator('.solid-trouble').count()).toBe(0);
  await isUsable(page);
});

test('graphics lost twice: the solid view gives up and the drawing shows the same', async () => {
  const { page } = await openSolid({ expected: CONTEXT_TALK });
  await canvas(page).waitFor();
  await page.waitForTimeout(1500);
  await loseContext(page, true);
  await page.waitForTimeout(1200);
  await loseContext(page, false);
  await page.locator('.solid-trouble').waitFor();
  expect(await page.locator('.solid-trouble').innerText()).toMatch(/drawing/i);
  await page.getByRole('button', { name: 'Drawing', exact: true }).click();
  await page.locator('.long-section svg').waitFor();
  await isUsable(page);
});

test('graphics that never come back: told after a while', async () => {
  const { page } = await openSolid({ expected: CONTEXT_TALK });
  await canvas(page).waitFor();
  await page.waitForTimeout(1500);
  await loseContext(page, false);
  await page.locator('.solid-trouble').waitFor({ timeout: 20_000 });
  await isUsable(page);
});

test('no graphics at all: the solid view says so, everything else is there', async () => {
  const { page } = await openSolid({ webgl: false });
  await page.locator('.solid-trouble').waitFor();
  await isUsable(page);
});

test('the worker that makes the solids is killed: told, the drawing stays', async () => {
  const { page } = await openSolid();
  await canvas(page).waitFor();
  await expect.poll(() => page.workers().length).toBeGreaterThan(0);
  for (const worker of page.workers()) await worker.evaluate(() => self.close()).catch(() => undefined);
  await page.getByRole('button', { name: 'Drawing', exact: true }).click();
  await page.locator('.long-section svg').waitFor();
  await isUsable(page);
});

test('WebAssembly refused: the solid view says so', async () => {
  const { page } = await openSolid({
    expected: [/wasm/i, /WebAssembly/i, /ArrayBuffer instantiation/i],
    prepare: (context) =>
      context.route('**/*.wasm', (route) =>
        route.fulfill({ status: 200, contentType: 'application/wasm', body: 'not' }),
      ),
  });
  await page.locator('.solid-trouble').waitFor();
  expect(await page.locator('.solid-trouble').innerText()).toMatch(/drawing/i);
  await isUsable(page);
});

test('a drawing that cannot be made: told in its place, entry goes on, and it is tried again', async () => {
  const { page } = await openSolid({
    expected: [/made to fail/],
    prepare: (context) =>
      context.addInitScript(() => {
        const make = document.createElementNS.bind(document) as (space: string, name: string) => Element;
        Object.defineProperty(document, 'createElementNS', {
          value: (space: string, name: string) => {
            if (name === 'svg' && (window as { breaks?: boolean }).breaks === true)
              throw new Error('made to fail');
            return make(space, name);
          },
        });
      }),
  });
  // Everything else of the page is there: only the drawing is made anew while nothing can be drawn.
  await canvas(page).waitFor();
  await page.locator('.chamber-verdict').first().waitFor();
  await page.waitForLoadState('networkidle');
  await page.waitForTimeout(1000);
  await page.evaluate(() => {
    (window as { breaks?: boolean }).breaks = true;
  });
  await page.getByRole('button', { name: 'Drawing', exact: true }).click();
  await page.getByText('The picture could not be shown. Your readings are safe').waitFor();
  await page.evaluate(() => {
    (window as { breaks?: boolean }).breaks = false;
  });
  await isUsable(page);
  await page.getByRole('button', { name: 'Try again' }).click();
  await page.locator('.long-section svg').waitFor();
});

test('an error inside the solid view: told in its place, the drawing stays', async () => {
  const { page } = await openApp({ expected: [/ResizeObserver/] });
  await page.locator('.chamber-verdict').first().waitFor();
  // What the canvas measures itself with fails, there and nowhere else.
  await page.evaluate(() => {
    const Kept = window.ResizeObserver;
    window.ResizeObserver = class extends Kept {
      override observe(element: Element) {
        if (element.closest('.solid-place') !== null) throw new Error('ResizeObserver made to fail');
        super.observe(element);
      }
    };
  });
  await page.getByRole('button', { name: 'Solid', exact: true }).click();
  await page.getByText(/The solid view ran into an error .* The drawing shows the same section/).waitFor();
  await isUsable(page);
  await page.getByRole('button', { name: 'Drawing', exact: true }).click();
  await page.locator('.long-section svg').waitFor();
});

type Row = { id: string; revision: number; bytes: Uint8Array };

/** Changes the newest saved state of the job as a failing disk would. */
const damageNewest = (page: Page) =>
  page.evaluate(async () => {
    const asked = indexedDB.open('shearsight');
    const database = await new Promise<IDBDatabase>((done) => {
      asked.onsuccess = () => done(asked.result);
    });
    const transaction = database.transaction(['jobs', 'revisions'], 'readwrite');
    const heads = transaction.objectStore('jobs').getAll();
    await new Promise<void>((done) => {
      transaction.oncomplete = () => done();
      heads.onsuccess = () => {
        for (const row of heads.result as Row[]) {
          const bytes = row.bytes.slice();
          bytes[20] = (bytes[20] ?? 0) ^ 255;
          transaction.objectStore('jobs').put({ ...row, bytes });
          transaction.objectStore('revisions').put({ ...row, bytes });
        }
      };
    });
    database.close();
  });

test('a damaged saved state: set aside, the one before it opens', async () => {
  const { page } = await openApp();
  await startOwnJob(page);
  await rename(page, 'First');
  await rename(page, 'Second');
  await page.goto('about:blank');
  await page.goBack();
  await title(page).waitFor();
  await damageNewest(page);
  await page.reload();
  await page.getByText('The newest saved state of this job was damaged').waitFor();
  expect(await title(page).inputValue()).toBe('First');
  await isUsable(page);
});

test('storage of a newer version: left alone, told, and the file is offered', async () => {
  const { page, baseUrl } = await openApp({ path: 'icon.svg' });
  await page.evaluate(async () => {
    const asked = indexedDB.open('shearsight', 9000);
    await new Promise((done) => {
      asked.onsuccess = done;
    });
    asked.result.close();
  });
  await page.goto(baseUrl);
  await page
    .getByRole('alert')
    .getByText(/newer Shearsight/)
    .waitFor();
  await page.getByRole('button', { name: 'Save to a file…' }).first().waitFor();
  await title(page).fill('Still here');
});

test('the clock set back: the newest step is still the newest', async () => {
  const { page } = await openApp();
  await startOwnJob(page);
  await rename(page, 'Before');
  await page.clock.setFixedTime(new Date('2001-02-03T04:05:06Z'));
  await rename(page, 'After the clock went back');
  await page.reload();
  await expect.poll(() => title(page).inputValue()).toBe('After the clock went back');
});
