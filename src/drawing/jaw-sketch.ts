/**
 * Building blocks of the jaw drawings: metal, caliper jaws, arrows. A sketch is 220 by 140 pixels, y up from its lower
 * edge while it is put together, so that the outlines of src/geometry serve here as well. Not to scale.
 */
import type { CutRole } from '../geometry/cut-parts.ts';
import { type Outline, type Point, polygonOutline, type Region } from '../geometry/outline.ts';
import { hatchFor } from './hatch-styles.ts';
import { metalNode } from './metal.ts';
import { type DrawingNode, group, node } from './node.ts';
import { arrowHead } from './symbols.ts';
import { pointsData, regionData, toPx, type View } from './view.ts';

export const SKETCH = { width: 220, height: 140 } as const;
export const SKETCH_VIEW: View = { scaleX: 1, scaleY: 1, originX: 0, originY: SKETCH.height };

/** A piece of metal cut through; bodies are hatched. */
export function metal(role: CutRole, region: Region): DrawingNode {
  const part = { partKey: role, role, chamber: null, region };
  return metalNode(part, SKETCH_VIEW, { hatch: hatchFor(role, 0, 'bodies'), edge: 'medium' });
}

/** A jaw, rod or strip: the tool that measures. */
export function tool(points: readonly Point[]): DrawingNode {
  return node('path', { class: 'tool', d: regionData(SKETCH_VIEW, [polygonOutline(points)]) });
}

export function thinLine(points: readonly Point[], className = 'thin'): DrawingNode {
  return node('path', {
    class: className,
    d: pointsData(
      points.map((point) => toPx(SKETCH_VIEW, point)),
      false,
    ),
  });
}

/** What a hollow looks like where nothing is cut. */
export function hollowIn(region: Region): DrawingNode {
  return node('path', { class: 'fill fill-hollow', d: regionData(SKETCH_VIEW, region) });
}

export type Caliper = {
  /** The two faces that touch, along the measured way. */
  readonly from: number;
  readonly to: number;
  /** Where the jaws touch, across it. */
  readonly at: number;
  /** Where the beam runs, across it. */
  readonly beam: number;
  /** Along which way it measures. */
  readonly way: 'up' | 'across';
  /** Knife edges reach into a narrow place. */
  readonly isKnife?: boolean;
};

/** Draws a caliper with its jaws on both faces, and the measured way in the accent colour. */
export function caliper(tools: Caliper): DrawingNode {
  const { from, to, at, beam, way } = tools;
  const side = Math.sign(beam - at) || 1;
  const tip = at - side * (tools.isKnife === true ? 3 : 10);
  const edge = tools.isKnife === true ? 2.5 : 7;
  const place = (along: number, across: number): Point =>
    way === 'up' ? { x: across, y: along } : { x: along, y: across };
  const jaw = (face: number, out: 1 | -1): DrawingNode =>
    tool([
      place(face, tip),
      place(face + out * edge, tip),
      place(face + out * 15, beam - side * 14),
      place(face + out * 15, beam),
      place(face, beam),
    ]);
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  const rail = [
    place(low - 24, beam),
    place(high + 24, beam),
    place(high + 24, beam + side * 9),
    place(low - 24, beam + side * 9),
  ];
  return group('caliper', [tool(rail), jaw(high, 1), jaw(low, -1)]);
}

/** The measured way between two places, upright or across, in the accent colour; arrows from outside when it is short. */
export function measured(one: Point, other: Point): DrawingNode {
  const isUpright = one.x === other.x;
  const along = ({ x, y }: Point): number => (isUpright ? y : x);
  const [low, high] = along(one) < along(other) ? [one, other] : [other, one];
  const isShort = along(high) - along(low) < 22;
  const reach = 14;
  const beyond = ({ x, y }: Point, sign: number): Point =>
    isUpright ? { x, y: y + sign * reach } : { x: x + sign * reach, y };
  const lines = isShort
    ? [
        [low, beyond(low, -1)],
        [high, beyond(high, 1)],
      ]
    : [[low, high]];
  const d = lines.map((line) => pointsData(line.map(drawn), false)).join('');
  const [a, b] = [drawn(low), drawn(high)];
  const [outward, inward] = isUpright ? (['up', 'down'] as const) : (['right', 'left'] as const);
  return group('measured', [
    node('path', { class: 'measured-line', d }),
    arrowHead(a.x, a.y, isShort ? outward : inward, 8),
    arrowHead(b.x, b.y, isShort ? inward : outward, 8),
  ]);
}

function drawn(point: Point): Point {
  return toPx(SKETCH_VIEW, point);
}

/** A fine ring that says: look here. */
export function lookHere(at: Point, radius: number): DrawingNode {
  const { x, y } = toPx(SKETCH_VIEW, at);
  return node('circle', { class: 'look-here', cx: x, cy: y, r: radius });
}

/** Points of a loop given as pairs. */
export function loop(...pairs: readonly (readonly [number, number])[]): Outline {
  return polygonOutline(pairs.map(([x, y]) => ({ x, y })));
}
