import { describe, expect, test } from 'vitest';
import { newJob } from '../../src/model/edit/new-job.ts';
import { assumedValue, measuredValue, withRepeat } from '../../src/model/edit/values.ts';
import { setPlugDiameter } from '../../src/model/edit/edit-cylinder.ts';
import { setBottomEdge, setStandsUpBy } from '../../src/model/edit/edit-seating.ts';
import { setCutRootDepth } from '../../src/model/edit/edit-key.ts';
import { inchesToMm } from '../../src/model/units/length-unit.ts';
import { parseLength } from '../../src/model/units/parse-length.ts';
import {
  chamberColumns,
  stackWayUsed,
  waysUsed,
  type HeightWay,
} from '../../src/panels/measure/chamber-columns.ts';
import { echoOf, shownText } from '../../src/panels/measure/field-text.ts';
import { nextInWalk } from '../../src/panels/measure/field-walk.ts';
import { goodCells, pastedBlock, storeBlock, troubledCells } from '../../src/panels/measure/paste-plan.ts';
import { answerOf } from '../../src/panels/answer/answer-of.ts';
import { setupIsAnswered, setupSummary } from '../../src/panels/measure/setup-summary.ts';
import { keyWords } from '../../src/panels/section/key-words.ts';
import { lookAt } from '../../src/panels/shared/look.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';

let count = 0;
const newId = () => `id${++count}`;
const none = { instrument: null, session: null };
const reading = (typed: string) => ({ mm: inchesToMm(Number(typed)), unit: 'in', typed }) as const;
const measured = (typed: string) => measuredValue(reading(typed), none);

function lookAtNew(change: (job: Job) => Job = (job) => job) {
  const job = change(newJob({ newId, unit: 'in', chambers: 6 }));
  const [cylinder, key, plan] = [job.cylinders[0], job.keys[0], job.plans[0]];
  if (cylinder === undefined || key === undefined || plan === undefined) throw new Error('empty job');
  return lookAt(job, { cylinder: cylinder.id, key: key.id, plan: plan.id });
}

function columnsOf(look: ReturnType<typeof lookAtNew>, ways: readonly HeightWay[] = ['root depth']) {
  return chamberColumns({
    look,
    key: look.selection.key ?? '',
    ways: new Set(ways),
    stackWay: 'together',
    asksMasterPins: false,
    longStack: undefined,
    newId,
  });
}

describe('the way Enter takes', () => {
  const columns = ['root', 'stack', 'root', 'stack', 'root', 'stack'];

  test('runs down a column, then to the top of the next, and ends at its foot', () => {
    const way = [0];
    for (let next = nextInWalk(columns, 0, 1); next !== null; next = nextInWalk(columns, next, 1))
      way.push(next);
    expect(way).toEqual([0, 2, 4, 1, 3, 5]);
  });

  test('runs back the same way', () => {
    expect(nextInWalk(columns, 1, -1)).toBe(4);
    expect(nextInWalk(columns, 0, -1)).toBeNull();
  });
});

describe('what stands in a field and under it', () => {
  test('a reading in the unit of the job, the other unit below', () => {
    expect(shownText(measured('.3345'), 'in')).toBe('.3345');
    expect(echoOf(measured('.3345'), null, 'in')).toBe('8.50 mm');
    expect(shownText(measured('.3345'), 'mm')).toBe('8.50');
  });

  test('a fraction keeps the fraction in sight', () => {
    const value = measuredValue({ mm: 9.128125, unit: 'in', typed: '23/64"' }, none);
    expect(echoOf(value, null, 'in')).toBe('23/64 in, 9.13 mm');
  });

  test('repeats are counted', () => {
    const twice = withRepeat(measured('.334'), reading('.335'), none);
    expect(shownText(twice, 'in')).toBe('.3345');
    expect(echoOf(twice, null, 'in')).toBe('8.50 mm, mean of 2');
  });

  test('what is assumed leaves the field empty and says within what range', () => {
    const play = assumedValue(['.004', '.002', '.006'], 'in');
    expect(shownText(play, 'in')).toBe('');
    expect(shownText(play, 'in', true)).toBe('.0040');
    expect(echoOf(play, null, 'in')).toBe('assumed, .002 to .006');
  });

  test('both units while it is written, nothing for what cannot be read', () => {
    expect(echoOf(undefined, parseLength('.363', { unit: 'in' }), 'in')).toBe('.363 in  9.22 mm');
    expect(echoOf(measured('.3345'), parseLength('abc', { unit: 'in' }), 'in')).toBe('');
  });
});

describe('columns', () => {
  test('a new job asks for root depth and for ball and pin together', () => {
    const look = lookAtNew();
    expect(waysUsed({ look, key: look.selection.key ?? '' })).toEqual(new Set());
    expect(stackWayUsed(look)).toBe('together');
    expect(columnsOf(look).map((column) => [column.id, column.fields.size])).toEqual([
      ['root', 6],
      ['stack', 6],
    ]);
  });

  test('a way that holds readings stays', () => {
    const look = lookAtNew((job) => {
      const chamber = job.cylinders[0]?.chambers[0]?.id ?? '';
      const stood = { stack: measured('.36'), reading: measured('.0255'), items: [] };
      return setStandsUpBy(job, job.cylinders[0]?.id ?? '', job.keys[0]?.id ?? '', chamber, stood);
    });
    expect(waysUsed({ look, key: look.selection.key ?? '' })).toEqual(new Set(['stands up by']));
    const stands = columnsOf(look, ['stands up by'])[0];
    expect(stands?.fields.size).toBe(1);
    expect(shownText([...(stands?.fields.values() ?? [])][0]?.value, 'in')).toBe('.0255');
  });

  test('a field writes where it reads', () => {
    const look = lookAtNew();
    for (const column of columnsOf(look, ['root depth', 'over the ball', 'known set'])) {
      const chamber = look.rows.rows[3]?.chamber.id ?? '';
      const field = column.fields.get(chamber);
      const changed = field?.set(look.job, measured('.4321'));
      const after = columnsOf(
        lookAtNew(() => changed ?? look.job),
        ['root depth', 'over the ball', 'known set'],
      );
      const again = after.find((each) => each.id === column.id)?.fields.get(chamber);
      expect([column.id, shownText(again?.value, 'in')]).toEqual([column.id, '.4321']);
    }
  });
});

