/** Jaw drawings of plug, shell and chambers, seen from the end or cut along the plug. Frame of jaw-sketch.ts. */
import { arcTo, circle, lineTo, moved, type Outline, type Region } from '../geometry/outline.ts';
import { caliper, hollowIn, lookHere, loop, measured, metal, thinLine, tool } from './jaw-sketch.ts';
import { type DrawingNode, node } from './node.ts';
import { label } from './label.ts';

type PlugLook = {
  readonly radius: number;
  readonly x: number;
  readonly y: number;
  /** Half the keyway's width, and its floor and roof from the axis. */
  readonly slot: number;
  readonly floor: number;
  readonly roof: number;
  /** Half the chamber's width; 0: cut beside the chambers. */
  readonly chamber: number;
};

const PLUG: PlugLook = { radius: 42, x: 92, y: 72, slot: 5, floor: -36, roof: 18, chamber: 0 };

/** A plug from the end, with its keyway, and its chamber when cut there. */
function plugFromEnd(look: PlugLook): Region {
  const { radius, slot, floor, roof, chamber } = look;
  const place = (outline: Outline): Outline => moved(outline, look.x, look.y);
  const inside = loop([-slot, floor], [slot, floor], [slot, roof], [-slot, roof]);
  if (chamber === 0) return [circle({ x: 0, y: 0 }, radius), inside].map(place);
  const crest = Math.sqrt(radius ** 2 - chamber ** 2);
  const start = { x: chamber, y: crest };
  const axis = { x: 0, y: 0 };
  const ledge = -6;
  return [
    place({
      start,
      edges: [
        arcTo({ x: -chamber, y: crest }, axis, true),
        lineTo(-chamber, ledge),
        lineTo(-slot, ledge),
        lineTo(-slot, floor),
        lineTo(slot, floor),
        lineTo(slot, ledge),
        lineTo(chamber, ledge),
        lineTo(chamber, crest),
      ],
    }),
  ];
}

function bladeFromEnd(look: PlugLook, top: number): DrawingNode {
  const { x, y, slot, floor } = look;
  const half = slot - 0.8;
  return metal('key', [
    loop([x - half, y + floor], [x + half, y + floor], [x + half, y + top], [x - half, y + top]),
  ]);
}

function ballAt(x: number, y: number, radius: number): DrawingNode {
  return metal('ball', [circle({ x, y }, radius)]);
}

export function plugAcross(): DrawingNode[] {
  const { x, y, radius } = { ...PLUG, x: 110, y: 84 };
  return [
    hollowIn([circle({ x, y }, radius)]),
    metal('plug', plugFromEnd({ ...PLUG, x, y, chamber: 9 })),
    caliper({ from: x - radius, to: x + radius, at: y, beam: 16, way: 'across' }),
    measured({ x: x - radius, y }, { x: x + radius, y }),
  ];
}

export function sleeveAcross(): DrawingNode[] {
  const [x, y, radius] = [110, 84, 44];
  return [
    hollowIn([circle({ x, y }, radius)]),
    metal('sleeve', [circle({ x, y }, radius), circle({ x, y }, 33)]),
    caliper({ from: x - radius, to: x + radius, at: y, beam: 16, way: 'across' }),
    measured({ x: x - radius, y }, { x: x + radius, y }),
  ];
}

export function clearanceStrip(): DrawingNode[] {
  const [x, y] = [110, 22];
  const plug = { ...PLUG, x, y, radius: 80, roof: 40, floor: -100 };
  const bore = 88;
  const outside = loop([10, -20], [210, -20], [210, 136], [10, 136]);
  return [
    hollowIn([outside]),
    metal('shell', [outside, circle({ x, y: y + 4 }, bore)]),
    metal('plug', plugFromEnd(plug)),
    node('path', { class: 'strip', d: 'M78 34Q110 27 142 34' }),
    lookHere({ x, y: 107 }, 15),
  ];
}

