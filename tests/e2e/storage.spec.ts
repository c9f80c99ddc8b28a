/** Where the work is kept: locked jobs, two tabs, storage that is denied, full or newer, files dropped on the page. */
import { readFileSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readAllJobs } from '../../src/persist/all-jobs.ts';
import { jobToText } from '../../src/persist/job-text.ts';
import { openApp } from '../support/browser.ts';
import { startOwnJob } from '../support/own-job.ts';
import { buildJob } from '../support/job-builder.ts';

/** Without the dialogs of the file system the browser downloads. */
const withDownloads = (context: BrowserContext) =>
  context.addInitScript(() => {
    for (const holder of [window, Window.prototype])
      for (const name of ['showOpenFilePicker', 'showSaveFilePicker']) Reflect.deleteProperty(holder, name);
  });

const PASSPHRASE = 'four plain brass words';
const title = (page: Page) => page.getByRole('textbox', { name: 'Title of the job' });
const titleOf = (page: Page) => title(page).inputValue();
/** The menu closes when the focus goes elsewhere, as it does while a page settles: then it is opened again. */
const menu = async (page: Page, item: string | RegExp) => {
  const entry = page.locator('.job-menu').getByRole('button', { name: item });
  await expect
    .poll(async () => {
      if (!(await entry.isVisible())) await page.locator('.job-menu > summary').click();
      return entry.isVisible();
    })
    .toBe(true);
  await entry.click();
};

async function rename(page: Page, text: string): Promise<void> {
  await title(page).fill(text);
  await title(page).press('Enter');
}

async function startJob(page: Page, name: string): Promise<void> {
  await startOwnJob(page);
  await rename(page, name);
  await page.getByText(/^saved .* on this computer/).waitFor();
}

/** Everything that lies in the browser's storage, as one run of text. */
function storedText(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((done, failed) => {
      const asked = indexedDB.open('shearsight');
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => failed(asked.error ?? new Error('no database'));
    });
    const texts: string[] = [];
    for (const name of database.objectStoreNames) {
      const rows = await new Promise<unknown[]>((done) => {
        const asked = database.transaction(name).objectStore(name).getAll();
        asked.onsuccess = () => done(asked.result as unknown[]);
      });
      for (const row of rows) {
        const { bytes } = row as { bytes?: Uint8Array };
        texts.push(bytes === undefined ? JSON.stringify(row) : new TextDecoder('latin1').decode(bytes));
      }
    }
    database.close();
    return texts.join('\n');
  });
}

async function givePassphrase(page: Page, text: string): Promise<void> {
  await page.locator('.passphrase-line input').first().waitFor();
  for (const field of await page.locator('.passphrase-line input').all()) await field.fill(text);
  await page.locator('.passphrase button[type=submit]').click();
}

test('a locked job: nothing in clear any more, opened again with its passphrase only', async () => {
  const { page } = await openApp({ prepare: withDownloads });
  await startJob(page, 'Vestry cupboard');
  expect(await storedText(page)).toContain('Vestry cupboard');
  await menu(page, 'Lock this job…');
  await givePassphrase(page, 'short');
  await page.getByText('5 characters are soon guessed').waitFor();
  await givePassphrase(page, PASSPHRASE);
  await page.locator('.passphrase').waitFor({ state: 'detached', timeout: 60_000 });
  expect(await storedText(page)).not.toContain('Vestry cupboard');
  await rename(page, 'Vestry chest');
  await page.getByText(/^saved .* on this computer/).waitFor();
  expect(await storedText(page)).not.toContain('Vestry');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    menu(page, 'Save all jobs to one file…'),
  ]);
  expect(readFileSync(await download.path(), 'utf8')).not.toContain('Vestry');
  await page.getByText('One job that is locked or damaged is not in it').waitFor();

  await page.reload();
  await page.getByText('This job is locked with a passphrase.').waitFor();
  expect(await titleOf(page)).not.toContain('Vestry');
  await menu(page, 'Jobs on this computer…');
  await page.getByRole('button', { name: /A locked job/ }).click();
  await givePassphrase(page, 'some other words');
  await page.getByText('That passphrase does not open it.').waitFor({ timeout: 60_000 });
  await givePassphrase(page, PASSPHRASE);
  await expect.poll(() => titleOf(page), { timeout: 60_000 }).toBe('Vestry chest');
  await page.getByRole('button', { name: /^Undo/ }).click();
  expect(await titleOf(page)).toBe('Vestry cupboard');

  await menu(page, 'Close this locked job');
  await page.getByText('The job is locked. Open it with its passphrase').waitFor();
  expect(await titleOf(page)).not.toContain('Vestry');
}, 180_000);

