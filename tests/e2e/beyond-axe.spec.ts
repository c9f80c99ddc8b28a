/**
 * What no checker of markup sees: targets large enough for a finger, and for a glove in bench mode; nothing that has the focus under
 * a bar; a page of 320 px; the system's own colours; words and symbols where the colours are gone; no motion where
 * none is wanted. Nothing here depends on how fast the page is.
 */
import { PNG } from 'pngjs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { desk, openApp, phone } from '../support/browser.ts';
import { recordFigure } from '../support/figure.ts';
import { targetsOf } from '../support/targets.ts';

const FINGER = 24;
const GLOVE = 44;

const stationNames = async (page: Page): Promise<string[]> => {
  const links = page.locator('.station-link:not([data-kind])');
  await links.first().waitFor();
  return links.allInnerTexts();
};

/** Goes to a station and opens its folds, and the folds in them, until nothing more comes. */
async function goUnfolded(page: Page, name: string): Promise<void> {
  await page.getByRole('link', { name, exact: true }).click();
  await page.locator('main').waitFor();
  let before = -1;
  await expect
    .poll(
      async () => {
        const count = await page.evaluate(() => {
          // Each once: some fold away what another opens.
          for (const fold of document.querySelectorAll<HTMLDetailsElement>(
            'main details:not([data-was-opened])',
          )) {
            fold.dataset['wasOpened'] = '';
            fold.open = true;
          }
          return document.querySelectorAll('main *').length;
        });
        const isSettled = count === before;
        before = count;
        return isSettled;
      },
      { interval: 250 },
    )
    .toBe(true);
}

test.each([
  ['desk', desk, 'off', FINGER],
  ['phone', phone, 'off', FINGER],
  ['desk', desk, 'on', GLOVE],
  ['phone', phone, 'on', GLOVE],
] as const)('on a %s, bench mode %#: every target is large enough', async (where, viewport, bench, least) => {
  const { page } = await openApp({
    viewport,
    prepare: (context) =>
      context.addInitScript((mode) => {
        // What the menu sets stays on the page; here it is set from the start.
        document.addEventListener(
          'DOMContentLoaded',
          () => (document.documentElement.dataset['bench'] = mode),
        );
      }, bench),
  });
  const faults: string[] = [];
  let count = 0;
  let smallest = Infinity;
  const look = async (state: string): Promise<void> => {
    await page.evaluate((mode) => (document.documentElement.dataset['bench'] = mode), bench);
    const targets = await targetsOf(page);
    count += targets.length;
    for (const { name, width, height } of targets) {
      smallest = Math.min(smallest, width, height);
      // Boxes are measured in fractions of a pixel.
      if (Math.min(width, height) < least - 0.1)
        faults.push(`${state}: ${name} is ${width.toFixed(0)} × ${height.toFixed(0)}`);
    }
  };
  for (const name of await stationNames(page)) {
    await goUnfolded(page, name);
    await look(name);
  }
  await page.locator('.job-menu > summary').click();
  await page.getByText('Lengths on screen').waitFor();
  await page.locator('.job-menu-body details').evaluateAll((folds) => {
    for (const fold of folds) fold.setAttribute('open', '');
  });
  await look('Job menu');
  recordFigure({
    what: `targets, ${where}, ${bench === 'on' ? 'bench mode' : 'usual'}: the smallest side`,
    measured: smallest,
    unit: 'px',
    aim: { atLeast: least - 0.1 },
    note: `${count} targets`,
  });
  expect(faults).toEqual([]);
  expect(count).toBeGreaterThan(200);
});

test('bench mode is chosen in the menu, makes everything larger, and is remembered', async () => {
  const { page } = await openApp();
  const undo = page.getByRole('button', { name: /^Undo/ });
  await undo.waitFor();
  const before = await undo.boundingBox();
  await page.locator('.job-menu > summary').click();
  await page.getByLabel('Large, for the bench').check();
  await expect.poll(async () => (await undo.boundingBox())?.height ?? 0).toBeGreaterThanOrEqual(GLOVE);
  expect(before?.height ?? 0).toBeLessThan(GLOVE);
  await page.reload();
  await expect.poll(async () => (await undo.boundingBox())?.height ?? 0).toBeGreaterThanOrEqual(GLOVE);
});

/** What is loaded late pushes what is under it: waits until the page has been as high for three looks in a row. */
async function settled(page: Page) {
  const heights: number[] = [];
  const isStill = async () => {
    heights.push(await page.evaluate(() => document.documentElement.scrollHeight));
    const [one, two, three] = heights.slice(-3);
    return three !== undefined && one === two && two === three;
  };
  await expect.poll(isStill, { timeout: 20_000, interval: 150 }).toBe(true);
}

