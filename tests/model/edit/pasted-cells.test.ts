/** Pasted rows at their edges: what becomes of each cell, and of each label. */
import { describe, expect, test } from 'vitest';
import type { NewPart } from '../../../src/model/edit/loose-parts.ts';
import {
  type PastedRow,
  type PasteSettings,
  readPastedRows,
  restOfPaste,
  summarise,
} from '../../../src/model/edit/pasted-parts.ts';
import { inches } from '../../support/values.ts';

const LIKE: NewPart = {
  kind: 'pin',
  label: null,
  length: null,
  onBall: null,
  diameter: inches(0.115),
  lower: null,
  upper: null,
  quantity: 1,
  from: 'shed',
  original: false,
  condition: 'fair',
};

const SETTINGS: PasteSettings = {
  columns: [],
  hasHeading: false,
  like: LIKE,
  takenWith: { instrument: 'caliper', session: 'morning' },
  taken: new Set(),
  plausible: {
    length: { fromMm: 1, toMm: 20 },
    ball: { fromMm: 1, toMm: 4 },
    spring: { fromMm: 0.8, toMm: 40 },
    diameter: { fromMm: 1, toMm: 8 },
  },
  renames: false,
  takesOtherUnit: false,
};

type Roles = PasteSettings['columns'][number]['role'];

