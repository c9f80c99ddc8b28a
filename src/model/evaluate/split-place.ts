/** The places of a stack that can reach a line, and how the lines lie above each other. mm. */
import { combine, type Estimate, exact } from '../estimate/estimate.ts';
import type { MeasuredLine } from '../measured/measured-cylinder.ts';
import { lowerStackEnd, type MeasuredPart, type MeasuredStack } from '../measured/measured-stack.ts';

export type SplitPlace = {
  readonly below: MeasuredPart;
  readonly above: MeasuredPart | null;
  /** Top of `below` above the foot. */
  readonly top: Estimate;
  readonly isLowerStack: boolean;
};

/** The places of a stack that can reach a line: the top of the lower stack and of every master pin. */
export function splitPlaces(stack: MeasuredStack): SplitPlace[] {
  const first = lowerStackEnd(stack);
  if (first < 0) return [];
  return stack.parts.flatMap((below, i): SplitPlace[] => {
    const top = stack.tops[i];
    if (i < first || top == null || below.role === 'driver' || below.role === 'spring') return [];
    const next = stack.parts[i + 1];
    return [
      {
        below,
        above: next === undefined || next.role === 'spring' ? null : next,
        top,
        isLowerStack: i === first,
      },
    ];
  });
}

export type LinePlace = {
  readonly index: number;
  readonly measured: MeasuredLine;
  /** How much higher this line's crest lies than the inner line's, above the plug's axis. */
  readonly above: Estimate;
};

/** Heights of the lines' crests over the inner line's. */
export function linePlaces(lines: readonly MeasuredLine[]): LinePlace[] {
  const first = lines[0];
  let axis: Estimate = exact(0);
  return lines.map((measured, index): LinePlace => {
    const above =
      first === undefined
        ? exact(0)
        : combine([
            [1, measured.radius],
            [1, axis],
            [-1, first.radius],
          ]);
    const lift = measured.lies === 'centred' ? 0 : 0.5;
    axis = combine([
      [1, axis],
      [lift, measured.clearance],
    ]);
    return { index, measured, above };
  });
}
