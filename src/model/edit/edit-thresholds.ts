/** Edits of what is worth a word, and of the few sizes that only findings ask for. */
import type { Job, Thresholds } from '../schema/job-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';

/** Sets a threshold; undefined gives the usual one back. It is said, not measured. */
export function setThreshold(job: Job, name: keyof Thresholds, value: LengthValue | undefined): Job {
  const others: Thresholds = without(job.settings.thresholds ?? {}, name);
  const thresholds = value === undefined ? others : { ...others, [name]: said(value) };
  const settings = without(job.settings, 'thresholds');
  return {
    ...job,
    settings: Object.keys(thresholds).length === 0 ? settings : { ...settings, thresholds },
  };
}

/** Sets how far the plug comes forward, or the width of the slot under the chambers. */
export function setLooseness(
  job: Job,
  cylinder: Id,
  name: 'endPlay' | 'keywayWidth',
  value: LengthValue | undefined,
): Job {
  return {
    ...job,
    cylinders: job.cylinders.map((each) => {
      if (each.id !== cylinder) return each;
      const others = without(each, name);
      return value === undefined ? others : { ...others, [name]: value };
    }),
  };
}

/** Sets how much lower the plug's crest lies than half its diameter. */
export function setCrestDrop(job: Job, cylinder: Id, value: LengthValue | undefined): Job {
  return {
    ...job,
    cylinders: job.cylinders.map((each) => {
      if (each.id !== cylinder) return each;
      const bodies = each.bodies.map((body) => {
        if (body.role !== 'plug') return body;
        const others = without(body, 'crestDrop');
        return value === undefined ? others : { ...others, crestDrop: value };
      });
      return { ...each, bodies };
    }),
  };
}

/** Sets how wide the edge of an instrument's jaw is. */
export function setJawEdge(job: Job, instrument: Id, value: LengthValue | undefined): Job {
  return {
    ...job,
    instruments: job.instruments.map((each) => {
      if (each.id !== instrument) return each;
      const others = without(each, 'jawEdge');
      return value === undefined ? others : { ...others, jawEdge: said(value) };
    }),
  };
}

function said(value: LengthValue): LengthValue {
  return {
    readings: value.readings.slice(-1).map((reading) => ({ ...reading, instrument: null, session: null })),
    estimator: 'mean',
    basis: 'stated',
  };
}

function without<T extends object, K extends keyof T>(from: T, name: K): Omit<T, K> {
  return Object.fromEntries(Object.entries(from).filter(([own]) => own !== name)) as Omit<T, K>;
}
