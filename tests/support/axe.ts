/** Runs the accessibility checks of axe-core (MPL-2.0, WCAG 2 A and AA) in a page. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

type Violation = {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly html: string }[];
};

/** Lists what is wrong, one sentence each; empty when nothing is. */
export async function axeViolations(page: Page): Promise<string[]> {
  await page.evaluate(source);
  const violations = await page.evaluate(async (): Promise<readonly Violation[]> => {
    const { axe } = window as unknown as {
      axe: { run: (options: unknown) => Promise<{ violations: readonly Violation[] }> };
    };
    const { violations: found } = await axe.run({
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
    });
    return found.map(({ id, help, nodes }) => ({ id, help, nodes: nodes.map(({ html }) => ({ html })) }));
  });
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ html }) => `${id}: ${help}: ${html.slice(0, 160)}`),
  );
}
