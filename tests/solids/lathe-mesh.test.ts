import { describe, expect, test } from 'vitest';
import { facetCount, unitCircle } from '../../src/solids/facets.ts';
import { latheFacets, latheMesh, type ProfilePoint, profileNormals } from '../../src/solids/lathe-mesh.ts';
import { meshFaults, meshVolume } from '../support/closed-mesh.ts';

const cylinder: ProfilePoint[] = [
  { r: 0, y: 0 },
  { r: 2, y: 0 },
  { r: 2, y: 5 },
  { r: 0, y: 5 },
];
/** A regular polygon's area as a share of the circle's around it. */
const facetShare = (facets: number) => (facets / (2 * Math.PI)) * Math.sin((2 * Math.PI) / facets);

describe('unitCircle', () => {
  test('its quarter points are exact and its quarters mirror one another', () => {
    const circle = unitCircle(60);
    expect([circle[0], circle[1]]).toEqual([1, 0]);
    expect([circle[30], circle[31]]).toEqual([0, 1]);
    expect([circle[60], circle[61]]).toEqual([-1, 0]);
    expect([circle[90], circle[91]]).toEqual([0, -1]);
    for (let i = 0; i <= 30; i++) {
      expect(circle[2 * i]).toBe(-circle[2 * (30 - i)]! + 0);
      expect(circle[2 * i + 1]).toBe(circle[2 * (30 - i) + 1]);
    }
  });

  test('no facet lies further inside the circle than three thousandths of a millimetre, up to a radius of 15', () => {
    for (const radius of [0.5, 1, 2, 5, 9.5, 15]) {
      const facets = facetCount(radius);
      expect(facets % 4).toBe(0);
      expect(radius * (1 - Math.cos(Math.PI / facets))).toBeLessThanOrEqual(0.003 + 1e-12);
    }
  });
});

describe('latheMesh', () => {
  test('spins a rectangle into a closed cylinder of the polygon volume', () => {
    const mesh = latheMesh(cylinder);
    expect(meshFaults(mesh)).toEqual([]);
    expect(meshVolume(mesh)).toBeCloseTo(Math.PI * 4 * 5 * facetShare(latheFacets(cylinder)), 4);
  });

  test('spins a ball whose volume comes within a thousandth of 4/3 pi r^3', () => {
    const r = 2;
    const ball = Array.from({ length: 61 }, (_, i) => {
      const angle = (Math.PI * i) / 60;
      return { r: i === 0 || i === 60 ? 0 : r * Math.sin(angle), y: r - r * Math.cos(angle) };
    });
    const mesh = latheMesh(ball);
    expect(meshFaults(mesh)).toEqual([]);
    const exact = (4 / 3) * Math.PI * r ** 3;
    expect(meshVolume(mesh)).toBeLessThan(exact);
    expect(meshVolume(mesh)).toBeGreaterThan(exact * 0.997);
  });

  test('spins a ring that closes on itself', () => {
    const ring = [
      { r: 3, y: 0 },
      { r: 4, y: 0 },
      { r: 4, y: 1 },
      { r: 3, y: 1 },
    ];
    const mesh = latheMesh(ring, true);
    expect(meshFaults(mesh)).toEqual([]);
    expect(meshVolume(mesh)).toBeCloseTo(Math.PI * 7 * facetShare(latheFacets(ring)), 4);
  });

  test('gives every triangle the stretch of the profile it belongs to', () => {
    const mesh = latheMesh(cylinder);
    const facets = latheFacets(cylinder);
    const counts = [0, 0, 0];
    for (const face of mesh.faces) counts[Math.floor(face / facets)]! += 1;
    expect(counts).toEqual([facets, 2 * facets, facets]);
  });
});

describe('profileNormals', () => {
  test('keeps a corner sharp and points outwards', () => {
    const [bottom, side, top] = profileNormals(cylinder);
    expect(bottom?.from).toEqual({ r: 0, y: -1 });
    expect(bottom?.to).toEqual({ r: 0, y: -1 });
    expect(side?.from).toEqual({ r: 1, y: 0 });
    expect(top?.to).toEqual({ r: 0, y: 1 });
  });

  test('follows a round surface: on a ball every normal points from the middle', () => {
    const ball = Array.from({ length: 41 }, (_, i) => {
      const angle = (Math.PI * i) / 40;
      return { r: i === 0 || i === 40 ? 0 : Math.sin(angle), y: 1 - Math.cos(angle) };
    });
    const normals = profileNormals(ball);
    normals.forEach(({ from, to }, i) => {
      const start = ball[i]!;
      const end = ball[i + 1]!;
      expect(from.r).toBeCloseTo(start.r, 6);
      expect(from.y).toBeCloseTo(start.y - 1, 6);
      expect(to.r).toBeCloseTo(end.r, 6);
      expect(to.y).toBeCloseTo(end.y - 1, 6);
    });
  });
});
