import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { labelsOf, sameLabel } from '../../../src/model/edit/labels.ts';
import { addParts, type NewPart } from '../../../src/model/edit/loose-parts.ts';
import { guessColumns, type PastedColumn, separatorOf } from '../../../src/model/edit/pasted-columns.ts';
import {
  type PastedRow,
  type PasteSettings,
  readPastedRows,
  restOfPaste,
  summarise,
} from '../../../src/model/edit/pasted-parts.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { inchesToMm } from '../../../src/model/units/length-unit.ts';
import { parseBlock } from '../../../src/model/units/parse-block.ts';
import { hostileNames } from '../../support/hostile-names.ts';
import { emptyBench } from './edit-support.ts';

const LIKE: NewPart = {
  kind: 'pin',
  label: null,
  length: null,
  onBall: null,
  diameter: null,
  lower: null,
  upper: null,
  quantity: 1,
  from: '',
  original: false,
  condition: null,
};

const PLAUSIBLE = {
  length: { fromMm: 1, toMm: 20 },
  ball: { fromMm: 1, toMm: 8 },
  spring: { fromMm: 0.8, toMm: 40 },
  diameter: { fromMm: 1, toMm: 8 },
};

function rowsOf(text: string): readonly (readonly string[])[] {
  const block = parseBlock(text, separatorOf(text));
  return block.type === 'block' ? block.rows : [];
}

