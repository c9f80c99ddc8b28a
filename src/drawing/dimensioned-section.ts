/**
 * The long section with its dimensions, at a true scale, as a shop drawing: the plug's diameter, where each chamber sits from
 * the front face, and in each chamber one chain from the key's lower edge up: metal at the root of the cut, then the lower
 * stack, with what the key calls for in brackets. Where the bitting is hidden only diameter and places. CSS pixels.
 *
 *        1    2
 *    ___________________
 *   |   | |  | |   shell|___
 *   |___|#|__|#|________|   | --- extension lines
 *   |   |=|  |=|  plug  |   |  |  Ø
 *   |___________________|___| ---
 *   |   |    |
 *   |<->|    |     places, the nearest first
 *   |<------>|
 */
import { bodySpans } from '../geometry/body-sizes.ts';
import { known } from '../model/assert.ts';
import type { Assembly, AssemblyChamber } from '../model/assembly/assembly.ts';
import type { Pose } from '../model/assembly/pose.ts';
import type { Evaluation } from '../model/evaluate/evaluation.ts';
import { formatLength } from '../model/units/format-length.ts';
import type { JobUnit } from '../model/units/length-unit.ts';
import { dimensionTextWidth, extensionLine, levelDimension, uprightDimension } from './dimension-lines.ts';
import { label } from './label.ts';
import { type LongSectionFrame, longSectionFrame } from './long-section-frame.ts';
import { longSectionMetal } from './long-section-metal.ts';
import { type DrawingNode, drawingRoot, group, node } from './node.ts';
import { onPaper, type ScaledDrawing, widthAtScale } from './true-scale.ts';
import { pointsData, PX_PER_MM, xPx, yPx } from './view.ts';

export type DimensionedOptions = {
  readonly unit: JobUnit;
  /** Width of paper for the section, without what stands beside it. */
  readonly mostMm: number;
  /** Whether root depths and stacks are told. */
  readonly hasBitting: boolean;
};

/** mm of paper: from the outline to the first dimension line, and from each to the next. */
const FIRST_MM = 10;
const NEXT_MM = 7;
const SIDE_MM = 18;
const NUMBER_PX = 13;

/** Draws the section with its dimensions, the key where it stops. */
export function dimensionedSection(
  assembly: Assembly,
  pose: Pose,
  evaluation: Evaluation | null,
  options: DimensionedOptions,
): ScaledDrawing {
  const { unit, mostMm, hasBitting } = options;
  const { width, enlargement, pxPerMm } = widthAtScale(assembly, { unit, mostMm });
  const frame = longSectionFrame(assembly, { unit, width }, 1);
  const places = assembly.chambers;
  const lastY = frame.metal.bottom + (FIRST_MM + (places.length - 1) * NEXT_MM) * PX_PER_MM;
  const size = {
    width: frame.metal.right + SIDE_MM * PX_PER_MM,
    height: Math.ceil(Math.max(lastY, frame.metal.bottom) + 4 * PX_PER_MM),
  };
  const inWords = unit === 'in' ? 'inches' : 'millimetres';
  const drawing = drawingRoot(size, `Long section of ${assembly.label} with dimensions in ${inWords}`, [
    group('metal', longSectionMetal(assembly, pose, frame, 0, 'bodies')),
    ...axes(assembly, frame),
    ...plugDiameter(assembly, frame, unit),
    ...chamberPlaces(places, frame, unit, lastY),
    ...(hasBitting
      ? places.flatMap((each) => chamberChain(assembly, pose, evaluation, each, frame, unit))
      : []),
    group(
      'labels',
      places.map(({ number, z }) =>
        label(String(number), xPx(frame.view, z), frame.numbersY, {
          size: NUMBER_PX,
          isStrong: true,
          anchor: 'middle',
        }),
      ),
    ),
  ]);
  return onPaper(drawing, enlargement, pxPerMm);
}

/** The plug's axis, and those of the chambers above the stacks. */
function axes(assembly: Assembly, { view, metal }: LongSectionFrame): DrawingNode[] {
  const along = [
    { x: metal.left - 4, y: yPx(view, 0) },
    { x: metal.right + 2 * PX_PER_MM, y: yPx(view, 0) },
  ];
  return [
    node('path', { class: 'centre-line', d: pointsData(along, false) }),
    ...assembly.chambers.map(({ z, capY }) => {
      const upright = [
        { x: xPx(view, z), y: metal.top - 1 * PX_PER_MM },
        { x: xPx(view, z), y: yPx(view, capY) + 2 * PX_PER_MM },
      ];
      return node('path', { class: 'centre-line', d: pointsData(upright, false) });
    }),
  ];
}

