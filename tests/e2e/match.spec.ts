/** Choosing parts in a browser: from a bag to a built section, others, nothing that fits, several cylinders, cancel. */
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { Job } from '../../src/model/schema/job-schema.ts';
import type { Part } from '../../src/model/schema/parts-schema.ts';
import { loose } from '../support/bag-job.ts';
import { desk, openApp, phone } from '../support/browser.ts';
import { buildJob, changed } from '../support/job-builder.ts';
import { manyJob } from '../support/many-job.ts';
import { seededRandom } from '../support/random-job.ts';

const eventually = <T>(read: () => Promise<T>) => expect.poll(read, { timeout: 20_000 });

/** Opens the station with this job in place of the example. */
async function openParts(job: Job, options: { viewport?: typeof desk | typeof phone } = {}) {
  const { page } = await openApp({
    viewport: options.viewport ?? desk,
    webgl: false,
    path: '#parts',
    prepare: (context) =>
      context.route('**/examples/lighthouse.json', (route) => route.fulfill({ json: job })),
  });
  await page.getByRole('heading', { name: 'Which part goes where' }).waitFor();
  return page;
}

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: typeof name === 'string' });
const answer = (page: Page) => page.locator('.choice-answer').first();
const labels = (page: Page) => page.locator('.chamber-choice .choice-part .choice-label').allInnerTexts();
const captions = (page: Page) => page.locator('.close-up-part').allInnerTexts();

async function axeProblems(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { axe: runner } = window as unknown as { axe: typeof axe };
    const { violations } = await runner.run({ include: ['.match', '.bench-choice'] });
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
  });
}

const isTooWide = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);

/** Six chambers that call for pins of .172 .132 .192 .152 .212 .172 in, all unmeasured, and these loose parts. */
function sixChambers(bag: readonly Part[]): Job {
  return changed(buildJob({ chambers: 6 }), (copy) => {
    for (const part of copy.parts) {
      if (!part.id.startsWith('bottom-pin')) continue;
      part.label = 'bottom pin';
      delete part.length;
    }
    copy.parts.push(...structuredClone(bag as Part[]));
  });
}

const random = seededRandom(11);
const RIGHT = [0.172, 0.132, 0.192, 0.152, 0.212, 0.1715];
const SIXTY = [
  ...RIGHT.map((length, i) => loose(`right-${i}`, { label: `R${i + 1}`, length })),
  // too long or too short for every chamber
  ...Array.from({ length: 54 }, (_, i) =>
    loose(`other-${i}`, { label: `N${i + 1}`, length: Math.round(2000 * (0.24 + 0.1 * random())) / 2000 }),
  ),
];

/** As copied from a spreadsheet: labels and lengths. */
async function pasteParts(page: Page, parts: readonly Part[]) {
  const rows = parts.map(({ label, length }) => `${label}\t${length?.readings[0]?.typed ?? ''}`);
  await button(page, 'Paste from a spreadsheet').first().click();
  const dialog = page.getByRole('dialog', { name: 'Paste from a spreadsheet' });
  await dialog
    .getByRole('textbox')
    .first()
    .fill(`Label\tLength (in)\n${rows.join('\n')}`);
  await dialog.getByRole('button', { name: `Put ${parts.length} parts into the bag` }).click();
}