function read(text: string, changes: Partial<PasteSettings> = {}): PastedRow[] {
  const rows = rowsOf(text);
  const guess = guessColumns(rows, 'in');
  const steps = readPastedRows(rows, {
    ...guess,
    like: LIKE,
    takenWith: { instrument: null, session: null },
    taken: new Set(),
    plausible: PLAUSIBLE,
    renames: false,
    takesOtherUnit: false,
    ...changes,
  });
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

const rolesOf = (text: string) => guessColumns(rowsOf(text), 'in').columns.map(({ role }) => role);
const lengths = (rows: readonly PastedRow[]) =>
  rows.map(({ part }) => part?.length?.readings[0]?.value ?? null);
const messages = (rows: readonly PastedRow[]) =>
  rows.flatMap(({ troubles }) => troubles.map(({ message }) => message));

describe('what parts the cells', () => {
  test.each([
    ['tabs before anything else', 'a;1\t.2\nb;2\t.3', '\t'],
    ['semicolons in every row, with decimal commas', 'P1;0,334\nP2;0,412', ';'],
    ['commas that cannot be decimal marks', 'P1,.334\nP2,.412', ','],
    ['two commas in a row', '1,2,3', ','],
    ['no decimal comma', '9,22\n8,10', '\t'],
    ['no comma that only some rows have', '9,22\n8', '\t'],
    ['nothing in an empty text', '', '\t'],
  ])('%s', (_, text, separator) => {
    expect(separatorOf(text)).toBe(separator);
  });
});

describe('what the columns are', () => {
  test('is read from their heading, with the unit in it', () => {
    const guess = guessColumns(
      rowsOf('Label\tLength (mm)\tØ mm\tQty\tWhere from\tColour\nA\t8,5\t2,92\t2\tbarn\tred'),
      'in',
    );
    expect(guess.hasHeading).toBe(true);
    expect(guess.columns).toEqual<PastedColumn[]>([
      { role: 'label', unit: 'in' },
      { role: 'length', unit: 'mm' },
      { role: 'diameter', unit: 'mm' },
      { role: 'quantity', unit: 'in' },
      { role: 'from', unit: 'in' },
      { role: 'nothing', unit: 'in' },
    ]);
  });

  test('is told by what is in them where there is no heading', () => {
    expect(rolesOf('.334')).toEqual(['length']);
    expect(rolesOf('1\t.334\n2\t.412\n3\t.298')).toEqual(['label', 'length']);
    expect(rolesOf('A1\t.334\t2\tbarn\nA2\t.412\t1\tbarn')).toEqual(['label', 'length', 'quantity', 'from']);
    expect(rolesOf('pin\t.334\tgood\nball\t.115\tpoor')).toEqual(['kind', 'length', 'condition']);
  });

  test('words over numbers are a heading even when nobody knows them', () => {
    const guess = guessColumns(rowsOf('Messwert\n.334\n.412'), 'in');
    expect(guess).toMatchObject({ hasHeading: true, columns: [{ role: 'length', unit: 'in' }] });
  });

  test('a column of hundreds is in thou', () => {
    expect(guessColumns(rowsOf('334\n412\n298.5'), 'in').columns[0]).toEqual({
      role: 'length',
      unit: 'thou',
    });
    expect(guessColumns(rowsOf('334\n412'), 'mm').columns[0]?.unit).toBe('mm');
    // one that no thou could be keeps the whole column in the job's unit
    for (const other of ['3345', '298.55', '.334', '4', 'x334'])
      expect(guessColumns(rowsOf(`334\n412\n${other}`), 'in').columns[0]?.unit, other).not.toBe('thou');
  });
});

describe('rows', () => {
  test('become parts, in the unit of their column, with what the others said', () => {
    const rows = read('Label\tLength (mm)\tQty\nA1\t8.5\t3\nA2\t.3345 in\t\n\n', {
      like: { ...LIKE, from: 'barn' },
    });
    expect(rows.map(({ part }) => [part?.label, part?.quantity, part?.from])).toEqual([
      ['A1', 3, 'barn'],
      ['A2', 1, 'barn'],
    ]);
    expect(lengths(rows)).toEqual([8.5, inchesToMm(0.3345)]);
  });

  test('a ball has its figure across, whichever column it stands in', () => {
    const [row] = read('kind\tlength\nball\t.115');
    expect(row?.part).toMatchObject({ kind: 'ball', length: null });
    expect(row?.part?.diameter?.readings[0]?.value).toBe(inchesToMm(0.115));
  });

  test('that only make sense in another unit are asked about, and taken after a yes', () => {
    const text = 'length\n.334\n412\n';
    const asked = read(text);
    expect(lengths(asked)).toEqual([inchesToMm(0.334), null]);
    expect(asked[1]?.troubles[0]).toMatchObject({ kind: 'other unit', column: 0 });
    expect(lengths(read(text, { takesOtherUnit: true }))).toEqual([inchesToMm(0.334), inchesToMm(0.412)]);
  });

  test('with what cannot be a length, a count, a kind or a condition say so in their cell', () => {
    const text =
      'label\tlength\tqty\tkind\tcondition\nA\t9999\t1\tpin\tgood\nB\t.3\tmany\tpin\tgood\nC\t.3\t1\tnail\tgood\nD\t.3\t1\tpin\tshiny\nE\t\t1\tpin\tgood';
    const rows = read(text);
    expect(rows.map(({ part }) => part)).toEqual([null, null, null, null, null]);
    expect(rows.map(({ troubles }) => troubles.map(({ column }) => column))).toEqual([
      [1],
      [2],
      [3],
      [4],
      [1],
    ]);
    expect(messages(rows)[3]).toBe('“shiny” is no condition; write good, fair or poor.');
  });

  test('whose label is taken are told, and counted on after a yes', () => {
    const text = 'label\tlength\nA1\t.2\nA1\t.21\na1 \t.22\nB\t.23';
    const taken = labelsOf([{ label: 'b' }]);
    expect(summarise(read(text, { taken }), 10)).toMatchObject({ takenLabels: 3, leftOut: 3 });
    const renamed = read(text, { taken, renames: true });
    expect(renamed.map(({ part }) => part?.label)).toEqual(['A1', 'A1-2', 'a1-3', 'B-2']);
  });

  test('that look like formulas or markup are texts and nothing else', () => {
    const rows = read('label\tlength\n=cmd|x\t.2\n<img src=x onerror=alert(1)>\t.21\n@sum\t=.2+.1\n+1\t-.3');
    expect(rows.map(({ part }) => part?.label)).toEqual([
      '=cmd|x',
      '<img src=x onerror=alert(1)>',
      undefined,
      undefined,
    ]);
    expect(lengths(rows)).toEqual([inchesToMm(0.2), inchesToMm(0.21), null, null]);
  });

  test('that do not fit into the job any more stay to go on with', () => {
    const rows = read('A;.2\nB;x\nC;.3\nD;.4');
    const { parts, over, leftOut } = summarise(rows, 2);
    expect([parts.map(({ label }) => label), over, leftOut]).toEqual([['A', 'C'], 1, 1]);
    expect(restOfPaste(rows, parts.length, ';')).toBe('B;x\nD;.4');
  });
});

describe('anything pasted', () => {
  const cell = fc.oneof(
    fc.string({ maxLength: 12 }),
    fc.constantFrom(
      ...hostileNames,
      '.334',
      '412',
      '9,22',
      '=1+1',
      '-.2',
      '',
      ' ',
      '1e3',
      '"',
      'NaN',
      '__proto__',
    ),
    fc.double({ noNaN: true }).map(String),
  );
  const table = fc.array(fc.array(cell, { minLength: 1, maxLength: 5 }), { minLength: 1, maxLength: 12 });
  const separator = fc.constantFrom('\t', ';', ',');

  test('gives parts that a job can keep, or a sentence; and loses no row', () => {
    fc.assert(
      fc.property(table, separator, fc.boolean(), (cells, mark, renames) => {
        const text = cells.map((row) => row.join(mark)).join('\n');
        const rows = read(text, { renames });
        for (const { part, troubles } of rows) expect(part === null).toBe(troubles.length > 0);
        for (const message of messages(rows)) expect(message).toMatch(/[.?]$/u);
        const { job, newId } = emptyBench(1);
        const { parts } = summarise(rows, 1000);
        const next = addParts(job, parts, newId);
        expect(next.parts).toHaveLength(job.parts.length + parts.length);
        expect(parseJob(JSON.parse(JSON.stringify(next))).type).toBe('success');
        const rest = restOfPaste(rows, 0, mark);
        expect(rest === '' ? 0 : rows.length).toBe(rows.length);
      }),
      { numRuns: 150 },
    );
  });

  test('never gives two parts one label', () => {
    const label = fc.constantFrom('A', 'a', 'A-2', 'A-3', ' A ', 'B');
    fc.assert(
      fc.property(fc.array(label, { minLength: 1, maxLength: 12 }), (labels) => {
        const text = `label\tlength\n${labels.map((each) => `${each}\t.3`).join('\n')}`;
        const given = read(text, { renames: true }).map(({ part }) => sameLabel(part?.label ?? ''));
        expect(given).toHaveLength(labels.length);
        expect(new Set(given).size).toBe(labels.length);
      }),
    );
  });
});

test('a hundred thousand rows come in steps that can be stopped, each once, the same label counted on', () => {
  const text = `label\tlength\n${'A\t.3\n'.repeat(99_999)}`;
  const rows = rowsOf(text);
  const steps = readPastedRows(rows, {
    ...guessColumns(rows, 'in'),
    like: LIKE,
    takenWith: { instrument: null, session: null },
    taken: new Set(),
    plausible: PLAUSIBLE,
    renames: true,
    takesOtherUnit: false,
  });
  let chances = 0;
  for (;;) {
    const step = steps.next();
    if (step.done !== true) {
      chances += 1;
      continue;
    }
    expect(step.value).toHaveLength(99_999);
    expect(step.value.at(-1)?.part?.label).toBe('A-99999');
    expect(summarise(step.value, 20_000)).toMatchObject({ over: 79_999, leftOut: 0 });
    break;
  }
  expect(chances).toBe(999);
});
