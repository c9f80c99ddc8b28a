import { describe, expect, test } from 'vitest';
import { flattenRegion } from '../../src/geometry/flatten.ts';
import { placedKey } from '../../src/geometry/key-outline.ts';
import { keyAcross, keySection } from '../../src/geometry/key-section.ts';
import { boundsOf, regionArea } from '../../src/geometry/outline.ts';
import { isInside } from '../../src/geometry/polygon.ts';
import { springOutline } from '../../src/geometry/spring-outline.ts';
import { known } from '../../src/model/assert.ts';
import { profileHeightAt } from '../../src/model/contact/key-profile.ts';
import { sampleAssembly, samplePose } from '../support/sample-assembly.ts';

const assembly = sampleAssembly();
const key = known(assembly.key, 'key');

describe('the drawn key', () => {
  test('is as high as its profile everywhere along the blade, at any travel', () => {
    for (const travel of [0, 7.3, 21]) {
      const polygons = flattenRegion(placedKey(key, travel), 0.001);
      for (let s = 0.05; s < key.shape.tipAt; s += 0.37) {
        const top = key.bottomY + profileHeightAt(key.profile, s);
        expect(isInside(polygons, { x: s - travel, y: top - 0.002 })).toBe(true);
        expect(isInside(polygons, { x: s - travel, y: top + 0.002 })).toBe(false);
        expect(isInside(polygons, { x: s - travel, y: key.bottomY - 0.002 })).toBe(false);
      }
    }
  });

  test('ends at its tip and stops with its shoulder at the front face', () => {
    const bounds = boundsOf(placedKey(key, 0));
    expect(bounds.right).toBe(key.shape.tipAt);
    const polygons = flattenRegion(placedKey(key, 0), 0.001);
    const overBlade = key.bottomY + key.shape.bladeHeight + 0.5;
    expect(isInside(polygons, { x: -0.01, y: overBlade })).toBe(true);
    expect(isInside(polygons, { x: 0.01, y: overBlade })).toBe(false);
  });

  test('is cut only where it is thick enough, and as wide as thick when turned by a quarter', () => {
    const at = { travel: 0, turn: 0 };
    expect(keySection(key, { ...at, offset: key.thickness / 2 + 0.01 })).toEqual([]);
    expect(keySection(key, { ...at, offset: 0 })).toHaveLength(2);
    const quarter = boundsOf(keySection(key, { travel: 0, offset: 0, turn: Math.PI / 2 }));
    expect(quarter.top - quarter.bottom).toBeCloseTo(key.thickness, 2);
  });

  test('is not there when it is out', () => {
    expect(keySection(key, { travel: Infinity, offset: 0, turn: 0 })).toEqual([]);
    expect(keyAcross(key, 9, Infinity)).toBeNull();
    expect(keyAcross(key, 9, 60)).toBeNull();
    const outline = known(keyAcross(key, 9, 0), 'key across');
    expect(regionArea([outline])).toBeCloseTo(key.thickness * profileHeightAt(key.profile, 9), 9);
  });
});

describe('the drawn spring', () => {
  const posed = known(
    samplePose(assembly).stacks[0]?.parts.find(({ part }) => part.role === 'spring'),
    'spring',
  );

  test('keeps its coils and fills the length it is pressed to', () => {
    for (const length of [16, 9, 5, 4.2]) {
      const spring = springOutline({ ...posed, y: 2, topY: 2 + length });
      expect(spring.wires).toHaveLength(2 * posed.part.coils);
      const bounds = boundsOf(spring.wires);
      expect(bounds.bottom).toBeCloseTo(2, 9);
      expect(bounds.top).toBeCloseTo(2 + length, 9);
      expect(bounds.right).toBeCloseTo(posed.part.radius, 9);
    }
  });

  test('is solid once it is squeezed to its solid length, and never outgrows its room', () => {
    expect(springOutline({ ...posed, y: 0, topY: 4.2 }).isSolid).toBe(true);
    expect(springOutline({ ...posed, y: 0, topY: 4.3 }).isSolid).toBe(false);
    const crushed = boundsOf(springOutline({ ...posed, y: 0, topY: 2 }).wires);
    expect(crushed.top - crushed.bottom).toBeCloseTo(2, 9);
  });
});
