/**
 * Where a stack stands in its window, lying down: low to the left, high to the right, the line in the middle. The bar is where
 * it turns, the point where the stack stands. All of a choice to one scale. Offsets + high, - low; mm.
 *
 *      low   |------|=======|==v=|------|   high
 *                lowest    line  highest
 */
import type { Standing } from '../../model/matching/standing.ts';

export type GaugeScale = { readonly from: number; readonly to: number };

/** Of the width of a gauge. */
const WIDTH = 160;
const HEIGHT = 26;
const AXIS = 17;
/** px left free at both ends. */
const MARGIN = 8;

/** The scale that holds all of them, the line included. */
export function gaugeScale(standings: readonly Standing[]): GaugeScale {
  const all = standings.flatMap(({ lowest, highest, offset }) => [lowest, highest, offset]);
  const from = Math.min(0, ...all);
  const to = Math.max(0, ...all);
  const room = Math.max(0.05, to - from);
  return { from: from - room * 0.06, to: to + room * 0.06 };
}

export function WindowGauge({
  standing,
  scale,
}: {
  readonly standing: Standing;
  readonly scale: GaugeScale;
}) {
  const { lowest, highest, offset, spare } = standing;
  const x = (mm: number): number =>
    MARGIN + ((mm - scale.from) / (scale.to - scale.from)) * (WIDTH - 2 * MARGIN);
  const at = x(offset);
  return (
    <svg
      className="window-gauge"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      aria-hidden="true"
      data-turns={spare >= 0}
    >
      <path className="gauge-axis" d={`M${MARGIN / 2} ${AXIS}H${WIDTH - MARGIN / 2}`} />
      <path className="gauge-window" d={`M${x(lowest)} ${AXIS}H${x(highest)}`} />
      <path className="gauge-end" d={`M${x(lowest)} ${AXIS - 4}v8M${x(highest)} ${AXIS - 4}v8`} />
      <path className="gauge-line" d={`M${x(0)} 3V${HEIGHT - 2}`} />
      <path className="gauge-point" d={`M${at} ${AXIS - 2}l-4.5-8h9z`} />
    </svg>
  );
}
