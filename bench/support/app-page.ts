/** The built app in a headless browser, for benchmarks that need a page. Build first: `npm run build`. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { launchBrowser } from '../../tests/support/browser-launch.ts';
import { startServer } from '../../tools/static-server.mjs';

const dist = fileURLToPath(new URL('../../dist', import.meta.url));

export async function withAppPage<T>(
  options: { readonly path?: string; readonly webgl?: boolean },
  measure: (page: Page) => Promise<T>,
): Promise<T> {
  if (!existsSync(`${dist}/index.html`)) throw new Error('Nothing is built yet: run `npm run build` first.');
  const server = await startServer({ root: dist });
  const browser = await launchBrowser({ webgl: options.webgl ?? true });
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, deviceScaleFactor: 1 });
    // Benchmarks run through a compiler that names inner functions with this helper; in the page it has to exist as well.
    await page.addInitScript('globalThis.__name = (value) => value');
    await page.goto(new URL(options.path ?? '', server.url).href);
    return await measure(page);
  } finally {
    await browser.close();
    await server.close();
  }
}
