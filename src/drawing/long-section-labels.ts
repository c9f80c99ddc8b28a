/** Numbers over the chambers, flags, shear lines with their names, caption and scale bar of the long section. */
import { known } from '../model/assert.ts';
import type { Assembly } from '../model/assembly/assembly.ts';
import type { Pose } from '../model/assembly/pose.ts';
import type { Evaluation } from '../model/evaluate/evaluation.ts';
import { namedChambers } from '../model/evaluate/line-results.ts';
import type { JobUnit } from '../model/units/length-unit.ts';
import { bodySpans } from '../geometry/body-sizes.ts';
import { turnOf } from '../geometry/cut-parts.ts';
import { placedKey } from '../geometry/key-outline.ts';
import { boundsOf } from '../geometry/outline.ts';
import { asRadians, toDegrees } from '../model/radians.ts';
import { type FlagLayout, flagInside, type FlagWish } from './flags.ts';
import { label, textWidth } from './label.ts';
import { LINE_END_PX, type LongSectionFrame } from './long-section-frame.ts';
import type { LongSectionOptions } from './long-section-options.ts';
import { type DrawingNode, group, node } from './node.ts';
import { scaleBar } from './scale-bar.ts';
import { amountText, lineWords, resultOf, splitAt, splitSentence, symbolOf } from './split-words.ts';
import { verdictSymbol } from './symbols.ts';
import { pointsData, type View, xPx, yPx } from './view.ts';
import { EDGE_PX } from './line-weights.ts';

/** Lists what is to be flagged, what stops the plug before what is not decided; nothing while the key is not home. */
export function flagWishes(
  assembly: Assembly,
  pose: Pose,
  evaluation: Evaluation | null,
  options: LongSectionOptions,
  view: View,
): FlagWish[] {
  const isHome = assembly.key !== null && Math.abs(pose.travel - assembly.key.seatedTravel) < 1e-9;
  if (evaluation === null || !isHome || evaluation.commonError !== null) return [];
  // What a line that turns leaves behind holds nothing: no flags there.
  if (evaluation.lines.some((line) => line.verdict === 'turns')) return [];
  const flagged = options.flaggedLine ?? null;
  const wishes = evaluation.lines.flatMap((line, lineIndex) => {
    const named = namedChambers(line, evaluation.chambers);
    return assembly.chambers.flatMap((chamber): FlagWish[] => {
      const result = resultOf(evaluation, chamber.id);
      const found = result === null ? null : splitAt(result, line.line);
      if (found === null || !line.blockedBy.includes(chamber.id)) return [];
      if (flagged !== null && line.line !== flagged) return [];
      const symbol = symbolOf(found.verdict);
      if (symbol === 'turns' || symbol === 'none') return [];
      return [
        {
          chamber: chamber.id,
          number: chamber.number,
          lineIndex,
          x: xPx(view, chamber.z),
          text: `${splitSentence(found.split.offset, found.verdict, options.unit)}${atLine(assembly, lineIndex)}`,
          shortText: amountText(found.split.offset, options.unit),
          symbol,
          isNamed: named.includes(chamber.id),
        },
      ];
    });
  });
  const once = wishes.filter((wish, i) => wishes.findIndex(({ chamber }) => chamber === wish.chamber) === i);
  const rank = (wish: FlagWish): number =>
    (wish.isNamed ? 0 : 4) +
    (wish.symbol === 'stops' ? 0 : 2) -
    (wish.chamber === options.pickedChamber ? 1 : 0);
  return once.sort((a, b) => rank(a) - rank(b) || a.x - b.x);
}

/** Names the line on a flag where there are several. */
function atLine({ lines }: Assembly, index: number): string {
  return lines.length < 2 ? '' : index === 0 ? ', inner line' : ', outer line';
}

/** Draws numbers, and the flags with their poles down to the line. */
export function chamberLabels(
  assembly: Assembly,
  frame: LongSectionFrame,
  layout: FlagLayout,
  pickedChamber: string | null,
): DrawingNode[] {
  const { view, numbersY } = frame;
  const size = numberSize(assembly, frame);
  const numbers = assembly.chambers.map((chamber) => {
    const x = xPx(view, chamber.z);
    const flag = layout.flags.find(({ wish }) => wish.chamber === chamber.id);
    const isPicked = chamber.id === pickedChamber;
    const half = size * 0.78;
    const box = node('rect', {
      class: 'pick',
      x: x - half,
      y: numbersY - size * 0.36 - half,
      width: 2 * half,
      height: 2 * half,
      rx: 2,
    });
    const colour = flag === undefined ? '' : `verdict-${flag.wish.symbol}`;
    const text = label(String(chamber.number), x, numbersY, {
      size,
      isStrong: true,
      anchor: 'middle',
      className: colour,
    });
    return group('chamber-number', isPicked ? [box, text] : [text], { 'data-chamber': chamber.id });
  });
  return [
    ...numbers,
    ...layout.flags.map((flag) => flagNode(assembly, frame, flag)),
    ...hiddenCount(frame, layout),
  ];
}

