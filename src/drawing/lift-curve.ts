/**
 * The chart of a key's way in: how high each stack is lifted, the picked one in ink, the others pale, and where the key
 * is now. Left is the key out, right is fully in, as on the slider under it. Heights are those of the stack's foot above
 * the key's bottom edge. CSS pixels.
 *
 *    lift |      _       _
 *         |    .' '.   .' '.    picked
 *         |___/     '-'     '-o
 *         +-------------------|
 *         key out        fully in
 */
import { known } from '../model/assert.ts';
import type { Assembly } from '../model/assembly/assembly.ts';
import type { Pose } from '../model/assembly/pose.ts';
import { liftAt, type LiftCurve, liftLine } from '../model/contact/lift-curve.ts';
import { chamberLift } from '../model/evaluate/insertion.ts';
import { formatLength } from '../model/units/format-length.ts';
import { type JobUnit, MM_PER_INCH } from '../model/units/length-unit.ts';
import { label, textWidth } from './label.ts';
import { type DrawingNode, drawingRoot, group, node } from './node.ts';
import { pointsData } from './view.ts';

export type LiftChartOptions = {
  readonly width: number;
  readonly height: number;
  readonly unit: JobUnit;
  readonly pickedChamber: string | null;
  readonly textScale?: number;
};

type Lift = { readonly chamber: string; readonly number: number; readonly curve: LiftCurve };
type Plot = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: (travel: number) => number;
  readonly y: (height: number) => number;
  readonly lowest: number;
  readonly highest: number;
};

/** mm between ticks, largest first: as many ticks as fit. */
const TICKS: Readonly<Record<JobUnit, readonly number[]>> = {
  in: [0.05, 0.1, 0.2, 0.5, 1].map((inches) => inches * MM_PER_INCH),
  mm: [1, 2, 5, 10, 20],
};
/** px. A chord of the curve is off by no more than about a tenth of this at usual sizes. */
const CURVE_TOLERANCE_MM = 0.01;

/** Draws the chart; null without a key. */
export function liftChart(assembly: Assembly, pose: Pose, options: LiftChartOptions): DrawingNode | null {
  const lifts = assembly.chambers.flatMap((chamber): Lift[] => {
    const curve = chamberLift(assembly, chamber);
    return curve === null || chamber.closed ? [] : [{ chamber: chamber.id, number: chamber.number, curve }];
  });
  const first = lifts[0];
  if (first === undefined) return null;
  const size = 12 * (options.textScale ?? 1);
  const lines = lifts.map(({ curve }) => liftLine(curve, CURVE_TOLERANCE_MM));
  const heights = lines.flat().map(({ height }) => height);
  const plot = plotFor(options, size, first.curve, Math.min(...heights), Math.max(...heights));
  const trace = (i: number, className: string): DrawingNode => {
    const points = known(lines[i], 'lift line').map(({ travel, height }) => ({
      x: plot.x(travel),
      y: plot.y(height),
    }));
    const data = { 'data-chamber': known(lifts[i], 'lift').chamber };
    return node('path', { class: className, d: pointsData(points, false), ...data });
  };
  const picked = lifts.findIndex(({ chamber }) => chamber === options.pickedChamber);
  const pale = lifts.flatMap((_, i) => (i === picked ? [] : [trace(i, 'trace trace-pale')]));
  const name = picked < 0 ? 'Lift of the stacks' : `Lift of chamber ${known(lifts[picked], 'lift').number}`;
  return drawingRoot(options, `${name} while the key goes in`, [
    axes(plot, options.unit, size),
    ...pale,
    ...(picked < 0 ? [] : [trace(picked, 'trace trace-picked')]),
    ...marker(plot, pose, picked < 0 ? null : known(lifts[picked], 'lift').curve),
    label(name, plot.left + 6, plot.top + size * 0.9, { size, isStrong: true }),
  ]);
}

function plotFor(
  options: LiftChartOptions,
  size: number,
  range: LiftCurve,
  lowest: number,
  highest: number,
): Plot {
  const pad = Math.max(0.2, (highest - lowest) * 0.08);
  const widest = textWidth(heightText(highest, options.unit), size);
  const box = { left: widest + 14, right: options.width - 10, top: 4, bottom: options.height - size * 2.1 };
  const [low, high] = [lowest - pad, highest + pad + (highest - lowest) * 0.12];
  const { fromTravel, toTravel } = range;
  return {
    ...box,
    x: (travel) => box.right - ((box.right - box.left) * (travel - toTravel)) / (fromTravel - toTravel),
    y: (height) => box.bottom - ((box.bottom - box.top) * (height - low)) / (high - low),
    lowest: low,
    highest: high,
  };
}

function axes(plot: Plot, unit: JobUnit, size: number): DrawingNode {
  const { left, right, top, bottom } = plot;
  const span = plot.highest - plot.lowest;
  const step = TICKS[unit].find((each) => ((bottom - top) * each) / span >= size * 1.9) ?? 20;
  const ticks: number[] = [];
  for (let i = Math.ceil(plot.lowest / step); i * step <= plot.highest; i++) ticks.push(i * step);
  const frame = [
    { x: left, y: top },
    { x: left, y: bottom },
    { x: right, y: bottom },
  ];
  const rules = ticks.map((height) =>
    pointsData(
      [
        { x: left, y: plot.y(height) },
        { x: right, y: plot.y(height) },
      ],
      false,
    ),
  );
  return group('axes', [
    node('path', { class: 'faint', d: rules.join('') }),
    node('path', { class: 'thin', d: pointsData(frame, false) }),
    ...ticks.map((height) =>
      label(heightText(height, unit), left - 6, plot.y(height) + size * 0.35, {
        size,
        anchor: 'end',
        className: 'text-soft',
      }),
    ),
    label('key out', left, bottom + size * 1.5, { size, className: 'text-soft' }),
    label('fully in', right, bottom + size * 1.5, { size, anchor: 'end', className: 'text-soft' }),
  ]);
}

/** Where the key is: an upright line, and a dot on the picked curve. */
function marker(plot: Plot, pose: Pose, curve: LiftCurve | null): DrawingNode[] {
  if (!Number.isFinite(pose.travel)) return [];
  const x = Math.max(plot.left, Math.min(plot.right, plot.x(pose.travel)));
  const line = node('path', {
    class: 'travel',
    d: pointsData(
      [
        { x, y: plot.top },
        { x, y: plot.bottom },
      ],
      false,
    ),
    'data-mark': 'travel',
  });
  if (curve === null) return [line];
  return [
    line,
    node('circle', { class: 'travel-dot', cx: x, cy: plot.y(liftAt(curve, pose.travel)), r: 4.5 }),
  ];
}

function heightText(height: number, unit: JobUnit): string {
  return unit === 'mm'
    ? String(Math.round(height * 10) / 10 + 0)
    : formatLength(height, { unit, form: 'bench', keepsPlaces: false });
}
