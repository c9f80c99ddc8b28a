/**
 * The repair note: written by keyboard, printed at a true scale, pictures that open again, and nothing a key could be cut from
 * once the bitting is hidden.
 */
import { readFileSync } from 'node:fs';
import { validateBytes } from 'gltf-validator';
import type { BrowserContext, Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { readChosenFile } from '../../src/persist/job-file.ts';
import { axeViolations } from '../support/axe.ts';
import { desk, openApp, phone } from '../support/browser.ts';
import { meshFaults } from '../support/closed-mesh.ts';
import { readPdf } from '../support/pdf-measures.ts';
import { readThreeMf } from '../support/read-three-mf.ts';

const NOTE = '#note';
/** Root depths, and lengths of bottom pins and of drivers, of the example. */
const SECRETS = ['.3520', '.4080', '.3180', '.1910', '.1345', '.2650'];

/** Without the browser's own file dialog files come as downloads, which a test can read. */
const withDownloads = (context: BrowserContext) =>
  context.addInitScript(() => Reflect.deleteProperty(window, 'showOpenFilePicker'));

async function openNote(options: Parameters<typeof openApp>[0] = {}) {
  const opened = await openApp({ path: NOTE, webgl: false, prepare: withDownloads, ...options });
  await opened.page.locator('.note-sheet').first().waitFor();
  return opened;
}

async function saved(page: Page, button: string, patience = 20_000): Promise<Uint8Array> {
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: patience }),
    page.getByRole('button', { name: button }).click(),
  ]);
  return new Uint8Array(readFileSync(await download.path()));
}

const unfold = (page: Page, title: string) => page.getByText(title, { exact: true }).click();
const hide = (page: Page) => page.getByRole('switch', { name: 'Hide bitting' });
const printed = async (page: Page, format: 'A4' | 'Letter') => readPdf(await page.pdf({ format }));

test('is written by keyboard alone, each field an undo step', async () => {
  const { page } = await openNote();
  const technician = page.getByRole('textbox', { name: 'Technician' });
  await page.getByRole('textbox', { name: 'Job no.' }).focus();
  await page.keyboard.type('J-17');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  expect(await technician.evaluate((each) => each === document.activeElement)).toBe(true);
  await page.keyboard.type('A. Invented');
  await page.keyboard.press('Enter');
  await hide(page).focus();
  await page.keyboard.press('Space');
  await page.getByText('Bitting hidden: root depths').waitFor();
  for (const secret of SECRETS) expect(await page.locator('.note').innerText()).not.toContain(secret);
  const undo = page.getByRole('button', { name: /^Undo/ });
  await undo.click();
  await page.getByRole('heading', { name: 'Measurements' }).waitFor();
  await undo.click();
  await expect.poll(() => technician.inputValue()).toBe('');
  expect(await page.getByRole('textbox', { name: 'Job no.' }).inputValue()).toBe('J-17');
});

test('what is in the holes is kept as found and as built, side by side', async () => {
  const { page } = await openNote();
  await page.getByRole('button', { name: 'Keep it as found' }).click();
  await page.getByRole('button', { name: 'Keep it as built' }).click();
  const row = page.locator('.note-sheet').first().locator('tbody tr').nth(4);
  await expect.poll(() => row.locator('td').allInnerTexts()).toHaveLength(3);
  for (const cell of await row.locator('td').allInnerTexts()) expect(cell).toContain('high .0095');
});

