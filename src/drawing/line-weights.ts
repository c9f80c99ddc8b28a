/**
 * Widths of lines, from the ISO 128 group 0.5 (wide 0.5 mm, narrow 0.25 mm) and the half step 0.35 between them, in CSS
 * pixels: 0.25 mm is 0.94 px. The style sheet uses the same numbers.
 */
import { PX_PER_MM } from './view.ts';

export type EdgeWeight = 'wide' | 'medium' | 'narrow' | 'fine';

export const EDGE_PX: Readonly<Record<EdgeWeight, number>> = {
  /** outlines of bodies */
  wide: 0.5 * PX_PER_MM,
  /** outlines of key, pins, balls */
  medium: 0.35 * PX_PER_MM,
  /** dimensions, leaders, centre lines, springs */
  narrow: 0.25 * PX_PER_MM,
  /** hatching */
  fine: 0.18 * PX_PER_MM,
};
