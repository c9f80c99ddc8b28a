/**
 * One pin measured again and again: what the readings say of the pin, of the caliper and of the hand that holds it. All of
 * it comes from the code that reckons with doubt in a job (src/model/estimate). Lengths mm.
 */
import { combine, type Estimate, expandedUncertainty } from '../estimate/estimate.ts';
import { type Measuring, readLength } from '../estimate/read-value.ts';
import type { Instrument } from '../schema/cylinder-schema.ts';
import type { LengthValue } from '../schema/leaf.ts';
import { inchesToMm } from '../units/length-unit.ts';
import { USUAL_IN } from './practice-job.ts';

/** The same pin, so often: from six on a person's own spread is known better than an instrument's. */
export const READINGS = 10;

export type Scatter = {
  readonly mean: number;
  readonly least: number;
  readonly most: number;
  /** Most less least. */
  readonly apart: number;
  /** Standard deviation of one reading (n - 1). */
  readonly deviation: number;
  /** ± of the mean of all, nineteen times in twenty, the caliper's own error counted. */
  readonly meanDoubt: number;
  /** ± of any one of them. */
  readonly oneDoubt: number;
  /** ± of a split that hangs on four lengths, each read once like this. */
  readonly splitDoubt: number;
};

/** Works out what readings of one pin tell. At least two. */
export function scatterOf(readings: readonly number[], caliper: Instrument): Scatter {
  const mean = readings.reduce((sum, mm) => sum + mm, 0) / readings.length;
  const squares = readings.reduce((sum, mm) => sum + (mm - mean) ** 2, 0);
  const deviation = Math.sqrt(squares / (readings.length - 1));
  const least = Math.min(...readings);
  const most = Math.max(...readings);
  // One reading's repeatability is what the person's own spread says.
  const own = { ...caliper, repeatabilityMm: deviation };
  return {
    mean,
    least,
    most,
    apart: most - least,
    deviation,
    meanDoubt: expandedUncertainty(estimateOf('pin', readings, caliper)),
    oneDoubt: expandedUncertainty(estimateOf('pin', [mean], own)),
    splitDoubt: expandedUncertainty(splitReadOnce(mean, own)),
  };
}

/** Metal under the key + root depth + pin - plug, at usual sizes, each read once. */
function splitReadOnce(pin: number, caliper: Instrument): Estimate {
  const plug = inchesToMm(USUAL_IN.plug);
  const floor = inchesToMm(USUAL_IN.floor);
  return combine([
    [1, estimateOf('floor', [floor], caliper)],
    [1, estimateOf('root', [plug - floor - pin], caliper)],
    [1, estimateOf('pin', [pin], caliper)],
    [-1, estimateOf('plug', [plug], caliper)],
  ]);
}

function estimateOf(name: string, readings: readonly number[], caliper: Instrument): Estimate {
  const measuring: Measuring = {
    instruments: new Map([[caliper.id, caliper]]),
    sessions: new Map(),
  };
  const value: LengthValue = {
    readings: readings.map((mm) => ({
      typed: '',
      unit: 'mm',
      value: mm,
      instrument: caliper.id,
      session: null,
    })),
    estimator: 'mean',
    basis: 'measured',
  };
  return readLength(value, { owner: 'practice', id: name, name }, measuring);
}
