import { test as propertyTest, fc } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { axisPlane, planeAxes, planeForPart, planeKey, type Triple } from '../../src/solids/section-plane.ts';

const dot = (a: Triple, b: Triple) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Triple, b: Triple): Triple => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const number = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
const placement = fc.record({
  shift: fc.tuple(number(20), number(20), number(60)),
  turn: number(7),
  axisY: number(1),
});

describe('planeForPart', () => {
  propertyTest.prop({
    at: placement,
    point: fc.tuple(number(20), number(20), number(60)),
    azimuth: number(4),
    offset: number(10),
  })('puts a point on the same side in the part as in the cylinder', ({ at, point, azimuth, offset }) => {
    const plane = { normal: [Math.cos(azimuth) * 0.8, Math.sin(azimuth) * 0.8, 0.6] as const, offset };
    const [x, y, z] = point.map((value, i) => value + at.shift[i]!) as [number, number, number];
    const [c, s] = [Math.cos(at.turn), Math.sin(at.turn)];
    const placed: Triple = [c * x - s * (y - at.axisY), at.axisY + s * x + c * (y - at.axisY), z];
    const own = planeForPart(plane, at);
    // Rounded to a millionth, on points up to 100 mm away.
    expect(dot(own.normal, point) - own.offset).toBeCloseTo(dot(plane.normal, placed) - plane.offset, 3);
  });

  test('a part that only moves along the plane is cut at the same place', () => {
    const plane = axisPlane('x', 0.25);
    const one = planeForPart(plane, { shift: [0, 3.2, 10], turn: 0, axisY: 0 });
    const two = planeForPart(plane, { shift: [0, -7.1, 25], turn: 0, axisY: 0.05 });
    expect(planeKey(one)).toBe(planeKey(two));
    expect(planeKey(one)).not.toBe(planeKey(planeForPart(plane, { shift: [0.1, 0, 0], turn: 0, axisY: 0 })));
  });
});

describe('planeAxes', () => {
  test('the long section has the plug to the right and the drivers up, as drawn', () => {
    expect(planeAxes(axisPlane('x', 0))).toEqual({ across: [-0, 0, 1], up: [-0, 1, -0] });
  });

  propertyTest.prop({ azimuth: number(4), elevation: number(1.5) })(
    'are square to each other and to the normal, which points away from the one who looks',
    ({ azimuth, elevation }) => {
      const normal: Triple = [
        Math.cos(elevation) * Math.cos(azimuth),
        Math.sin(elevation),
        Math.cos(elevation) * Math.sin(azimuth),
      ];
      const { across, up } = planeAxes({ normal, offset: 0 });
      expect(dot(across, up)).toBeCloseTo(0, 9);
      expect(dot(across, across)).toBeCloseTo(1, 9);
      expect(dot(up, up)).toBeCloseTo(1, 9);
      cross(up, across).forEach((value, i) => expect(value).toBeCloseTo(normal[i]!, 9));
    },
  );
});
