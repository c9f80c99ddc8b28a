/**
 * The main job by keyboard alone: six chambers entered from readings, the bad stack told in words, mended, the key slid in,
 * the turn tried, the page reloaded, everything found again. With WebGL and without.
 */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { desk, openApp, phone } from '../support/browser.ts';
import { focusedName, tabTo } from '../support/keys.ts';

const ROOTS = ['.352', '.408', '.318', '.380', '.436', '.290'];
/** Ball and bottom pin of chamber 5 is .0095 too long. */
const STACKS = ['.3340', '.2780', '.3680', '.3060', '.2595', '.3960'];
const MENDED = '.2490';

async function typeDown(page: Page, values: readonly string[]): Promise<void> {
  for (const value of values) {
    await page.keyboard.type(value);
    await page.keyboard.press('Enter');
  }
}

const patient = { timeout: 15_000 } as const;

const headline = (page: Page) => page.locator('.answer-headline');

async function enterJob(page: Page): Promise<void> {
  await tabTo(page, /^Start with my cylinder$/);
  await page.keyboard.press('Enter');
  await expect.poll(() => focusedName(page), patient).toBe('Plug diameter');
  await typeDown(page, ['.726']);
  await tabTo(page, /^Level$/);
  await page.keyboard.press('ArrowRight');
  await tabTo(page, /^Metal under the key/);
  await typeDown(page, ['.038']);
  await tabTo(page, /^Domed$/);
  await page.keyboard.press('Space');
  await tabTo(page, /^Broken edge$/);
  await page.keyboard.press('Space');
  await tabTo(page, /^Root depth, cut 1$/);
  await typeDown(page, ROOTS);
  await tabTo(page, /^Ball \+ bottom pin, chamber 1$/);
  await typeDown(page, STACKS);
}

async function checkTurn(page: Page, words: RegExp): Promise<void> {
  await tabTo(page, /^Try the turn$/);
  await page.keyboard.press('Enter');
  await expect.poll(() => page.locator('.section-state').textContent(), { timeout: 30_000 }).toMatch(words);
}

describe.each([
  ['with WebGL', true],
  ['without WebGL, by the drawing alone', false],
])('a whole job by keyboard, %s', (_, webgl) => {
  test('is entered, judged, mended, tried and found again', async () => {
    const { page } = await openApp({ webgl, viewport: desk });
    await enterJob(page);
    await expect
      .poll(() => headline(page).textContent(), patient)
      .toMatch(/Chamber 5 is (probably )?too high|Chamber 5/);

    await checkTurn(page, /chamber 5/);

    await tabTo(page, /^Ball \+ bottom pin, chamber 5$/);
    await typeDown(page, [MENDED]);
    await expect.poll(() => headline(page).textContent(), patient).not.toMatch(/Chamber 5/);

    await tabTo(page, /^Pull the key out$/);
    await page.keyboard.press('Enter');
    await expect.poll(() => focusedName(page), { timeout: 30_000 }).toBe('Slide the key in');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => page.locator('.section-state').textContent(), { timeout: 30_000 })
      .toBe('Key fully in');
    await checkTurn(page, /The plug turns: 360°/);

    expect(await page.locator('.section-pane svg').first().isVisible()).toBe(true);
    await expect
      .poll(() => page.locator('body').textContent(), patient)
      .toMatch(/saved \d\d:\d\d on this computer/);
    await page.reload();
    await expect
      .poll(() => page.getByLabel('Ball + bottom pin, chamber 5').inputValue(), { timeout: 20_000 })
      .toBe(MENDED);
    for (const [i, root] of ROOTS.entries()) {
      const kept = await page.getByLabel(`Root depth, cut ${i + 1}`, { exact: true }).inputValue();
      expect(Number(kept)).toBeCloseTo(Number(root), 9);
    }
    await page.keyboard.press('Control+z');
    await expect
      .poll(() => page.getByLabel('Ball + bottom pin, chamber 5').inputValue(), patient)
      .toBe('.2595');
  });
});

test.each([
  ['a desk', desk],
  ['a phone', phone],
])('on %s, one edit of a field in sight changes the answer', async (_, viewport) => {
  const { page } = await openApp({ viewport });
  const before = await headline(page).textContent();
  const chamber = viewport === phone ? 5 : 1;
  const field = page.getByRole('textbox', { name: `Ball + bottom pin, chamber ${chamber}` }).first();
  const box = await field.boundingBox();
  expect((box?.y ?? Infinity) + (box?.height ?? 0)).toBeLessThanOrEqual(viewport.height);
  // Three interactions: into the field, the value, Enter.
  await field.click();
  await page.keyboard.type('.2490');
  await page.keyboard.press('Enter');
  await expect.poll(() => headline(page).textContent(), patient).not.toBe(before);
});
