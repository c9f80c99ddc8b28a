/**
 * What stands across a line: the top of the part below where it is higher than the inner body's round, or the end of the
 * part above where it hangs in. As polygons in the plane across the plug, upright. mm, heights above the plug's axis.
 *
 *          .-""-.       part below, high          ______
 *      ___/xxxxxx\___   crossing: xxxx        ---|xxxxxx|---   part above, low
 *         |      |      line                      '----'
 */
import type { Outline, Point } from '../geometry/outline.ts';
import { polygonOutline } from '../geometry/outline.ts';
import { endDrop } from '../model/end-shape.ts';
import type { StackSplit } from './stack-split.ts';

/** Columns a crossing is drawn with: at most 1/96 of the part's width from the true edge across. */
const COLUMNS = 192;

/** Finds what crosses the line at a split; empty when nothing does. */
export function crossingRegion(split: StackSplit): Outline[] {
  const { below, above, line } = split;
  const round = (x: number): number => line.innerAxisY + Math.sqrt(Math.max(0, line.radius ** 2 - x ** 2));
  const high =
    below === null
      ? []
      : columns(below.part.radius, (x) => ({
          low: round(x),
          high: below.topY - endDrop(below.part.upper, below.part.radius, x),
        }));
  const low =
    above === null
      ? []
      : columns(above.part.radius, (x) => ({
          low: above.y + endDrop(above.part.lower, above.part.radius, x),
          high: round(x),
        }));
  return [...high, ...low];
}

function columns(radius: number, at: (x: number) => { low: number; high: number }): Outline[] {
  const runs: { upper: Point[]; lower: Point[] }[] = [];
  let open: { upper: Point[]; lower: Point[] } | null = null;
  for (let i = 0; i <= COLUMNS; i++) {
    const x = -radius + (2 * radius * i) / COLUMNS;
    const { low, high } = at(x);
    if (!(high > low)) open = null;
    else {
      if (open === null) {
        open = { upper: [], lower: [] };
        runs.push(open);
      }
      open.upper.push({ x, y: high });
      open.lower.push({ x, y: low });
    }
  }
  return runs
    .filter(({ upper }) => upper.length > 1)
    .map(({ upper, lower }) => polygonOutline([...lower, ...upper.reverse()]));
}