/** Reads rows whose columns are these, in inches unless said otherwise. */
function read(
  roles: readonly Roles[],
  rows: readonly (readonly string[])[],
  changes: Partial<PasteSettings> = {},
  unit: 'in' | 'mm' | 'thou' = 'in',
): PastedRow[] {
  const columns = roles.map((role) => ({ role, unit }));
  const steps = readPastedRows(rows, { ...SETTINGS, columns, ...changes });
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

const oneLength = (text: string, changes: Partial<PasteSettings> = {}, unit: 'in' | 'mm' | 'thou' = 'in') => {
  const [row] = read(['length'], [[text]], changes, unit);
  return row?.part?.length?.readings[0] ?? row?.troubles[0]?.kind;
};

describe('what becomes of a row', () => {
  test('counts its line from 1, the heading and empty rows with it', () => {
    const rows = read(['length'], [['Length'], ['.3'], [' '], ['.4']], { hasHeading: true });
    expect(rows.map(({ line }) => line)).toEqual([2, 4]);
    expect(rows[0]?.cells).toEqual(['.3']);
    expect(read(['length'], [['.3']]).map(({ line }) => line)).toEqual([1]);
  });

  test('stops for breath every hundred rows, but not at once', () => {
    const rows = Array.from({ length: 201 }, () => ['.3']);
    const columns = [{ role: 'length', unit: 'in' }] as const;
    expect([...readPastedRows(rows, { ...SETTINGS, columns })]).toEqual([100, 200]);
    expect([...readPastedRows(rows.slice(0, 100), { ...SETTINGS, columns })]).toEqual([]);
  });

  test('a pin has what was said of the others unless a column says otherwise', () => {
    const [plain, other] = read(
      ['label', 'length', 'diameter', 'quantity', 'kind', 'from', 'condition'],
      [
        ['A', '.3', '', '', '', '', ''],
        ['B', '.31', '.12', '4', 'Top Pin', 'barn', 'POOR'],
      ],
      { like: { ...LIKE, onBall: 'ball-1' } },
    );
    expect(plain?.part).toMatchObject({
      kind: 'pin',
      label: 'A',
      length: {
        readings: [{ typed: '.3', value: 7.62, unit: 'in', instrument: 'caliper', session: 'morning' }],
      },
      onBall: 'ball-1',
      diameter: inches(0.115),
      quantity: 1,
      condition: 'fair',
      from: 'shed',
    });
    expect(other?.part).toMatchObject({
      kind: 'pin',
      diameter: { readings: [{ value: 3.048 }] },
      quantity: 4,
      condition: 'poor',
      from: 'barn',
    });
  });

  test('a ball has its figure across, from either column; a spring stands on no ball', () => {
    const rows = read(
      ['kind', 'length', 'diameter'],
      [
        ['ball', '.11', ''],
        ['ball', '', '.12'],
        ['ball', '.11', '.12'],
        ['spring', '.9', ''],
        ['pin', '', '.12'],
      ],
      { like: { ...LIKE, onBall: 'ball-1' } },
    );
    const mm = rows.map(({ part }) => [
      part?.length?.readings[0]?.value ?? null,
      part?.diameter?.readings[0]?.value ?? null,
      part?.onBall,
    ]);
    expect(mm).toEqual([
      [null, 2.794, null],
      [null, 3.048, null],
      [null, 3.048, null],
      [22.86, 2.921, null],
      [null, 3.048, 'ball-1'],
    ]);
  });

  test('what is plausible goes by the kind: .3 in is no ball, .9 in no pin', () => {
    const rows = read(
      ['kind', 'length'],
      [
        ['ball', '.3'],
        ['pin', '.3'],
        ['spring', '.9'],
        ['pin', '.9'],
      ],
    );
    expect(rows.map(({ part }) => part !== null)).toEqual([false, true, true, false]);
    expect(read(['kind', 'length'], [['spring', '.02']])[0]?.part).toBeNull();
    // a row may be shorter than its heading
    expect(read(['length', 'from'], [['.3']])[0]?.part?.from).toBe('shed');
    const [across] = read(['length', 'diameter'], [['.3', '.5']]);
    expect(across?.troubles.map(({ column }) => column)).toEqual([1]);
  });

  test('without a length nothing is stored, and it is said where the length would stand', () => {
    const [row] = read(['label', 'from', 'length'], [['A', 'barn', '']]);
    expect(row).toMatchObject({
      part: null,
      troubles: [{ column: 2, kind: 'unreadable', message: 'There is no length in this row.' }],
    });
    expect(read(['label'], [['A']])[0]?.troubles[0]?.column).toBe(0);
    // a row with another trouble says that alone
    expect(read(['kind', 'length'], [['nail', '']])[0]?.troubles).toEqual([
      { column: 0, kind: 'unreadable', message: '“nail” is no kind of part; write pin, ball or spring.' },
    ]);
  });

  test('each cell that cannot be taken says so, in words', () => {
    const [row] = read(
      ['kind', 'quantity', 'condition', 'from', 'length'],
      [['constructor', '1.5', 'x'.repeat(25), 'y'.repeat(401), 'wide']],
    );
    expect(row?.part).toBeNull();
    expect(row?.troubles.map(({ column, kind }) => `${column} ${kind}`)).toEqual([
      '0 unreadable',
      '1 unreadable',
      '2 unreadable',
      '3 unreadable',
      '4 unreadable',
    ]);
    const messages = row?.troubles.map(({ message }) => message);
    expect(messages?.[0]).toBe('“constructor” is no kind of part; write pin, ball or spring.');
    expect(messages?.[2]).toBe(`“${'x'.repeat(24)}…” is no condition; write good, fair or poor.`);
    expect(messages?.[3]).toBe('Where from has at most 400 characters.');
    const [whole] = read(['condition', 'from', 'length'], [['x'.repeat(24), 'y'.repeat(400), '.3']]);
    expect(whole?.troubles.map(({ message }) => message)).toEqual([
      `“${'x'.repeat(24)}” is no condition; write good, fair or poor.`,
    ]);
    expect(read(['length', 'from'], [['.3', 'y'.repeat(400)]])[0]?.part?.from).toHaveLength(400);
  });

  test('as many of one as a job holds, none more', () => {
    const rows = read(
      ['quantity', 'length'],
      [
        ['100000', '.3'],
        ['100001', '.3'],
        ['0', '.3'],
      ],
    );
    expect(rows.map(({ part }) => part?.quantity ?? null)).toEqual([100_000, null, null]);
  });

  test('a number in a column of thou is thou; one with its unit keeps it', () => {
    expect(oneLength('334', {}, 'thou')).toMatchObject({ value: 8.4836, typed: '334', unit: 'thou' });
    expect(oneLength('298.5', {}, 'thou')).toMatchObject({ value: 7.5819 });
    expect(oneLength('8.5 mm', {}, 'thou')).toMatchObject({ value: 8.5, unit: 'mm' });
    expect(oneLength('.334 in', {}, 'thou')).toMatchObject({ value: 8.4836, unit: 'in' });
    expect(oneLength('1/4', {}, 'thou')).toMatchObject({ value: 6.35, unit: 'in' });
    expect(oneLength('8.5', {}, 'mm')).toMatchObject({ value: 8.5, unit: 'mm' });
    expect(oneLength('.334', {}, 'in')).toMatchObject({ value: 8.4836, unit: 'in' });
  });

  test('a length that makes sense in another unit only is asked about, and taken after a yes', () => {
    expect(oneLength('334')).toBe('other unit');
    expect(oneLength('334', { takesOtherUnit: true })).toMatchObject({
      value: 8.4836,
      unit: 'thou',
      typed: '334',
    });
    expect(oneLength('3340', { takesOtherUnit: true })).toBe('unreadable');
    // one reading sent twice is asked about in its cell and taken as asked there
    expect(oneLength('9999')).toBe('other unit');
    expect(oneLength('9999', { takesOtherUnit: true })).toMatchObject({ value: 2.5146, typed: '9999' });
    // 5 could be mm or, in a spring, nothing else; 15 in a wide range could be mm or thou
    const wide = { ...SETTINGS.plausible, length: { fromMm: 0.1, toMm: 20 } };
    expect(oneLength('15', { plausible: wide })).toBe('unreadable');
    expect(oneLength('15', { plausible: wide, takesOtherUnit: true })).toBe('unreadable');
  });

  test('what was typed is kept to two hundred characters', () => {
    const long = `.3${' '.repeat(300)}in`;
    const [row] = read(['length'], [[long]]);
    expect(row?.part === null || row?.part?.length?.readings[0]?.typed.length === 200).toBe(true);
  });
});

describe('labels of pasted rows', () => {
  const labelsIn = (texts: readonly string[], changes: Partial<PasteSettings> = {}) =>
    read(
      ['label', 'length'],
      texts.map((text) => [text, '.3']),
      changes,
    ).map(({ part, troubles }) => part?.label ?? troubles[0]?.kind ?? 'counted');

  test('are taken as they are, once each; an empty one is counted later', () => {
    expect(labelsIn(['A', 'B', 'a', ''])).toEqual(['A', 'B', 'taken label', 'counted']);
    expect(labelsIn(['A', ' A ', 'A-2', 'A'], { renames: true })).toEqual(['A', 'A-2', 'A-2-2', 'A-3']);
    expect(labelsIn(['A'], { taken: new Set(['a']), renames: true })).toEqual(['A-2']);
  });

  test('of eighty characters are the longest, and stay so when they are counted on', () => {
    const long = 'x'.repeat(80);
    expect(labelsIn([long, `${long}y`])).toEqual([long, 'unreadable']);
    expect(labelsIn([long, long], { renames: true })).toEqual([long, `${'x'.repeat(78)}-2`]);
    const [row] = read(['label', 'length'], [[`${long}y`, '.3']]);
    expect(row?.troubles).toEqual([
      { column: 0, kind: 'unreadable', message: 'A label has at most 80 characters.' },
    ]);
  });

  test('of a row that is left out stay free for the others', () => {
    const rows = read(
      ['label', 'length'],
      [
        ['A', 'wide'],
        ['A', '.3'],
      ],
    );
    expect(rows.map(({ part }) => part?.label ?? null)).toEqual([null, 'A']);
    expect(rows[0]?.troubles).toHaveLength(1);
  });

  test('that are taken are shown in short', () => {
    const label = 'y'.repeat(30);
    const [, row] = read(
      ['label', 'length'],
      [
        [label, '.3'],
        [label, '.3'],
      ],
    );
    expect(row?.troubles).toEqual([
      { column: 0, kind: 'taken label', message: `“${'y'.repeat(24)}…” is the label of another part.` },
    ]);
  });
});

describe('what is told of a whole paste', () => {
  const rows = read(
    ['label', 'length'],
    [
      ['A', '.3'],
      ['A', '.3'],
      ['B', '334'],
      ['C', 'wide'],
      ['D', '.4'],
      ['E', '.4'],
    ],
  );

  test('is how many are stored, and why the others are not', () => {
    const { parts, ...counts } = summarise(rows, 2);
    expect(parts.map(({ label }) => label)).toEqual(['A', 'D']);
    expect(counts).toEqual({ over: 1, leftOut: 3, takenLabels: 1, otherUnits: 1, unreadable: 1 });
    expect(summarise(rows, 3)).toMatchObject({ over: 0, parts: { length: 3 } });
    expect(summarise(rows, 9).over).toBe(0);
    expect(summarise(rows, 0)).toMatchObject({ over: 3, parts: [] });
  });

  test('is what is left to go on with', () => {
    expect(restOfPaste(rows, 2, '\t')).toBe('A\t.3\nB\t334\nC\twide\nE\t.4');
    expect(restOfPaste(rows, 9, ';')).toBe('A;.3\nB;334\nC;wide');
    const odd = read(
      ['label', 'length'],
      [
        ['a;b', 'x'],
        ['say "so"', 'x'],
        ['two\nlines "x"', 'x'],
        ['one\rother', 'x'],
      ],
    );
    expect(restOfPaste(odd, 0, ';')).toBe('"a;b";x\nsay "so";x\n"two\nlines ""x""";x\n"one\rother";x');
  });
});
