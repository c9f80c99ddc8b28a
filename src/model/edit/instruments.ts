/** Which instrument readings are taken with, and what it read when closed. mm. */
import type { Instrument } from '../schema/cylinder-schema.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import type { JobUnit } from '../units/length-unit.ts';
import { changeById, withOptional } from './change.ts';

export type InstrumentKind = Instrument['kind'];

type Figures = Pick<Instrument, 'label' | 'resolutionMm' | 'maxPermissibleErrorMm' | 'repeatabilityMm'>;

/**
 * What makers usually state, and for repeatability what a careful hand gets: assumed until the person's own instrument
 * says otherwise. Common practice, no source.
 */
const USUAL_INSTRUMENTS: Readonly<Record<InstrumentKind, Figures>> = {
  'digital caliper': {
    label: '.0005 in / 0.01 mm digital caliper',
    resolutionMm: 0.0127,
    maxPermissibleErrorMm: 0.0254,
    repeatabilityMm: 0.0127,
  },
  'dial caliper': {
    label: '.001 in / 0.02 mm dial caliper',
    resolutionMm: 0.0254,
    maxPermissibleErrorMm: 0.0254,
    repeatabilityMm: 0.0127,
  },
  micrometer: {
    label: 'Micrometer',
    resolutionMm: 0.00254,
    maxPermissibleErrorMm: 0.004,
    repeatabilityMm: 0.003,
  },
  'dial indicator': {
    label: 'Dial indicator on a V-block',
    resolutionMm: 0.0127,
    maxPermissibleErrorMm: 0.013,
    repeatabilityMm: 0.005,
  },
  other: {
    label: 'Something else',
    resolutionMm: 0.0254,
    maxPermissibleErrorMm: 0.05,
    repeatabilityMm: 0.0254,
  },
};

/** An instrument with the figures usual for its kind. */
export function usualInstrument(kind: InstrumentKind, id: Id, unit: JobUnit): Instrument {
  const figures = USUAL_INSTRUMENTS[kind];
  const resolutionMm = unit === 'mm' && kind === 'digital caliper' ? 0.01 : figures.resolutionMm;
  return { id, kind, ...figures, resolutionMm, source: 'assumed' };
}

/** The instrument new readings are taken with. */
export function currentInstrument(job: Job): Instrument | null {
  return job.instruments.find((each) => each.id === job.settings.instrument) ?? null;
}

/** The readings already taken keep their instrument: the hand only picks up another one. */
export function takeUpInstrument(job: Job, kind: InstrumentKind, newId: () => Id): Job {
  const known = job.instruments.find((each) => each.kind === kind);
  const instrument = known ?? usualInstrument(kind, newId(), job.settings.unit);
  return {
    ...job,
    instruments: known === undefined ? [...job.instruments, instrument] : job.instruments,
    settings: { ...job.settings, instrument: instrument.id, session: null },
  };
}

/** Sets one figure of an instrument, which the person then stands for. */
export function setInstrumentFigure(
  job: Job,
  instrument: Id,
  figure: 'resolutionMm' | 'maxPermissibleErrorMm' | 'repeatabilityMm',
  valueMm: number,
): Job {
  return {
    ...job,
    instruments: changeById(job.instruments, instrument, (each) => ({
      ...each,
      [figure]: valueMm,
      source: 'maker',
    })),
  };
}

/** What the instrument in hand read when closed; null without a zero check. */
export function closedReading(job: Job): LengthValue | null {
  const session = job.sessions.find((each) => each.id === job.settings.session);
  return session?.closedReading ?? null;
}

/**
 * Records what the instrument in hand reads when closed. Readings from now on are corrected by it; earlier ones keep
 * theirs. Undefined ends the zero check.
 *
 * @param at when, for the record
 */
export function setClosedReading(
  job: Job,
  reading: LengthValue | undefined,
  { newId, at }: { newId: () => Id; at: string },
): Job {
  const { instrument, session } = job.settings;
  if (instrument === null) return job;
  if (reading === undefined) return { ...job, settings: { ...job.settings, session: null } };
  const isUsed = session !== null && isSessionUsed(job, session);
  if (session !== null && !isUsed) {
    return {
      ...job,
      sessions: changeById(job.sessions, session, (each) => withOptional(each, 'closedReading', reading)),
    };
  }
  const id = newId();
  return {
    ...job,
    sessions: [...job.sessions, { id, instrument, closedReading: reading, at }],
    settings: { ...job.settings, session: id },
  };
}

/** Tells whether any reading was taken under this zero check. */
function isSessionUsed(node: unknown, session: Id): boolean {
  if (typeof node !== 'object' || node === null) return false;
  if ('typed' in node && 'session' in node) return node.session === session;
  return Object.values(node).some((child) => isSessionUsed(child, session));
}
