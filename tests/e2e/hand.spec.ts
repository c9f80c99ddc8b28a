/**
 * What the hand has to do: the keys a whole job takes, a caliper that types by itself, and what is remembered for the next job.
 * Keys are counted as a keyboard sends them: each character one, Tab, Enter and arrows one each.
 */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openApp } from '../support/browser.ts';
import { recordFigure } from '../support/figure.ts';

const ROOTS = ['.369', '.421', '.333', '.393', '.453', '.303'];
const STACKS = ['.3345', '.2790', '.3680', '.3100', '.2600', '.3990'];
const PLUG = '.748';
const FLOOR = '.042';
const CHAMBERS = 6;
/** Beyond the characters of each value one key; and so many others in all. */
const MOST_OTHERS = 12;

const focusedName = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement;
    const label = at instanceof HTMLInputElement ? at.labels?.[0]?.textContent : null;
    return at?.getAttribute('aria-label') ?? label ?? at?.textContent ?? '';
  });

test('a six-chamber job takes one key beyond each value and a dozen others', async () => {
  const { page } = await openApp({ webgl: false });
  await page.getByRole('button', { name: 'Start with my cylinder' }).click();
  await expect.poll(() => focusedName(page)).toMatch(/^Plug/);
  let ends = 0;
  let others = 0;
  const value = async (text: string): Promise<void> => {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
    ends += 1;
  };
  const press = async (key: string): Promise<void> => {
    await page.keyboard.press(key);
    others += 1;
  };
  const reach = async (name: RegExp): Promise<void> => {
    for (let presses = 0; presses < 40 && !name.test(await focusedName(page)); presses++) await press('Tab');
    expect(await focusedName(page)).toMatch(name);
  };
  await value(PLUG);
  await reach(/^Level/);
  await press('ArrowRight');
  await reach(/^Metal under the key/);
  await value(FLOOR);
  await reach(/^Root depth, cut 1$/);
  for (const text of [...ROOTS, ...STACKS]) await value(text);
  await expect.poll(() => page.locator('output.answer-headline').innerText()).toMatch(/turn/);
  expect(ends).toBe(2 + 2 * CHAMBERS);
  expect(others).toBeLessThanOrEqual(MOST_OTHERS);
  recordFigure({
    what: 'keys of a six-chamber job beyond the characters of its values',
    measured: ends + others,
    unit: 'keys',
    aim: { atMost: ends + MOST_OTHERS },
    note: `${ends} Enter, ${others} others`,
  });
});

test('a caliper that types fills a column with value and Enter alone, no keyboard on the screen, and the next job starts with it', async () => {
  const { page } = await openApp({ webgl: false });
  await page.getByRole('button', { name: 'Start with my cylinder' }).click();
  await expect.poll(() => focusedName(page)).toMatch(/^Plug/);
  await page.locator('main details').evaluateAll((folds) => {
    for (const fold of folds) fold.setAttribute('open', '');
  });
  await page.getByRole('group', { name: 'Does it type into the field by itself?' }).getByLabel('Yes').check();
  await page.getByRole('group', { name: 'In your hand' }).getByLabel('Dial caliper').check();
  const first = page.getByRole('textbox', { name: 'Root depth, cut 1', exact: true });
  await first.focus();
  await page.evaluate(() => {
    const counted = window as { otherKeys?: number };
    counted.otherKeys = 0;
    document.addEventListener(
      'keydown',
      ({ key }) => {
        if (!/^([\d.]|Enter)$/.test(key)) counted.otherKeys = (counted.otherKeys ?? 0) + 1;
      },
      true,
    );
  });
  for (const text of ROOTS) {
    expect(await page.evaluate(() => document.activeElement?.getAttribute('inputmode'))).toBe('none');
    await page.keyboard.type(`${text}\n`);
  }
  await expect
    .poll(() => page.getByRole('textbox', { name: 'Root depth, cut 6', exact: true }).inputValue())
    .toBe(`${ROOTS[5] ?? ''}0`);
  recordFigure({
    what: 'with a caliper that types value and Enter: other keys of a column',
    measured: await page.evaluate(() => (window as { otherKeys?: number }).otherKeys ?? NaN),
    unit: 'keys',
    aim: { atMost: 0 },
    note: `${ROOTS.length} values`,
  });

  await page.locator('.job-menu > summary').click();
  await page.getByRole('button', { name: 'New empty job' }).click();
  await expect.poll(() => first.inputValue()).toBe('');
  await page.locator('main details').evaluateAll((folds) => {
    for (const fold of folds) fold.setAttribute('open', '');
  });
  const inHand = page.getByRole('group', { name: 'In your hand' });
  await expect.poll(() => inHand.getByLabel('Dial caliper').isChecked()).toBe(true);
  expect(await first.getAttribute('inputmode')).toBe('none');
});

test('keys are listed, and those that work everywhere can be turned off for good', async () => {
  const { page } = await openApp({ webgl: false });
  const cut = page.getByRole('textbox', { name: 'Root depth, cut 2', exact: true });
  const change = async (): Promise<void> => {
    await cut.fill('.4110');
    await page.keyboard.press('Enter');
    await expect.poll(() => cut.inputValue()).toBe('.4110');
  };
  await change();
  await page.keyboard.press('Control+z');
  await expect.poll(() => cut.inputValue()).toBe('.4080');
  await page.locator('.job-menu > summary').click();
  await page.locator('.keys > summary').click();
  expect(await page.locator('.keys dl > div').count()).toBeGreaterThan(10);
  await page.getByRole('group', { name: 'Keys that work everywhere' }).getByLabel('Off').check();
  await page.keyboard.press('Escape');
  await change();
  await page.keyboard.press('Control+z');
  // The browser may take back what was typed; the step stays.
  await page.getByRole('button', { name: 'Undo: Root depth, cut 2' }).waitFor();
  await page.reload();
  await page.locator('.job-menu > summary').click();
  await page.locator('.keys > summary').click();
  const off = page.getByRole('group', { name: 'Keys that work everywhere' }).getByLabel('Off');
  await expect.poll(() => off.isChecked()).toBe(true);
});
