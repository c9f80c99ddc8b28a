/** A person without a pointer: moves by Tab, types, presses keys, and looks at what has the focus. */
import type { Page } from 'playwright-core';

/** What has the focus, as a screen reader would name it. */
export async function focusedName(page: Page): Promise<string> {
  return await page.evaluate(() => {
    const element = document.activeElement;
    if (!(element instanceof HTMLElement)) return '';
    const labels = element instanceof HTMLInputElement ? (element.labels ?? []) : [];
    const label = [...labels].map((each) => each.textContent).join(' ');
    return (element.getAttribute('aria-label') ?? (label || element.textContent)).trim();
  });
}

/** Presses Tab until what is wanted has the focus; fails after a round of the whole page. */
export async function tabTo(page: Page, name: RegExp, most = 90): Promise<void> {
  const seen: string[] = [];
  for (let i = 0; i < most; i++) {
    const now = await focusedName(page);
    if (name.test(now)) return;
    seen.push(now);
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never came to ${String(name)}; it came to: ${seen.join(' | ')}`);
}