test('a second tab looks on, and takes over when asked; the first one can take it back', async () => {
  const { page, context } = await openApp();
  await startJob(page, 'Pump house');
  const second = await context.newPage();
  await second.goto(page.url());
  await second.getByText('This job is open in another tab.').waitFor();
  await second.getByRole('button', { name: 'Take it over here' }).click();
  await page.getByText('Another tab took this job over.').waitFor();
  await rename(second, 'Pump house, back');
  await second.getByText(/^saved .* on this computer/).waitFor();
  await page.getByRole('button', { name: 'Take it over here' }).click();
  await expect.poll(() => titleOf(page)).toBe('Pump house, back');
});

test('a job with markup in its name: listed as text, saved with all others, deleted, brought back, removed for good', async () => {
  const name = '<img src=x onerror="document.title=1">\u202E & =1+1';
  const { page } = await openApp({ prepare: withDownloads });
  await startJob(page, 'Boat shed');
  await menu(page, 'New empty job');
  await expect.poll(() => titleOf(page)).toBe('My cylinder');
  await rename(page, name);
  await page.getByText(/^saved .* on this computer/).waitFor();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    menu(page, 'Save all jobs to one file…'),
  ]);
  const all = readAllJobs(readFileSync(await download.path(), 'utf8'));
  expect(all.type === 'success' && all.jobs.map(({ title }) => title)).toEqual([name, 'Boat shed']);

  await menu(page, 'Jobs on this computer…');
  const line = page.getByRole('listitem').filter({ hasText: name });
  await line.getByRole('button', { name: 'Delete', exact: true }).click();
  await line.getByText('deleted').waitFor();
  await line.getByRole('button', { name: 'Bring back' }).click();
  await line.getByRole('button', { name: 'Delete', exact: true }).click();
  await line.getByRole('button', { name: 'Remove for good…' }).click();
  const keep = line.getByRole('button', { name: 'Keep it' });
  await expect.poll(() => keep.evaluate((each) => each === document.activeElement)).toBe(true);
  await keep.click();
  expect(await storedText(page)).toContain('onerror');
  await line.getByRole('button', { name: 'Remove for good…' }).click();
  await line.getByRole('button', { name: 'Remove it' }).click();
  await line.waitFor({ state: 'detached' });
  expect(await storedText(page)).not.toContain('onerror');
  expect(await titleOf(page)).not.toBe(name);
  expect(await page.title()).toBe('Shearsight');
  await page.getByRole('listitem').filter({ hasText: 'Boat shed' }).waitFor();
});

test('a deleted job does not come back at the next start, until it is brought back', async () => {
  const { page } = await openApp();
  await startJob(page, 'Chapel door');
  const listed = page.getByRole('listitem').filter({ hasText: 'Chapel door' });
  await menu(page, 'Jobs on this computer…');
  await listed.getByRole('button', { name: 'Delete', exact: true }).click();
  await listed.getByText('deleted').waitFor();
  await page.reload();
  await menu(page, 'Jobs on this computer…');
  await listed.getByText('deleted').waitFor();
  expect(await titleOf(page)).not.toBe('Chapel door');
  await listed.getByRole('button', { name: 'Bring back' }).click();
  await listed.getByRole('button', { name: 'Chapel door' }).click();
  await expect.poll(() => titleOf(page)).toBe('Chapel door');
  // Opened once more while it is open: it stays this tab's to save.
  await menu(page, 'Jobs on this computer…');
  await listed.getByRole('button', { name: 'Chapel door' }).click();
  await page.locator('dialog').waitFor({ state: 'detached' });
  await rename(page, 'Chapel, side door');
  await page.getByText(/^saved .* on this computer/).waitFor();
  expect(await page.getByText('open in another tab').count()).toBe(0);
});

test('the example changed before saving is loaded: kept when another job is begun at once', async () => {
  const held: (() => void)[] = [];
  const { page } = await openApp({
    prepare: (context) =>
      context.route(/keeper-[^/]*\.js$/, async (route) => {
        await new Promise<void>((done) => held.push(done));
        await route.continue();
      }),
  });
  await rename(page, 'Lighthouse, as I found it');
  await expect.poll(() => held.length).toBeGreaterThan(0);
  await page.getByRole('button', { name: 'Start with my cylinder' }).click();
  for (const letGo of held) letGo();
  await expect.poll(() => titleOf(page)).toBe('My cylinder');
  await page.getByText(/^saved .* on this computer/).waitFor();
  await menu(page, 'Jobs on this computer…');
  await page.getByRole('listitem').filter({ hasText: 'Lighthouse, as I found it' }).waitFor();
});

