/** Paths of the first picture, written shorter: the same points, seen through the rules of SVG. */
import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { shorterPath } from '../../tools/shorter-paths.ts';

const place = fc.integer({ min: -9000, max: 9000 }).map((tenths) => tenths / 10);
const step = fc.oneof(
  fc.tuple(fc.constantFrom('M', 'L', 'm', 'l'), place, place).map(([command, x, y]) => `${command}${x} ${y}`),
  fc.tuple(place, place).map(([x, y]) => `A7.5 3 0 0 1 ${x} ${y}`),
  fc.tuple(fc.constantFrom('H', 'V', 'h', 'v'), place).map(([command, to]) => `${command}${to}`),
  fc.constant('Z'),
);

/** The points a path goes through: followed step by step, nothing rounded. */
function points(d: string): string[] {
  let [x, y, startX, startY] = [0, 0, 0, 0];
  return [...d.matchAll(/([a-z])([^a-z]*)/gi)].flatMap(([, command = '', rest = '']) => {
    const numbers = (rest.match(/-?(?:\d+\.?\d*|\.\d+)/g) ?? []).map(Number);
    const isRelative = command === command.toLowerCase();
    const [dx, dy] = isRelative ? [x, y] : [0, 0];
    const kind = command.toUpperCase();
    if (kind === 'Z') [x, y] = [startX, startY];
    else if (kind === 'H') x = dx + numbers[0]!;
    else if (kind === 'V') y = dy + numbers[0]!;
    else [x, y] = [dx + numbers.at(-2)!, dy + numbers.at(-1)!];
    if (kind === 'M') [startX, startY] = [x, y];
    return [`${(Math.round(x * 10) / 10 + 0).toFixed(1)} ${(Math.round(y * 10) / 10 + 0).toFixed(1)}`];
  });
}

test.prop([fc.array(step, { maxLength: 30 })])('goes through the same points', (steps) => {
  const d = ['M0 0', ...steps].join('');
  expect(points(shorterPath(d))).toEqual(points(d));
});

test('is shorter, and keeps radii and flags', () => {
  expect(shorterPath('M100.26 50L110 50A5 5 0 0 1 115 55Z')).toBe('m100.3 50l9.7 0a5 5 0 0 1 5 5z');
  expect(() => shorterPath('M0 0C1 1 2 2 3 3')).toThrow('command C');
});
