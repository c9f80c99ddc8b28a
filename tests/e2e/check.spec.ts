/** The Check station: the turn that stops and says where, the stack mended, the turn that goes through; the solid view. */
import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { desk, openApp } from '../support/browser.ts';

const eventually = <T>(read: () => Promise<T>) => expect.poll(read, { timeout: 30_000 });
const state = (page: Page) => page.locator('.section-state').innerText();

describe.each([{ webgl: true }, { webgl: false }])('with webgl $webgl', ({ webgl }) => {
  test('the turn stops at the stack that is too high, and goes through once it is mended', async () => {
    const { page } = await openApp({ viewport: desk, webgl });
    await page.getByRole('link', { name: 'Check' }).click();
    await page.getByRole('button', { name: 'Try the turn' }).click();
    await eventually(() => state(page)).toMatch(
      /^Stops at about .*chamber 5, its bottom pin stands in the shell/,
    );
    expect(await page.locator('.turn-view svg.drawing').isVisible()).toBe(true);

    await page.getByRole('link', { name: 'Measure' }).click();
    const field = page.getByRole('textbox', { name: 'Ball + bottom pin, chamber 5', exact: true });
    await field.fill('.2490');
    await field.press('Enter');
    await page.getByRole('link', { name: 'Check' }).click();
    await page.getByRole('button', { name: 'Try the turn' }).click();
    await eventually(() => state(page)).toBe('The plug turns: 360°');
  });
});

test('the solid view draws the cylinder', async () => {
  const { page } = await openApp({ viewport: desk });
  await page.getByRole('button', { name: 'Solid', exact: true }).click();
  const canvas = page.locator('.solid-place canvas');
  await canvas.waitFor();
  await eventually(async () => coloursOf(await canvas.screenshot())).toBeGreaterThan(20);
  const widthOf = async (at: string) => (await page.locator(at).first().boundingBox())?.width ?? 0;
  expect(await widthOf('.solid-place canvas')).toBeGreaterThan(0.98 * (await widthOf('.solid-place')));
  // A few views at hand, the others in a menu that takes nothing of the picture away.
  const front = page.getByRole('button', { name: 'Front', exact: true });
  expect(await front.isVisible()).toBe(false);
  const before = await canvas.boundingBox();
  await page.locator('.solid-more > summary').press('Enter');
  await front.click();
  expect(await canvas.boundingBox()).toMatchObject({ width: before?.width, height: before?.height });
});

test('without WebGL the solid view says why it is not there, and the drawing stays', async () => {
  const { page } = await openApp({ viewport: desk, webgl: false });
  await page.getByRole('button', { name: 'Solid', exact: true }).click();
  await eventually(() => page.locator('.solid-place').innerText()).toContain(
    'The drawing shows the same section',
  );
  await page.getByRole('button', { name: 'Drawing', exact: true }).click();
  expect(await page.locator('.long-section svg').first().isVisible()).toBe(true);
});

function coloursOf(file: Buffer): number {
  const { data } = PNG.sync.read(file);
  const seen = new Set<number>();
  for (let i = 0; i < data.length; i += 4) seen.add(data.readUInt32BE(i));
  return seen.size;
}
