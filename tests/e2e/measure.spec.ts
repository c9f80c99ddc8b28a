/** The Measure station in a browser: a whole job by keyboard, one edit on desk and phone, questions, paste, coming back. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { desk, openApp, phone } from '../support/browser.ts';
import { startOwnJob } from '../support/own-job.ts';

const headline = (page: Page) => page.locator('output.answer-headline');
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

/** Waits for what the page will show: under load a step may take longer than the second that is waited by default. */
const eventually = <T>(read: () => Promise<T>) => expect.poll(read, { timeout: 15_000 });

/** Types into the field that has the focus, and goes on with Enter. */
async function typeValues(page: Page, values: readonly string[]) {
  for (const value of values) {
    await page.keyboard.type(value);
    await page.keyboard.press('Enter');
  }
}

/** Presses Tab until the focus is on what has this name. */
async function tabTo(page: Page, name: RegExp) {
  for (let presses = 0; presses < 80; presses++) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(() => {
      const element = document.activeElement;
      const label = element instanceof HTMLInputElement ? element.labels?.[0]?.textContent : undefined;
      return element?.getAttribute('aria-label') ?? label ?? element?.textContent ?? '';
    });
    if (name.test(at)) return;
  }
  throw new Error(`${String(name)} is not reached by Tab`);
}

/**
 * Enter arrives twice, two milliseconds apart, as some instruments send it: real key events that bear the time at which the
 * instrument sent them, however long the page is busy with the first.
 */
async function sendEnterTwice(page: Page) {
  const session = await page.context().newCDPSession(page);
  const now = Date.now() / 1000;
  const key = { key: 'Enter', code: 'Enter', windowsVirtualKeyCode: 13 };
  await Promise.all(
    [0, 0.002].flatMap((later) => [
      session.send('Input.dispatchKeyEvent', { type: 'rawKeyDown', ...key, timestamp: now + later }),
      session.send('Input.dispatchKeyEvent', { type: 'keyUp', ...key, timestamp: now + later + 0.001 }),
    ]),
  );
  await session.detach();
}

const ROOTS = ['.369', '.421', '.333', '.393', '.453', '.303'];
const STACKS = ['.3345', '.2790', '.3680', '.3100', '.2600', '.3990'];

/** Enters a six-chamber job from the empty start, without a pointer. */
async function enterJob(page: Page) {
  await tabTo(page, /^Start with my cylinder$/);
  await page.keyboard.press('Enter');
  await eventually(() =>
    page.evaluate(() => document.activeElement?.getAttribute('data-field') ?? ''),
  ).toMatch(/outerDiameter$/);
  await page.keyboard.type('.748');
  await tabTo(page, /^Level$/);
  await page.keyboard.press('ArrowRight');
  await tabTo(page, /^Metal under the key/);
  await typeValues(page, ['.042']);
  await tabTo(page, /^Domed$/);
  await page.keyboard.press('Space');
  await tabTo(page, /^Broken edge$/);
  await page.keyboard.press('Space');
  await tabTo(page, /^Root depth, cut 1$/);
  await typeValues(page, [...ROOTS, ...STACKS]);
}

