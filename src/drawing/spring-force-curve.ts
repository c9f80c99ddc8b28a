/**
 * How hard all springs together press on the key along its way in: what the hand feels, without friction. Forces N, travel mm,
 * picture CSS pixels.
 */
import type { ForceAt } from '../model/travel/way-result.ts';
import type { JobUnit } from '../model/units/length-unit.ts';
import { label } from './label.ts';
import { type DrawingNode, drawingRoot, node } from './node.ts';
import { pointsData } from './view.ts';
import { wayAxes, type WayChartSize, wayMarker, wayPlot } from './way-chart.ts';

export type SpringForceChartOptions = WayChartSize & { readonly unit: JobUnit; readonly textScale?: number };

/** N or pounds between ticks. */
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50];
/** What is said of so many N. */
const SAID: Readonly<Record<JobUnit, { readonly newtons: number; readonly name: string }>> = {
  // 0.45359237 kg at 9.80665 m/s².
  in: { newtons: 4.4482216152605, name: 'lb' },
  mm: { newtons: 1, name: 'N' },
};

/** Draws the chart from forces along the way, key out first; null while they are not known. */
export function springForceChart(
  forces: readonly ForceAt[],
  travel: number,
  options: SpringForceChartOptions,
): DrawingNode | null {
  const [first, last] = [forces[0], forces.at(-1)];
  if (first === undefined || last === undefined || first.travel <= last.travel) return null;
  const size = 12 * (options.textScale ?? 1);
  const most = Math.max(...forces.map(({ force }) => force));
  const plot = wayPlot({
    ...options,
    size,
    range: { fromTravel: first.travel, toTravel: last.travel },
    lowest: 0,
    // Room above for the title.
    highest: Math.max(most * 1.35, 0.1),
    textOf: (force) => forceText(force, options.unit),
  });
  const points = forces.map((each) => ({ x: plot.x(each.travel), y: plot.y(each.force) }));
  const title = `All springs together: at most ${forceText(most, options.unit)}`;
  return drawingRoot(options, `${title} while the key goes in`, [
    wayAxes(
      plot,
      STEPS.map((step) => step * SAID[options.unit].newtons),
      size,
    ),
    node('path', { class: 'trace trace-picked', d: pointsData(points, false) }),
    ...wayMarker(plot, travel, forceAt(forces, travel), size),
    label(title, plot.left + 6, plot.top + size * 0.9, { size, isStrong: true }),
  ]);
}

/** The force with the key so far out, N; between two places, in proportion. */
export function forceAt(forces: readonly ForceAt[], travel: number): number | null {
  const after = forces.findIndex((each) => each.travel <= travel);
  const [before, next] = [forces[after - 1], forces[after]];
  if (next === undefined) return forces.at(-1)?.force ?? null;
  if (before === undefined) return next.force;
  const share = (before.travel - travel) / (before.travel - next.travel);
  return before.force + (next.force - before.force) * share;
}

/** A force as it is said in a job of this unit: pounds beside inches. */
export function forceText(newtons: number, unit: JobUnit): string {
  const { newtons: one, name } = SAID[unit];
  return `${String(Math.round((newtons / one) * 10) / 10)} ${name}`;
}
