/** Jaw drawings of balls, pins, drivers and springs, and of the shapes of their ends. Frame of jaw-sketch.ts. */
import type { StackPart } from '../model/assembly/assembly.ts';
import type { EndShape } from '../model/end-shape.ts';
import { fromDegrees } from '../model/radians.ts';
import { circle, moved, type Outline, type Region } from '../geometry/outline.ts';
import { partProfile } from '../geometry/part-profile.ts';
import { sectionOfProfile } from '../geometry/part-section.ts';
import { caliper, hollowIn, loop, lookHere, measured, metal, SKETCH_VIEW, thinLine } from './jaw-sketch.ts';
import { springNode } from './long-section-metal.ts';
import type { DrawingNode } from './node.ts';

const FLAT: EndShape = { kind: 'flat' };
const CUP: EndShape = { kind: 'cup', mouthDiameter: 26, includedAngle: fromDegrees(90) };

function turnedPart(
  look: {
    readonly radius: number;
    readonly length: number;
    readonly lower: EndShape;
    readonly upper: EndShape;
  },
  x: number,
  y: number,
): Region {
  const part = { ...look, waist: null, role: 'bottomPin' as const };
  return sectionOfProfile(partProfile(part), 0).map((outline: Outline) => moved(outline, x, y));
}

export function ballDiameter(): DrawingNode[] {
  return [
    metal('ball', [circle({ x: 90, y: 70 }, 26)]),
    caliper({ from: 44, to: 96, at: 90, beam: 168, way: 'up' }),
    measured({ x: 130, y: 44 }, { x: 130, y: 96 }),
  ];
}

export function pinLength(): DrawingNode[] {
  const pin = { radius: 19, length: 74, lower: CUP, upper: { kind: 'dome', radius: 80 } as const };
  return [
    metal('bottomPin', turnedPart(pin, 90, 33)),
    caliper({ from: 33, to: 107, at: 90, beam: 168, way: 'up' }),
    measured({ x: 130, y: 33 }, { x: 130, y: 107 }),
  ];
}

export function pinDiameter(): DrawingNode[] {
  const pin = { radius: 24, length: 82, lower: CUP, upper: { kind: 'dome', radius: 90 } as const };
  return [
    metal('bottomPin', turnedPart(pin, 110, 52)),
    caliper({ from: 86, to: 134, at: 92, beam: 16, way: 'across' }),
    measured({ x: 86, y: 92 }, { x: 134, y: 92 }),
  ];
}

/** Where pin and driver meet, close to the line, between the two limits that still count as level. */
export function shopRule(): DrawingNode[] {
  const [line, limit, split] = [68, 15, 75];
  const across = (y: number, className?: string): DrawingNode =>
    thinLine(
      [
        { x: 10, y },
        { x: 186, y },
      ],
      className,
    );
  const wall = (from: number, to: number) => [
    loop([16, from], [60, from], [60, to], [16, to]),
    loop([140, from], [168, from], [168, to], [140, to]),
  ];
  const pin = { radius: 38, length: 120, lower: FLAT, upper: FLAT };
  const driver = { radius: 38, length: 120, lower: bevelled(4), upper: FLAT };
  return [
    hollowIn([loop([16, -20], [168, -20], [168, 160], [16, 160])]),
    metal('plug', wall(-20, line)),
    metal('shell', wall(line + 6, 160)),
    metal('bottomPin', turnedPart(pin, 100, split - 120)),
    metal('driver', turnedPart(driver, 100, split)),
    across(line, 'centre-line'),
    across(line - limit, 'measured-line'),
    across(line + limit, 'measured-line'),
    measured({ x: 180, y: line - limit }, { x: 180, y: line + limit }),
  ];
}

export function ballAndPin(): DrawingNode[] {
  const pin = { radius: 18, length: 58, lower: CUP, upper: { kind: 'dome', radius: 80 } as const };
  const holder = loop([44, 30], [136, 30], [136, 88], [44, 88]);
  const hole = loop([71, 30], [109, 30], [109, 88], [71, 88]);
  const [floor, ball] = [30, 18];
  // A ball in a 90 degree dimple stands out r + r / sin 45 - half the mouth.
  const standsOut = ball + ball * Math.SQRT2 - 13;
  return [
    hollowIn([hole]),
    metal('shell', [holder, hole]),
    metal('bottomPin', turnedPart(pin, 90, floor + standsOut)),
    metal('ball', [circle({ x: 90, y: floor + ball }, ball)]),
    caliper({ from: floor, to: floor + standsOut + 58, at: 90, beam: 178, way: 'up' }),
    measured({ x: 152, y: floor }, { x: 152, y: floor + standsOut + 58 }),
  ];
}

