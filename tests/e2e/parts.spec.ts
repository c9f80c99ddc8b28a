/** Parts on hand in a browser: six parts by keyboard, sixty by paste, an empty bag, what is taken or absurd, a phone. */
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { desk, openApp, type OpenOptions, phone } from '../support/browser.ts';
import { startOwnJob } from '../support/own-job.ts';

const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const eventually = <T>(read: () => Promise<T>) => expect.poll(read, { timeout: 20_000 });

async function openParts(options: OpenOptions = {}): Promise<Page> {
  const { page } = await openApp({ webgl: false, ...options });
  await page.getByRole('link', { name: 'Parts on hand', exact: true }).click();
  await page.locator('.entry').waitFor();
  return page;
}

const next = (page: Page) => page.locator('.entry-line input[data-field]');
const labels = (page: Page) =>
  page
    .locator('.bag-label input')
    .evaluateAll((all) => all.map((input) => (input as HTMLInputElement).value));
const undoName = (page: Page) => page.getByRole('button', { name: /^Undo/ }).getAttribute('aria-label');

async function typeValues(page: Page, values: readonly string[]) {
  for (const value of values) {
    await page.keyboard.type(value);
    await page.keyboard.press('Enter');
  }
}

/** Puts a text on the page as a spreadsheet does. */
async function paste(page: Page, text: string) {
  await next(page).evaluate((field, data) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text', data);
    field.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
  }, text);
}

test('six parts go into the bag with six values and six Enters, and come out again by undo', async () => {
  const page = await openParts({ viewport: desk });
  const before = await labels(page);
  await next(page).focus();
  await typeValues(page, ['.1685', '.2130', '.2130', '.1125', '23/128', '4.35 mm']);
  await eventually(() => labels(page)).toEqual(['P06', 'P05', 'P04', 'P03', 'P02', 'P01', ...before]);
  expect(await page.evaluate(() => document.activeElement?.getAttribute('data-field'))).toBe(
    'part/next/length',
  );
  expect(await page.getByRole('textbox', { name: 'Length of P06' }).inputValue()).toBe('.1713');
  expect(await undoName(page)).toBe('Undo: P06 added');
  await page.keyboard.press('Control+z');
  await eventually(() => labels(page)).toEqual(['P05', 'P04', 'P03', 'P02', 'P01', ...before]);
});

test('what cannot be a length stays in the field with a sentence, and nothing is stored', async () => {
  const page = await openParts();
  const before = await labels(page);
  await next(page).focus();
  await typeValues(page, ['abc']);
  await eventually(() => page.locator('.entry .length-trouble').innerText()).toContain('is not a length');
  expect(await next(page).inputValue()).toBe('abc');
  await next(page).fill('87654');
  await page.keyboard.press('Enter');
  await eventually(() => page.locator('.entry .length-trouble').innerText()).toContain('is outside');
  expect(await labels(page)).toEqual(before);
});

test('sixty parts are pasted after a look, in one step', async () => {
  const page = await openParts({ viewport: desk });
  const before = await labels(page);
  const rows = Array.from({ length: 60 }, (_, i) => `K${i + 1}\t.${String(1500 + 31 * i)}\t1\tgrain store`);
  await paste(page, `Label\tLength (in)\tQty\tFrom\n${rows.join('\n')}`);
  const dialog = page.getByRole('dialog', { name: 'Paste from a spreadsheet' });
  await dialog.getByText('60 parts to put in.').waitFor();
  await dialog.getByRole('button', { name: 'Put 60 parts into the bag' }).click();
  await eventually(() => undoName(page)).toBe('Undo: Pasted 60 parts');
  const list = page.getByRole('table', { name: 'Parts in the bag' });
  expect(await list.getAttribute('aria-rowcount')).toBe(String(60 + before.length));
  // Only what is in sight is on the page, and scrolling brings the rest.
  expect((await labels(page)).length).toBeLessThan(40);
  await list.evaluate((element) => element.scrollTo(0, element.scrollHeight));
  await eventually(() => labels(page)).toContain(before.at(-1));
  await page.getByRole('button', { name: /^Undo/ }).click();
  await eventually(() => list.getAttribute('aria-rowcount')).toBe(String(before.length));
});

test('labels that are taken and lengths that cannot be are told in their cells and settled with a yes', async () => {
  const page = await openParts({ viewport: desk });
  await paste(page, 'A1\t.2310\nNew\t412\nBad\t=1+1\n<b>x</b>\t.3005\n');
  const dialog = page.getByRole('dialog');
  await dialog.getByText('One part to put in, 3 left out.').waitFor();
  expect(await dialog.locator('td[data-good="false"]').count()).toBe(3);
  await dialog.getByRole('checkbox', { name: /label that is taken/ }).check();
  await dialog.getByRole('checkbox', { name: /length that cannot be/ }).check();
  await dialog.getByText('3 parts to put in, 1 left out.').waitFor();
  await dialog.getByRole('button', { name: 'Put 3 parts into the bag' }).click();
  // What was not stored stays to be mended.
  await eventually(() => dialog.getByRole('textbox').inputValue()).toBe('Bad\t=1+1');
  await dialog.getByRole('button', { name: 'Leave the bag as it is' }).click();
  await eventually(async () => (await labels(page)).slice(0, 3)).toEqual(['<b>x</b>', 'New', 'A1-2']);
  const label = page.getByRole('textbox', { name: 'Label of New' });
  await label.fill('a1');
  await label.press('Enter');
  await eventually(() => page.locator('.plain-trouble').innerText()).toContain(
    'A1 is the label of another part',
  );
});

