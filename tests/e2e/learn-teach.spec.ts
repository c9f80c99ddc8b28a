/** Learn for those who teach: a set by its link, paper, a sealed cylinder, ten readings, German; keyboard, narrow, axe. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { answerOf, roundOf } from '../../src/model/learning/ask.ts';
import { type LessonSet, setFileText, setLink } from '../../src/model/learning/lesson-set.ts';
import { axeViolations } from '../support/axe.ts';
import { desk, openApp, phone } from '../support/browser.ts';

const SET: LessonSet = {
  lessons: ['key-floor', 'swapped-pins'],
  seed: 4711,
  unit: 'in',
  toleranceMm: 0.0254,
};
const eventually = <T>(read: () => Promise<T>) => expect.poll(read, { timeout: 20_000 });
const open = (path: string, options: Parameters<typeof openApp>[0] = {}) =>
  openApp({ viewport: desk, webgl: false, path, ...options });

async function lockIn(page: Page) {
  await page.getByRole('button', { name: 'Lock it in and try' }).click();
  await page.getByRole('button', { name: 'Show the end' }).click();
  await page.locator('.question-result').waitFor();
}

/** What a sheet of paper shows. */
async function printed(page: Page): Promise<string> {
  await page.emulateMedia({ media: 'print' });
  const text = await page.evaluate(() => document.body.innerText);
  const canvases = await page.evaluate(
    () => [...document.querySelectorAll('canvas')].filter((each) => each.checkVisibility()).length,
  );
  expect(canvases).toBe(0);
  await page.emulateMedia({ media: 'screen' });
  return text;
}

describe('a set', () => {
  test('gives exactly its lessons in its order, and a page to print of what was predicted and seen', async () => {
    const { page } = await open(setLink(SET));
    const titles = page.locator('.set-lessons li');
    await eventually(() => titles.allInnerTexts()).toEqual([
      expect.stringContaining('What lies under the key'),
      expect.stringContaining('Two pins in the wrong chambers'),
    ]);
    // the list of all lessons is not offered beside it
    expect(await page.locator('.lesson-list').count()).toBe(1);
    const [first] = roundOf('key-floor', SET.seed, SET.unit).steps;
    const right = first === undefined ? NaN : Number(answerOf(first)) / 25.4;
    // within the set's tolerance of a thousandth, not within the usual half
    await page.getByLabel('Your length').fill((right + 0.0008).toFixed(4));
    await lockIn(page);
    expect(await page.locator('.question-result').innerText()).toMatch(/^That is what happens/u);
    await page.getByRole('button', { name: /^Next in the set/u }).click();
    await page.locator('.question .choice-input').first().check();
    await lockIn(page);
    const paper = await printed(page);
    expect(paper).toContain('Learner’s sheet');
    expect(paper).toMatch(/Name\s+Date/u);
    expect(paper).toMatch(/of 2 predictions came true/u);
    expect(paper).toContain('Round 4711, in inches');
    expect(paper).not.toMatch(/Print|Lock it in|Shearsight/u);
    await page.getByLabel('Name').fill('J. Example');
    expect(await printed(page)).toContain('J. Example');
    // reloaded: the same set, and what was predicted is still there
    await page.reload();
    await eventually(() => page.locator('.paper-tally').innerText()).toMatch(/of 2 predictions/u);
    expect(page.url()).toContain(setLink(SET));
  });

  test('whose link was cut says so; one made here opens again from its file', async () => {
    const { page } = await open(setLink(SET).slice(0, -4));
    await eventually(() => page.getByRole('alert').innerText()).toMatch(/^Its end is missing/u);
    await page.getByRole('link', { name: 'Put a set together' }).press('Enter');
    const file = { name: 'lessons.json', mimeType: 'application/json', buffer: Buffer.from('{"format":1}') };
    const chooser = page.getByLabel('Open a file with a set');
    await chooser.setInputFiles(file);
    await eventually(() => page.getByRole('alert').innerText()).toMatch(/^This is not a set of lessons/u);
    await chooser.setInputFiles({ ...file, buffer: Buffer.from(setFileText(SET)) });
    await eventually(() => page.getByLabel('Link', { exact: true }).inputValue()).toContain(setLink(SET));
    await page.getByRole('button', { name: 'Two pins in the wrong chambers: earlier' }).press('Enter');
    const swapped: LessonSet = { ...SET, lessons: ['swapped-pins', 'key-floor'] };
    await eventually(() => page.getByLabel('Link', { exact: true }).inputValue()).toContain(setLink(swapped));
    await page.getByRole('button', { name: 'Show the answer key' }).press('Enter');
    const key = await printed(page);
    const [step] = roundOf('key-floor', SET.seed, SET.unit).steps;
    const right = step === undefined ? '' : (Number(answerOf(step)) / 25.4).toFixed(3).replace(/^0/u, '');
    expect(key).toContain(`${right} in`);
    expect(key).toContain('Every pin is too long by just as much'.slice(6));
    expect(key.indexOf('Two pins in the wrong')).toBeLessThan(key.indexOf('What lies under the key'));
  });
});

