/**
 * A stack planned from cut numbers, cut open in its chamber: plug, sleeve and shell beside it, bottom pin, master pins, build-up
 * pin and top pin in it, both shear lines, every length as a dimension. Heights mm from the foot of the stack; heights true to
 * each other, the width of the pins by convention. CSS pixels.
 */
import type { BuildUpLengths } from '../model/keying/build-up.ts';
import type { Bounds } from '../geometry/outline.ts';
import { rectangle } from '../geometry/outline.ts';
import { dimensionChain } from './dimension-chain.ts';
import { label } from './label.ts';
import { edgeNode } from './metal.ts';
import { type DrawingNode, drawingRoot, group, node } from './node.ts';
import { regionData, type View, xPx, yPx } from './view.ts';

export type NumberStackOptions = {
  readonly chamber: number;
  readonly width: number;
  readonly height: number;
  /** mm above the foot; null where the second line does not pass. */
  readonly firstLine: number;
  readonly secondLine: number | null;
  /** Writes a length, mm. */
  readonly say: (mm: number) => string;
};

const TEXT_PX = 13;
/** px. Half a pin; the walls beside it; from its axis to the dimensions. */
const HALF_PIN = 22;
const WALL = 18;
const CHAIN = 58;

/** Draws the stack of one chamber. */
export function numberStack(lengths: BuildUpLengths, options: NumberStackOptions): DrawingNode {
  const { width, height, chamber, firstLine, secondLine, say } = options;
  const parts = [
    { role: 'bottomPin', length: lengths.bottom },
    ...lengths.masters.map((length) => ({ role: 'masterPin', length })),
    ...(lengths.buildUp === null ? [] : [{ role: 'masterPin', length: lengths.buildUp }]),
    { role: 'driver', length: lengths.top },
  ];
  const total = parts.reduce((sum, { length }) => sum + length, 0);
  const scale = (height - 3.2 * TEXT_PX) / total;
  const view: View = {
    scaleX: scale,
    scaleY: scale,
    originX: HALF_PIN + WALL + 6,
    originY: height - TEXT_PX,
  };
  const half = HALF_PIN / scale;
  const wall = WALL / scale;
  const box = (bounds: Bounds, role: string): DrawingNode =>
    group(`part part-${role}`, [
      node('path', { class: `fill fill-${role}`, d: regionData(view, [rectangle(bounds)]) }),
      edgeNode([rectangle(bounds)], view, 'narrow'),
    ]);
  const bodies = [
    { role: 'plug', bottom: 0, top: firstLine },
    ...(secondLine === null ? [] : [{ role: 'sleeve', bottom: firstLine, top: secondLine }]),
    { role: 'shell', bottom: secondLine ?? firstLine, top: total },
  ];
  let at = 0;
  const drawn = parts.map(({ role, length }) => {
    const bottom = at;
    at += length;
    return { node: box({ left: -half, right: half, bottom, top: at }, role), bottom, top: at };
  });
  const lines = [firstLine, ...(secondLine === null ? [] : [secondLine])].map((y) =>
    node('path', {
      class: 'shear-line',
      d: `M${xPx(view, -half - wall) - 4} ${yPx(view, y)}H${xPx(view, half + wall) + 4}`,
    }),
  );
  return drawingRoot({ width, height }, `Chamber ${chamber}: the planned stack in section`, [
    group('metal', [
      ...bodies.flatMap(({ role, bottom, top }) => [
        box({ left: -half - wall, right: -half, bottom, top }, role),
        box({ left: half, right: half + wall, bottom, top }, role),
      ]),
      ...drawn.map((each) => each.node),
    ]),
    group('lines', lines),
    group('labels', [
      label(`Chamber ${chamber}`, 6, TEXT_PX, { size: TEXT_PX, isStrong: true }),
      ...dimensionChain(
        drawn.map(({ bottom, top }) => ({ from: bottom, to: top, text: say(top - bottom) })),
        view,
        view.originX + CHAIN,
        { left: 0, right: width, top: 1.6 * TEXT_PX, bottom: height },
        TEXT_PX,
      ),
    ]),
  ]);
}
