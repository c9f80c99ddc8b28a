/** Facts of the trade: common practice, no source. */
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../src/model/evaluate/evaluate.ts';
import type { ChamberResult } from '../../src/model/evaluate/evaluation.ts';
import { firstSelection } from '../../src/model/measured/selection.ts';
import { type ChamberOptions, buildJob } from '../support/job-builder.ts';

const INCH = 25.4;

function chamberWith(lowerStack: number): ChamberResult {
  const chambers: ChamberOptions[] = [{ rootDepth: 0.364, lowerStack }];
  const job = buildJob({
    plugDiameter: 0.874,
    floorHeight: 0,
    rootFlat: 0.09,
    pinTop: { kind: 'dome' },
    shopRule: 0.001,
    bladeHeight: 0.6,
    chambers,
  });
  const selection = firstSelection(job);
  const first = selection === null ? undefined : evaluate(job, selection).chambers[0];
  if (first === undefined) throw new Error('no chamber');
  return first;
}

/** Common practice, no source: a plug of 0.874 in over a root depth of 0.364 in calls for 0.510 in of ball + bottom pin. */
describe('a plug of 0.874 in and a root depth of 0.364 in', () => {
  test('call for 0.510 in of ball and bottom pin', () => {
    const chamber = chamberWith(0.51);
    expect((chamber.simpleLowerStack ?? 0) / INCH).toBeCloseTo(0.51, 9);
    expect((chamber.neededLowerStack ?? 0) / INCH).toBeCloseTo(0.51, 9);
  });

  test('take a set that reads within 0.001 in of that as fitting', () => {
    for (const stack of [0.509, 0.5095, 0.51, 0.5105, 0.511]) {
      expect(chamberWith(stack).verdicts[0]?.verdict, `${stack}`).toBe('level');
    }
    for (const stack of [0.5085, 0.5115]) {
      expect(chamberWith(stack).verdicts[0]?.verdict, `${stack}`).not.toBe('level');
    }
  });
});