describe('on paper', () => {
  test.each([
    ['A4', 210, 297],
    ['Letter', 215.9, 279.4],
  ] as const)(
    '%s: text, ruler and drawing are true to size, the restricted page apart',
    async (format, wide, high) => {
      const { page } = await openNote();
      await page.getByRole('textbox', { name: 'Job no.' }).fill('J-17');
      await page.keyboard.press('Tab');
      const pages = await printed(page, format);
      for (const each of pages) {
        expect(each.widthMm).toBeCloseTo(wide, 0);
        expect(each.heightMm).toBeCloseTo(high, 0);
        expect(each.images).toBe(0);
      }
      const text = pages.map((each) => each.text);
      expect(text[0]).toContain('Repair note');
      expect(text[0]).toContain('J-17');
      expect(text[0]).toContain('Local codes');
      const restricted = text.findIndex((each) => each.includes('a key can be cut from this sheet. Keep it'));
      expect(restricted).toBeGreaterThan(0);
      // Nothing of the restricted page on those that may be shared, and no door on the restricted ones.
      for (const secret of SECRETS) expect(text.slice(0, restricted).join(' ')).not.toContain(secret);
      expect(text.slice(restricted).join(' ')).not.toContain('Oil-store door');
      expect(text.slice(restricted).join(' ')).toContain('.3520');
      expect(text.join(' ')).toContain('Load sheet');
      // Each sheet says where it belongs, alone.
      text.forEach((each, i) => {
        expect(each).toContain(`sheet ${i + 1} of ${text.length}`);
        expect(each).toContain(i < restricted ? 'may be shared' : 'Restricted: keep it locked');
      });
      expect(text.join(' ')).not.toContain('Print both sheets');
      // 2 in of rail, 50 mm of ticks: 50.8 mm across, and 6.8 mm high with the long ticks on both sides. Within 0.5 %.
      const rulers = pages
        .flatMap(({ paths }) => paths)
        .filter(({ widthMm, heightMm }) => Math.abs(heightMm - 6.8) < 0.1 && widthMm > 30);
      expect(rulers).toHaveLength(2);
      for (const { widthMm } of rulers) expect(Math.abs(widthMm / 50.8 - 1)).toBeLessThan(0.005);
    },
  );

  test('with the bitting hidden holds no measurement', async () => {
    const { page } = await openNote();
    await hide(page).check();
    await page.getByText('Bitting hidden: root depths').waitFor();
    const text = (await printed(page, 'A4')).map((each) => each.text).join(' ');
    for (const secret of SECRETS) expect(text).not.toContain(secret);
    expect(text).not.toContain('Measurements');
    expect(text).toContain('Bitting hidden: root depths');
    expect(text).toContain('high .0095');
  });
});

describe('pictures', () => {
  test('a PNG is drawn at 300 dots to the inch, and opens the job again when it is inside', async () => {
    const { page } = await openNote();
    const plain = await saved(page, 'Save PNG…');
    const { width, height, data } = PNG.sync.read(Buffer.from(plain));
    const colours = new Set<number>();
    for (let i = 0; i < data.length; i += 4) colours.add(data.readUInt32BE(i));
    expect(colours.size).toBeGreaterThan(20);
    expect([width > 1500, height > 800]).toEqual([true, true]);
    const at = Buffer.from(plain).indexOf('pHYs');
    expect(Buffer.from(plain).readUInt32BE(at + 4)).toBe(11811);
    expect(await readChosenFile(new File([plain.slice()], 'a.png'), null)).toMatchObject({ type: 'error' });

    await page.getByRole('checkbox', { name: /^Put the job inside this picture/ }).check();
    const full = await saved(page, 'Save PNG…');
    await page.getByRole('textbox', { name: 'Title of the job' }).fill('Another title');
    await page.keyboard.press('Enter');
    await page.evaluate((bytes) => {
      const dropped = new DataTransfer();
      dropped.items.add(new File([Uint8Array.from(atob(bytes), (letter) => letter.charCodeAt(0))], 'a.png'));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer: dropped, cancelable: true }));
    }, Buffer.from(full).toString('base64'));
    const title = page.getByRole('textbox', { name: 'Title of the job' });
    await expect.poll(() => title.inputValue()).toBe('Oil-store door, north light');
  });

  test('with the bitting hidden nothing is put inside, and table and SVG hold no depth', async () => {
    const { page } = await openNote();
    await page.getByRole('checkbox', { name: /^Put the job inside/ }).check();
    await hide(page).check();
    await expect
      .poll(() => page.getByRole('checkbox', { name: /^Put the job inside/ }).isDisabled())
      .toBe(true);
    const svg = new TextDecoder().decode(await saved(page, 'Save SVG…'));
    const csv = new TextDecoder().decode(await saved(page, 'Save the pinning as CSV…'));
    expect(svg).toContain('Bitting hidden');
    expect(svg).not.toContain('shearsight-job');
    for (const secret of SECRETS)
      expect(csv + svg.replaceAll(/ d="[^"]*"/g, '')).not.toContain(secret.slice(1));
  });

  test('a copy goes to the clipboard as a PNG, without the job; one that came out blank is not given', async () => {
    const { page } = await openNote();
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await page.getByRole('checkbox', { name: /^Put the job inside/ }).check();
    await page.getByRole('button', { name: 'Copy' }).click();
    await page.getByText('Picture copied, without the job.').waitFor();
    const copied = await page.evaluate(async () => {
      const [item] = await navigator.clipboard.read();
      const bytes = new Uint8Array(await (await item!.getType('image/png')).arrayBuffer());
      return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
    });
    const { data } = PNG.sync.read(Buffer.from(copied, 'base64'));
    const colours = new Set<number>();
    for (let i = 0; i < data.length; i += 4) colours.add(data.readUInt32BE(i));
    expect(colours.size).toBeGreaterThan(20);
    expect(Buffer.from(copied, 'base64').includes('Shearsight job')).toBe(false);
    // A browser that draws nothing, as some do when memory is short.
    await page.evaluate(() => (CanvasRenderingContext2D.prototype.drawImage = () => undefined));
    await page.getByRole('button', { name: 'Save PNG…' }).click();
    await page
      .getByText('The picture came out blank, so it was not saved. Save it as SVG instead.')
      .waitFor();
  });

  test('an SVG has its size on paper', async () => {
    const { page } = await openNote();
    const svg = new TextDecoder().decode(await saved(page, 'Save SVG…'));
    const [, wide, high] = /<svg[^>]* width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? [];
    const [, boxWide, boxHigh] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
    // CSS: 96 px to the inch.
    expect(Number(wide) / 25.4).toBeCloseTo(Number(boxWide) / 96, 3);
    expect(Number(high) / 25.4).toBeCloseTo(Number(boxHigh) / 96, 3);
    expect(svg).toContain('numbers in inches');
    expect(svg).toContain('nineteen times in twenty');
  });
});

