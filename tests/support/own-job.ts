/** Browser tests that begin with a person's own job instead of the example. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Starts the empty job, and waits until the page shows it: a title typed before would be written into that of the example. */
export async function startOwnJob(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Start with my cylinder' }).click();
  const title = page.getByRole('textbox', { name: 'Title of the job' });
  await expect.poll(() => title.inputValue()).toBe('My cylinder');
}
