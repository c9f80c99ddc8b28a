/**
 * The restricted page in numbers, for a cylinder whose every reading is known: one reading of the caliper is good to
 * 2 √(s² + r²/12 + e²/3), s its repeatability, r its resolution, e its largest error (JCGM 100:2008, 4.3). Lengths mm.
 */
import { describe, expect, test } from 'vitest';
import { assemble } from '../../../src/model/assembly/build-assembly.ts';
import { evaluateBench } from '../../../src/model/evaluate/evaluate.ts';
import { layOut } from '../../../src/model/measured/selection.ts';
import { pinningTable } from '../../../src/model/note/note-table.ts';
import { commonMeasures, pinningRows } from '../../../src/model/note/pinning-rows.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { SELECTION } from '../../support/small-job.ts';
import { assumedInches, inches, statedInches } from '../../support/values.ts';

const [S, R, E] = [0.0127, 0.0127, 0.0254];
const plusMinus = (readings = 1) => 2 * Math.sqrt(S ** 2 / readings + R ** 2 / 12 + E ** 2 / 3);
const IN = 25.4;

const job = changed(
  buildJob({
    instrumentError: 'default',
    chambers: [
      { rootDepth: 0.26, ball: 0.109, bottomPin: 0.063, lowerStack: 0.172, masterPins: [0.03, 0.045] },
      { rootDepth: 0.3, overBall: { reading: 0.38, ball: 0.1 }, driver: null, isSprung: false },
    ],
  }),
  (copy) => {
    copy.keys[0]!.cuts[0]!.rootDepth = inches(0.26, 0.261, 0.259, 0.5);
    copy.keys[0]!.cuts[0]!.rootDepth.readings[3]!.left = 'out';
    copy.seatings[0]!.stopShort = statedInches(0);
    copy.seatings[0]!.plugMinusFloor = assumedInches(0.43, 0.42, 0.44);
  },
);

const measured = (inch: number, readings = 1) => ({
  mm: expect.closeTo(inch * IN, 6) as number,
  plusMinus: expect.closeTo(plusMinus(readings), 9) as number,
  readings,
  basis: 'measured',
});

function look(at: Job) {
  const bench = layOut(at, SELECTION);
  const evaluation = evaluateBench(bench, assemble(bench));
  return { bench, evaluation, rows: pinningRows(bench, evaluation) };
}

describe('rows of the pinning', () => {
  test('hold every reading of a chamber with its ±; what is left out does not count', () => {
    const { rows, evaluation } = look(job);
    const [one] = rows;
    expect(one).toMatchObject({
      chamber: 'chamber-1',
      number: 1,
      rootDepth: measured(0.26, 3),
      overBall: null,
      ball: measured(0.109),
      bottomPin: measured(0.063),
      together: measured(0.172),
      masterPins: [measured(0.03), measured(0.045)],
      driver: measured(0.2),
      spring: measured(0.4),
    });
    const [chamber] = evaluation.chambers;
    expect(one?.needed?.mm).toBe(chamber?.neededLowerStack);
    expect(one?.needed?.plusMinus).toBe(chamber?.neededUncertainty);
    // plug less metal under the key less root depth; a flat ball seat changes nothing of it: the flat is too narrow for the ball
    expect(one?.needed?.mm).toBeLessThan((0.512 - 0.08 - 0.26) * IN + 1e-6);
  });

  test('say nothing of what is not there', () => {
    const [, two] = look(job).rows;
    expect(two).toMatchObject({
      rootDepth: null,
      overBall: measured(0.38),
      ball: null,
      together: null,
      masterPins: [],
      driver: null,
      spring: null,
    });
  });

  test('know no height that is called for without a key to call for it', () => {
    const bare = changed(job, (copy) => {
      for (const cut of copy.keys[0]!.cuts) {
        delete cut.rootDepth;
        delete cut.overBall;
      }
    });
    expect(look(bare).rows.map(({ needed }) => needed)).toEqual([null, null]);
  });

  test('what is measured once stands once, with how it is known', () => {
    const measures = new Map(commonMeasures(look(job).bench).map(({ label, value }) => [label, value]));
    expect([...measures.keys()]).toEqual([
      'Plug diameter',
      'Play between plug and shell',
      'Metal under the key',
      'Plug minus floor',
      'Height of the blade',
      'Root flat',
      'Key stops short by',
    ]);
    expect(measures.get('Plug diameter')).toEqual(measured(0.512));
    expect(measures.get('Play between plug and shell')).toEqual(measured(0.003));
    expect(measures.get('Metal under the key')).toEqual(measured(0.08));
    expect(measures.get('Key stops short by')).toMatchObject({
      mm: 0,
      plusMinus: 0,
      readings: 0,
      basis: 'stated',
    });
    const assumed = measures.get('Plug minus floor');
    expect(assumed).toMatchObject({ readings: 0, basis: 'assumed' });
    expect(assumed?.plusMinus).toBeCloseTo((2 * 0.01 * IN) / Math.sqrt(3), 9);
    const sleeved = layOut(buildJob({ sleeve: { outerDiameter: 0.63, clearance: 0.004 } }), SELECTION);
    const labels = commonMeasures(sleeved).map(({ label }) => label);
    expect(labels.filter((label) => label.startsWith('Play'))).toEqual(['Play at line 1', 'Play at line 2']);
  });

  test('stand in the table under their heads', () => {
    const { bench, evaluation } = look(job);
    const lines = pinningTable([{ bench, evaluation }], 'Job', 'in').trim().split('\r\n');
    const cells = (line: string) => line.split(',').map((cell) => cell.replaceAll('"', ''));
    const at = lines.findIndex((line) => line.includes('Chamber'));
    const rejoined = lines[at]!.match(/"[^"]*"|[^,]+/gu)!.map((head) => head.replaceAll('"', ''));
    const first = new Map(cells(lines[at + 1]!).map((cell, i) => [rejoined[i], cell]));
    expect(first.get('State')).toBe('planned');
    expect(Number(first.get('Ball (in)'))).toBeCloseTo(0.109, 5);
    expect(Number(first.get('Driver (in)'))).toBeCloseTo(0.2, 5);
    expect(Number(first.get('Spring, free (in)'))).toBeCloseTo(0.4, 5);
    expect(Number(first.get('Root depth ± (in)'))).toBeCloseTo(plusMinus(3) / IN, 5);
    expect(first.get('Master pins (in)')).toContain('0.03000');
    expect(first.get('Master pins (in)')).toContain('0.04500');
  });
});
