/** Jaw drawings of the key, from the side. Frame of jaw-sketch.ts; the key's bottom edge lies on y = 34. */
import { circle, type Outline } from '../geometry/outline.ts';
import { caliper, hollowIn, lookHere, loop, measured, metal, thinLine } from './jaw-sketch.ts';
import type { DrawingNode } from './node.ts';

const BOTTOM = 34;
const ROOT = 62;
const TOP = 96;
/** Middle of the cut looked at, half its flat, and where its sides reach the blade's upper edge. */
const CUT = 96;
const FLAT = 9;
const WIDE = FLAT + (TOP - ROOT);

/** A stretch of blade with one cut, broken off at both ends. */
function bladePiece(): Outline {
  const wave = (x: number, from: number, to: number): [number, number][] =>
    [0, 1, 2, 3, 4].map((i) => [x + (i % 2 === 0 ? 0 : i === 1 ? -3 : 3), from + ((to - from) * i) / 4]);
  return loop(
    [30, BOTTOM],
    [166, BOTTOM],
    ...wave(166, BOTTOM, TOP),
    [CUT + WIDE, TOP],
    [CUT + FLAT, ROOT],
    [CUT - FLAT, ROOT],
    [CUT - WIDE, TOP],
    ...wave(30, TOP, BOTTOM),
  );
}

/** A whole key from its bow to its tip, three cuts, the middle one shallow. */
function wholeKey(): Outline {
  return loop(
    [6, 22],
    [40, 22],
    [40, BOTTOM],
    [196, BOTTOM],
    [196, 42],
    [176, 62],
    [164, 62],
    [157, 55],
    [147, 55],
    [134, 68],
    [119, 68],
    [109, 68],
    [100, 77],
    [81, 58],
    [71, 58],
    [45, 84],
    [40, 84],
    [40, 98],
    [6, 98],
  );
}

export function rootDepth(): DrawingNode[] {
  return [
    metal('key', [bladePiece()]),
    caliper({ from: BOTTOM, to: ROOT, at: CUT, beam: 186, way: 'up', isKnife: true }),
    measured({ x: CUT, y: BOTTOM }, { x: CUT, y: ROOT }),
  ];
}

export function overBall(): DrawingNode[] {
  const radius = 24;
  const half = Math.SQRT1_2;
  // A ball on both sides of a 90 degree cut: its centre lies radius / sin 45 above where the sides would meet.
  const centre = Math.max(ROOT + radius, ROOT - FLAT + radius / half);
  return [
    metal('key', [bladePiece()]),
    metal('ball', [circle({ x: CUT, y: centre }, radius)]),
    caliper({ from: BOTTOM, to: centre + radius, at: CUT, beam: 186, way: 'up' }),
    measured({ x: 150, y: BOTTOM }, { x: 150, y: centre + radius }),
  ];
}

export function rootFlat(): DrawingNode[] {
  return [
    metal('key', [bladePiece()]),
    thinLine([
      { x: CUT - FLAT, y: ROOT },
      { x: CUT - FLAT, y: 122 },
    ]),
    thinLine([
      { x: CUT + FLAT, y: ROOT },
      { x: CUT + FLAT, y: 122 },
    ]),
    measured({ x: CUT - FLAT, y: 116 }, { x: CUT + FLAT, y: 116 }),
    lookHere({ x: CUT, y: ROOT }, 17),
  ];
}

export function bladeHeight(): DrawingNode[] {
  return [
    metal('key', [bladePiece()]),
    caliper({ from: BOTTOM, to: TOP, at: 150, beam: 186, way: 'up' }),
    measured({ x: 150, y: BOTTOM }, { x: 150, y: TOP }),
  ];
}

export function cutPosition(): DrawingNode[] {
  return [
    metal('key', [wholeKey()]),
    thinLine([
      { x: 40, y: 98 },
      { x: 40, y: 126 },
    ]),
    thinLine(
      [
        { x: 76, y: 56 },
        { x: 76, y: 126 },
      ],
      'centre-line',
    ),
    measured({ x: 40, y: 120 }, { x: 76, y: 120 }),
  ];
}

export function tipPosition(): DrawingNode[] {
  return [
    metal('key', [wholeKey()]),
    thinLine([
      { x: 40, y: 98 },
      { x: 40, y: 126 },
    ]),
    thinLine([
      { x: 196, y: 44 },
      { x: 196, y: 126 },
    ]),
    measured({ x: 40, y: 120 }, { x: 196, y: 120 }),
  ];
}

/** The key in its plug, cut along it: the shoulder has not come to the front face. */
export function stopShort(): DrawingNode[] {
  const [shoulder, face, floor, roof] = [62, 92, 48, 76];
  const plugOver = loop([face, roof], [212, roof], [212, 106], [face, 106]);
  const plugUnder = loop([face, 34], [212, 34], [212, floor], [face, floor]);
  const key = loop(
    [6, 20],
    [shoulder, 20],
    [shoulder, floor],
    [188, floor],
    [188, 58],
    [172, roof],
    [shoulder, roof],
    [shoulder, 104],
    [6, 104],
  );
  return [
    hollowIn([loop([face, 34], [212, 34], [212, 106], [face, 106])]),
    metal('plug', [plugOver, plugUnder]),
    metal('key', [key]),
    thinLine([
      { x: shoulder, y: 104 },
      { x: shoulder, y: 128 },
    ]),
    thinLine([
      { x: face, y: 106 },
      { x: face, y: 128 },
    ]),
    measured({ x: shoulder, y: 120 }, { x: face, y: 120 }),
  ];
}
