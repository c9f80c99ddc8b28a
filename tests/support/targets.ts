/**
 * How large what can be pressed is, in a page: buttons, links that stand alone, fields, folds, choices. Links within a sentence are left
 * out, as WCAG 2.2 (2.5.8) does; what is hidden or cannot be used does not count. CSS px.
 */
import type { Page } from 'playwright-core';

export type Target = { readonly name: string; readonly width: number; readonly height: number };

/** Lists every target of the page, each as large as what answers to the pointer: a box that is ticked with its label. */
export function targetsOf(page: Page): Promise<readonly Target[]> {
  return page.evaluate(() => {
    const controls = 'button, a[href], input, select, textarea, summary, [role="button"], [tabindex="0"]';
    const found: { name: string; width: number; height: number }[] = [];
    for (const element of document.querySelectorAll<HTMLElement>(controls)) {
      const isPart = element.matches('[role="region"], [role="img"], canvas, .visually-hidden, .skip-link');
      const isDisabled = element.matches(':disabled');
      if (isPart || isDisabled || !element.checkVisibility({ visibilityProperty: true })) continue;
      const style = getComputedStyle(element);
      const isInSentence =
        element.tagName === 'A' &&
        style.display === 'inline' &&
        (element.parentElement?.textContent ?? '').trim() !== element.textContent.trim();
      if (isInSentence) continue;
      const isTicked = element.matches('[type="radio"], [type="checkbox"]');
      const box = ((isTicked ? element.closest('label') : null) ?? element).getBoundingClientRect();
      if (box.width === 0 || box.height === 0) continue;
      const text = element.getAttribute('aria-label') ?? element.textContent;
      const name = `${element.tagName.toLowerCase()}.${element.className} "${text.trim().slice(0, 40)}"`;
      found.push({ name, width: box.width, height: box.height });
    }
    return found;
  });
}
