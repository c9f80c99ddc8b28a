import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import { evaluateBench } from '../../../src/model/evaluate/evaluate.ts';
import { assemble } from '../../../src/model/assembly/build-assembly.ts';
import { layOut } from '../../../src/model/measured/selection.ts';
import { csvText } from '../../../src/model/note/csv.ts';
import { pinningTable, shareableTable } from '../../../src/model/note/note-table.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { shareableView } from '../../../src/model/sharing/shareable-view.ts';
import { buildJob } from '../../support/job-builder.ts';

/** Reads CSV as RFC 4180 says. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [[]];
  const cell = /(?:"((?:[^"]|"")*)"|([^,\r\n"]*))(,|\r\n|$)/gy;
  const body = text.replace(/^\uFEFF/, '');
  while (cell.lastIndex < body.length) {
    const [, quoted, plain = '', end] = cell.exec(body) ?? ['', undefined, '', null];
    if (end === null) throw new Error('no CSV');
    rows.at(-1)?.push(quoted === undefined ? plain : quoted.replaceAll('""', '"'));
    if (end === '\r\n') rows.push([]);
  }
  return rows;
}

const benchOf = (job: Job) => {
  const bench = layOut(job, { cylinder: 'cylinder', key: 'key', plan: 'plan' });
  return { bench, evaluation: evaluateBench(bench, assemble(bench)) };
};

describe('a table', () => {
  // CWE-1236: a cell that starts so is run as a formula by spreadsheets.
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =1', '＝1', "=cmd|' /C calc'!A0"])(
    'does not let %j run',
    (text) => {
      const [[cell]] = readCsv(csvText([[{ text }]])) as [[string]];
      expect(cell).toBe(`'${text}`);
    },
  );

  it('keeps numbers numbers, signs and all', () => {
    expect(csvText([[{ number: '-0.00100' }, { number: '' }, { text: 'a, "b"' }]])).toBe(
      '\uFEFF-0.00100,,"a, ""b"""\r\n',
    );
  });

  test.prop([
    fc.array(fc.array(fc.string({ unit: 'binary' }), { minLength: 1, maxLength: 4 }), { minLength: 1 }),
  ])('gives back any text, but for the apostrophe', (rows) => {
    const back = readCsv(csvText(rows.map((row) => row.map((text) => ({ text })))));
    expect(back.slice(0, rows.length).map((row) => row.map((cell) => cell.replace(/^'/, '')))).toEqual(
      rows.map((row) => row.map((cell) => cell.replace(/^'/, ''))),
    );
  });

  it('of the pinning holds what was typed', () => {
    const job = buildJob({
      title: '=HYPERLINK("x")',
      chambers: [{ rootDepth: 0.2613, bottomPin: 0.1234 }, {}],
    });
    const rows = readCsv(pinningTable([benchOf(job)], job.title, 'in'));
    expect(rows[0]).toEqual(['Job', `'=HYPERLINK("x")`]);
    const head = rows[3]!;
    const first = rows[4]!;
    const under = (name: string) => first[head.indexOf(name)];
    expect([under('Root depth (in)'), under('Bottom pin (in)')]).toEqual(['0.26130', '0.12340']);
    expect(rows.length).toBe(7);
  });

  it('with the bitting hidden holds none of it', () => {
    const job = buildJob({ chambers: [{ rootDepth: 0.2613, bottomPin: 0.1234, ball: 0.1091 }, {}] });
    const { bench, evaluation } = benchOf(job);
    const view = shareableView(job, bench.cylinder, bench.key, [{ plan: bench.plan, evaluation }]);
    const text = shareableTable(view);
    for (const secret of ['2613', '1234', '1091']) expect(text).not.toContain(secret);
    expect(readCsv(text)[3]![0]).toBe('State');
  });
});