test('a hundred thousand rows are read with progress, and as many stored as a job holds; the rest stays', async () => {
  const page = await openParts({ viewport: desk });
  await paste(page, '.3\n'.repeat(100_000));
  const dialog = page.getByRole('dialog');
  await dialog.getByText(/The job has room for 19,9\d\d more/).waitFor({ timeout: 60_000 });
  expect(await dialog.locator('tbody tr').count()).toBeLessThan(100);
  await dialog.getByRole('button', { name: 'Leave the bag as it is' }).click();
  expect(await page.getByRole('dialog').count()).toBe(0);
});

describe('a new job', () => {
  test('says what to do first, and a part in the cylinder is asked about before it goes', async () => {
    const page = await openParts();
    await startOwnJob(page);
    await page.locator('.measure').waitFor();
    await page.getByRole('link', { name: 'Parts on hand', exact: true }).click();
    await page.getByText('Nothing in the bag yet.').waitFor();
    await page.getByRole('link', { name: 'Measure those first' }).waitFor();
    await page.locator('.bag-tools select').first().selectOption('in use');
    await page.getByRole('button', { name: 'bottom pin: more' }).first().click();
    await page.getByRole('button', { name: 'Take it out …' }).click();
    const asked = page.getByRole('dialog', { name: /Take bottom pin out/ });
    await asked.getByText(/In use: chamber \d of/).waitFor();
    await asked.getByRole('button', { name: 'Take it out' }).click();
    await eventually(() => undoName(page)).toBe('Undo: bottom pin taken out');
  });
});

test('a text that is not stored yet outlives a long scroll', async () => {
  const page = await openParts({ viewport: desk });
  await paste(page, Array.from({ length: 200 }, (_, i) => `Q${i}\t.2`).join('\n'));
  await page.getByRole('button', { name: 'Put 200 parts into the bag' }).click();
  const field = page.getByRole('textbox', { name: 'Length of Q199' });
  await field.fill('nonsense');
  await next(page).focus();
  const list = page.getByRole('table', { name: 'Parts in the bag' });
  await list.evaluate((element) => element.scrollTo(0, element.scrollHeight));
  await eventually(() => field.count()).toBe(0);
  await list.evaluate((element) => element.scrollTo(0, 0));
  await eventually(() => field.inputValue()).toBe('nonsense');
});

test('a spring pressed on a scale has a rate; a driver with a waist is drawn with it', async () => {
  const page = await openParts({ viewport: desk });
  await page.getByRole('combobox', { name: 'Show' }).selectOption('in use');
  const openPart = async (label: string) => {
    await page.getByRole('searchbox').fill(label);
    await page.getByRole('button', { name: `${label}: more` }).click();
  };
  await openPart('spring 1');
  const dialog = page.getByRole('dialog');
  for (const [nth, length, force] of [
    ['first', '.400', '1 N'],
    ['second', '.300', '231.5 g'],
  ] as const) {
    await dialog.getByRole('textbox', { name: `Pressed to, ${nth} time, spring 1` }).fill(length);
    const scale = dialog.getByRole('textbox', { name: `Presses with, ${nth} time, spring 1` });
    await scale.fill(force.split(' ')[0] ?? '');
    await scale.press('Enter');
    await dialog.getByText('Write the unit as well').waitFor();
    await scale.fill(force);
    await scale.press('Enter');
  }
  await dialog.getByText('about 0.50 N for each mm').waitFor();
  await page.keyboard.press('Escape');
  await openPart('driver 1');
  await dialog.getByRole('radio', { name: 'Spool' }).check();
  await dialog.getByRole('textbox', { name: 'Waist, across, driver 1' }).fill('.080');
  await dialog.getByRole('textbox', { name: 'Waist, across, driver 1' }).press('Enter');
  await page.keyboard.press('Escape');
  await eventually(() => undoName(page)).toBe('Undo: Waist, across, driver 1');
});

test('axe finds nothing wrong, light and dark, with and without dialogs', async () => {
  for (const colorScheme of ['light', 'dark'] as const) {
    // evaluated by hand: the page's policy takes no script that was not announced
    const page = await openParts({ viewport: desk, colorScheme, context: { bypassCSP: true } });
    await page.addScriptTag({ path: axe });
    const wrong = (at: string) =>
      page.evaluate(async (where) => {
        type Run = (at: string) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
        const { run } = (window as unknown as { axe: { run: Run } }).axe;
        const { violations } = await run(where);
        return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`);
      }, at);
    await page.locator('.entry summary').click();
    await page.locator('.wanted summary').click();
    await page.locator('.like-questions').waitFor();
    for (const at of ['.wanted', '.entry', '.bag']) expect(await wrong(at)).toEqual([]);
    await page.getByRole('button', { name: 'A1: more' }).click();
    await page.getByRole('dialog').waitFor();
    expect(await wrong('dialog[open]')).toEqual([]);
    await page.keyboard.press('Escape');
    await paste(page, 'Label\tLength\nA1\t.2\nA9\t412\nA10\t.3');
    await page.getByText('One part to put in, 2 left out.').waitFor();
    expect(await wrong('dialog[open]')).toEqual([]);
  }
});

test('nothing is wider than a phone, and the next part can be typed there', async () => {
  for (const width of [phone.width, 320]) {
    const page = await openParts({ viewport: { width, height: phone.height } });
    await page.locator('.parts details.fold').evaluateAll((folds) => {
      for (const fold of folds) fold.setAttribute('open', '');
    });
    await next(page).fill('412');
    await next(page).press('Enter');
    await page.locator('.entry .length-trouble').waitFor();
    await page.locator('.like-questions').first().waitFor();
    const over = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(over).toBe(0);
    await page.getByRole('button', { name: '0.412 in (412 thou)' }).click();
    await eventually(async () => (await labels(page))[0]).toBe('P01');
  }
});
