/**
 * What the page costs while the key slides and while nothing moves: script time on the main thread for each animation frame,
 * by the browser's own trace, and frames drawn while idle. With motion allowed, in the drawing and in the solid view.
 */
import type { Page } from 'playwright-core';
import { countFrames } from '../tests/support/browser-frames.ts';
import type { Bench, BenchRow } from './support/bench.ts';
import { withAppPage } from './support/app-page.ts';

const MOVING_MS = 2000;
const IDLE_MS = 3000;

const wait = (page: Page, ms: number) => page.waitForTimeout(ms);

async function rows(page: Page, what: string): Promise<BenchRow[]> {
  await page.getByRole('button', { name: /Slide the key in/ }).waitFor();
  const moving = await countFrames(page, async () => {
    await page.getByRole('button', { name: /Slide the key in/ }).click();
    await wait(page, MOVING_MS);
  });
  await wait(page, 2000);
  const idle = await countFrames(page, () => wait(page, IDLE_MS));
  const perFrame = moving.scriptMs / Math.max(1, moving.animationFrames);
  return [
    {
      what: `${what}: script per animation frame while the key slides`,
      measured: perFrame,
      unit: 'ms',
      aim: { atMost: 1.5 },
      note: `${moving.animationFrames} frames`,
    },
    {
      what: `${what}: frames drawn while idle`,
      measured: idle.drawnFrames,
      unit: 'frames',
      aim: { atMost: 0 },
    },
  ];
}

export const bench: Bench = {
  title: 'Frames: the key sliding in, and nothing at all (software rendering)',
  run: async () => {
    const drawing = await withAppPage({}, async (page) => {
      await wait(page, 2000);
      return rows(page, 'drawing');
    });
    const solid = await withAppPage({}, async (page) => {
      await page.getByRole('button', { name: 'Solid', exact: true }).click();
      await page.locator('.solid-place canvas').waitFor();
      await wait(page, 5000);
      return rows(page, 'solid view');
    });
    return [...drawing, ...solid];
  },
};
