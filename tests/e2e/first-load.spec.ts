/** What comes before and with the first load: a picture without any script, then a picture and a field with the counted files only. */
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { firstLoad } from '../../tools/first-load.ts';
import { appUrl, openApp, phone } from '../support/browser.ts';
import { recordFigure } from '../support/figure.ts';

const dist = fileURLToPath(new URL('../../dist', import.meta.url));

/** The browser refuses the announced modules then, in the policy's name. */
const withoutScripts = { context: { javaScriptEnabled: false }, expected: [/\.js csp$/] };

test("the example's section is in the page before any script runs", async () => {
  const { page } = await openApp(withoutScripts);
  const picture = page.locator('#root svg.drawing').first();
  expect(await picture.isVisible()).toBe(true);
  const box = await picture.boundingBox();
  expect(box?.width).toBeGreaterThan(300);
  expect(box?.height).toBeGreaterThan(100);
});

test('before any script runs the section has its colours, and the answer says what it shows', async () => {
  const { page } = await openApp(withoutScripts);
  const fills = await page
    .locator('#root .fill-shell, #root .fill-plug, #root .fill-key')
    .evaluateAll((parts) => parts.map((part) => getComputedStyle(part).fill));
  expect(new Set(fills).size).toBe(3);
  expect(fills).not.toContain('rgb(0, 0, 0)');
  const point = await page.locator('#root .answer-point').textContent();
  const app = await openApp();
  await app.page.getByRole('textbox').first().waitFor();
  // The very words that the app says when it is there.
  expect(await app.page.locator('.station .answer-point').first().textContent()).toBe(point);
});

test('the static section fits a phone', async () => {
  const { page } = await openApp({ ...withoutScripts, viewport: phone });
  const box = await page.locator('#root svg.drawing').first().boundingBox();
  expect((box?.x ?? NaN) + (box?.width ?? NaN)).toBeLessThanOrEqual(phone.width);
});

test('the first picture and the first editable field need no file that the size count leaves out', async () => {
  const { needed, fonts } = firstLoad(dist);
  const allowed = new Set([...needed, ...fonts, '', 'icon.svg'].map((path) => new URL(path, appUrl()).href));
  const { page } = await openApp({
    // What comes later is refused, and the app may say so.
    expected: [/[^]*/],
    prepare: (context) =>
      context.route(
        (url) => !allowed.has(`${url.origin}${url.pathname}`),
        (route) => route.abort(),
      ),
  });
  const field = page.locator('#root').getByRole('textbox').first();
  await field.waitFor();
  expect(await field.isEditable()).toBe(true);
  expect(await page.locator('#root svg.drawing').first().isVisible()).toBe(true);
});

test('what draws solids comes after the first picture, and only when it is asked for', async () => {
  const { page, requests } = await openApp();
  await page.getByRole('textbox').first().waitFor();
  const code = () =>
    requests.filter((address) => /(solid|scene|three|manifold)[^/]*\.(js|wasm)$/.test(address));
  const early = code();
  recordFigure({
    what: 'files of the solid view asked for before it is',
    measured: early.length,
    unit: 'files',
    aim: { atMost: 0 },
  });
  expect(early).toEqual([]);
  await page.getByRole('button', { name: 'Solid', exact: true }).click();
  // The same pattern finds them once they are wanted.
  await expect.poll(() => code().length).toBeGreaterThan(1);
});
