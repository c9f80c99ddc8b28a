import { expect, test } from 'vitest';
import {
  setCrestDrop,
  setJawEdge,
  setLooseness,
  setThreshold,
} from '../../../src/model/edit/edit-thresholds.ts';
import { thresholdsOf, USUAL_THRESHOLDS_MM } from '../../../src/model/rest/thresholds.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { buildJob } from '../../support/job-builder.ts';
import { CALIPER, inches } from '../../support/values.ts';

const job = buildJob();
const isValid = (changed: Job) => parseJob(JSON.parse(JSON.stringify(changed))).type;

test('a threshold of one’s own counts, is said and not measured, and gives way to the usual one when cleared', () => {
  const own = setThreshold(job, 'driverEngagement', inches(0.03));
  expect(thresholdsOf(own).driverEngagement).toBeCloseTo(0.762, 6);
  expect(own.settings.thresholds?.driverEngagement).toMatchObject({ basis: 'stated' });
  expect(isValid(own)).toBe('success');
  const cleared = setThreshold(own, 'driverEngagement', undefined);
  expect(thresholdsOf(cleared).driverEngagement).toBe(USUAL_THRESHOLDS_MM.driverEngagement);
  expect(cleared).toEqual(job);
});

test('end play, slot, crest and jaw are set where they belong, and taken away again', () => {
  const value = inches(0.004);
  const set = setJawEdge(
    setCrestDrop(
      setLooseness(setLooseness(job, 'cylinder', 'endPlay', value), 'cylinder', 'keywayWidth', value),
      'cylinder',
      value,
    ),
    CALIPER,
    value,
  );
  expect(set.cylinders[0]).toMatchObject({ endPlay: value, keywayWidth: value });
  expect(set.cylinders[0]?.bodies[0]?.crestDrop).toEqual(value);
  expect(set.cylinders[0]?.bodies[1]).not.toHaveProperty('crestDrop');
  expect(set.instruments[0]?.jawEdge?.readings[0]?.value).toBe(value.readings[0]?.value);
  expect(isValid(set)).toBe('success');
  const away = setJawEdge(
    setCrestDrop(
      setLooseness(setLooseness(set, 'cylinder', 'endPlay', undefined), 'cylinder', 'keywayWidth', undefined),
      'cylinder',
      undefined,
    ),
    CALIPER,
    undefined,
  );
  expect(away).toEqual(job);
});
