/**
 * Kills the browser at a random moment while somebody edits, starts it again with the same profile, and looks for the last title
 * that the screen had called saved. What is newer may be there as well; what is older, or nothing, is a loss.
 */
import { readdirSync, readFileSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { launchWithProfile } from './browser-launch.ts';
import type { Random } from './mutate-text.ts';

export type KillRound = {
  /** Number of the last edit that the screen called saved, and of the last one made; 0 for none. */
  readonly saved: number;
  readonly made: number;
  /** Of the edit found after the next start; null when the store could not be read. */
  readonly found: number | null;
  /** What the page said at that start. */
  readonly told: string;
};

const TITLE = 'Title of the job';

/** One round. `first` is the number that its first edit gets; numbers only grow. */
export async function killRound(
  profile: string,
  url: string,
  first: number,
  random: Random,
): Promise<KillRound> {
  let saved = 0;
  let made = first - 1;
  let found: number | null = null;
  let told = '';
  const context = await launchWithProfile(profile, { webgl: false });
  try {
    const page = await openPage(context, url, first === 1);
    found = numberIn(await page.getByRole('textbox', { name: TITLE }).inputValue());
    told = await toldBy(page);
    await page.exposeFunction('toldSaved', (title: string) => {
      saved = Math.max(saved, numberIn(title) ?? 0);
    });
    await page.evaluate(watchSaved);
    const end = Date.now() + 150 + random() * 900;
    while (Date.now() < end) {
      made += 1;
      const title = page.getByRole('textbox', { name: TITLE });
      await title.fill(`Edit ${made}`);
      await title.press('Enter');
      if (random() < 0.5) await page.waitForTimeout(random() * 60);
    }
  } finally {
    kill(profile);
    await context.close().catch(() => undefined);
  }
  return { saved, made, found, told };
}

/** Starts once more and reads what is there. */
export async function numberStored(profile: string, url: string): Promise<number | null> {
  const context = await launchWithProfile(profile, { webgl: false });
  const page = await openPage(context, url, false);
  const found = numberIn(await page.getByRole('textbox', { name: TITLE }).inputValue());
  await context.close();
  return found;
}

async function openPage(context: BrowserContext, url: string, isFirst: boolean): Promise<Page> {
  const page = context.pages()[0] ?? (await context.newPage());
  await page.goto(url);
  await page.getByRole('textbox', { name: TITLE }).waitFor();
  if (isFirst) await page.getByRole('button', { name: 'Start with my cylinder' }).click();
  // A slow start shows the example until the job of last time is there.
  else await page.waitForFunction(isJobBack, undefined, { timeout: 20_000 }).catch(() => undefined);
  return page;
}

function isJobBack(): boolean {
  const input = document.querySelector<HTMLInputElement>('.job-title input');
  return /^Edit \d/.test(input?.value ?? '');
}

/** The title, where the work is, and whatever notice there is. */
async function toldBy(page: Page): Promise<string> {
  const texts = await page.locator('.saved, .notice, .save-trouble').allInnerTexts();
  return [await page.getByRole('textbox', { name: TITLE }).inputValue(), ...texts].join(' | ');
}

/** Tells the title at every moment at which the screen begins to call it saved. */
function watchSaved(): void {
  const place = document.querySelector('.saved');
  const told = (window as unknown as { toldSaved: (title: string) => void }).toldSaved;
  if (place === null) return;
  new MutationObserver(() => {
    const isSaved = place.textContent.startsWith('saved ');
    const title = document.querySelector<HTMLInputElement>('.job-title input');
    // What is typed and not yet entered is nothing that could have been saved.
    if (isSaved && title?.dataset['dirty'] === 'false') told(title.value);
  }).observe(place, { childList: true, characterData: true, subtree: true });
}

function numberIn(title: string): number | null {
  const digits = /^Edit (\d+)$/.exec(title)?.[1];
  return digits === undefined ? null : Number(digits);
}

/** Every process of this browser and no other: those that were started with this profile. */
function kill(profile: string): void {
  for (const id of readdirSync('/proc').filter((name) => /^\d+$/.test(name))) {
    let command = '';
    try {
      command = readFileSync(`/proc/${id}/cmdline`, 'utf8');
    } catch {
      continue;
    }
    if (command.includes(profile) && Number(id) !== process.pid) process.kill(Number(id), 'SIGKILL');
  }
}