test('on a phone a table is read chamber by chamber, each figure beside what it is; on paper it is a table', async () => {
  const { page } = await openNote({ viewport: phone });
  const measures = page.getByRole('table', { name: 'Root depths and the lower stacks they call for' });
  const row = measures.getByRole('row', { name: /^Chamber 5/u });
  const text = async () => (await row.innerText()).replaceAll(/\s+/gu, ' ');
  expect(await text()).toMatch(/^Chamber 5 /u);
  const wide = await page
    .locator('.sheet-scroll')
    .evaluateAll((all) => all.filter((each) => each.scrollWidth > each.clientWidth + 1).length);
  expect(wide).toBe(0);
  const label = await row
    .getByRole('cell')
    .last()
    .evaluate((cell) => getComputedStyle(cell, '::before').content);
  expect(label).toBe('"Calls for"');
  await page.emulateMedia({ media: 'print' });
  expect(await measures.evaluate((table) => getComputedStyle(table).display)).toBe('table');
});

test('the solid view as framed is a picture too, but not while the bitting is hidden', async () => {
  const { page } = await openApp({ viewport: desk, prepare: withDownloads });
  await page.getByRole('button', { name: 'Solid', exact: true }).click();
  await page.locator('.solid-place canvas').waitFor();
  const { data } = PNG.sync.read(Buffer.from(await saved(page, 'Save this picture…')));
  const colours = new Set<number>();
  for (let i = 0; i < data.length; i += 4) colours.add(data.readUInt32BE(i));
  expect(colours.size).toBeGreaterThan(100);
  await page.getByRole('link', { name: 'Repair note' }).click();
  await hide(page).check();
  await page.getByRole('link', { name: 'Check' }).click();
  await page.getByRole('button', { name: 'Solid', exact: true }).click();
  expect(await page.getByRole('button', { name: 'Save this picture…' }).isDisabled()).toBe(true);
});

