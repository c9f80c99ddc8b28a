/** The frame counter sees what is drawn and stays at nothing while nothing is. */
import { expect, test } from 'vitest';
import { countFrames } from '../support/browser-frames.ts';
import { openApp } from '../support/browser.ts';

test('frames are counted while a canvas or a shape moves, and none while nothing does', async () => {
  const { page } = await openApp({ path: 'icon.svg' });
  const move = (frames: number) =>
    page.evaluate(
      (wanted) =>
        new Promise<void>((done) => {
          const shape = document.querySelector('rect');
          let drawn = 0;
          const step = () => {
            shape?.setAttribute('y', String(drawn % 2));
            drawn += 1;
            if (drawn < wanted) requestAnimationFrame(step);
            else done();
          };
          requestAnimationFrame(step);
        }),
      frames,
    );
  await move(2);
  await page.waitForTimeout(300);

  const moving = await countFrames(page, () => move(30));
  expect(moving.animationFrames).toBe(30);
  expect(moving.drawnFrames).toBeGreaterThanOrEqual(20);
  expect(moving.scriptMs).toBeGreaterThan(0);

  await page.waitForTimeout(300);
  const idle = await countFrames(page, () => page.waitForTimeout(700));
  expect(idle.drawnFrames).toBe(0);
  expect(idle.animationFrames).toBe(0);
});
