/**
 * The end view: the cylinder cut across at one chamber, looking in from the front, whole and in true proportions. It
 * shows the turn as it is, and the picked stack as a chain of dimensions. CSS pixels.
 *
 *        ______
 *       |  ||  |   tower with spring and driver          spring .412
 *      .'  ||  '.                                        driver .275
 *     /  .-[]-.  \                                       ball + bottom pin .3345
 *    |  |  ||  |  |
 *     \  '-||-'  /                                       key, to the ball .3797
 *      '-.____.-'
 */
import type { Assembly } from '../model/assembly/assembly.ts';
import type { Pose } from '../model/assembly/pose.ts';
import type { Evaluation } from '../model/evaluate/evaluation.ts';
import { asRadians, toDegrees } from '../model/radians.ts';
import type { JobUnit } from '../model/units/length-unit.ts';
import { shellShape } from '../geometry/body-sizes.ts';
import { turnOf } from '../geometry/cut-parts.ts';
import type { Box } from './close-up-frame.ts';
import { LOOKING_IN } from './close-up-frame.ts';
import { closeUpMetal, contactMark } from './close-up-metal.ts';
import { dimensionChain } from './dimension-chain.ts';
import { stackDimensions } from './stack-dimensions.ts';
import { label, textWidth, wrapped } from './label.ts';
import { type DrawingNode, drawingRoot, group, node } from './node.ts';
import { scaleBar } from './scale-bar.ts';
import { stackSplit } from './stack-split.ts';
import { pointsData, type View, xPx, yPx } from './view.ts';

export type EndViewOptions = {
  readonly chamber: string;
  readonly line?: string;
  readonly width: number;
  readonly maxHeight?: number;
  readonly unit: JobUnit;
  readonly textScale?: number;
  /** by default true; a turned stack has none */
  readonly hasDimensions?: boolean;
  /** Where a turn binds: across and height above the plug's axis, mm. */
  readonly contact?: { readonly x: number; readonly y: number } | null;
};

const TEXT_PX = 13;
const PAD_PX = 8;

/** Draws the end view at a chamber. */
export function endView(
  assembly: Assembly,
  pose: Pose,
  evaluation: Evaluation | null,
  options: EndViewOptions,
): DrawingNode {
  const split = stackSplit(assembly, pose, evaluation, options.chamber, options.line);
  const textSize = TEXT_PX * (options.textScale ?? 1);
  const small = textSize * 0.92;
  const isTurned = assembly.bodies.some((body) => turnOf(pose, body.id) !== 0);
  const wished =
    (options.hasDimensions ?? true) && !isTurned ? stackDimensions(assembly, split, options.unit) : [];
  const widest = Math.max(0, ...wished.map(({ text }) => textWidth(text, small)));
  const gutter = widest === 0 ? 0 : widest + 52;
  const hasRoom = options.width - gutter > 150 * (options.textScale ?? 1);
  const dimensions = hasRoom ? wished : [];
  const { view, box, bottom } = endFrame(assembly, options, hasRoom ? gutter : 0, textSize);
  const turns = assembly.bodies
    .map((body) => ({
      role: body.role,
      angle: Math.round(toDegrees(asRadians(Math.abs(turnOf(pose, body.id))))),
    }))
    .filter(({ angle }) => angle > 0)
    .map(({ role, angle }) => `${role} turned ${angle}°`);
  const title = `Chamber ${split.chamber.number}, looking in from the front`;
  const captions = wrapped([title, 'true proportions', ...turns], ', ', options.width - 2 * PAD_PX, small);
  const captionY = bottom + textSize * 1.4;
  const barY = captionY + (captions.length - 1) * small * 1.35 + textSize * 0.5;
  const bar = scaleBar(PAD_PX, barY, view.scaleY, Math.min(140, options.width * 0.4), options.unit, small);
  return drawingRoot({ width: options.width, height: Math.ceil(barY + textSize * 1.7) }, title, [
    group(
      'metal',
      [closeUpMetal(assembly, split, view, box, view.scaleY < 9 ? 'narrow' : 'medium', 'no ground')],
      {
        'data-chamber': options.chamber,
      },
    ),
    ...centreLines(assembly, view, box),
    ...contactMark(options.contact ?? null, view, box),
    ...dimensionChain(dimensions, view, xPx(view, shellReach(assembly) * LOOKING_IN) + 12, box, small),
    group('labels', [
      ...captions.map((text, i) =>
        label(text, PAD_PX, captionY + i * small * 1.35, { size: small, className: 'text-soft' }),
      ),
      ...bar.nodes,
    ]),
  ]);
}

function endFrame(
  assembly: Assembly,
  options: EndViewOptions,
  gutter: number,
  textSize: number,
): { view: View; box: Box; bottom: number } {
  const shell = shellShape(assembly);
  const lowest = shell.axisY - shell.barrelRadius;
  const high = shell.topY - lowest;
  const byWidth = (options.width - 2 * PAD_PX - gutter) / (2 * shell.barrelRadius);
  const room = (options.maxHeight ?? 720) - 2 * PAD_PX - textSize * 4;
  const scale = Math.max(1, Math.min(byWidth, room / high));
  const spare = Math.max(0, byWidth - scale) * shell.barrelRadius;
  const originX = PAD_PX + spare + shell.barrelRadius * scale;
  const originY = PAD_PX + shell.topY * scale;
  const bottom = PAD_PX + high * scale;
  const reach = shell.barrelRadius * scale + PAD_PX / 2;
  const box = { left: originX - reach, right: originX + reach, top: PAD_PX / 2, bottom: bottom + PAD_PX / 2 };
  return { view: { scaleX: LOOKING_IN * scale, scaleY: scale, originX, originY }, box, bottom };
}

function shellReach(assembly: Assembly): number {
  return shellShape(assembly).barrelRadius;
}

/** Axes of the plug, past its round. */
function centreLines(assembly: Assembly, view: View, box: Box): DrawingNode[] {
  const reach = (assembly.lines[0]?.radius ?? 1) * 1.12;
  const across = [
    { x: xPx(view, reach), y: yPx(view, 0) },
    { x: xPx(view, -reach), y: yPx(view, 0) },
  ];
  const upright = [
    { x: xPx(view, 0), y: Math.max(box.top, 1) },
    { x: xPx(view, 0), y: box.bottom },
  ];
  return [node('path', { class: 'centre-line', d: pointsData(across, false) + pointsData(upright, false) })];
}
