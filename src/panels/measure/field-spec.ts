/** What a field is: where its value is in the job, how it is changed, what is plausible, how it is measured. */
import { measuredValue } from '../../model/edit/values.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { LengthValue } from '../../model/schema/leaf.ts';
import type { LengthRange } from '../../model/units/length-sentences.ts';
import type { LengthUnit } from '../../model/units/length-unit.ts';
import type { HelpTopic } from './help-text.ts';

export type FieldSpec = {
  /** Of the quantity: owner/id/name, as the evaluation names its causes. Unique on the page. */
  readonly id: string;
  /** For those who cannot see the table, and for the undo step: "Root depth, cut 3". */
  readonly label: string;
  readonly value: LengthValue | undefined;
  readonly set: (job: Job, value: LengthValue | undefined) => Job;
  readonly plausible: LengthRange;
  readonly help: HelpTopic;
  /** May lie on either side of zero. */
  readonly isSigned?: boolean;
  /** What the undo step is called, if not as the field. */
  readonly step?: string;
  /** Texts that are not stored yet, by field: for a field that comes and goes while its list is scrolled. */
  readonly kept?: Map<string, string>;
};

/** mm. What can be on a cylinder or a key; narrow, so that slips of unit show. */
export const PLAUSIBLE = {
  plugDiameter: { fromMm: 6, toMm: 60 },
  rootDepth: { fromMm: 1, toMm: 20 },
  overBall: { fromMm: 3, toMm: 25 },
  lowerStack: { fromMm: 1.5, toMm: 22 },
  standsUpBy: { fromMm: 0, toMm: 6 },
  metalUnderKey: { fromMm: 0, toMm: 8 },
  plugMinusFloor: { fromMm: 4, toMm: 50 },
  clearance: { fromMm: 0.005, toMm: 0.6 },
  diameter: { fromMm: 1, toMm: 8 },
  sleeveDiameter: { fromMm: 7, toMm: 65 },
  masterPin: { fromMm: 0.1, toMm: 12 },
  pinLength: { fromMm: 1, toMm: 20 },
  spring: { fromMm: 0.8, toMm: 40 },
  depth: { fromMm: 3, toMm: 40 },
  position: { fromMm: 0.5, toMm: 80 },
  restDepth: { fromMm: 0.2, toMm: 20 },
  rootFlat: { fromMm: 0.1, toMm: 5 },
  bladeHeight: { fromMm: 3, toMm: 25 },
  noseHeight: { fromMm: 0.1, toMm: 12 },
  stopShort: { fromMm: -5, toMm: 5 },
  closedReading: { fromMm: -0.5, toMm: 0.5 },
  shopRule: { fromMm: 0.002, toMm: 0.3 },
} as const satisfies Record<string, LengthRange>;

/** The value of a fresh reading, taken with what the person has in hand. */
export function takenValue(
  job: Job,
  reading: { readonly mm: number; readonly unit: LengthUnit; readonly typed: string },
): LengthValue {
  const { instrument, session } = job.settings;
  return measuredValue(reading, { instrument, session });
}