test.each([
  ['light', desk],
  ['dark', phone],
] as const)('nothing that axe finds wrong, nothing sticks out, %s', async (colorScheme, viewport) => {
  const { page } = await openNote({ viewport, colorScheme });
  await unfold(page, 'The key going in');
  await unfold(page, 'To print and take apart');
  expect(await axeViolations(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
});

describe('the key going in', () => {
  test('as a clip that another page plays, moving, and as a strip with how far out the key is', async () => {
    const { page } = await openNote({ viewport: desk });
    await unfold(page, 'The key going in');
    const clip = await saved(page, 'Save clip (WebM)…', 90_000);
    expect(await played(page.context(), clip)).toMatchObject({
      width: 800,
      seconds: 5,
      isMoving: true,
      isBlank: false,
    });
    const strip = await saved(page, 'Save strip (PNG)…');
    const { width, height, data } = PNG.sync.read(Buffer.from(strip));
    expect(width).toBeGreaterThan(3000);
    // Six pictures that differ: ink in each, not the same in any two.
    const inks = [0, 1, 2, 3, 4, 5].map((i) => {
      const [left, top] = [Math.floor(((i % 3) * width) / 3), Math.floor((Math.floor(i / 3) * height) / 2)];
      let ink = 0;
      for (let y = top; y < top + Math.floor(height / 2); y++)
        for (let x = left; x < left + Math.floor(width / 3); x++) if (data[4 * (y * width + x)]! < 100) ink++;
      return ink;
    });
    expect(Math.min(...inks)).toBeGreaterThan(1000);
    expect(new Set(inks).size).toBe(6);
  });

  test('where the browser writes no clips the strip is saved, and said', async () => {
    const withoutEncoder = (context: BrowserContext) =>
      context.addInitScript(() => {
        Reflect.deleteProperty(window, 'showOpenFilePicker');
        Reflect.deleteProperty(window, 'VideoEncoder');
      });
    const { page } = await openNote({ viewport: desk, prepare: withoutEncoder });
    await unfold(page, 'The key going in');
    const strip = await saved(page, 'Save clip (WebM)…');
    expect(PNG.sync.read(Buffer.from(strip)).width).toBeGreaterThan(3000);
    await page.getByText('This browser writes no clips; here is a strip of pictures. Saved as').waitFor();
  });
});

/** Plays a clip in a page of its own, by the browser's own reader, and looks at frames along the way. */
async function played(context: BrowserContext, clip: Uint8Array) {
  const viewer = await context.newPage();
  try {
    return await viewer.evaluate(async (data) => {
      const video = document.createElement('video');
      video.muted = true;
      const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
      video.src = URL.createObjectURL(new Blob([bytes], { type: 'video/webm' }));
      await new Promise((done, fail) => {
        video.onloadeddata = done;
        video.onerror = () => fail(new Error(video.error?.message ?? 'not played'));
      });
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [video.videoWidth, video.videoHeight];
      const pen = canvas.getContext('2d', { willReadFrequently: true })!;
      const shots: Uint8ClampedArray[] = [];
      for (const second of [0, 1.4, 2.6, 4.6]) {
        video.currentTime = second;
        await new Promise((done) => (video.onseeked = done));
        pen.drawImage(video, 0, 0);
        shots.push(pen.getImageData(0, 0, canvas.width, canvas.height).data);
      }
      const differing = (one: Uint8ClampedArray, other: Uint8ClampedArray) =>
        one.reduce((sum, value, i) => sum + (Math.abs(value - other[i]!) > 60 ? 1 : 0), 0);
      return {
        width: video.videoWidth,
        seconds: video.duration,
        isMoving: shots.slice(1).every((shot, i) => differing(shot, shots[i]!) > 2000),
        isBlank: shots.some((shot) => shot.filter((value, i) => i % 4 === 0 && value < 90).length < 2000),
      };
    }, Buffer.from(clip).toString('base64'));
  } finally {
    await viewer.close();
  }
}

describe('solids', () => {
  test('a part and the cutaway set are made in the browser, and read by others', async () => {
    const { page } = await openNote({ viewport: desk });
    await unfold(page, 'To print and take apart');
    await page.getByRole('combobox', { name: 'What' }).selectOption('retaining ring');
    await page.getByRole('textbox', { name: 'Enlarged, times' }).fill('2,5');
    const ring = await readThreeMf(await saved(page, 'Save 3MF…'));
    expect(ring.objects.map(({ name }) => name)).toEqual(['retaining ring']);
    expect(ring.unit).toBe('millimeter');
    expect(meshFaults(ring.objects[0]!)).toEqual([]);
    await page.getByText(/One piece, \d+ × \d+ × \d+ mm\./).waitFor();
    await page.getByRole('combobox', { name: 'What' }).selectOption('cutaway set to teach with');
    const set = Buffer.from(await saved(page, 'Save STL…'));
    expect(set.length).toBe(84 + 50 * set.readUInt32LE(80));
    await page.getByText(/28 pieces, the largest \d+ × \d+ × \d+ mm\./).waitFor();
    await page.getByRole('textbox', { name: 'Clearance, mm' }).fill('two');
    await page.getByRole('button', { name: 'Save 3MF…' }).click();
    await page.getByText('Clearance: from 0 to 1 mm of the print, 0.2 for example.').waitFor();
  });

  test('the insertion is a scene without a fault; hidden, it is not given, and solids are of stand-ins', async () => {
    const { page } = await openNote({ viewport: desk });
    await unfold(page, 'The key going in');
    await unfold(page, 'To print and take apart');
    const { issues, info } = await validateBytes(await saved(page, 'Save scene (GLB)…'));
    expect([issues.numErrors, issues.numWarnings, info.animationCount]).toEqual([0, 0, 1]);
    await hide(page).check();
    const scene = page.getByRole('button', { name: 'Save scene (GLB)…' });
    await expect.poll(() => scene.isDisabled()).toBe(true);
    for (const name of ['Save clip (WebM)…', 'Save strip (PNG)…'])
      expect(await page.getByRole('button', { name }).isDisabled()).toBe(true);
    await page.getByText('Not while the bitting is hidden: how a key lifts the pins is its cuts.').waitFor();
    await page.getByText('Bitting hidden: made with cuts and pins that are stand-ins, all alike.').waitFor();
    const { objects } = await readThreeMf(await saved(page, 'Save 3MF…'));
    const key = objects.find(({ name }) => name === 'key')!;
    expect(meshFaults(key)).toEqual([]);
    expect(objects.filter(({ name }) => name.endsWith('bottom pin'))).toHaveLength(6);
  });
});