describe.each([{ webgl: true }, { webgl: false }])('with webgl $webgl', ({ webgl }) => {
  test('a whole job is entered by keyboard alone, mended, tried, and found again', async () => {
    const { page } = await openApp({ viewport: desk, webgl });
    await enterJob(page);
    await eventually(() => headline(page).innerText()).toContain('Chamber 5');
    expect(await headline(page).innerText()).toMatch(/too high/);

    await field(page, 'Ball + bottom pin, chamber 5').focus();
    await typeValues(page, ['.2500']);
    await eventually(() => headline(page).innerText()).not.toContain('Chamber 5');

    await page.keyboard.press('Control+z');
    await eventually(() => headline(page).innerText()).toContain('Chamber 5');
    await page.keyboard.press('Control+Shift+z');
    await eventually(() => headline(page).innerText()).not.toContain('Chamber 5');

    await page.getByRole('button', { name: 'Pull the key out' }).focus();
    await page.keyboard.press('Enter');
    await eventually(() => page.locator('.section-state').innerText()).toBe('Key out');
    await page.getByRole('button', { name: 'Slide the key in' }).focus();
    await page.keyboard.press('Enter');
    await eventually(() => page.locator('.section-state').innerText()).toBe('Key fully in');
    await page.getByRole('button', { name: 'Try the turn' }).focus();
    await page.keyboard.press('Enter');
    await eventually(() => page.locator('.section-state').innerText()).toMatch(/turns|Turned|Stops/);

    await eventually(() => page.locator('.saved').innerText()).toMatch(/^saved /);
    const before = await headline(page).innerText();
    await page.reload();
    await eventually(() => headline(page).innerText()).toBe(before);
    expect(await field(page, 'Ball + bottom pin, chamber 5').inputValue()).toBe('.2500');
    expect(await field(page, 'Root depth, cut 6').inputValue()).toBe('.3030');
    expect(await page.getByRole('button', { name: /^Undo/ }).getAttribute('aria-label')).toBe(
      'Undo: Ball + bottom pin, chamber 5',
    );
  });
});

describe.each([
  ['desk', desk],
  ['phone', phone],
] as const)('on a %s', (_name, viewport) => {
  test('one edit of a field in sight changes the answer, in three interactions', async () => {
    const { page } = await openApp({ viewport });
    const before = await headline(page).innerText();
    const inputs = page.locator('.station input[data-field]');
    const inSight = await inputs.evaluateAll(
      (all, height) =>
        all.findIndex((input) => {
          const box = input.getBoundingClientRect();
          const at = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
          return (
            box.width > 0 &&
            box.bottom <= height &&
            at === input &&
            input.getAttribute('data-field')?.startsWith('group/') === true
          );
        }),
      viewport.height,
    );
    expect(inSight).toBeGreaterThanOrEqual(0);
    const input = inputs.nth(inSight);
    await input.click();
    await page.keyboard.type('.2200');
    await page.keyboard.press('Enter');
    await eventually(() => headline(page).innerText()).not.toBe(before);
  });

  test('nothing is wider than the window', async () => {
    for (const width of [viewport.width, 320]) {
      const { page } = await openApp({ viewport: { width, height: viewport.height } });
      await headline(page).waitFor();
      await page.locator('details.fold').evaluateAll((folds) => {
        for (const fold of folds) fold.setAttribute('open', '');
      });
      const over = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(over).toBe(0);
    }
  });
});

describe('what is typed', () => {
  test('is asked about when it has two meanings, and stored only after a yes', async () => {
    const { page } = await openApp();
    const cut = field(page, 'Root depth, cut 2');
    await cut.focus();
    await page.keyboard.type('421');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: '0.421 in (421 thou)' }).waitFor();
    expect(await cut.inputValue()).toBe('421');
    await page.keyboard.press('Escape');
    expect(await cut.inputValue()).toBe('.4080');
    await page.keyboard.type('421');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: '0.421 in (421 thou)' }).waitFor();
    // The same Enter sent twice by an instrument is no yes.
    await page.waitForTimeout(200);
    await page.keyboard.press('Enter');
    await eventually(() => cut.inputValue()).toBe('.4210');
  });

  test('stays to be mended when it cannot be read, with a sentence that belongs to the field', async () => {
    const { page } = await openApp();
    const cut = field(page, 'Root depth, cut 1');
    await cut.fill('abc');
    await page.keyboard.press('Enter');
    expect(await cut.getAttribute('aria-invalid')).toBe('true');
    const described = await cut.evaluate((input) =>
      (input.getAttribute('aria-describedby') ?? '')
        .split(' ')
        .map((id) => document.getElementById(id)?.textContent ?? '')
        .join(' '),
    );
    expect(described).toContain('“abc” is not a length');
    expect(described).toContain('Until then .3520 in counts.');
    expect(await headline(page).innerText()).toContain('Chamber 5 is too high');
    // The answer itself, a live region, says that it stands on what was there before.
    await eventually(() => headline(page).innerText()).toContain(
      'Not as typed: one field cannot be read. Root depth, cut 1 still counts as .3520 in.',
    );
    // Another station and back: the text is still there to be mended.
    await page.getByRole('link', { name: 'Parts on hand', exact: true }).click();
    await page.getByRole('heading', { name: 'Ranges wanted' }).waitFor();
    await page.getByRole('link', { name: 'Measure', exact: true }).click();
    await eventually(() => cut.inputValue()).toBe('abc');
    expect(await cut.getAttribute('aria-invalid')).toBe('true');
    await cut.fill('.3500');
    await page.keyboard.press('Enter');
    await eventually(() => headline(page).innerText()).not.toContain('Not as typed');
    await page.getByRole('link', { name: 'Parts on hand', exact: true }).click();
    await page.getByRole('heading', { name: 'Ranges wanted' }).waitFor();
    await page.getByRole('link', { name: 'Measure', exact: true }).click();
    await eventually(() => cut.inputValue()).toBe('.3500');
  });

  test('fills a column from an instrument that sends a value and Enter, at any speed, Enter sent twice', async () => {
    for (const delay of [2, 50]) {
      const { page } = await openApp();
      await field(page, 'Root depth, cut 1').focus();
      for (const root of ROOTS) {
        await page.keyboard.type(root, { delay });
        await sendEnterTwice(page);
      }
      for (const [i, root] of ROOTS.entries())
        expect(await field(page, `Root depth, cut ${String(i + 1)}`).inputValue()).toBe(`${root}0`);
    }
  });
});