test('true figures stay sealed until they are released: not on the page, not in storage', async () => {
  const { page } = await open('#learn/seal-a-cylinder');
  const figures = ['.7475', '.0415', '.3655', '.3405'];
  await page.getByLabel('What is written on the cylinder').fill('P 7');
  await page.getByLabel('Chambers').selectOption('1');
  await page.getByLabel('Plug, across').focus();
  // a caliper types a value and Enter
  for (const figure of figures) {
    await page.keyboard.type(figure);
    await page.keyboard.press('Enter');
  }
  await page.getByRole('button', { name: 'Seal and lay it on this bench' }).press('Enter');
  await eventually(() => page.getByRole('alert').innerText()).toMatch(/^Passphrase: 0 characters/u);
  await page.getByLabel('Passphrase').fill('four plain words');
  await page.getByLabel('Once more').fill('four plain words');
  await page.getByRole('button', { name: 'Seal and lay it on this bench' }).press('Enter');
  await page.getByRole('heading', { name: 'A practice cylinder', exact: true }).waitFor();
  const nowhere = async () => {
    const everything = await page.evaluate(
      () =>
        document.documentElement.outerHTML + JSON.stringify(localStorage) + JSON.stringify(sessionStorage),
    );
    const spoken = await page.locator('body').ariaSnapshot();
    for (const figure of figures) {
      // not as part of a drawing's coordinates: .0415, but not 10.0415
      const written = new RegExp(`(?<!\\d)\\${figure}(?!\\d)`, 'u');
      for (const text of [everything, spoken]) {
        const at = text.search(written);
        expect(at < 0 ? '' : text.slice(at - 60, at + 20)).toBe('');
      }
    }
  };
  await nowhere();
  const read = ['.748', '1.04 mm', '365 thou', '.3445'];
  for (const [i, figure] of read.entries()) await page.locator('.practice-fields input').nth(i).fill(figure);
  await page.getByLabel('Passphrase of whoever teaches').fill('for plain words');
  await page.keyboard.press('Enter');
  await eventually(() => page.locator('.practice-mark [role=alert]').innerText()).toMatch(
    /does not open it/u,
  );
  await page.getByLabel('Passphrase of whoever teaches').fill('four plain words');
  await page.keyboard.press('Enter');
  await eventually(() => page.locator('.practice-marks .question-result').innerText()).toBe(
    'Marked. The readings stand as they are; the true figures are still hidden. 3 of 4 readings within. 0 of 1 stack within.',
  );
  await nowhere();
  await page.getByRole('button', { name: 'Show the true figures' }).press('Enter');
  const row = page.getByRole('row', { name: /^Ball \+ bottom pin, 1/u });
  await eventually(() => row.innerText()).toMatch(/\.3445 in\s+✗ off\s+\.3405 in\s+\+\.0040 in/u);
});

test('ten readings of one pin, typed as a caliper types them: spread, mean and ±', async () => {
  const { page } = await open('#learn/one-pin-ten-times');
  await page.getByLabel(/^First: how far apart/u).fill('.001');
  await page.keyboard.press('Enter');
  await page.getByLabel('Reading 1', { exact: true }).focus();
  for (const end of [45, 40, 45, 50, 45, 40, 45, 45, 35, 45]) {
    await page.keyboard.type(`.33${end}`);
    await page.keyboard.press('Enter');
  }
  await eventually(() => page.locator('.ten-result .question-result').innerText()).toBe(
    'You expected .0010 in; it was .0015 in.',
  );
  expect(
    await page.getByRole('img', { name: /^Readings with care, from \.3335 in to \.3350 in/u }).count(),
  ).toBe(1);
  await page.reload();
  await eventually(() => page.getByLabel('Reading 10').first().inputValue()).toBe('.3345');
});

