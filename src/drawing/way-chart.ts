/**
 * A chart over the key's way in: left is the key out, right is fully in, as on the slider under it; upwards whatever is
 * charted. Frame, ticks, and where the key is now. Travel mm, picture CSS pixels.
 *
 *         |      _       _
 *         |    .' '.   .' '.
 *         |___/     '-'     '-o
 *         +-------------------|
 *         key out        fully in
 */
import { label, textWidth } from './label.ts';
import { type DrawingNode, group, node } from './node.ts';
import { pointsData } from './view.ts';

export type WayChartSize = { readonly width: number; readonly height: number };

/** The key's way: how far it is out at its start and at its end, mm. */
export type WayRange = { readonly fromTravel: number; readonly toTravel: number };

export type WayPlot = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: (travel: number) => number;
  readonly y: (value: number) => number;
  readonly lowest: number;
  readonly highest: number;
  /** Says a value beside its tick. */
  readonly textOf: (value: number) => string;
};

export type WayPlotOptions = WayChartSize & {
  /** Of the text, px. */
  readonly size: number;
  readonly range: WayRange;
  readonly lowest: number;
  readonly highest: number;
  readonly textOf: (value: number) => string;
};

/** Lays out the chart for what is between `lowest` and `highest`. */
export function wayPlot({ width, height, size, range, lowest, highest, textOf }: WayPlotOptions): WayPlot {
  const { fromTravel, toTravel } = range;
  const box = {
    left: textWidth(textOf(highest), size) + 14,
    right: width - 10,
    top: 4,
    bottom: height - size * 2.1,
  };
  return {
    ...box,
    x: (travel) => box.right - ((box.right - box.left) * (travel - toTravel)) / (fromTravel - toTravel),
    y: (value) => box.bottom - ((box.bottom - box.top) * (value - lowest)) / (highest - lowest),
    lowest,
    highest,
    textOf,
  };
}

/** Frame and ticks; `steps` between ticks smallest first: as many ticks as fit. */
export function wayAxes(plot: WayPlot, steps: readonly number[], size: number): DrawingNode {
  const { left, right, top, bottom } = plot;
  const span = plot.highest - plot.lowest;
  const step = steps.find((each) => ((bottom - top) * each) / span >= size * 1.9) ?? span;
  const ticks: number[] = [];
  // A tick right under the top would have its text outside.
  const last = plot.highest - (span * size * 0.6) / (bottom - top);
  for (let i = Math.ceil(plot.lowest / step); i * step <= last; i++) ticks.push(i * step);
  const level = (value: number) => [
    { x: left, y: plot.y(value) },
    { x: right, y: plot.y(value) },
  ];
  const frame = [
    { x: left, y: top },
    { x: left, y: bottom },
    { x: right, y: bottom },
  ];
  return group('axes', [
    node('path', { class: 'faint', d: ticks.map((value) => pointsData(level(value), false)).join('') }),
    node('path', { class: 'thin', d: pointsData(frame, false) }),
    ...ticks.map((value) =>
      label(plot.textOf(value), left - 6, plot.y(value) + size * 0.35, {
        size,
        anchor: 'end',
        className: 'text-soft',
      }),
    ),
    label('key out', left, bottom + size * 1.5, { size, className: 'text-soft' }),
    label('fully in', right, bottom + size * 1.5, { size, anchor: 'end', className: 'text-soft' }),
  ]);
}

/** Where the key is: an upright line up to the title, and a dot at the value there; none with null. */
export function wayMarker(plot: WayPlot, travel: number, value: number | null, size: number): DrawingNode[] {
  if (!Number.isFinite(travel)) return [];
  const x = Math.max(plot.left, Math.min(plot.right, plot.x(travel)));
  const upright = [
    { x, y: plot.top + size * 1.3 },
    { x, y: plot.bottom },
  ];
  const line = node('path', { class: 'travel', d: pointsData(upright, false), 'data-mark': 'travel' });
  if (value === null) return [line];
  return [line, node('circle', { class: 'travel-dot', cx: x, cy: plot.y(value), r: 4.5 })];
}
