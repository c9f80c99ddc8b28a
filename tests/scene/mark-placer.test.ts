import { expect, test } from 'vitest';
import { MarkPlacer, type PlacedMark } from '../../src/scene/mark-placer.ts';

/** Where a number is put whose point comes to lie at this height, CSS px. */
function placedAt(y: number): string {
  let transform = '';
  const element = {
    setAttribute: (name: string, value: string) => {
      if (name === 'transform') transform = value;
    },
  } as unknown as PlacedMark['element'];
  const placer = new MarkPlacer();
  placer.setMarks([{ id: 'number', at: [0, 0, 0], kind: 'chamber', element }]);
  placer.place(() => ({ x: 40, y }));
  return transform;
}

test('a number that the upper edge would cut comes down into the picture; one far outside stays there', () => {
  expect(placedAt(60)).toBe('translate(40 60)');
  expect(placedAt(5)).toBe('translate(40 22)');
  expect(placedAt(-10)).toBe('translate(40 22)');
  expect(placedAt(-80)).toBe('translate(40 -80)');
});
