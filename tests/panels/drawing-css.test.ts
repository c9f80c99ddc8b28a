import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { pageStyle } from '../../src/drawing/drawing-style.ts';

test('the page has the style sheet that the drawings are written for', () => {
  const sheet = new URL('../../src/panels/shared/drawing.css', import.meta.url);
  // To renew it: write pageStyle() of src/drawing/drawing-style.ts into that file.
  expect(readFileSync(sheet, 'utf8')).toBe(pageStyle());
});
