/** What is said while nobody measured how high the key sits in the plug, and the heights hang on it. */
import { highestGuess } from '../../model/measured/measured-pair.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { Look } from '../shared/look.ts';

/** One sentence; null where it was measured, said to be level, or no height hangs on it. */
export function seatSentence({ bench, evaluation, assembly, job }: Look): string | null {
  const { seating } = bench;
  const edge = seating?.bottomEdge;
  const isMeasured = seating?.keywayFloorHeight !== undefined || seating?.plugMinusFloor !== undefined;
  const hangsOnIt = evaluation.chambers.some(
    ({ drivingRoute }) => drivingRoute === 'subtraction' || drivingRoute === 'over the ball',
  );
  if (isMeasured || edge === 'level' || !hangsOnIt) return null;
  const most = highestGuess(edge, 2 * (assembly.lines[0]?.radius ?? 0));
  const range = `0 to ${formatLength(most, { unit: job.settings.unit, form: 'bench', hasUnit: true })}`;
  const open =
    edge === undefined
      ? 'Not answered yet: how the key sits in the plug.'
      : edge === 'above'
        ? 'Not measured yet: the metal under the key.'
        : 'Not known: how the key sits in the plug.';
  return `${open} Its bottom edge counts as ${range} above the underside.`;
}
