/**
 * A cylinder with a sleeve in a browser: the four states of two shear lines, told and turned; the example from the menu;
 * a sleeve and master pins by keyboard; a phone.
 */
import type { BrowserContext, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { axeViolations } from '../support/axe.ts';
import { desk, openApp, phone } from '../support/browser.ts';
import { harbourJobWith } from '../support/harbour-jobs.ts';

const eventually = <T>(read: () => Promise<T>) => expect.poll(read, { timeout: 30_000 });
const headline = (page: Page) => page.locator('output.answer-headline').innerText();
const state = (page: Page) => page.locator('.section-state').innerText();
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

/** Without the browser's own file dialog the app asks with an input, which a test can answer. */
const withFileInput = (context: BrowserContext) =>
  context.addInitScript(() => Reflect.deleteProperty(window, 'showOpenFilePicker'));

async function openJob(page: Page, job: Job) {
  await page.locator('.job-menu > summary').click();
  const asked = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a file…' }).click();
  const buffer = Buffer.from(JSON.stringify(job));
  await (await asked).setFiles({ name: 'job.json', mimeType: 'application/json', buffer });
}

async function openNetStore(page: Page) {
  await page.locator('.job-menu > summary').click();
  await page.getByText('Open an example', { exact: true }).click();
  await page.getByRole('button', { name: /^Net store/ }).click();
  await eventually(() => headline(page)).toContain('The plug should turn alone');
}

const STATES: readonly (readonly [job: Job, told: string, turned: RegExp])[] = [
  [harbourJobWith('storekeeper'), 'The plug should turn alone', /^The plug turns alone: 360°$/],
  [
    harbourJobWith('harbour master'),
    'Plug and sleeve should turn together',
    /^Plug and sleeve turn together: 360°$/,
  ],
  [
    harbourJobWith('storekeeper', (place) => (place % 2 === 0 ? 'storekeeper' : 'harbour master')),
    'Nothing turns: some chambers are at the inner line, some at the outer.',
    /^Stops at about .*: chamber [24], its bottom pin stands in the sleeve at the inner shear line, and one more/,
  ],
  [
    harbourJobWith('storekeeper', undefined, (place) => (place === 2 ? 0.5 : 0)),
    'Chamber 3 is too low at the inner line: nothing turns.',
    /^Stops at about .*: chamber 3, its master pin hangs in the plug at the inner shear line$/,
  ],
];

test('each key turns what its cuts reach: plug alone, both together, or nothing', async () => {
  const { page } = await openApp({ viewport: desk, prepare: withFileInput });
  await page.getByRole('link', { name: 'Check' }).click();
  for (const [job, told, turned] of STATES) {
    await openJob(page, job);
    await eventually(() => headline(page)).toContain(told);
    await page.getByRole('button', { name: 'Try the turn' }).click();
    await eventually(() => state(page)).toMatch(turned);
    expect(await page.locator('.turn-view svg.drawing').isVisible()).toBe(true);
  }
});

test('the example comes from the menu, shows both lines, and passes the accessibility checks', async () => {
  const { page } = await openApp({ viewport: desk, webgl: false });
  await openNetStore(page);
  const inner = page.getByRole('button', { name: /^Inner shear line/ });
  const outer = page.getByRole('button', { name: /^Outer shear line/ });
  expect(await inner.getAttribute('aria-pressed')).toBe('true');
  expect(await outer.innerText()).toContain('held by every chamber');
  await page.locator('summary', { hasText: 'Sleeve around the plug' }).click();
  await page.getByRole('button', { name: 'Chamber 3: more' }).click();
  await page.getByRole('region', { name: 'Master pins, chamber 3' }).waitFor();
  expect(await axeViolations(page)).toEqual([]);
  await outer.click();
  await eventually(() => page.locator('.close-up').nth(2).innerText()).toMatch(/high 0\.79, too high/);
});

test('a sleeve goes and comes by keyboard, with everything that belongs to it', async () => {
  const { page } = await openApp({ viewport: desk, webgl: false });
  await openNetStore(page);
  await page.locator('summary', { hasText: 'Sleeve around the plug' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('radio', { name: 'A sleeve', exact: true }).focus();
  await page.keyboard.press('ArrowLeft');
  await eventually(() => headline(page)).toContain('It should turn: all five chambers meet the shear line.');
  expect(await page.getByText('inner shear line').count()).toBe(0);
  expect(await field(page, 'Sleeve, across the outside').count()).toBe(0);

  await page.keyboard.press('Control+z');
  await eventually(() => headline(page)).toContain('The plug should turn alone');
  expect(await field(page, 'Sleeve, across the outside').inputValue()).toBe('17.40');

  await page.keyboard.press('Control+Shift+z');
  await page.getByRole('radio', { name: 'No sleeve', exact: true }).focus();
  await page.keyboard.press('ArrowRight');
  const sleeve = field(page, 'Sleeve, across the outside');
  await sleeve.focus();
  expect(await sleeve.inputValue()).toBe('');
  expect(await page.getByRole('complementary', { name: 'How to measure it' }).innerText()).toContain(
    'Sleeve',
  );
  await page.keyboard.type('17.40');
  await page.keyboard.press('Enter');
  expect(await sleeve.inputValue()).toBe('17.40');

  const pin = field(page, 'Master pin, chamber 2');
  await pin.focus();
  await page.keyboard.press('Delete');
  await page.keyboard.press('Enter');
  await eventually(() => pin.inputValue()).toBe('');
  await pin.focus();
  await page.keyboard.type('0.85');
  await page.keyboard.press('Enter');
  await eventually(() => pin.inputValue()).toBe('0.85');
});

test('on a phone nothing is wider than the screen', async () => {
  const { page } = await openApp({ viewport: phone, webgl: false });
  await openNetStore(page);
  await page.locator('summary', { hasText: 'Sleeve around the plug' }).click();
  await page.getByRole('button', { name: 'Chamber 3: more' }).click();
  await page.getByRole('region', { name: 'Master pins, chamber 3' }).waitFor();
  const width = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(width).toBeLessThanOrEqual(phone.width);
  const name = await page.locator('.chamber-row .chamber-number').nth(2).boundingBox();
  const bottom = await field(page, 'Bottom pin, chamber 3').last().boundingBox();
  expect(bottom!.x).toBeGreaterThanOrEqual(name!.x + name!.width);
});
