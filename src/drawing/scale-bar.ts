/**
 * A scale bar: two halves, one filled, with its length under its ends. A written scale dies in the copier, a bar does
 * not. CSS pixels; lengths mm.
 */
import { formatLength } from '../model/units/format-length.ts';
import { type JobUnit, MM_PER_INCH } from '../model/units/length-unit.ts';
import { type DrawingNode, group, node } from './node.ts';
import { label, textWidth } from './label.ts';

const STEPS: Readonly<Record<JobUnit, readonly number[]>> = {
  in: [1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.002, 0.001].map((inches) => inches * MM_PER_INCH),
  mm: [50, 20, 10, 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01],
};

/** Picks the longest round length that fits into `most` pixels at this scale. mm. */
export function roundLength(pxPerMm: number, most: number, unit: JobUnit): number {
  const steps = STEPS[unit];
  return steps.find((step) => step * pxPerMm <= most) ?? steps.at(-1) ?? 1;
}

/** Writes a round length with its unit: ".5 in", "10 mm". */
export function roundLengthText(mm: number, unit: JobUnit): string {
  const text = formatLength(mm, { unit, form: 'export' }).replace(/\.?0+$/, '');
  return `${unit === 'in' ? text.replace(/^0\./, '.') : text} ${unit}`;
}

export type ScaleBar = {
  readonly nodes: readonly DrawingNode[];
  readonly width: number;
};

/** Draws a bar from `x` to the right; its text stands under it on the baseline `y + size + 6`. */
export function scaleBar(
  x: number,
  y: number,
  pxPerMm: number,
  most: number,
  unit: JobUnit,
  size: number,
): ScaleBar {
  const mm = roundLength(pxPerMm, most, unit);
  const width = mm * pxPerMm;
  const height = 4;
  const text = roundLengthText(mm, unit);
  const end = Math.max(x + width, x + textWidth('0', size) + 6 + textWidth(text, size));
  const nodes = [
    node('rect', { class: 'bar bar-empty', x, y, width, height }),
    node('rect', { class: 'bar bar-full', x, y, width: width / 2, height }),
    label('0', x, y + size + 6, { size, className: 'text-soft' }),
    label(text, end, y + size + 6, { size, anchor: 'end', className: 'text-soft' }),
  ];
  return { nodes: [group('scale-bar', nodes)], width: end - x };
}