export function masterPinLength(): DrawingNode[] {
  const pin = { radius: 22, length: 24, lower: bevelled(4), upper: bevelled(4) };
  return [
    metal('masterPin', turnedPart(pin, 90, 58)),
    caliper({ from: 58, to: 82, at: 90, beam: 168, way: 'up' }),
    measured({ x: 130, y: 58 }, { x: 130, y: 82 }),
  ];
}

export function driverLength(): DrawingNode[] {
  const driver = { radius: 19, length: 62, lower: bevelled(5), upper: FLAT };
  return [
    metal('driver', turnedPart(driver, 90, 38)),
    caliper({ from: 38, to: 100, at: 90, beam: 168, way: 'up' }),
    measured({ x: 130, y: 38 }, { x: 130, y: 100 }),
  ];
}

function spring(from: number, to: number, coils: number): DrawingNode {
  const part: StackPart = {
    part: 'spring',
    label: '',
    role: 'spring',
    radius: 19,
    length: to - from,
    lower: FLAT,
    upper: FLAT,
    seat: 0,
    waist: null,
    solid: 0,
    wire: 5,
    coils,
  };
  return springNode(
    { part, y: from, topY: to, turnsWith: '' },
    (outline) => moved(outline, 90, 0),
    SKETCH_VIEW,
    {},
  );
}

export function springSolid(): DrawingNode[] {
  return [
    spring(48, 92, 9),
    caliper({ from: 48, to: 92, at: 90, beam: 168, way: 'up' }),
    measured({ x: 130, y: 48 }, { x: 130, y: 92 }),
  ];
}

export function springFree(): DrawingNode[] {
  return [
    spring(24, 116, 9),
    caliper({ from: 24, to: 116, at: 90, beam: 168, way: 'up' }),
    measured({ x: 130, y: 24 }, { x: 130, y: 116 }),
  ];
}

function bevelled(width: number): EndShape {
  return { kind: 'bevel', width, angle: fromDegrees(45) };
}

/** A big piece of pin with the end looked at on top. */
function topEnd(upper: EndShape): DrawingNode[] {
  const pin = { radius: 44, length: 150, lower: FLAT, upper };
  return [metal('bottomPin', turnedPart(pin, 110, -48))];
}

/** A big piece of driver with the end looked at below, and a ring around its edge. */
function lowerEnd(lower: EndShape, edge: { x: number; y: number } | null): DrawingNode[] {
  const driver = { radius: 44, length: 150, lower, upper: FLAT };
  const ring = edge === null ? [] : [lookHere(edge, 15)];
  return [metal('driver', turnedPart(driver, 110, 34)), ...ring];
}

export function pinTopFlat(): DrawingNode[] {
  return topEnd(FLAT);
}

export function pinTopBevelled(): DrawingNode[] {
  return topEnd(bevelled(10));
}

export function pinTopDomed(): DrawingNode[] {
  return topEnd({ kind: 'dome', radius: 92 });
}

export function driverEndSharp(): DrawingNode[] {
  return lowerEnd(FLAT, { x: 154, y: 34 });
}

export function driverEndBroken(): DrawingNode[] {
  return lowerEnd(bevelled(8), { x: 150, y: 38 });
}

export function driverEndRounded(): DrawingNode[] {
  return lowerEnd({ kind: 'radius', radius: 11 }, { x: 150, y: 38 });
}

export function driverEndDomed(): DrawingNode[] {
  return lowerEnd({ kind: 'dome', radius: 92 }, null);
}

export function pinTipBall(): DrawingNode[] {
  const pin = { radius: 30, length: 90, lower: { ...CUP, mouthDiameter: 42 }, upper: FLAT };
  const standsOut = 30 + 30 * Math.SQRT2 - 21;
  return [
    metal('bottomPin', turnedPart(pin, 110, 14 + standsOut)),
    metal('ball', [circle({ x: 110, y: 44 }, 30)]),
  ];
}

export function pinTipPointed(): DrawingNode[] {
  const lower: EndShape = { kind: 'cone', tipFlatDiameter: 10, includedAngle: fromDegrees(90) };
  return [metal('bottomPin', turnedPart({ radius: 36, length: 140, lower, upper: FLAT }, 110, 20))];
}

export function pinTipRounded(): DrawingNode[] {
  const lower: EndShape = { kind: 'dome', radius: 37 };
  return [metal('bottomPin', turnedPart({ radius: 36, length: 140, lower, upper: FLAT }, 110, 20))];
}