describe('a pasted rectangle', () => {
  const look = lookAtNew();
  const columns = columnsOf(look);
  const chamber = (number: number) => look.rows.rows[number - 1]?.chamber.id ?? '';
  const fieldAt = (column: number, number: number) => columns[column]?.fields.get(chamber(number))?.id;

  test('lies over the table from the field on, each cell read by the rules of its field', () => {
    const block = pastedBlock('.369\t.3345\n421\t.2790\n\t8.5 mm', fieldAt(0, 2), look, columns);
    if (block === null) throw new Error('not a block');
    expect(block.numbers).toEqual([2, 3, 4]);
    expect(block.titles).toEqual(['Root depth: metal left', 'Ball + bottom pin']);
    expect(goodCells(block).map((cell) => cell.text)).toEqual(['.369', '.3345', '.2790', '8.5 mm']);
    expect(troubledCells(block).map((cell) => cell.text)).toEqual(['421']);
    const stored = lookAtNew(() => storeBlock(look.job, block));
    expect(stored.rows.rows.map((row) => shownText(row.under?.cut.rootDepth, 'in'))).toEqual([
      '',
      '.3690',
      '',
      '',
      '',
      '',
    ]);
    expect(stored.job.groups).toHaveLength(3);
  });

  test('what reaches past the table has no place and is told', () => {
    const block = pastedBlock('.30\t.31\t.32\n.33\t.34\t.35', fieldAt(0, 6), look, columns);
    if (block === null) throw new Error('not a block');
    expect(block.numbers).toEqual([6, 0]);
    expect(goodCells(block)).toHaveLength(2);
    expect(troubledCells(block)).toHaveLength(4);
  });

  test('a single value is left to the field itself', () => {
    expect(pastedBlock('.369', fieldAt(0, 1), look, columns)).toBeNull();
    expect(pastedBlock('.369\n', fieldAt(0, 1), look, columns)).toBeNull();
    expect(pastedBlock('.369\n.421', 'no such field', look, columns)).toBeNull();
  });
});

describe('the first questions in one line', () => {
  test('are open until the plug is measured and somebody said where the key sits', () => {
    const open = lookAtNew();
    expect(setupIsAnswered(open)).toBe(false);
    expect(setupSummary(open)).toBe(
      'plug not measured yet, where the key sits not answered yet, cut 1 at the bow, balls, pins assumed domed, drivers assumed with a broken edge',
    );
    const answered = lookAtNew((job) => {
      const [cylinder, key] = [job.cylinders[0]?.id ?? '', job.keys[0]?.id ?? ''];
      return setBottomEdge(setPlugDiameter(job, cylinder, measured('.748')), cylinder, key, 'level');
    });
    expect(setupIsAnswered(answered)).toBe(true);
    expect(setupSummary(answered)).toMatch(/^plug \.7480 in, key level with it, cut 1 at the bow/);
  });
});

describe('while nobody measured how high the key sits', () => {
  const lookWith = (edge: 'level' | 'above' | 'unknown' | null, root = true) =>
    lookAtNew((job) => {
      const [cylinder, key] = [job.cylinders[0]?.id ?? '', job.keys[0]?.id ?? ''];
      const cut = job.keys[0]?.cuts[0]?.id ?? '';
      const plug = setPlugDiameter(job, cylinder, measured('.750'));
      const cutRead = root ? setCutRootDepth(plug, key, cut, measured('.369')) : plug;
      return edge === null ? cutRead : setBottomEdge(cutRead, cylinder, key, edge);
    });

  test('the answer says what counts instead: up to eight hundredths of the plug', () => {
    // .08 of .750 is .060.
    expect(answerOf(lookWith(null)).assumes[0]).toBe(
      'Not answered yet: how the key sits in the plug. Its bottom edge counts as 0 to .060 in above the underside.',
    );
    expect(answerOf(lookWith('above')).assumes[0]).toMatch(/^Not measured yet: the metal under the key\./);
    expect(answerOf(lookWith('unknown')).assumes[0]).toMatch(/^Not known: how the key sits in the plug\./);
  });

  test('nothing is said where it is level, or no height hangs on it yet', () => {
    expect(answerOf(lookWith('level')).assumes.join(' ')).not.toMatch(/key sits|under the key/);
    expect(answerOf(lookWith(null, false)).assumes).toEqual([]);
  });
});

describe('where the key stands', () => {
  test('is said in words at both ends and half way, else by what is left', () => {
    const way = { seated: 0.1, out: 40.1 };
    expect(keyWords(0.1, way, 'in')).toBe('Key fully in');
    expect(keyWords(20.1, way, 'in')).toBe('Key half way in');
    expect(keyWords(40.1, way, 'in')).toBe('Key out');
    expect(keyWords(12.8, way, 'in')).toBe('Key .500 in out');
  });
});

test('one look is worked out once for a job', () => {
  const look = lookAtNew();
  expect(lookAt(look.job, look.selection)).toBe(look);
  const cut = look.job.keys[0]?.cuts[0]?.id ?? '';
  const changed = setCutRootDepth(look.job, look.selection.key ?? '', cut, measured('.369'));
  expect(lookAt(changed, look.selection)).not.toBe(look);
});
