/** Heights of circular segments: what a crown or a ball drops towards its rim, and sinks between two edges. */
import { describe, expect, test } from 'vitest';
import { contactHeightAt } from '../../src/model/contact/contact-at.ts';
import { buildFoot } from '../../src/model/contact/foot.ts';
import { buildKeyProfile } from '../../src/model/contact/key-profile.ts';
import { endDrop } from '../../src/model/end-shape.ts';
import { fromDegrees } from '../../src/model/radians.ts';

/** Drop at the rim of a part as wide as the chord, crowned to the radius. */
function heightOfSegment(radius: number, chord: number): number {
  return endDrop({ kind: 'dome', radius }, chord / 2, chord / 2);
}

describe('published segments', () => {
  // matheass.eu, "Circular Sections": arc 1 over 45 degrees has r 1.2732395, h .096919589, chord .97449536.
  test('arc 1 over 45 degrees', () => {
    expect(heightOfSegment(1.2732395, 0.97449536)).toBeCloseTo(0.096919589, 8);
  });

  // Same page: chord 21 and height 6 belong to r 12.1875.
  test('chord 21, height 6', () => {
    expect(heightOfSegment(12.1875, 21)).toBeCloseTo(6, 12);
  });

  // CMRP (cmrp.com): chord 36, rise .719 belong to R 225.7, printed to four digits.
  test('chord 36, rise .719', () => {
    expect(heightOfSegment(225.7, 36)).toBeCloseTo(0.719, 3);
  });
});

// Handbook layout, radius 1; values worked out: height 1 - cos(angle / 2), chord 2 sin(angle / 2).
const SEGMENTS = [
  { degrees: 10, height: 0.00381, chord: 0.17431 },
  { degrees: 30, height: 0.03407, chord: 0.51764 },
  { degrees: 45, height: 0.07612, chord: 0.76537 },
  { degrees: 60, height: 0.13397, chord: 1 },
  { degrees: 90, height: 0.29289, chord: 1.41421 },
  { degrees: 120, height: 0.5, chord: 1.73205 },
];

describe.each(SEGMENTS)('a segment of $degrees degrees', ({ height, chord }) => {
  test('is the drop of a crown, and of a ball as far out', () => {
    expect(heightOfSegment(1, chord)).toBeCloseTo(height, 4);
    expect(endDrop({ kind: 'sphere' }, 1, chord / 2)).toBeCloseTo(height, 4);
  });

  test('is how deep a ball sinks between two edges', () => {
    // A cut as wide as the chord where it leaves the blade, so steep and deep that the ball hangs on its edges.
    const [blade, depth] = [5, 0.6];
    const includedAngle = fromDegrees(2);
    const rootFlat = chord - 2 * depth * Math.tan(includedAngle / 2);
    const profile = buildKeyProfile({
      bladeHeight: blade,
      stop: 'shoulder',
      tipAt: 30,
      tipHeight: 1,
      tipRamp: fromDegrees(45),
      cuts: [{ id: 'cut', at: 10, rootDepth: blade - depth, rootFlat, includedAngle }],
    });
    const contact = contactHeightAt(profile, buildFoot({ kind: 'sphere' }, 1), 10, 0);
    expect(blade - contact).toBeCloseTo(height, 4);
  });
});

test('a half circle drops by its radius', () => {
  expect(heightOfSegment(1, 2)).toBe(1);
  expect(endDrop({ kind: 'sphere' }, 1, 1)).toBe(1);
});