test('what is kept is saved as a file, forgotten when asked, and read back', async () => {
  const { page } = await open('#learn/key-floor/4711/in', {
    // Without the browser's own file dialog files come as downloads, which a test can read.
    prepare: (context) => context.addInitScript(() => Reflect.deleteProperty(window, 'showOpenFilePicker')),
  });
  await page.getByRole('button', { name: 'Show without predicting' }).click();
  await page.getByRole('button', { name: 'Show the end' }).click();
  await page.getByRole('link', { name: 'Your sheet' }).click();
  const downloads = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save it as a file' }).click();
  const download = await downloads;
  expect(download.suggestedFilename()).toMatch(/\.json$/u);
  expect(await page.evaluate(() => localStorage.getItem('shearsight-learning'))).toContain('key-floor');
  await page.getByRole('button', { name: 'Forget it all' }).click();
  await eventually(() => page.evaluate(() => JSON.stringify(localStorage))).not.toContain('key-floor');

  // Read back: what is no such file is told; with nothing to lose at once; else only after a yes.
  const file = page.getByLabel('Read a saved file back');
  const told = page.locator('.learn-kept');
  await file.setInputFiles({ name: 'a.json', mimeType: 'application/json', buffer: Buffer.from('{"a":') });
  await eventually(() => told.innerText()).toContain('This is no file of a learner.');
  await file.setInputFiles(await download.path());
  await eventually(() => told.innerText()).toContain('Read back: 1 round.');
  const kept = () => page.evaluate(() => localStorage.getItem('shearsight-learning'));
  expect(await kept()).toContain('key-floor');
  const text = (await kept())?.replace('4711', '4712') ?? '';
  const other = JSON.stringify({
    format: 'shearsight-learning',
    version: 1,
    ...(JSON.parse(text) as object),
  });
  await file.setInputFiles({ name: 'b.json', mimeType: 'application/json', buffer: Buffer.from(other) });
  await page.getByRole('button', { name: 'Leave it as it is' }).click();
  expect(await kept()).toContain('4711');
  await file.setInputFiles({ name: 'c.json', mimeType: 'application/json', buffer: Buffer.from(other) });
  await page.getByRole('button', { name: 'Replace it by the file' }).click();
  await eventually(kept).toContain('4712');
  expect(await kept()).not.toContain('4711');
});

test('German is chosen, remembered, and fills page and pictures', async () => {
  const { page } = await open('#learn/ball-in-dimple/4711/in', {
    viewport: phone,
    context: { bypassCSP: true },
  });
  await page.getByRole('radio', { name: 'Deutsch' }).check();
  await eventually(() => page.locator('.learn-head h2').innerText()).toBe('Lernen');
  await page.reload();
  await eventually(() => page.locator('.learn-head h2').innerText()).toBe('Lernen');
  await page.locator('.question .choice-input').first().check();
  await page.getByRole('button', { name: 'Festlegen und probieren' }).click();
  await page.getByRole('button', { name: 'Das Ende zeigen' }).click();
  await page.locator('.scene-close-up svg').first().waitFor();
  const learn = await page.locator('.learn').innerText();
  expect(learn).not.toMatch(/\b(?:the|is|with|line|Chamber|split|plug)\b/u);
  expect(learn).not.toMatch(/\s\.\d/u);
  const names = await page
    .locator('.learn svg[aria-label]')
    .evaluateAll((all) => all.map((each) => each.getAttribute('aria-label') ?? ''));
  expect(names.length).toBeGreaterThan(2);
  for (const name of names) expect(name).toMatch(/^(?:Kammer|Längsschnitt)/u);
  expect(await page.locator('.learn').getAttribute('lang')).toBe('de');
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(375);
  expect(await axeViolations(page)).toEqual([]);
});

test.each([
  ['#learn/for-teachers', 'light', 375],
  ['#learn/seal-a-cylinder', 'dark', 320],
  ['#learn/one-pin-ten-times', 'light', 320],
  ['#learn/practice-cylinder', 'dark', 375],
  ['#learn/my-page', 'light', 320],
] as const)(
  '%s, %s, %i wide: nothing sticks out, nothing axe finds wrong',
  async (path, colorScheme, width) => {
    const viewport = { width, height: 800 };
    const { page } = await open(path, { viewport, colorScheme, context: { bypassCSP: true } });
    await page.locator('.lesson h2').waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    expect(await axeViolations(page)).toEqual([]);
  },
);
