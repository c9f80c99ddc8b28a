/** Takes the pictures of README.md from the built app: npx tsx tools/draw-screenshots.ts, after `npm run build`. */
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { launchBrowser } from '../tests/support/browser-launch.ts';
import { startServer } from './static-server.mjs';

const folder = fileURLToPath(new URL('../docs/pictures/', import.meta.url));
mkdirSync(folder, { recursive: true });

type Shot = {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly colorScheme: 'light' | 'dark';
  readonly go: (page: Page) => Promise<unknown>;
};

const station = (name: string) => (page: Page) => page.getByRole('link', { name, exact: true }).click();

async function homeKey(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Slide the key in' }).click();
  await page.getByRole('button', { name: 'Pull the key out' }).waitFor();
  await page.waitForTimeout(2600);
}

const SHOTS: readonly Shot[] = [
  { name: 'measure', width: 1440, height: 900, colorScheme: 'light', go: station('Measure') },
  {
    name: 'check-dark',
    width: 1440,
    height: 900,
    colorScheme: 'dark',
    go: async (page) => {
      await station('Check')(page);
      await homeKey(page);
    },
  },
  { name: 'phone', width: 375, height: 812, colorScheme: 'light', go: station('Measure') },
];

const server = await startServer({ root: fileURLToPath(new URL('../dist', import.meta.url)) });
const browser = await launchBrowser();
for (const { name, width, height, colorScheme, go } of SHOTS) {
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme,
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  await page.goto(server.url);
  await page.locator('.long-section svg').waitFor();
  await go(page);
  await page.waitForTimeout(1000);
  await page.screenshot({ path: `${folder}${name}.png` });
  await context.close();
}
await browser.close();
await server.close();