test('a pasted rectangle is shown first, and is one step', async () => {
  const { page } = await openApp();
  await field(page, 'Root depth, cut 2').focus();
  await page.evaluate(() => {
    const data = new DataTransfer();
    data.setData('text', '.4110\t.2710\r\n.3210\tabc');
    document.activeElement?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
    );
  });
  const dialog = page.getByRole('dialog');
  expect(await dialog.getByRole('heading').innerText()).toBe('3 readings to store, 1 left out');
  await dialog.getByRole('button', { name: 'Store them' }).click();
  await eventually(() => field(page, 'Root depth, cut 3').inputValue()).toBe('.3210');
  expect(await field(page, 'Ball + bottom pin, chamber 2').inputValue()).toBe('.2710');
  await page.getByRole('button', { name: 'Undo: Pasted 3 readings' }).click();
  expect(await field(page, 'Root depth, cut 2').inputValue()).toBe('.4080');
  expect(await field(page, 'Root depth, cut 3').inputValue()).toBe('.3180');
});

test('on a phone the answer asks chamber by chamber, and Enter goes on in what it asks', async () => {
  const { page } = await openApp({ viewport: phone });
  await startOwnJob(page);
  await field(page, 'Plug diameter').fill('.874');
  await field(page, 'Plug diameter').press('Enter');
  const card = page.locator('.quick-field input');
  await card.focus();
  await typeValues(page, ['.364', '.468', '.410']);
  await eventually(() => headline(page).innerText()).toContain('ball + bottom pin of chamber 2');
  expect(await page.locator('.quick-field').innerText()).toContain('Ball + bottom pin, chamber 2');
  expect(await card.evaluate((input) => input === document.activeElement)).toBe(true);
});

test('the job menu stays open when plain text in it is pressed, and closes from outside, by Tab and by Escape', async () => {
  const { page } = await openApp();
  const menu = page.locator('.job-menu');
  const button = menu.locator('> summary');
  const isOpen = () => menu.evaluate((details) => (details as HTMLDetailsElement).open);
  await button.click();
  await menu.getByText('Theme', { exact: true }).click();
  expect(await isOpen()).toBe(true);
  // Another window takes the focus.
  await button.focus();
  await button.evaluate((summary) => summary.blur());
  expect(await isOpen()).toBe(true);
  await headline(page).click();
  await eventually(isOpen).toBe(false);
  await button.click();
  await page.keyboard.press('Escape');
  await eventually(isOpen).toBe(false);
  await button.click();
  await page.keyboard.press('Shift+Tab');
  await eventually(isOpen).toBe(false);
});
