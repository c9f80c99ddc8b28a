import { expect, test } from 'vitest';
import { buildSpringMesh, springPositions } from '../../src/solids/helix-mesh.ts';
import { meshFaults, meshVolume } from '../support/closed-mesh.ts';

const shape = { radius: 1.9, wire: 0.36, coils: 10, solid: 3.6 };
const mesh = buildSpringMesh(shape);

function heights(length: number): number[] {
  return [...springPositions(mesh, length)].filter((_, i) => i % 3 === 1);
}

test.each([3.6, 7, 12.5])('a spring of length %f is closed and stands from 0 to its length', (length) => {
  expect(meshFaults({ positions: springPositions(mesh, length), triangles: mesh.indices })).toEqual([]);
  expect(Math.min(...heights(length))).toBeCloseTo(0, 5);
  expect(Math.max(...heights(length))).toBeCloseTo(length, 5);
});

test('its volume is that of the wire, bent around (Pappus), at every length', () => {
  // Eight sides and 24 steps: shares of a circle's area and of its length.
  const section = Math.PI * 0.18 ** 2 * ((8 / (2 * Math.PI)) * Math.sin((2 * Math.PI) / 8));
  const path = 10 * 2 * Math.PI * (1.9 - 0.18);
  const bend = (24 / (2 * Math.PI)) * Math.sin((2 * Math.PI) / 24);
  for (const length of [3.6, 7, 12.5]) {
    const volume = meshVolume({ positions: springPositions(mesh, length), triangles: mesh.indices });
    // Each skew four-cornered facet is two triangles: up to four thousandths either way.
    expect(Math.abs(volume / (section * path * bend) - 1)).toBeLessThan(4e-3);
  }
});

test('squeezed solid its coils climb alike, a wire thickness a coil at most', () => {
  const middle = (length: number, coil: number) => {
    const ring = Math.round(coil * 24) * 8;
    const own = springPositions(mesh, length);
    return (own[3 * ring + 1]! + own[3 * (ring + 4) + 1]!) / 2;
  };
  const rises = Array.from({ length: 10 }, (_, i) => middle(3.6, i + 1) - middle(3.6, i));
  for (const rise of rises) expect(rise).toBeCloseTo((3.6 - 0.36) / 10, 5);
  // Pulled out, only the end coils keep that climb.
  const long = Array.from({ length: 10 }, (_, i) => middle(12.5, i + 1) - middle(12.5, i));
  expect(long[0]).toBeCloseTo(0.324, 5);
  expect(long[9]).toBeCloseTo(0.324, 5);
  expect(long[4]).toBeCloseTo((12.5 - 0.36 - 0.648) / 8, 5);
});