function plugDiameter(assembly: Assembly, { view, metal }: LongSectionFrame, unit: JobUnit): DrawingNode[] {
  const plug = known(assembly.bodies[0], 'plug');
  const span = known(bodySpans(assembly)[0], 'span of the plug');
  const radius = plug.outerRadius;
  const x = metal.right + FIRST_MM * PX_PER_MM;
  const [low, high] = [yPx(view, plug.axisY - radius), yPx(view, plug.axisY + radius)];
  const back = xPx(view, span.back);
  return [
    ...[low, high].map((y) => extensionLine({ x: back, y }, { x, y })),
    uprightDimension({ low, high, x, text: `Ø ${said(2 * radius, unit)}` }),
  ];
}

/** From the front face, the nearest chamber on the first line. */
function chamberPlaces(
  chambers: readonly AssemblyChamber[],
  { view, metal }: LongSectionFrame,
  unit: JobUnit,
  lastY: number,
): DrawingNode[] {
  const front = xPx(view, 0);
  const nearest = [...chambers].sort((one, other) => one.z - other.z);
  return [
    ...(nearest.length === 0 ? [] : [extensionLine({ x: front, y: metal.bottom }, { x: front, y: lastY })]),
    ...nearest.flatMap(({ z }, i) => {
      const y = metal.bottom + (FIRST_MM + i * NEXT_MM) * PX_PER_MM;
      const x = xPx(view, z);
      return [
        extensionLine({ x, y: metal.bottom }, { x, y }),
        levelDimension({ from: front, to: x, y, text: said(z, unit) }),
      ];
    }),
  ];
}

/** Root depth of the cut under a chamber, and its lower stack, on the chamber's axis. */
function chamberChain(
  assembly: Assembly,
  pose: Pose,
  evaluation: Evaluation | null,
  chamber: AssemblyChamber,
  { view }: LongSectionFrame,
  unit: JobUnit,
): DrawingNode[] {
  const { key } = assembly;
  const x = xPx(view, chamber.z);
  const links: { from: number; to: number; beside: string | null }[] = [];
  const cut = key?.shape.cuts.reduce<{ at: number; rootDepth: number } | null>((nearest, each) => {
    const distance = (at: number) => Math.abs(at - key.seatedTravel - chamber.z);
    return nearest === null || distance(each.at) < distance(nearest.at) ? each : nearest;
  }, null);
  if (key !== null && cut != null)
    links.push({ from: key.bottomY, to: key.bottomY + cut.rootDepth, beside: null });
  const parts = pose.stacks.find((each) => each.chamber === chamber.id)?.parts ?? [];
  const foot = parts[0];
  const top =
    parts.find(({ part }) => part.role === 'bottomPin') ?? (foot?.part.role === 'ball' ? foot : undefined);
  if (foot !== undefined && top !== undefined) {
    const needed = evaluation?.chambers.find((each) => each.chamber === chamber.id)?.neededLowerStack ?? null;
    links.push({ from: foot.y, to: top.topY, beside: needed === null ? null : said(needed, unit) });
  }
  return chained(
    links.map(({ from, to, beside }) => ({
      low: yPx(view, from),
      high: yPx(view, to),
      x,
      text: said(to - from, unit),
      beside,
      isOnMetal: true,
    })),
  );
}

type Link = Parameters<typeof uprightDimension>[0];

/** Texts longer than their own piece of the chain are moved up, clear of the one below. */
function chained(links: readonly Link[]): DrawingNode[] {
  let taken = Infinity;
  return links.map((link) => {
    const longest = Math.max(dimensionTextWidth(link.text), dimensionTextWidth(`(${link.beside ?? ''})`));
    const middle = Math.min((link.low + link.high) / 2, taken - longest / 2 - 2);
    taken = middle - longest / 2;
    return uprightDimension({ ...link, textAt: middle });
  });
}

function said(mm: number, unit: JobUnit): string {
  return formatLength(mm, { unit, form: 'bench', keepsPlaces: true });
}
