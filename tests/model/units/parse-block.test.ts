import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MAX_BLOCK_ROWS, parseBlock } from '../../../src/model/units/parse-block.ts';

const rowsOf = (text: string): readonly (readonly string[])[] => {
  const reading = parseBlock(text);
  return reading.type === 'block' ? reading.rows : [];
};

/** Writes cells the way spreadsheets put them on the clipboard. */
function asPasted(rows: readonly (readonly string[])[], lineEnd: string): string {
  const cell = (text: string): string =>
    /[\t\r\n]|^"/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  return rows.map((row) => row.map(cell).join('\t') + lineEnd).join('');
}

describe('parseBlock', () => {
  it('cuts tabs and line ends of every kind', () => {
    const expected = [
      ['.363', '.1'],
      ['.370', '.2'],
    ];
    for (const end of ['\r\n', '\n', '\r']) {
      expect(rowsOf(`.363\t.1${end}.370\t.2${end}`)).toEqual(expected);
      expect(rowsOf(`.363\t.1${end}.370\t.2`)).toEqual(expected);
    }
  });

  it('takes a single cell, row or column', () => {
    expect(rowsOf('.363')).toEqual([['.363']]);
    expect(rowsOf('.363\t.370')).toEqual([['.363', '.370']]);
    expect(rowsOf('.363\n.370\n')).toEqual([['.363'], ['.370']]);
  });

  it('never cuts at commas or semicolons', () => {
    expect(rowsOf('9,22\t1;5')).toEqual([['9,22', '1;5']]);
  });

  it('keeps empty cells and empty rows and fills short rows', () => {
    expect(rowsOf('\t.363\n\n.1\t.2\t')).toEqual([
      ['', '.363', ''],
      ['', '', ''],
      ['.1', '.2', ''],
    ]);
  });

  it('reads quoted cells and leaves inch marks alone', () => {
    expect(rowsOf('"a\tb\r\nc"\t"say ""x"""')).toEqual([['a\tb\r\nc', 'say "x"']]);
    expect(rowsOf('.363"\t23/64"\n"\t"x\n')).toEqual([
      ['.363"', '23/64"'],
      ['"', '"x'],
    ]);
    expect(rowsOf('"')).toEqual([['"']]);
    expect(rowsOf('"""')).toEqual([['"""']]);
    expect(rowsOf('""')).toEqual([['']]);
  });

  it('gives back any block of cells as it was copied', () => {
    const cellText = fc.array(fc.constantFrom('.363', '9,22', '"', '\t', '\n', '\r\n', ' ', 'mm', '1 3/8'), {
      maxLength: 4,
    });
    const block = fc
      .tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 8 }))
      .chain(([columns, rowCount]) =>
        fc.array(
          fc.array(
            cellText.map((pieces) => pieces.join('')),
            { minLength: columns, maxLength: columns },
          ),
          {
            minLength: rowCount,
            maxLength: rowCount,
          },
        ),
      );
    fc.assert(
      fc.property(block, fc.constantFrom('\n', '\r\n'), (rows, lineEnd) => {
        const text = asPasted(rows, lineEnd);
        fc.pre(/\S/u.test(text));
        expect(parseBlock(text)).toEqual({ type: 'block', rows, columnCount: rows[0]?.length });
      }),
      { numRuns: 3000 },
    );
  });

  it('makes a rectangle of any text and loses no visible character outside quotation', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom('a', '1', '\t', '\n', '\r', ' '), maxLength: 40 }),
        (text) => {
          const reading = parseBlock(text);
          if (reading.type !== 'block') {
            expect(text.trim()).toBe('');
            return;
          }
          for (const row of reading.rows) expect(row).toHaveLength(reading.columnCount);
          const visible = (raw: string): string => raw.replace(/[\t\r\n]/gu, '');
          expect(reading.rows.flat().join('')).toBe(visible(text));
        },
      ),
      { numRuns: 3000 },
    );
  });

  it('answers nothing with nothing', () => {
    for (const text of ['', ' ', '\t\t\r\n', '\u0000', '\ufeff\n'])
      expect(parseBlock(text)).toEqual({ type: 'empty' });
  });

  it('takes 100,000 rows and refuses more with a sentence', () => {
    expect(rowsOf('.363\t.370\r\n'.repeat(MAX_BLOCK_ROWS))).toHaveLength(MAX_BLOCK_ROWS);
    expect(parseBlock('1\n'.repeat(MAX_BLOCK_ROWS + 1))).toEqual({
      type: 'error',
      message: 'More than 100,000 rows were pasted; copy a smaller block.',
    });
  });

  it('refuses blocks whose rectangle would be vast', () => {
    const ragged = `${'1\n'.repeat(50_000)}${'1\t'.repeat(50_000)}`;
    expect(parseBlock(ragged)).toMatchObject({
      type: 'error',
      message: expect.stringMatching(/cells/u) as string,
    });
    expect(parseBlock(`1${'\t'.repeat(2_000_000)}`)).toMatchObject({ type: 'error' });
    expect(parseBlock('1'.repeat(20_000_001))).toMatchObject({
      type: 'error',
      message: expect.stringMatching(/characters/u) as string,
    });
  });

  it('gets through half a million open quotation marks', () => {
    const unclosed = '"\t""a'.repeat(250_000);
    expect(parseBlock(`x\n${unclosed}`).type).toBe('block');
    expect(parseBlock('"'.repeat(500_001)).type).toBe('block');
  });
});
