/**
 * Through the whole app: every station, every fold, every menu and dialog, with both examples, in both themes. The harness fails it for
 * a request off the origin, a violation of the content security policy or an error on the console; axe looks at every state.
 */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { axeViolations } from '../support/axe.ts';
import { openApp } from '../support/browser.ts';
import { recordFigure } from '../support/figure.ts';

const stationLinks = (page: Page) => page.locator('.station-link:not([data-kind])');

/** Opens whatever is folded, folds within folds included. */
async function unfold(page: Page): Promise<number> {
  let opened = 0;
  for (let round = 0; round < 4; round++) {
    const count = await page.evaluate(() => {
      const shut = [...document.querySelectorAll<HTMLDetailsElement>('main details:not([open])')];
      for (const each of shut) each.open = true;
      return shut.length;
    });
    opened += count;
    if (count === 0) break;
    await page.waitForTimeout(600);
  }
  return opened;
}

async function walk(page: Page): Promise<{ states: number; faults: string[] }> {
  const faults: string[] = [];
  let states = 0;
  const look = async (where: string) => {
    states += 1;
    faults.push(...(await axeViolations(page)).map((each) => `${where}: ${each}`));
  };
  for (const name of await stationLinks(page).allInnerTexts()) {
    await page.getByRole('link', { name, exact: true }).click();
    await page.waitForTimeout(700);
    await look(name);
    if ((await unfold(page)) > 0) await look(`${name}, unfolded`);
  }
  await page.getByRole('link', { name: 'Measure', exact: true }).click();
  await page.locator('.job-menu > summary').click();
  await page.waitForTimeout(400);
  await look('Job menu');
  for (const item of ['Jobs on this computer…', 'Cylinders and keys…', 'Save to a locked file…']) {
    if (!(await page.locator('.job-menu').evaluate((menu) => (menu as HTMLDetailsElement).open)))
      await page.locator('.job-menu > summary').click();
    await page.locator('.job-menu-body').getByRole('button', { name: item }).click();
    await page.locator('dialog[open]').waitFor();
    await look(item);
    await page.keyboard.press('Escape');
    await page.locator('dialog[open]').waitFor({ state: 'detached' });
  }
  return { states, faults };
}

test.each([
  { colorScheme: 'light', example: null },
  { colorScheme: 'dark', example: /Net store/ },
] as const)(
  'every state, $colorScheme: no fault that axe finds, nothing asked elsewhere',
  async (how) => {
    const { page, requests } = await openApp({ colorScheme: how.colorScheme });
    await stationLinks(page).first().waitFor();
    if (how.example !== null) {
      await page.locator('.job-menu > summary').click();
      await page.getByText('Open an example').click();
      await page.getByRole('button', { name: how.example }).click();
      await page.getByRole('button', { name: how.example }).waitFor({ state: 'hidden' });
    }
    const { states, faults } = await walk(page);
    recordFigure({
      what: `axe, every state, ${how.colorScheme}: what it finds wrong`,
      measured: faults.length,
      unit: 'faults',
      aim: { atMost: 0 },
      note: `${states} states`,
    });
    expect(faults).toEqual([]);
    expect(states).toBeGreaterThan(10);
    expect(
      requests.every(
        (address) => /^(data|blob|about):/.test(address) || address.startsWith(new URL(page.url()).origin),
      ),
    ).toBe(true);
  },
  240_000,
);
