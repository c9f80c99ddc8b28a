/** Check's findings with "Show me", and what it keeps closed: drivers, the way, from what you see, the load sheet, limits. */
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { desk, openApp } from '../support/browser.ts';

const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const FOLDS = ['drivers', 'way', 'symptoms', 'load-sheet', 'thresholds'] as const;
const narrow = { width: 320, height: 700 } as const;

async function openCheck(options: Parameters<typeof openApp>[0] = {}) {
  const opened = await openApp({ viewport: desk, webgl: false, ...options });
  await opened.page.getByRole('link', { name: 'Check' }).click();
  await opened.page.locator('.check-folds').waitFor();
  return opened;
}

async function openFold(page: Page, id: (typeof FOLDS)[number]) {
  await page.locator(`[data-fold=${id}] > summary`).press('Enter');
  const body = page.locator(`[data-fold=${id}] .check-fold-body`);
  await body.locator(':scope > :not(.quiet)').first().waitFor();
  return body;
}

describe('findings', () => {
  test('Show me picks the chamber, brings the key home and goes to the picture', async () => {
    const { page } = await openCheck();
    const finding = page.locator('.finding', { hasText: 'Chamber 4: its cut lies .005 in off' });
    expect(await finding.innerText()).toMatch(/^Look at this\. Chamber 4/u);
    // the example opens with its key half way in
    const slider = page.getByRole('slider', { name: 'Key, how far in' });
    expect(await slider.getAttribute('aria-valuetext')).not.toMatch(/fully in/u);
    await finding.getByRole('button', { name: /^Show me: Chamber 4/u }).press('Enter');
    await expect.poll(() => slider.getAttribute('aria-valuetext')).toMatch(/fully in/u);
    expect(await page.locator('#section').evaluate((element) => element === document.activeElement)).toBe(
      true,
    );
    expect(await page.locator('#picked-chamber h2').innerText()).toBe('Chamber 4');
  });
});

describe('what is kept closed', () => {
  test('is not loaded before it is wanted', async () => {
    const { page } = await openCheck();
    const loaded = () =>
      page.evaluate(() =>
        performance.getEntriesByType('resource').map(({ name }) => name.replace(/.*\//u, '')),
      );
    expect((await loaded()).filter((name) => name.startsWith('driver-table'))).toEqual([]);
    await openFold(page, 'drivers');
    expect((await loaded()).filter((name) => name.startsWith('driver-table')).length).toBeGreaterThan(0);
  });

  test('drivers: the range follows the person’s own limit, and the usual one comes back', async () => {
    const { page } = await openCheck();
    const drivers = await openFold(page, 'drivers');
    const range = drivers.getByRole('row').nth(1).locator('.number');
    const before = await range.innerText();
    expect(before).toBe('.1850 to .3050');
    await openFold(page, 'thresholds');
    const field = page.getByRole('textbox', { name: 'Driver past the line, key out, at least' });
    await field.fill('.030');
    await field.press('Enter');
    await expect.poll(() => range.innerText()).toBe('.1950 to .3050');
    await field.fill('');
    await field.press('Enter');
    await expect.poll(() => range.innerText()).toBe(before);
  });

  test('from what you see: the chamber that was made too high, by keyboard, with the key brought there', async () => {
    const { page } = await openCheck();
    const body = await openFold(page, 'symptoms');
    const choice = page.getByRole('combobox', { name: 'What do you see?' });
    await choice.focus();
    await page.keyboard.type('One');
    await expect.poll(() => body.locator('.explanation').count()).toBeGreaterThan(0);
    const text = await body.locator('[aria-live]').innerText();
    expect(text).toContain('Your readings show it');
    expect(text).toContain('Chamber 5 is too high, .0055 in outside where it turns.');
    await body.getByRole('button', { name: /^Show me: Chamber 5 is too high/u }).press('Enter');
    expect(await page.locator('#picked-chamber h2').innerText()).toBe('Chamber 5');
  });

  test('the load sheet: farthest first, with what the tests will show', async () => {
    const { page } = await openCheck();
    const body = await openFold(page, 'load-sheet');
    expect(await body.locator('.load-row strong').allInnerTexts()).toEqual(['6', '5', '4', '3', '2', '1']);
    const tick = body.getByRole('checkbox').first();
    await tick.press('Space');
    expect(await tick.isChecked()).toBe(true);
    const tests = await body.locator('.load-test').allInnerTexts();
    expect(tests.some((each) => /^Key fully in.*it does not turn$/su.test(each))).toBe(true);
    expect(tests.some((each) => /^Key out.*it does not turn: 6 of 6 chambers hold$/su.test(each))).toBe(true);
  });
});

test.each(['light', 'dark'] as const)(
  'all folds open, %s, 320 px: nothing sticks out, nothing axe finds wrong',
  async (colorScheme) => {
    const { page } = await openCheck({ viewport: narrow, colorScheme, context: { bypassCSP: true } });
    for (const id of FOLDS) await openFold(page, id);
    await page.getByRole('combobox', { name: 'What do you see?' }).selectOption('stops-short');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(narrow.width);
    await page.addScriptTag({ path: axe });
    const violations = await page.evaluate(async () => {
      const { axe: checker } = window as unknown as {
        axe: { run: (place: string) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
      };
      return (await checker.run('.station.check')).violations.map(
        ({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`,
      );
    });
    expect(violations).toEqual([]);
  },
);
