/**
 * A long part broken off for the drawing: cut at an upright line, the cut drawn as a freehand wave. Frame of the outline;
 * what lies to the right of the line is kept.
 */
import { flattenOutline } from './flatten.ts';
import { type Outline, type Point, polygonOutline, type Region } from './outline.ts';
import { clipAbove } from './polygon.ts';

export type Break = {
  readonly x: number;
  /** Half the height of the wave, and how long one wave is. */
  readonly amplitude: number;
  readonly wavelength: number;
  /** How far curves may be off. */
  readonly tolerance: number;
};

/** Breaks a region off. Loops wholly to the left are left out. */
export function brokenOff(region: Region, at: Break): Outline[] {
  return region.flatMap((outline) => {
    const swapped = flattenOutline(outline, at.tolerance).map(({ x, y }) => ({ x: y, y: x }));
    const kept = clipAbove(swapped, at.x).map(({ x, y }) => ({ x: y, y: x }));
    return kept.length < 3 ? [] : [polygonOutline(withWave(kept, at))];
  });
}

function withWave(points: readonly Point[], at: Break): Point[] {
  return points.flatMap((point, i) => {
    const next = points[(i + 1) % points.length] ?? point;
    if (point.x !== at.x || next.x !== at.x) return [point.x === at.x ? onWave(point.y, at) : point];
    const steps = Math.max(2, Math.ceil(Math.abs(next.y - point.y) / (at.wavelength / 16)));
    return Array.from({ length: steps }, (_, step) =>
      onWave(point.y + ((next.y - point.y) * step) / steps, at),
    );
  });
}

function onWave(y: number, { x, amplitude, wavelength }: Break): Point {
  return { x: x + amplitude * Math.sin((2 * Math.PI * y) / wavelength), y };
}