export function sleeveStrip(): DrawingNode[] {
  const [x, y] = [110, 8];
  const outside = loop([10, -20], [210, -20], [210, 136], [10, 136]);
  const ring = (radius: number, lift: number) => circle({ x, y: y + lift }, radius);
  return [
    hollowIn([outside]),
    metal('shell', [outside, ring(104, 4)]),
    metal('sleeve', [ring(96, 0), ring(72, -1)]),
    metal('plug', plugFromEnd({ ...PLUG, x, y: y - 3, radius: 69, roof: 34, floor: -100 })),
    node('path', { class: 'strip', d: 'M78 33Q110 27 142 33' }),
    lookHere({ x, y: 108 }, 15),
  ];
}

function keyEdge(floor: number): DrawingNode[] {
  const look = { ...PLUG, x: 110, y: 128, radius: 100, slot: 14, floor, roof: 60 };
  const half = look.slot - 2;
  const bottom = look.y + floor;
  const blade = loop(
    [look.x - half, bottom],
    [look.x + half, bottom],
    [look.x + half, 134],
    [look.x - half, 134],
  );
  const round = circle({ x: look.x, y: look.y }, look.radius);
  const foot = -Math.sqrt(look.radius ** 2 - look.slot ** 2);
  const isLevel = floor <= foot;
  const plug: Region = isLevel
    ? [
        {
          start: { x: look.x + look.slot, y: look.y + foot },
          edges: [
            arcTo({ x: look.x - look.slot, y: look.y + foot }, { x: look.x, y: look.y }, false),
            lineTo(look.x - look.slot, 190),
            lineTo(look.x + look.slot, 190),
            lineTo(look.x + look.slot, look.y + foot),
          ],
        },
      ]
    : plugFromEnd(look);
  return [
    hollowIn([round]),
    metal('plug', plug),
    metal('key', [blade]),
    thinLine(
      [
        { x: 40, y: bottom },
        { x: look.x - half, y: bottom },
      ],
      'measured-line',
    ),
    thinLine(
      [
        { x: look.x + half, y: bottom },
        { x: 180, y: bottom },
      ],
      'measured-line',
    ),
  ];
}

export function keyEdgeLevel(): DrawingNode[] {
  return keyEdge(-100);
}

export function keyEdgeAbove(): DrawingNode[] {
  return keyEdge(-78);
}

export function metalUnderKey(): DrawingNode[] {
  return [...keyEdge(-72), measured({ x: 150, y: 28 }, { x: 150, y: 56 })];
}

export function rodToFloor(): DrawingNode[] {
  const look = { ...PLUG, x: 96, y: 60, radius: 54, floor: -44, roof: 22, slot: 5, chamber: 11 };
  const crest = look.y + look.radius;
  const floor = look.y + look.floor;
  return [
    hollowIn([circle({ x: look.x, y: look.y }, look.radius)]),
    metal('plug', plugFromEnd(look)),
    tool([
      { x: look.x - 3.5, y: floor },
      { x: look.x + 3.5, y: floor },
      { x: look.x + 3.5, y: 138 },
      { x: look.x - 3.5, y: 138 },
    ]),
    thinLine([
      { x: look.x + 12, y: crest },
      { x: 178, y: crest },
    ]),
    thinLine([
      { x: look.x + 6, y: floor },
      { x: 178, y: floor },
    ]),
    measured({ x: 172, y: floor }, { x: 172, y: crest }),
  ];
}