test.each([
  ['desk', desk],
  ['phone', phone],
] as const)('on a %s, what has the focus is never under a bar', async (_, viewport) => {
  const { page } = await openApp({ viewport });
  const faults: string[] = [];
  for (const name of await stationNames(page)) {
    await page.getByRole('link', { name, exact: true }).click();
    await page.locator('main').waitFor();
    await settled(page);
    await page.locator('.top-bar').evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    for (let presses = 0; presses < 30; presses++) {
      await page.keyboard.press('Tab');
      const fault = await page.evaluate(() => {
        const element = document.activeElement;
        if (element === null || element === document.body) return null;
        // A ticked box is as large as its label.
        const shown = element.closest('label') ?? element;
        const box = shown.getBoundingClientRect();
        if (box.width === 0) return null;
        const left = Math.max(box.left, 0);
        const right = Math.min(box.right, innerWidth);
        const top = Math.max(box.top, 0);
        const bottom = Math.min(box.bottom, innerHeight);
        const text = element.getAttribute('aria-label') ?? element.textContent;
        const what = `${element.tagName} "${text.trim().slice(0, 40)}"`;
        if (right <= left || bottom <= top) return `${what} is out of sight`;
        // Of nine points at least one answers: hidden as a whole is what is forbidden.
        const isSeen = [0.1, 0.5, 0.9].some((across) =>
          [0.1, 0.5, 0.9].some((down) => {
            const at = document.elementFromPoint(left + across * (right - left), top + down * (bottom - top));
            return at !== null && (shown.contains(at) || at.contains(shown));
          }),
        );
        return isSeen ? null : `${what} is covered, ${box.top.toFixed(0)} to ${box.bottom.toFixed(0)}`;
      });
      if (fault !== null) faults.push(`${name}: ${fault}`);
    }
  }
  expect(faults).toEqual([]);
});

// 1280 px at 400 %, 640 px at 200 %: browsers lay out the same page.
test('at 320 px with everything unfolded nothing is scrolled sideways', async () => {
  const { page } = await openApp({ viewport: { width: 320, height: 640 } });
  for (const name of await stationNames(page)) {
    await goUnfolded(page, name);
    await expect
      .poll(() => page.evaluate(() => document.documentElement.scrollWidth), { message: name })
      .toBeLessThanOrEqual(320);
  }
});

test('with the system’s own colours lines, hatching, symbols and the station in view are still seen', async () => {
  for (const colorScheme of ['light', 'dark'] as const) {
    const { page } = await openApp({ colorScheme, context: { forcedColors: 'active' } });
    await page.locator('.close-up').first().waitFor();
    const ground = await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    const seen = await page.evaluate(() => {
      const stroke = (selector: string) => {
        const element = document.querySelector(selector);
        return element === null ? 'missing' : getComputedStyle(element).stroke;
      };
      const current = document.querySelector('.station-link[aria-current]');
      return {
        outline: stroke('.long-section .edge-medium, .long-section .edge-wide'),
        hatching: stroke('.long-section .hatch-shell'),
        line: stroke('.long-section .shear-line'),
        mark: stroke('output.answer-headline .verdict-mark'),
        slider: stroke('.travel-line path'),
        current: current === null ? 'missing' : getComputedStyle(current).borderBottomColor,
      };
    });
    for (const [what, colour] of Object.entries(seen)) {
      expect(colour, what).toMatch(/^rgb/);
      expect(colour, `${what}, ${colorScheme}`).not.toBe(ground);
    }
    const focus = page.getByRole('button', { name: 'Slide the key in' });
    await focus.focus();
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Tab');
    expect(await focus.evaluate((button) => getComputedStyle(button).outlineStyle)).not.toBe('none');
  }
});

test('without colour every verdict has its word and its own symbol', async () => {
  const { page } = await openApp();
  await page.locator('.chamber-row .verdict').first().waitFor();
  const verdicts = await page.locator('.chamber-row .verdict[data-verdict]').evaluateAll((all) =>
    all.map((each) => ({
      kind: each.getAttribute('data-verdict') ?? '',
      word: each.textContent.trim(),
      path: each.querySelector('.verdict-mark path')?.getAttribute('d') ?? '',
    })),
  );
  const kinds = new Set(verdicts.map(({ kind }) => kind));
  expect(kinds.size).toBeGreaterThan(2);
  expect(verdicts.every(({ word, path }) => word !== '' && path !== '')).toBe(true);
  // As many symbols as kinds, and no word in two kinds.
  expect(new Set(verdicts.map(({ path }) => path)).size).toBe(kinds.size);
  const pairs = new Set(verdicts.map(({ kind, word }) => `${kind} ${word}`));
  expect(pairs.size).toBe(new Set(verdicts.map(({ word }) => word)).size);

  // And in grey pixels the symbol still stands off its ground.
  const mark = page.locator('.chamber-row .verdict[data-verdict="stops"] .verdict-mark').first();
  const { data, width, height } = PNG.sync.read(await mark.screenshot());
  const grey = Array.from({ length: width * height }, (_, i) => {
    const [red = 0, green = 0, blue = 0] = data.subarray(4 * i, 4 * i + 3);
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  });
  expect(Math.max(...grey) - Math.min(...grey)).toBeGreaterThan(100);
});

test('where motion is unwanted the key goes in by a few still steps', async () => {
  const { page } = await openApp({ reducedMotion: 'reduce' });
  const said = page.locator('.section-state').evaluate(
    (output) =>
      new Promise<string[]>((done) => {
        const all: string[] = [];
        new MutationObserver(() => {
          all.push(output.textContent);
          if (output.textContent === 'Key fully in') done(all);
        }).observe(output, { childList: true, characterData: true, subtree: true });
      }),
  );
  await page.getByRole('button', { name: 'Slide the key in' }).click();
  const states = await said;
  expect(states.at(-1)).toBe('Key fully in');
  expect(states.length).toBeLessThanOrEqual(7);
  expect(await page.evaluate(() => document.getAnimations().length)).toBe(0);
});
