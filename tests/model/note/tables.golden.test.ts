/** The tables and measurements of the note, kept as text: of a cylinder with a sleeve and two plans, and of one not known yet. */
import { describe, expect, test } from 'vitest';
import { assemble } from '../../../src/model/assembly/build-assembly.ts';
import { evaluateBench } from '../../../src/model/evaluate/evaluate.ts';
import { layOut, type Selection } from '../../../src/model/measured/selection.ts';
import { csvText } from '../../../src/model/note/csv.ts';
import { CAUTIONS, RESTRICTED_FIELDS, SHARED_FIELDS } from '../../../src/model/note/note-fields.ts';
import { pinningTable, shareableTable } from '../../../src/model/note/note-table.ts';
import { commonMeasures, pinningRows } from '../../../src/model/note/pinning-rows.ts';
import { readClearance, readFactor } from '../../../src/model/note/print-scale.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { shareableView } from '../../../src/model/sharing/shareable-view.ts';
import { asText } from '../../support/as-text.ts';
import { FIRST, pairedJob, SECOND } from '../../support/paired-job.ts';
import { expectGolden } from '../../support/golden.ts';
import { buildJob } from '../../support/job-builder.ts';
import { inches } from '../../support/values.ts';

function look(job: Job, selection: Selection) {
  const bench = layOut(job, selection);
  return { bench, evaluation: evaluateBench(bench, assemble(bench)) };
}

/** Windows ends of lines and the mark in front are held by note-table.test.ts. */
const plainly = (table: string) => table.replaceAll('\r\n', '\n').replace('\uFEFF', '');

const JOBS: Readonly<Record<string, readonly [Job, readonly Selection[]]>> = {
  sleeve: [pairedJob(), [FIRST, { ...FIRST, plan: 'found' }]],
  'spare key': [pairedJob(), [{ ...FIRST, key: 'spare' }]],
  'second cylinder, in mm': [pairedJob((copy) => void (copy.settings.unit = 'mm')), [SECOND]],
  'without a key': [pairedJob(), [{ ...FIRST, key: null }]],
  'little known': [
    pairedJob((copy) => {
      const [cylinder] = copy.cylinders;
      cylinder!.bodies.forEach((body) => delete body.outerDiameter);
      copy.plans[0]!.stacks[1]!.items = [];
      copy.plans[0]!.stacks[2]!.items = [{ part: 'bottom-pin-3' }];
    }),
    [FIRST],
  ],
  'a ball in two readings': [
    pairedJob((copy) => {
      copy.parts[0]!.diameter = inches(0.109, 0.11, 0.2);
      copy.parts[0]!.diameter.readings[2]!.left = 'out';
    }),
    [FIRST],
  ],
};

describe('what the note says', () => {
  test.each(Object.entries(JOBS))('of a cylinder: %s', (name, [job, selections]) => {
    const states = selections.map((selection) => look(job, selection));
    const [{ bench, evaluation } = look(job, FIRST)] = states;
    const view = shareableView(
      job,
      bench.cylinder,
      bench.key,
      states.map((state) => ({ plan: state.bench.plan, evaluation: state.evaluation })),
    );
    const { unit } = job.settings;
    expectGolden(
      `note-tables/${name.replaceAll(/[ ,]+/gu, '-')}.txt`,
      `# Restricted\n${plainly(pinningTable(states, job.title, unit))}\n# Shareable\n${plainly(shareableTable(view))}\n` +
        `# Measured\n${asText({ rows: pinningRows(bench, evaluation), common: commonMeasures(bench) })}`,
    );
  });

  test('in its fields and cautions', () => {
    expectGolden(
      'note-tables/fields.txt',
      asText({ shared: SHARED_FIELDS, restricted: RESTRICTED_FIELDS, cautions: CAUTIONS }),
    );
  });

  test('of a play that is level: nothing is said of a lean', () => {
    const job = buildJob({ chambers: 1 });
    const { bench, evaluation } = look(job, { cylinder: 'cylinder', key: 'key', plan: 'plan' });
    const table = shareableTable(
      shareableView(job, bench.cylinder, bench.key, [{ plan: bench.plan, evaluation }]),
    );
    expect(plainly(table).trim().split('\n').at(-1)).toMatch(/,level$/u);
  });
});

describe('a cell', () => {
  // RFC 4180 and CWE-1236; a number that is none is a text like any other
  test.each([
    [{ number: '1.5' }, '1.5'],
    [{ number: '-0.1' }, '-0.1'],
    [{ number: '12' }, '12'],
    [{ number: '' }, ''],
    [{ number: '-=1' }, `"'-=1"`],
    [{ number: '1,5' }, '"1,5"'],
    [{ number: '1.' }, '1.'],
    [{ number: '+1' }, `"'+1"`],
    [{ number: '=1+1' }, `"'=1+1"`],
    [{ number: 'x-1' }, 'x-1'],
    [{ text: '-1' }, `"'-1"`],
    [{ text: 'plain' }, 'plain'],
    [{ text: 'a=b' }, 'a=b'],
    [{ text: "it's" }, `"it's"`],
    [{ text: ' \t=x' }, `"' \t=x"`],
    [{ text: 'say "so"' }, '"say ""so"""'],
    [{ text: 'two\nlines' }, '"two\nlines"'],
    [{ text: '' }, ''],
  ])('of %j is written %j', (cell, written) => {
    expect(csvText([[cell]])).toBe(`\uFEFF${written}\r\n`);
  });

  test('stands between commas, a row on a line', () => {
    expect(csvText([[{ text: 'a' }, { number: '1' }], [], [{ text: 'b' }]])).toBe('\uFEFFa,1\r\n\r\nb\r\n');
    expect(csvText([])).toBe('\uFEFF');
  });
});

describe('what is typed for a print', () => {
  test.each([
    ['2', 2],
    ['20', 20],
    ['4:1', 4],
    ['4 : 1 ', 4],
    ['4x', 4],
    ['4 × ', 4],
    ['4 X', 4],
    ['2.125', 2.125],
    ['002', 2],
    ['3.', 3],
    ['1.999', null],
    ['20.001', null],
    ['4:1:1', null],
    ['1:15', null],
    ['4:1 or so', null],
    ['4xx', null],
    ['x4', null],
    ['4x1', null],
    ['2.0001', null],
    ['4 4', null],
    ['1e1', null],
  ])('enlarged %j is %s', (text, value) => {
    expect(readFactor(text)).toMatchObject(value === null ? { type: 'error' } : { type: 'success', value });
  });

  test.each([
    ['0', 0],
    ['1', 1],
    ['0.2mm', 0.2],
    ['0.2 MM ', 0.2],
    [',2', 0.2],
    ['.125', 0.125],
    ['1.001', null],
    ['.1234', null],
    ['mm', null],
    ['0.2 mm mm', null],
    ['0.2 mmx', null],
    ['mm 0.2', null],
    ['.', null],
  ])('clearance %j is %s', (text, value) => {
    expect(readClearance(text)).toMatchObject(
      value === null ? { type: 'error' } : { type: 'success', value },
    );
  });
});
