import { describe, expect, test } from 'vitest';
import {
  type Curve,
  clipPieces,
  envelope,
  envelopeOfAll,
  heightOn,
  type Piece,
  heightOfPieces,
  shiftPieces,
  slopeOn,
} from '../../../src/model/contact/pieces.ts';

const crest = (at: number, height: number, radius: number): Curve => ({ kind: 'crest', at, height, radius });
const line = (at: number, height: number, slope: number): Curve => ({ kind: 'straight', at, height, slope });
const piece = (from: number, to: number, curve: Curve, mark: string): Piece<string> => ({
  from,
  to,
  curve,
  mark,
});

describe('a curve', () => {
  test('of the crest kind is a circle cut off at its centre', () => {
    const circle = crest(2, 7, 5);
    expect(heightOn(circle, 5)).toBeCloseTo(6, 12); // 3-4-5 triangle
    expect(slopeOn(circle, 5)).toBeCloseTo(-0.75, 12);
    expect(heightOn(circle, 7)).toBe(2);
    expect(slopeOn(circle, 7)).toBe(-Infinity);
    expect(slopeOn(circle, 2)).toBe(0);
  });
});

describe('the envelope', () => {
  test('of two circles changes over on their common chord', () => {
    const first = [piece(-5, 5, crest(0, 5, 5), 'one')];
    const second = [piece(1, 11, crest(6, 5, 5), 'other')];
    const higher = envelope(first, second, 'higher');
    expect(higher.map(({ mark, from, to }) => [mark, from, to])).toEqual([
      ['one', -5, 3],
      ['other', 3, 11],
    ]);
    expect(heightOn(crest(0, 5, 5), 3)).toBeCloseTo(4, 12);
  });

  test('of a circle and a line that cuts it twice has three stretches', () => {
    const first = [piece(-Infinity, Infinity, line(0, 3, 0), 'line')];
    const second = [piece(-5, 5, crest(0, 5, 5), 'circle')];
    const higher = envelope(first, second, 'higher');
    expect(higher.map(({ mark }) => mark)).toEqual(['line', 'circle', 'line']);
    expect(higher[1]?.from).toBeCloseTo(-4, 12); // 3-4-5 triangle
    expect(higher[1]?.to).toBeCloseTo(4, 12);
  });

  test('keeps a gap where neither has a height', () => {
    const first = [piece(0, 1, line(0, 1, 0), 'one')];
    const second = [piece(2, 3, line(0, 1, 0), 'other')];
    expect(envelope(first, second, 'higher').map(({ from, to }) => [from, to])).toEqual([
      [0, 1],
      [2, 3],
    ]);
    expect(heightOfPieces(envelope(first, second, 'higher'), 1.5)).toBe(-Infinity);
  });

  test('of lines that reach without end turns over at every crossing', () => {
    const lines = [0, 1, 2, 3].map((i) => [piece(-Infinity, Infinity, line(i, 0, i - 1.5), `line ${i}`)]);
    const higher = envelopeOfAll(lines, 'higher');
    expect(higher.map(({ mark }) => mark)).toEqual(['line 0', 'line 1', 'line 2', 'line 3']);
    for (const x of [-7, -1, 0.3, 1.5, 2.2, 9]) {
      const direct = Math.max(...[0, 1, 2, 3].map((i) => (i - 1.5) * (x - i)));
      expect(heightOfPieces(higher, x)).toBeCloseTo(direct, 12);
    }
  });

  test('joins a stretch again that a crossing on the lower half of a circle split', () => {
    const circle = [piece(-5, 5, crest(0, 5, 5), 'circle')];
    const below = [piece(-5, 5, line(0, -1, 0), 'line')];
    expect(envelope(circle, below, 'higher')).toEqual(circle);
  });
});

test('the height at a jump is the higher one, from either side', () => {
  const falling = [piece(0, 1, line(0, 5, 0), 'high'), piece(1, 2, line(0, 3, 0), 'low')];
  const rising = [piece(0, 1, line(0, 3, 0), 'low'), piece(1, 2, line(0, 5, 0), 'high')];
  expect(heightOfPieces(falling, 1)).toBe(5);
  expect(heightOfPieces(rising, 1)).toBe(5);
  expect(heightOfPieces(falling, 1.01)).toBe(3);
});

test('pieces move along and are cut to a stretch', () => {
  const moved = shiftPieces([piece(-5, 5, crest(0, 5, 5), 'circle')], 2);
  expect(moved).toEqual([piece(-3, 7, crest(2, 5, 5), 'circle')]);
  expect(clipPieces(moved, 0, 1)).toEqual([piece(0, 1, crest(2, 5, 5), 'circle')]);
  expect(clipPieces(moved, 7, 9)).toEqual([]);
});