/** Plug from the end with key, ball and a pin whose top stands at `top` above the crest. */
function stackInPlug(look: PlugLook, top: number, hasKey: boolean): DrawingNode[] {
  const { x, y, radius, chamber } = look;
  const ball = chamber - 0.6;
  const seat = hasKey ? y + 2 : y - 6 + 3;
  const high = y + radius + top;
  const pin: Outline = loop(
    [x - ball, seat + 2 * ball - 2],
    [x + ball, seat + 2 * ball - 2],
    [x + ball, high],
    [x - ball, high],
  );
  return [
    hollowIn([circle({ x, y }, radius)]),
    metal('plug', plugFromEnd(look)),
    ...(hasKey ? [bladeFromEnd(look, 2)] : []),
    metal('bottomPin', [pin]),
    ballAt(x, seat + ball, ball),
  ];
}

export function standsUpBy(): DrawingNode[] {
  const look = { ...PLUG, x: 82, y: 62, radius: 44, chamber: 9, floor: -38 };
  const crest = look.y + look.radius;
  const high = crest + 13;
  return [
    ...stackInPlug(look, 13, true),
    caliper({ from: look.y - look.radius, to: high, at: look.x, beam: 178, way: 'up' }),
    thinLine(
      [
        { x: look.x + 12, y: crest },
        { x: 158, y: crest },
      ],
      'measured-line',
    ),
    measured({ x: 150, y: crest }, { x: 150, y: high }),
  ];
}

export function restDepth(): DrawingNode[] {
  const look = { ...PLUG, x: 96, y: 62, radius: 54, chamber: 11, floor: -44, roof: 22 };
  const crest = look.y + look.radius;
  const top = crest - 26;
  return [
    ...stackInPlug(look, -26, false),
    thinLine([
      { x: look.x + 12, y: crest },
      { x: 178, y: crest },
    ]),
    thinLine(
      [
        { x: look.x + 4, y: top },
        { x: 178, y: top },
      ],
      'measured-line',
    ),
    measured({ x: 168, y: top }, { x: 168, y: crest }),
  ];
}

/** A piece of plug cut along its length: front face left, two chambers. */
function plugAlong(): Region {
  const hole = (x: number): Outline => loop([x - 10, 40], [x + 10, 40], [x + 10, 96], [x - 10, 96]);
  const body = loop([26, 40], [200, 40], [200, 96], [38, 96], [38, 108], [26, 108]);
  return [body, hole(92), hole(154)];
}

export function chamberPosition(): DrawingNode[] {
  return [
    hollowIn([loop([26, 40], [200, 40], [200, 96], [26, 96])]),
    metal('plug', plugAlong()),
    thinLine([
      { x: 26, y: 38 },
      { x: 26, y: 14 },
    ]),
    thinLine(
      [
        { x: 92, y: 112 },
        { x: 92, y: 14 },
      ],
      'centre-line',
    ),
    measured({ x: 26, y: 20 }, { x: 92, y: 20 }),
  ];
}

export function chamberDiameter(): DrawingNode[] {
  const shank = [
    { x: 82.8, y: 52 },
    { x: 101.2, y: 52 },
    { x: 101.2, y: 138 },
    { x: 82.8, y: 138 },
  ];
  return [
    hollowIn([loop([26, 40], [200, 40], [200, 96], [26, 96])]),
    metal('plug', plugAlong()),
    tool(shank),
    measured({ x: 82.8, y: 118 }, { x: 101.2, y: 118 }),
  ];
}

export function capDepth(): DrawingNode[] {
  const body = loop([34, 22], [186, 22], [186, 132], [34, 132]);
  const hole = loop([98, 22], [122, 22], [122, 116], [98, 116]);
  return [
    hollowIn([hole]),
    metal('shell', [body, hole]),
    thinLine(
      [
        { x: 20, y: 21 },
        { x: 200, y: 21 },
      ],
      'thin',
    ),
    measured({ x: 110, y: 22 }, { x: 110, y: 116 }),
  ];
}

export function caliperClosed(): DrawingNode[] {
  return [
    caliper({ from: 84, to: 84, at: 74, beam: 128, way: 'up' }),
    label('0', 150, 60, { size: 15, isStrong: true }),
    lookHere({ x: 82, y: 84 }, 16),
  ];
}
