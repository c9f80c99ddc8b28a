/** Words of no language: every text in marks, so that a text which did not come from the words shows. */
import { ENGLISH, type Words } from '../../../src/panels/learn/words/words.ts';

const OPEN = '⟦';
const CLOSE = '⟧';

function marked<T>(tree: T): T {
  if (typeof tree === 'string') return `${OPEN}${tree}${CLOSE}` as T;
  if (typeof tree !== 'object' || tree === null) return tree;
  return Object.fromEntries(Object.entries(tree).map(([name, child]) => [name, marked(child)])) as T;
}

export const PSEUDO: Words = { ...marked(ENGLISH), tongue: 'en', captions: null };

/** What is left of a text when all that stands in marks is taken out, figures and signs too. */
export function unmarked(text: string): string {
  let depth = 0;
  let left = '';
  for (const letter of text) {
    if (letter === OPEN) depth += 1;
    else if (letter === CLOSE) depth -= 1;
    else if (depth === 0) left += letter;
  }
  return left.replace(/[\d\s.,°±+−✓✗↑↓-]+/gu, '');
}
