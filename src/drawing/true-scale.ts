/**
 * Drawings on paper at a stated true scale. A drawing is laid out in CSS pixels as always; on paper its width and height
 * are given in millimetres, so that one millimetre of the cylinder is exactly as many millimetres of paper as stated.
 */
import type { Assembly } from '../model/assembly/assembly.ts';
import type { Pose } from '../model/assembly/pose.ts';
import type { Evaluation } from '../model/evaluate/evaluation.ts';
import { longSection } from './long-section.ts';
import { longSectionFrame } from './long-section-frame.ts';
import type { LongSectionOptions } from './long-section-options.ts';
import type { DrawingNode } from './node.ts';
import { numberText } from './number-text.ts';
import { asScale, scaleText } from './scale-series.ts';
import { PX_PER_MM } from './view.ts';

export type ScaledDrawing = {
  readonly drawing: DrawingNode;
  /** "3:1" */
  readonly scale: string;
  /** Millimetres of paper. */
  readonly widthMm: number;
  readonly heightMm: number;
};

type OnPaperOptions = Omit<LongSectionOptions, 'width' | 'maxHeight' | 'flatColours'> & {
  readonly mostMm: number;
};

/** Draws the long section as large as fits the width of paper, at a scale of the series. */
export function longSectionAtScale(
  assembly: Assembly,
  pose: Pose,
  evaluation: Evaluation | null,
  options: OnPaperOptions,
): ScaledDrawing {
  const { width, enlargement, pxPerMm } = widthAtScale(assembly, options);
  const drawing = longSection(assembly, pose, evaluation, { ...options, width });
  return onPaper(drawing, enlargement, pxPerMm);
}

/** Finds the largest enlargement of the series that fits, and the width in CSS pixels that gives it. */
export function widthAtScale(
  assembly: Assembly,
  options: OnPaperOptions,
): { readonly width: number; readonly enlargement: number; readonly pxPerMm: number } {
  const most = options.mostMm * PX_PER_MM;
  const scaleAt = (width: number) => longSectionFrame(assembly, { ...options, width }, 1).view.scaleX;
  const enlargement = asScale(scaleAt(most) / PX_PER_MM);
  // Fixed room beside the metal makes the scale a straight line over the width.
  const slope = scaleAt(most) - scaleAt(most - 1);
  const width = most - (scaleAt(most) - enlargement * PX_PER_MM) / slope;
  return { width, enlargement, pxPerMm: scaleAt(width) };
}

/** Gives a drawing, laid out with so many px per mm of the cylinder, its size on paper at an enlargement. */
export function onPaper(drawing: DrawingNode, enlargement: number, pxPerMm: number): ScaledDrawing {
  const mmPerPx = enlargement / pxPerMm;
  const widthMm = Number(drawing.attributes['width']) * mmPerPx;
  const heightMm = Number(drawing.attributes['height']) * mmPerPx;
  return {
    drawing: {
      ...drawing,
      attributes: {
        ...drawing.attributes,
        width: `${numberText(widthMm)}mm`,
        height: `${numberText(heightMm)}mm`,
      },
    },
    scale: scaleText(enlargement),
    widthMm,
    heightMm,
  };
}
