/**
 * Every station at every width: nothing reaches past the page's edge, so that nothing has to be scrolled to sideways; and with
 * text twice as large the top bar wraps, and nothing of it is cut off.
 */
import { expect, test } from 'vitest';
import { openApp } from '../support/browser.ts';

const WIDTHS = [320, 375, 480, 608, 700, 768, 900, 1024, 1087, 1088, 1280, 1440, 2560];

test('no station is wider than the page', async () => {
  const { page } = await openApp();
  const names = await page.locator('.station-link:not([data-kind])').allInnerTexts();
  expect(names.length).toBeGreaterThan(2);
  for (const name of names) {
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.getByRole('link', { name, exact: true }).click();
    await page.waitForTimeout(300);
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: 800 });
      // A drawing follows the room it has a moment later.
      await expect
        .poll(() => page.evaluate(() => document.documentElement.scrollWidth), {
          message: `${name} at ${String(width)} px`,
          timeout: 5000,
        })
        .toBeLessThanOrEqual(width);
    }
  }
});

test.each([1440, 768, 375])('with text twice as large the top bar wraps at %i px', async (width) => {
  const { page } = await openApp({ viewport: { width, height: 800 } });
  await page.evaluate(() => document.documentElement.style.setProperty('font-size', '200%'));
  // Only the title gives way: it is a field, and can be scrolled.
  const cut = () =>
    page.locator('.top-bar :is(.button, .station-link, .wordmark)').evaluateAll((all) =>
      all
        .filter((each) => {
          const { left, right, width: wide } = each.getBoundingClientRect();
          const isCut =
            each.scrollWidth > each.clientWidth + 1 || left < 0 || right > window.innerWidth + 0.5;
          return wide > 0 && isCut;
        })
        .map((each) => each.textContent),
    );
  await expect.poll(cut, { timeout: 20_000 }).toEqual([]);
  const links = page.locator('.station-link:visible');
  expect(await links.count()).toBeGreaterThan(4);
  for (const link of await links.all()) {
    const box = await link.boundingBox();
    const own = await link.textContent();
    const at = await page.evaluate(([x, y]) => document.elementFromPoint(x, y)?.textContent ?? '', [
      (box?.x ?? 0) + (box?.width ?? 0) / 2,
      (box?.y ?? 0) + (box?.height ?? 0) / 2,
    ] as const);
    expect(at).toBe(own);
  }
});
