/** Every station at every width: nothing reaches past the page's edge, so that nothing has to be scrolled to sideways. */
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
