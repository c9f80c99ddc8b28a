/** Several keys in a browser: planned from their cuts, looked at, crossed; a thousand million keys counted and listed. */
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { desk, openApp, type OpenOptions, phone } from '../support/browser.ts';
import { buildJob } from '../support/job-builder.ts';
import { keyedJob, rootDepthOf, withKey } from '../support/keyed-job.ts';

const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const eventually = <T>(read: () => Promise<T>) => expect.poll(read, { timeout: 20_000 });

/** Opens the app on a job, in place of its example. */
async function openJob(job: Job, options: OpenOptions = {}): Promise<Page> {
  const { page } = await openApp({
    webgl: false,
    ...options,
    prepare: (context) =>
      context.route('**/examples/lighthouse.json', (route) => route.fulfill({ json: job })),
  });
  return page;
}

/** A cylinder with one split in each chamber, and three keys; nothing planned yet. */
function threeKeys(): Job {
  const cuts = [
    [2, 4, 3, 5],
    [5, 4, 1, 5],
    // crosses: each of its cuts is one of the first or the second key
    [5, 4, 3, 5],
  ] as const;
  const first = buildJob({ chambers: cuts[0].map((cut) => ({ rootDepth: rootDepthOf(cut) })) });
  const named = withKey(
    withKey(first, 'second', cuts[1].map(rootDepthOf)),
    'third',
    cuts[2].map(rootDepthOf),
  );
  named.keys.forEach((key, i) => (key.label = ['Boat house', 'Net loft', 'Old spare'][i]!));
  return named;
}

const fold = async (page: Page, station: string, title: string) => {
  await page.getByRole('link', { name: station, exact: true }).click();
  await page.locator('.keying summary', { hasText: title }).click();
};
const rows = (page: Page) => page.locator('.key-row').allInnerTexts();

describe.each([
  ['desk', desk],
  ['phone', phone],
] as const)('on a %s', (_, viewport) => {
  test('two keys are planned from their cuts, both turn it, and a third one crosses', async () => {
    const page = await openJob(threeKeys(), { viewport });
    await fold(page, 'Parts on hand', 'Plan for several keys');
    await page.getByRole('combobox', { name: 'Old spare' }).selectOption({ label: 'is left out' });
    const table = page.getByRole('table', { name: /Planned lengths/ });
    await eventually(() => table.locator('tbody tr').count()).toBe(4);
    await eventually(() => page.locator('.plan-outcome').innerText()).toMatch(
      /Boat house turns the plug\s+Net loft turns the plug\s+Old spare turns the plug, though it is left out/,
    );
    expect(await page.locator('.planned-picture svg.drawing').textContent()).toContain('master pin .0450');
    await page.getByRole('button', { name: 'Put this in the plan' }).click();
    await eventually(() => page.locator('.keying-done').innerText()).toContain('In the plan');

    await fold(page, 'Check', 'Which key turns what');
    await eventually(async () => (await rows(page)).length).toBe(3);
    for (const row of await rows(page)) expect(row).toContain('turns the plug');
    for (const [name, meant] of [
      ['Boat house', 'turn the plug'],
      ['Net loft', 'turn the plug'],
      ['Old spare', 'turn nothing'],
    ] as const) {
      await page
        .getByRole('combobox', { name: `What ${name} is meant to do` })
        .selectOption({ label: meant });
    }
    await eventually(() => page.locator('.key-crossing').innerText()).toBe(
      'Old spare crosses Boat house and Net loft: it turns the plug too, and is not meant to.',
    );
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(wide).toBeLessThanOrEqual(0);

    // one step each: three intents, one plan
    for (let i = 0; i < 4; i++) await page.keyboard.press('Control+z');
    await eventually(async () => (await rows(page))[1]).toMatch(/turns nothing; held by chambers 1 and 3/);
  });
});

test('a thousand million keys: counted, and the first thousand listed, only when asked for', async () => {
  const depths = Array.from({ length: 10 }, (_, i) => i + 1);
  const page = await openJob(keyedJob(Array.from({ length: 9 }, () => depths)));
  await fold(page, 'Check', 'Which key turns what');
  await page.getByLabel('Shallowest root depth').fill(String(rootDepthOf(1)));
  await page.getByLabel('Next one deeper by').fill('.015');
  await page.getByLabel('How many depths').fill('ten');
  await page.getByRole('button', { name: 'Count the keys' }).click();
  await eventually(() => page.locator('.depths-form [role=status]').innerText()).toMatch(
    /^How many depths: "ten" is no whole number from 1 to 24, for example 10\./,
  );
  await page.getByLabel('How many depths').fill('10');
  await page.getByRole('button', { name: 'Count the keys' }).click();
  await eventually(() => page.getByTestId('keys-by-table').innerText()).toMatch(
    /Of 1,000,000,000 keys that can be cut to these depths, 1,000,000,000 operate it\. /,
  );
  const table = page.getByRole('table', { name: 'Keys that operate it' });
  expect(await table.count()).toBe(0);
  expect(await page.locator('.key-list').innerText()).toContain('can make a key to this cylinder');

  await page.getByRole('button', { name: 'Show the cuts' }).click();
  await eventually(() => table.getByRole('row').first().innerText()).toMatch(/1 1 1 1 1 1 1 1 1/);
  expect(await table.getAttribute('aria-rowcount')).toBe('1000');
  expect(await table.getByRole('row').count()).toBeLessThan(40);
  await table.evaluate((element) => (element.scrollTop = element.scrollHeight));
  await eventually(() => table.getByRole('row').last().innerText()).toMatch(/1,000\s+1 1 1 1 1 1 10 10 10/);
  await page.getByLabel('Only cuts like').fill('10 ? 10');
  await eventually(() => page.locator('.key-list').innerText()).toContain(
    '10,000,000 keys; here 1 to 1,000.',
  );
  await page.getByLabel('Go to number').fill('10,000,000');
  await page.getByLabel('Go to number').press('Enter');
  await eventually(() => table.getByRole('row').first().innerText()).toMatch(/10 10 10 10 10 10 10 10 10/);

  // another station, and back: asked for again
  await page.getByRole('link', { name: 'Measure' }).click();
  await fold(page, 'Check', 'Which key turns what');
  await page.getByTestId('keys-by-table').waitFor();
  expect(await table.count()).toBe(0);
});

test('nothing that axe finds wrong, light and dark', async () => {
  for (const colorScheme of ['light', 'dark'] as const) {
    // evaluated by hand: the page's policy takes no script that was not announced
    const page = await openJob(threeKeys(), { colorScheme, context: { bypassCSP: true } });
    await page.addScriptTag({ path: axe });
    const wrong = () =>
      page.evaluate(async () => {
        const run = (
          window as unknown as {
            axe: {
              run: (at: string) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
            };
          }
        ).axe;
        const { violations } = await run.run('.keying');
        return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`);
      });
    await fold(page, 'Parts on hand', 'Plan for several keys');
    await page.locator('.planned-picture svg.drawing').waitFor();
    expect(await wrong()).toEqual([]);
    await fold(page, 'Check', 'Which key turns what');
    await page.getByLabel('Shallowest root depth').fill('.295');
    await page.getByLabel('Next one deeper by').fill('.015');
    await page.getByLabel('How many depths').fill('8');
    await page.getByRole('button', { name: 'Count the keys' }).click();
    await page.getByRole('button', { name: 'Show the cuts' }).click();
    await page.getByRole('table', { name: 'Keys that operate it' }).waitFor();
    expect(await wrong()).toEqual([]);
  }
});
