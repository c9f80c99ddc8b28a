import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { pageStyle } from '../../src/drawing/drawing-style.ts';

/** A style sheet without what only formatting decides. */
function essence(css: string): string {
  return css.replaceAll(/\s+/gu, '').replaceAll('"', "'").replaceAll(';}', '}');
}

test('the page has the style sheet that the drawings are written for', () => {
  const sheet = new URL('../../src/panels/shared/drawing.css', import.meta.url);
  // To renew it: write pageStyle() of src/drawing/drawing-style.ts into that file, and format it.
  expect(essence(readFileSync(sheet, 'utf8'))).toBe(essence(pageStyle()));
});