describe('from sixty loose parts', () => {
  test('to a section that turns, in one step, and back', async () => {
    const page = await openParts(sixChambers([loose('like', { label: 'L1', length: 0.3 })]));
    expect(await captions(page)).toEqual([]);
    await pasteParts(page, SIXTY);
    await button(page, 'Choose the best parts').click();
    await eventually(() => answer(page).innerText()).toMatch(
      /^All 6 chambers can be filled\. The tightest has /,
    );
    const chosen = await labels(page);
    expect([...chosen].sort()).toEqual(['R1', 'R2', 'R3', 'R4', 'R5', 'R6']);
    expect(await axeProblems(page)).toEqual([]);
    await button(page, 'Put these in the plan').click();
    await eventually(() => captions(page)).toEqual(chosen);
    expect(await page.locator('.match-stale').count()).toBe(0);
    await page.locator('.stations').getByRole('link', { name: 'Measure' }).click();
    await eventually(() => page.locator('output.answer-headline').innerText()).toMatch(/^It should turn/);
    await page.keyboard.press('Control+z');
    await page.locator('.stations').getByRole('link', { name: 'Parts on hand' }).click();
    await eventually(() => captions(page)).toEqual([]);
  });

  test('another part for a chamber is held, the rest chosen anew; a change makes it stale, and says so', async () => {
    const page = await openParts(sixChambers(SIXTY));
    await button(page, 'Choose the best parts').focus();
    await page.keyboard.press('Enter');
    await eventually(() => labels(page)).toHaveLength(6);
    const [first, , , , , last] = await labels(page);
    await button(page, 'Others for chamber 1').focus();
    await page.keyboard.press('Enter');
    const other = page.locator('.alternative').first();
    await other.waitFor();
    expect(await other.innerText()).toMatch(/changes chamber 6/);
    await other.focus();
    await page.keyboard.press('Enter');
    await eventually(async () => (await labels(page))[0]).toBe(last);
    expect((await labels(page))[5]).toBe(first);
    expect(await page.locator('.choice-notes').first().innerText()).toContain('Your choice');

    await page.getByRole('checkbox', { name: 'Leave chamber 2 as it is' }).check();
    await eventually(() => page.locator('.chamber-choice').nth(1).innerText()).toContain(
      'Chamber 2 is locked',
    );
    await page.keyboard.press('Control+z');
    await eventually(() => page.locator('.match-stale').innerText()).toContain('choose again');
    expect(await button(page, 'Put these in the plan').isDisabled()).toBe(true);
  });
});

test('with nothing that fits, and with nothing at all, there is a clear answer', async () => {
  const page = await openParts(sixChambers([loose('short', { label: 'S1', length: 0.09 })]));
  await button(page, 'Choose the best parts').click();
  await eventually(() => answer(page).innerText()).toMatch(
    /^0 of 6 chambers can be filled\. Nothing in the bag fits chamber 1: S1, the nearest, is .* too short\. It needs a bottom pin of /,
  );
  expect(await button(page, 'Put these in the plan').count()).toBe(0);

  const empty = await openParts(sixChambers([]), { viewport: phone });
  await button(empty, 'Choose the best parts').click();
  await eventually(() => answer(empty).innerText()).toMatch(
    /^0 of 6 chambers can be filled\. No loose part is left for chamber 1: everything on hand is in use\. It needs a bottom pin of /,
  );
  expect(await isTooWide(empty)).toBe(false);
});

test('a pin that is too long may be filed when that is asked for, with the care it takes', async () => {
  const page = await openParts(sixChambers([loose('long', { label: 'F1', length: 0.183 })]));
  await page.getByRole('checkbox', { name: "A loose pin's crown may be filed" }).check();
  expect(await page.locator('.filing').innerText()).toContain('never the plug or an original');
  const most = page.getByRole('textbox', { name: 'by at most, in' });
  await most.fill('much');
  await most.press('Enter');
  await eventually(() => page.locator('.filing .match-trouble').innerText()).toContain('for example .005');
  await most.fill('.010');
  await most.press('Enter');
  await button(page, 'Choose the best parts').click();
  await eventually(() => page.locator('.chamber-choices').innerText()).toMatch(
    /File \.00\d+ in off its crown, then measure it again\./,
  );
});

test('a cut is made deeper only after a yes', async () => {
  const high = changed(sixChambers([]), (copy) => {
    for (const part of copy.parts) {
      const number = Number(/^bottom-pin-(\d)$/.exec(part.id)?.[1] ?? 0);
      const length = RIGHT[number - 1];
      if (length !== undefined)
        part.length = loose('any', { length: length + (number === 3 ? 0.008 : 0) }).length!;
    }
  });
  const page = await openParts(high);
  await page.getByText('Or take it off the key').click();
  expect(await page.locator('.other-repair').innerText()).toContain('not reversible');
  await button(page, 'How much off its cut?').click();
  await eventually(() => page.locator('.cut-answer').innerText()).toMatch(
    /^Take \.008\d* in off the cut under chamber 3/,
  );
  await button(page, 'It is cut already…').click();
  await button(page, 'Yes, it is cut').click();
  await page.locator('.stations').getByRole('link', { name: 'Measure' }).click();
  await eventually(() => page.locator('output.answer-headline').innerText()).toMatch(/^It should turn/);
});

