import { readFileSync } from 'node:fs';
import { PNG } from 'pngjs';
import { expect, test } from 'vitest';

const root = new URL('../../', import.meta.url);
const html = readFileSync(new URL('index.html', root), 'utf8');
const said = (property: string) =>
  new RegExp(`property="${property}"\\s+content="([^"]*)"`, 'u').exec(html)?.[1] ?? '';

test('the picture beside a link is there, and as large as the page says', () => {
  const { width, height } = PNG.sync.read(readFileSync(new URL(`public/${said('og:image')}`, root)));
  expect([width, height]).toEqual([Number(said('og:image:width')), Number(said('og:image:height'))]);
  expect(said('og:title')).toBe('Shearsight');
});