/** Numbers are as large as the text, unless chambers stand too close together for it. */
function numberSize(assembly: Assembly, { view, textSize }: LongSectionFrame): number {
  const gaps = assembly.chambers.slice(1).map(({ z }, i) => z - (assembly.chambers[i]?.z ?? 0));
  return Math.min(textSize, ...gaps.map((gap) => (gap * view.scaleX) / 1.65));
}

function flagNode(
  assembly: Assembly,
  frame: LongSectionFrame,
  flag: FlagLayout['flags'][number],
): DrawingNode {
  const { textSize, flagRowHeight, view } = frame;
  const { wish, text, row, left, right } = flag;
  const bottom = frame.numbersY - textSize * 1.25 - row * flagRowHeight;
  const height = textSize * 1.55;
  const { symbolX, textX } = flagInside(wish.symbol, textSize);
  const middle = bottom - height / 2;
  const ring = ringAt(assembly, view, wish);
  const numberTop = frame.numbersY - textSize * 1.05;
  const pole = [
    [bottom, numberTop],
    [frame.numbersY + textSize * 0.3, ring.y - ring.radius],
  ].map(([from = 0, to = 0]) =>
    node('path', {
      class: wish.isNamed ? `leader verdict-${wish.symbol}` : 'faint',
      d: pointsData(
        [
          { x: wish.x, y: from },
          { x: wish.x, y: to },
        ],
        false,
      ),
    }),
  );
  if (!wish.isNamed)
    return group(
      'flag',
      [
        ...pole,
        ...verdictSymbol(wish.symbol, left + symbolX, middle, textSize * 0.72),
        label(text, left + textX, middle + textSize * 0.35, { size: textSize, className: 'text-soft' }),
      ],
      { 'data-chamber': wish.chamber },
    );
  return group(
    `flag verdict-${wish.symbol}`,
    [
      ...pole,
      node('circle', { class: `ring verdict-${wish.symbol}`, cx: wish.x, cy: ring.y, r: ring.radius }),
      node('rect', { class: 'flag-box', x: left, y: bottom - height, width: right - left, height, rx: 2 }),
      ...verdictSymbol(wish.symbol, left + symbolX, middle, textSize * 0.72),
      label(text, left + textX, middle + textSize * 0.35, {
        size: textSize,
        isStrong: true,
        className: `verdict-${wish.symbol}`,
      }),
    ],
    { 'data-chamber': wish.chamber },
  );
}

/** A fine circle around the place where a stack meets the line that its flag is about. */
function ringAt(assembly: Assembly, view: View, wish: FlagWish): { y: number; radius: number } {
  const chamber = known(
    assembly.chambers.find(({ id }) => id === wish.chamber),
    `chamber ${wish.chamber}`,
  );
  const line = known(assembly.lines[wish.lineIndex], `line ${wish.lineIndex}`);
  const widest = Math.max(...chamber.holes.map((hole) => hole.radius));
  return { y: yPx(view, line.innerAxisY + line.radius), radius: widest * 1.18 * view.scaleX };
}

/** "every chamber high .0020"; null where chambers do not share an error. */
export function commonErrorWords({ commonError }: Evaluation, unit: JobUnit): string | null {
  if (commonError === null) return null;
  return `every chamber ${commonError.offset > 0 ? 'high' : 'low'} ${amountText(commonError.offset, unit)}`;
}

/** The same error in every chamber is said once, before any chamber is flagged. */
export function commonErrorLabel(
  frame: LongSectionFrame,
  evaluation: Evaluation | null,
  options: LongSectionOptions,
): DrawingNode[] {
  const text = evaluation === null ? null : commonErrorWords(evaluation, options.unit);
  if (text === null) return [];
  const { metal, numbersY, textSize } = frame;
  const x = (Math.max(metal.left, 4) + metal.right) / 2;
  const style = { size: textSize, isStrong: true, anchor: 'middle', className: 'verdict-unsure' } as const;
  return [label(text, x, numbersY - textSize * 1.9, style)];
}

/** How much of the row of flags the count of hidden ones takes. */
export function hiddenCountWidth(most: number, textSize: number): number {
  return textWidth(`${most} more`, textSize) + 12;
}

function hiddenCount({ width, textSize }: LongSectionFrame, { hidden }: FlagLayout): DrawingNode[] {
  if (hidden === 0) return [];
  return [
    label(`${hidden} more`, width - 6, textSize * 1.1, {
      size: textSize,
      anchor: 'end',
      className: 'text-soft',
    }),
  ];
}

/**
 * Draws the shear lines: dash-dotted where free, along the crest of the metal inside its edge, so that the gap above
 * stays open; left out over the stacks, so that nothing covers a split.
 */