describe('several cylinders and keys', () => {
  const several = changed(manyJob({ keys: 2, cylinders: 2, chambers: 5, parts: 400, seed: 5 }), (copy) => {
    copy.cylinders.forEach((each, i) => (each.label = `Door ${i + 1}`));
    copy.keys.forEach((each, i) => (each.label = `Key ${i + 1}`));
    for (const part of copy.parts) if (part.id.includes('bottom-pin')) delete part.length;
  });

  test('a table by keyboard on a phone; two built at once land as one step', async () => {
    const page = await openParts(several, { viewport: phone });
    await button(page, 'Fill in the table').focus();
    await page.keyboard.press('Enter');
    const cell = (name: RegExp) => page.getByRole('button', { name });
    await cell(/^Key 1 in Door 1: 5 of 5/).focus();
    await page.keyboard.press('Enter');
    await cell(/^Key 2 in Door 2: 5 of 5/).focus();
    await page.keyboard.press('Space');
    await button(page, 'Build the 2 picked together').focus();
    await page.keyboard.press('Enter');
    await eventually(() => page.locator('.together .choice-answer').innerText()).toBe(
      'All 2 cylinders can be built at the same time from this bag.',
    );
    expect(await isTooWide(page)).toBe(false);
    expect(await axeProblems(page)).toEqual([]);
    await button(page, 'Put these in the plans').click();
    await eventually(() => page.locator('.together .match-told').innerText()).toContain('as one step');
    expect(await button(page, 'Undo: Parts for 2 cylinders').count()).toBe(1);
  });

  test('another cylinder and key are added, named, looked at and taken away', async () => {
    const page = await openParts(sixChambers(SIXTY));
    await button(page, 'Cylinders and keys…').click();
    await button(page, 'One like Cylinder').click();
    await button(page, 'Another cylinder').click();
    const name = page.getByRole('textbox', { name: 'Name of cylinder Cylinder 3' });
    await name.fill('Back door');
    await name.press('Enter');
    await button(page, 'Another key').click();
    await button(page, 'Done').click();
    await page.getByRole('combobox', { name: 'Cylinder' }).selectOption({ label: 'Back door' });
    await page.locator('.stations').getByRole('link', { name: 'Measure' }).click();
    await page.getByRole('textbox', { name: 'Plug diameter' }).waitFor();
    // the new key's seat in the new cylinder is made with its first answer
    await page.getByRole('radio', { name: 'Level', exact: true }).check({ force: true });
    await eventually(() => button(page, /^Undo: /).getAttribute('aria-label')).not.toContain('Another key');

    await button(page, 'Cylinders and keys…').click();
    await button(page, 'Take away… Back door').click();
    expect(await page.getByRole('group', { name: 'Take Back door away?' }).innerText()).toContain(
      'With Back door go its 6 chambers, 1 plan',
    );
    await button(page, 'Take it away').click();
    await eventually(() => page.locator('.bench-thing').count()).toBe(4);
  });
});

test('a long choice shows how far it is, the page stays alive, and it stops when told to', async () => {
  const page = await openParts(manyJob({ keys: 12, cylinders: 14, chambers: 7, parts: 6000, seed: 9 }));
  await button(page, 'Choose the keys too').click();
  const cancel = button(page, 'Cancel');
  await cancel.waitFor();
  // reckoned elsewhere: a click is answered at once
  await page.getByRole('checkbox', { name: 'each key for one cylinder only' }).check();
  await cancel.click();
  await eventually(() => page.locator('.pair-table').innerText()).toContain('Stopped. Nothing was changed.');
  // and the next order goes to a fresh worker
  await button(page, 'Choose the best parts').click();
  await eventually(() => answer(page).innerText()).toMatch(/^All 7 chambers/);
});
