/**
 * From where on something is worth a word: the person's own figures, or the usual ones. None of these decides whether a
 * lock turns. mm.
 */
import { lengthOf } from '../measured/part-ends.ts';
import type { Job } from '../schema/job-schema.ts';

export type ThresholdName =
  | 'driverEngagement'
  | 'springMargin'
  | 'readingsSpread'
  | 'plugSpread'
  | 'thinnestMasterPin'
  | 'crestLow'
  | 'keyMoved';

export type ThresholdsMm = Readonly<Record<ThresholdName, number>> & {
  /** Null for a key that belongs to no system of steps, or to one nobody knows. */
  readonly depthStep: number | null;
};

/** mm; in inches .020 .010 .0015 .002 .0197 .002 .010. All are common practice, no source. */
export const USUAL_THRESHOLDS_MM: Readonly<Record<ThresholdName, number>> = {
  driverEngagement: 0.508,
  springMargin: 0.254,
  readingsSpread: 0.0381,
  plugSpread: 0.0508,
  thinnestMasterPin: 0.5,
  crestLow: 0.0508,
  keyMoved: 0.254,
};

/** Reads the thresholds of a job. */
export function thresholdsOf({ settings }: Job): ThresholdsMm {
  const own = settings.thresholds ?? {};
  const usual = USUAL_THRESHOLDS_MM;
  return {
    driverEngagement: lengthOf(own.driverEngagement, usual.driverEngagement),
    springMargin: lengthOf(own.springMargin, usual.springMargin),
    readingsSpread: lengthOf(own.readingsSpread, usual.readingsSpread),
    plugSpread: lengthOf(own.plugSpread, usual.plugSpread),
    thinnestMasterPin: lengthOf(own.thinnestMasterPin, usual.thinnestMasterPin),
    crestLow: lengthOf(own.crestLow, usual.crestLow),
    keyMoved: lengthOf(own.keyMoved, usual.keyMoved),
    depthStep: own.depthStep === undefined ? null : lengthOf(own.depthStep, 0),
  };
}