export function shearLines(assembly: Assembly, frame: LongSectionFrame, planeOffset: number): DrawingNode[] {
  const { view } = frame;
  const plug = known(bodySpans(assembly)[0], 'span of the plug');
  return assembly.lines.flatMap((line, i) => {
    if (Math.abs(planeOffset) >= line.radius) return [];
    const y = line.innerAxisY + Math.sqrt(line.radius ** 2 - planeOffset ** 2);
    const drawnY = yPx(view, y) + EDGE_PX.narrow / 2;
    const inner = known(bodySpans(assembly)[i], `span ${i}`);
    const holes = assembly.chambers.flatMap((chamber) => {
      const widest = Math.max(...chamber.holes.map((hole) => hole.radius));
      return chamber.closed ? [] : [chamber.z - widest, chamber.z + widest];
    });
    const end = frame.isNarrow ? plug.back : (frame.metal.right + LINE_END_PX - view.originX) / view.scaleX;
    const start = plug.front - (isOverKey(assembly, y) ? 0.6 : 0.12) * line.radius;
    const stretches = (ends: readonly number[]): string =>
      ends
        .flatMap((from, k) => (k % 2 === 0 ? [[from, ends[k + 1] ?? from]] : []))
        .map((stretch) => stretch.map((z) => ({ x: xPx(view, z), y: drawnY })))
        .map((points) => pointsData(points, false))
        .join('');
    const data = { 'data-line': line.id };
    return [
      node('path', { class: 'shear-line', d: stretches([start, inner.front, inner.back, end]), ...data }),
      node('path', { class: 'shear-crest', d: stretches([inner.front, ...holes, inner.back]), ...data }),
      ...lineLabel(assembly, frame, i, y),
    ];
  });
}

/** Says whether a level passes over the bow of the key wherever the key is. */
function isOverKey(assembly: Assembly, y: number): boolean {
  const { key } = assembly;
  return key === null || boundsOf(placedKey(key, 0)).top < y;
}

function lineLabel(assembly: Assembly, frame: LongSectionFrame, index: number, y: number): DrawingNode[] {
  const { view, textSize, isNarrow, metal } = frame;
  const text = lineWords(index, assembly.lines.length);
  if (!isNarrow) {
    const style = { size: textSize, className: 'text-line' };
    const own = yPx(view, y);
    const spread = assembly.lines.length > 1 ? (index === 0 ? 0.95 : 0) * textSize : 0.35 * textSize;
    return [label(text, metal.right + LINE_END_PX + 6, own + spread, style)];
  }
  const row = metal.bottom + textSize * (1.4 + index * 1.4);
  const sample = [
    { x: metal.left, y: row - textSize * 0.35 },
    { x: metal.left + 30, y: row - textSize * 0.35 },
  ];
  return [
    node('path', { class: 'shear-line', d: pointsData(sample, false) }),
    label(text, metal.left + 38, row, { size: textSize, className: 'text-line' }),
  ];
}

/** Draws the caption and the scale bar under the metal. */
export function captionRow(
  assembly: Assembly,
  pose: Pose,
  frame: LongSectionFrame,
  options: LongSectionOptions,
): DrawingNode[] {
  const { metal, textSize, isNarrow, view, width } = frame;
  const size = textSize * 0.92;
  const lineRows = isNarrow ? assembly.lines.length * 1.4 : 0;
  const y = metal.bottom + textSize * (1.5 + lineRows);
  const words = captionWords(assembly, pose, options);
  const most = isNarrow ? width * 0.4 : Math.min(240, (metal.right - metal.left) * 0.28);
  const barY = isNarrow ? y + textSize * 0.7 : y - textSize * 0.75;
  const bar = scaleBar(0, 0, view.scaleX, most, options.unit, size);
  const room = (isNarrow ? width : metal.right - bar.width - 12) - metal.left;
  const fitting = words.find((text) => textWidth(text, size) <= room) ?? '';
  const barX = isNarrow ? metal.left : metal.right - bar.width;
  return [
    label(fitting, metal.left, y, { size, className: 'text-soft' }),
    ...scaleBar(barX, barY, view.scaleX, most, options.unit, size).nodes,
  ];
}

/** The caption, fullest first. */
function captionWords(assembly: Assembly, pose: Pose, options: LongSectionOptions): string[] {
  const offset = options.planeOffset ?? 0;
  const beside = offset === 0 ? '' : ` ${amountText(offset, options.unit)} ${options.unit} beside the axis`;
  const turned = assembly.bodies
    .map((body) => ({ role: body.role, angle: asRadians(turnOf(pose, body.id)) }))
    .filter(({ angle }) => Math.abs(angle) > 1e-9)
    .map(({ role, angle }) => `${role} turned ${Math.round(Math.abs(toDegrees(angle)))}°`);
  const extra = turned.length === 0 ? '' : `, ${turned.join(', ')}`;
  return [`Long section${beside}, true proportions${extra}`, `Long section${beside}${extra}`, 'Long section'];
}
