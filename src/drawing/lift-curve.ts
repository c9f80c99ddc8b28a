/**
 * How high each stack is lifted on the key's way in, the picked one in ink, the others pale. Heights are those of the stack's
 * foot above the key's bottom edge, mm. CSS pixels.
 */
import { known } from '../model/assert.ts';
import type { Assembly } from '../model/assembly/assembly.ts';
import type { Pose } from '../model/assembly/pose.ts';
import { liftAt, type LiftCurve, liftLine } from '../model/contact/lift-curve.ts';
import { chamberLift } from '../model/evaluate/insertion.ts';
import { formatLength } from '../model/units/format-length.ts';
import { type JobUnit, MM_PER_INCH } from '../model/units/length-unit.ts';
import { label } from './label.ts';
import { type DrawingNode, drawingRoot, node } from './node.ts';
import { pointsData } from './view.ts';
import { wayAxes, wayMarker, wayPlot } from './way-chart.ts';

export type LiftChartOptions = {
  readonly width: number;
  readonly height: number;
  readonly unit: JobUnit;
  readonly pickedChamber: string | null;
  readonly textScale?: number;
};

type Lift = { readonly chamber: string; readonly number: number; readonly curve: LiftCurve };
/** mm between ticks. */
const TICKS: Readonly<Record<JobUnit, readonly number[]>> = {
  in: [0.05, 0.1, 0.2, 0.5, 1].map((inches) => inches * MM_PER_INCH),
  mm: [1, 2, 5, 10, 20],
};
/** A chord of the curve is off by no more than this: about a tenth of a pixel at usual sizes. */
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
  const [lowest, highest] = [Math.min(...heights), Math.max(...heights)];
  const pad = Math.max(0.2, (highest - lowest) * 0.08);
  const plot = wayPlot({
    ...options,
    size,
    range: first.curve,
    lowest: lowest - pad,
    highest: highest + pad + (highest - lowest) * 0.12,
    textOf: (height) => heightText(height, options.unit),
  });
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
    wayAxes(plot, TICKS[options.unit], size),
    ...pale,
    ...(picked < 0 ? [] : [trace(picked, 'trace trace-picked')]),
    ...wayMarker(
      plot,
      pose.travel,
      picked < 0 ? null : liftAt(known(lifts[picked], 'lift').curve, pose.travel),
      size,
    ),
    label(name, plot.left + 6, plot.top + size * 0.9, { size, isStrong: true }),
  ]);
}

function heightText(height: number, unit: JobUnit): string {
  return unit === 'mm'
    ? String(Math.round(height * 10) / 10 + 0)
    : formatLength(height, { unit, form: 'bench', keepsPlaces: false });
}
