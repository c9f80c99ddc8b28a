import { describe, expect, it } from 'vitest';
import { assemble } from '../../../src/model/assembly/build-assembly.ts';
import { setHidesBitting, setNoteField } from '../../../src/model/edit/edit-note.ts';
import { keepPlanAs } from '../../../src/model/edit/keep-plan.ts';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import { layOut } from '../../../src/model/measured/selection.ts';
import { HEAD_FIELDS, RESTRICTED_FIELDS, SHARED_FIELDS } from '../../../src/model/note/note-fields.ts';
import { commonMeasures, pinningRows } from '../../../src/model/note/pinning-rows.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { buildJob } from '../../support/job-builder.ts';

const SELECTION = { cylinder: 'cylinder', key: 'key', plan: 'plan' };

describe('the written part of the note', () => {
  it('is kept on its page, mended and taken away', () => {
    const job = buildJob();
    const written = setNoteField(job, 'shared', 'technician', '  A. Invented ');
    expect(written.note).toEqual({ shared: { technician: 'A. Invented' }, restricted: {} });
    expect(setNoteField(written, 'shared', 'technician', 'A. Invented')).toBe(written);
    expect(setNoteField(written, 'shared', 'technician', ' ').note.shared).toEqual({});
    expect(
      setNoteField(job, 'restricted', 'remarks', 'x'.repeat(30_000)).note.restricted['remarks'],
    ).toHaveLength(20_000);
  });

  it('is a good job file, hidden or shown', () => {
    const hidden = setHidesBitting(setNoteField(buildJob(), 'restricted', 'keyway', 'K'), true);
    expect(parseJob(structuredClone(hidden))).toMatchObject({ type: 'success' });
    expect(hidden.note.hidesBitting).toBe(true);
    expect(setHidesBitting(hidden, false).note).toEqual({ shared: {}, restricted: { keyway: 'K' } });
  });

  it('has no field twice, and the place never on the page of the measurements', () => {
    const names = [...SHARED_FIELDS, ...RESTRICTED_FIELDS].map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(RESTRICTED_FIELDS.map(({ name }) => name)).not.toContain('locationCode');
    expect(HEAD_FIELDS[0]?.name).toBe('jobNumber');
  });
});

describe('a record of what is in the holes', () => {
  let next = 0;
  const newId = () => `new-${next++}`;

  it('evaluates the same, and stays so when the pins it was taken from are measured again', () => {
    const job = buildJob({ chambers: [{ ball: 0.109, masterPins: [0.03], restDepth: 0.05 }, {}] });
    const kept = keepPlanAs(job, 'plan', 'as found', newId);
    expect(parseJob(structuredClone(kept))).toMatchObject({ type: 'success' });
    const record = kept.plans.at(-1)!;
    const offsets = (each: typeof job, plan: string) =>
      evaluate(each, { ...SELECTION, plan }).chambers.map(({ splits }) => splits.map(({ offset }) => offset));
    expect(offsets(kept, record.id)).toEqual(offsets(job, 'plan'));
    const mended = {
      ...kept,
      groups: kept.groups.filter(({ id }) => !id.startsWith('group')),
      parts: kept.parts.map((part) =>
        part.id === 'bottom-pin-1'
          ? { ...part, length: { ...part.length!, readings: [{ ...part.length!.readings[0]!, value: 1 }] } }
          : part,
      ),
    };
    expect(offsets(mended, record.id)).toEqual(offsets(job, 'plan'));
    expect(offsets(mended, 'plan')).not.toEqual(offsets(job, 'plan'));
  });
});

describe('measurements on the restricted page', () => {
  it('are those of the job, with the +- of its caliper', () => {
    const job = buildJob({
      chambers: [{ rootDepth: 0.2613, bottomPin: 0.1234, ball: null }],
      instrumentError: 'default',
    });
    const bench = layOut(job, SELECTION);
    assemble(bench);
    const [row] = pinningRows(bench, evaluate(job, SELECTION));
    expect(row?.rootDepth?.mm).toBeCloseTo(0.2613 * 25.4, 9);
    expect(row?.bottomPin?.mm).toBeCloseTo(0.1234 * 25.4, 9);
    // JCGM 100:2008: 2 sqrt(s0^2 + r^2/12 + MPE^2/3) with .0005, .0005 and .001 in.
    const expected = 2 * Math.hypot(0.0127, 0.0127 / Math.sqrt(12), 0.0254 / Math.sqrt(3));
    expect(row?.rootDepth?.plusMinus).toBeCloseTo(expected, 9);
    expect(commonMeasures(bench).map(({ label }) => label)).toContain('Metal under the key');
  });
});