test('where the browser keeps nothing, everything works and the file is offered', async () => {
  const { page } = await openApp({
    prepare: (context) =>
      context.addInitScript(() => {
        Object.defineProperty(IDBFactory.prototype, 'open', {
          value: () => {
            throw new DOMException('denied', 'SecurityError');
          },
        });
      }),
  });
  await page.getByRole('alert').getByText('the browser lets this page keep nothing').waitFor();
  await page.getByRole('button', { name: 'Save to a file…' }).first().waitFor();
  await rename(page, 'Still editable');
  expect(await titleOf(page)).toBe('Still editable');
});

test('a full disk is told, with another try that works once there is room', async () => {
  const { page } = await openApp();
  await startJob(page, 'Boathouse');
  await page.evaluate(() => {
    const put = Object.getOwnPropertyDescriptor(IDBObjectStore.prototype, 'put')
      ?.value as IDBObjectStore['put'];
    const state = window as unknown as { hasRoom: boolean };
    state.hasRoom = false;
    IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...given: [unknown, IDBValidKey?]) {
      if (!state.hasRoom) throw new DOMException('full', 'QuotaExceededError');
      return put.apply(this, given);
    };
  });
  await rename(page, 'Boathouse, side door');
  await page.getByRole('alert').getByText('no room left').waitFor();
  await page.evaluate(() => {
    (window as unknown as { hasRoom: boolean }).hasRoom = true;
  });
  await page.getByRole('button', { name: 'Try again' }).click();
  await page.getByText(/^saved .* on this computer/).waitFor();
  await page.reload();
  await expect.poll(() => titleOf(page)).toBe('Boathouse, side door');
});

test('a job file dropped on the page opens; something else is told', async () => {
  const { page } = await openApp();
  const drop = (name: string, text: string) =>
    page.evaluate(
      ([fileName, content]) => {
        const data = new DataTransfer();
        data.items.add(new File([content ?? ''], fileName ?? ''));
        window.dispatchEvent(new DragEvent('drop', { dataTransfer: data, cancelable: true }));
      },
      [name, text],
    );
  await page.locator('.job-menu').waitFor();
  await drop('holiday.txt', 'sun and sea');
  await page.getByText('This file is not readable from line 1 on').waitFor();
  await drop('job.json', jobToText(buildJob({ title: 'Dropped on the bench' })));
  await expect.poll(() => titleOf(page)).toBe('Dropped on the bench');
});

test('a file of a newer version: looked at, not changed, not saved here, handed back as it came', async () => {
  const { page } = await openApp({ prepare: withDownloads });
  await page.locator('.job-menu').waitFor();
  const text = jobToText(buildJob({ title: 'From next year' }));
  const newer = { ...(JSON.parse(text) as object), schemaVersion: 99, tomorrow: { colour: 'blue' } };
  const raw = JSON.stringify(newer);
  await page.evaluate((content) => {
    const data = new DataTransfer();
    data.items.add(new File([content], 'newer.json'));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: data, cancelable: true }));
  }, raw);
  await page.getByText('This job was saved by a newer Shearsight.').waitFor();
  expect(await titleOf(page)).toBe('From next year');
  await rename(page, 'Changed');
  await expect.poll(() => titleOf(page)).toBe('From next year');
  const download = page.waitForEvent('download');
  await page.locator('.save-trouble').getByRole('button', { name: 'Save to a file…' }).click();
  const stream = await (await download).createReadStream();
  let saved = '';
  for await (const piece of stream) saved += String(piece);
  expect(saved).toBe(raw);
  expect(await storedText(page)).not.toContain('From next year');
});

test('veiled: lengths are blurred, the field in use and the verdicts are not', async () => {
  const { page } = await openApp();
  await page.locator('.job-menu > summary').click();
  await page.getByRole('radio', { name: /Blurred/ }).check();
  const blur = (selector: string) =>
    page
      .locator(selector)
      .first()
      .evaluate((element) => getComputedStyle(element).filter);
  expect(await blur('.length-input')).toContain('blur');
  expect(await blur('.use-range')).toContain('blur');
  await page.locator('.length-input').first().focus();
  expect(await blur('.length-input')).toBe('none');
  expect(await blur('.chamber-verdict')).toBe('none');
  await page.reload();
  await page.locator('.length-input').first().waitFor();
  expect(await blur('.length-input')).toContain('blur');
});
