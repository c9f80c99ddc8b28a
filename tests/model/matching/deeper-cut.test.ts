import { describe, expect, test } from 'vitest';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import { letsTurn } from '../../../src/model/evaluate/judge.ts';
import { type DeeperCut, deeperCut } from '../../../src/model/matching/deeper-cut.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { type ChamberOptions, buildJob, changed, type JobOptions } from '../../support/job-builder.ts';
import { statedInches } from '../../support/values.ts';

const SELECTION = { cylinder: 'cylinder', key: 'key', plan: 'plan' };
const INCH = 25.4;

/** Chamber 2 holds a pin too long by this much; its neighbours are level. */
function tooLong(
  by: number,
  chambers: readonly ChamberOptions[] = [{}, {}, {}],
  options: JobOptions = {},
): Job {
  return changed(buildJob({ chambers, ...options }), (copy) => {
    const pin = copy.parts.find((part) => part.id === 'bottom-pin-2')!;
    pin.length = statedInches(pin.length!.readings[0]!.value / INCH + by);
  });
}

const cut = (job: Job) => deeperCut(job, SELECTION, 'chamber-2') as DeeperCut;

/** The key once that much is taken off the cut under chamber 2. */
function deepened(job: Job, by: number): Job {
  return changed(job, (copy) => {
    const under = copy.keys[0]!.cuts[1]!;
    under.rootDepth = statedInches((under.rootDepth!.readings[0]!.value - by) / INCH);
  });
}
const offsetOf = (job: Job, chamber: number) =>
  evaluate(job, SELECTION).chambers[chamber]?.splits[0]?.offset ?? NaN;

describe('how much to take off a cut', () => {
  test('as much as the stack stands too high, on a wide flat', () => {
    const job = tooLong(0.006);
    expect(cut(job).takeOff).toBeCloseTo(0.006 * INCH, 5);
    expect(cut(job).least).toBeCloseTo(0.003 * INCH, 5);
    expect(cut(job).isClean).toBe(true);
    expect(cut(job).message).toMatch(
      /^Take \.006 in off the cut under chamber 2: \.2940? in of metal is left under it/,
    );
  });

  test('the evaluation of the deepened key puts the stack level, also where a ball bridges the cut', () => {
    const ball = 0.115;
    const chambers = [{ ball }, { ball, rootDepth: 0.28 }, { ball, rootDepth: 0.27 }];
    for (const [options, by] of [
      [{}, 0.005],
      [{ rootFlat: 0.03, cutAngleDeg: 100 }, 0.008],
      [{ rootFlat: 0.01, cutAngleDeg: 90 }, 0.01],
    ] as const) {
      // what bridging adds is taken off the pin first, so that the pin is too long by just so much
      const level = tooLong(0, chambers, options);
      const job = tooLong(by - offsetOf(level, 1) / INCH, chambers, options);
      expect(offsetOf(job, 1)).toBeCloseTo(by * INCH, 5);
      expect(offsetOf(deepened(job, cut(job).takeOff), 1)).toBeCloseTo(0, 5);
    }
  });

  test('the least and the most are where the line just turns', () => {
    const job = tooLong(0.006);
    const { least, most } = cut(job);
    const verdict = (by: number) => evaluate(deepened(job, by), SELECTION).chambers[1]?.verdicts[0]?.verdict;
    expect([verdict(least - 0.005), verdict(least + 0.005)]).toEqual(['too high', 'high, rubs']);
    expect([verdict(most - 0.005), verdict(most + 0.005)]).toEqual(['low, turns', 'too low']);
  });

  test('a cut out of line with its chamber is found on the profile as it is', () => {
    const job = tooLong(0.02, [{}, { position: 0.38, cutPosition: 0.393 }, {}]);
    const found = cut(job);
    expect(offsetOf(deepened(job, found.takeOff), 1)).toBeCloseTo(0, 5);
  });
});

describe('what it does to the neighbours', () => {
  test('a step larger than both flats allow is told', () => {
    const close = tooLong(0.03, [{ rootDepth: 0.3 }, { rootDepth: 0.22 }, { rootDepth: 0.3 }], {
      chamberSpacing: 0.15,
    });
    const found = cut(close);
    // 90 degree cuts, flats of .05 in, .15 in apart: .10 in at most
    expect(found.steps.map(({ largest }) => largest / INCH)).toEqual([
      expect.closeTo(0.1, 6),
      expect.closeTo(0.1, 6),
    ]);
    expect(found.steps.map(({ step }) => step / INCH)).toEqual([
      expect.closeTo(0.11, 4),
      expect.closeTo(0.11, 4),
    ]);
    expect(found.isClean).toBe(false);
    expect(found.eaten.map(({ cut: eaten }) => eaten)).toEqual(['cut-1', 'cut-3']);
    expect(found.message).toContain('more than the .100 in that leaves both flats whole');
  });

  test('a neighbour whose stack comes down is told, with where it ends up', () => {
    const close = tooLong(0.06, [{ rootDepth: 0.3 }, { rootDepth: 0.22 }, { rootDepth: 0.3 }], {
      chamberSpacing: 0.13,
    });
    const found = cut(close);
    const after = deepened(close, found.takeOff);
    expect(found.alsoLowered.map(({ number }) => number)).toEqual([1, 3]);
    for (const { number, offset } of found.alsoLowered) {
      expect(offsetOf(after, number - 1)).toBeCloseTo(offset, 6);
    }
    expect(found.isClean).toBe(false);
  });

  test('whether a neighbour turns afterwards is what the deepened key says', () => {
    const told = new Set<string>();
    for (const chamberSpacing of [0.13, 0.138, 0.146])
      for (const longer of [-0.004, 0, 0.004, 0.012, 0.05]) {
        const neighbour = { rootDepth: 0.3, bottomPin: 0.132 + longer };
        const close = tooLong(0.06, [neighbour, { rootDepth: 0.22 }, neighbour], { chamberSpacing });
        const found = cut(close);
        const after = evaluate(deepened(close, found.takeOff), SELECTION);
        for (const { number, turns, by } of found.alsoLowered) {
          const verdict = after.chambers[number - 1]?.verdicts[0]?.verdict ?? 'unknown';
          expect(letsTurn(verdict), `${chamberSpacing} ${longer} ${number}: ${verdict}`).toBe(turns);
          expect(
            offsetOf(close, number - 1) - offsetOf(deepened(close, found.takeOff), number - 1),
          ).toBeCloseTo(by, 6);
          told.add(turns ? 'turns' : verdict);
        }
      }
    expect([...told].sort()).toEqual(['too high', 'too low', 'turns']);
  });

  test('far from its neighbours it changes nothing there', () => {
    expect(cut(tooLong(0.004)).alsoLowered).toEqual([]);
    expect(cut(tooLong(0.004)).eaten).toEqual([]);
  });
});

describe('where no depth helps, or none is needed', () => {
  const message = (job: Job) => deeperCut(job, SELECTION, 'chamber-2').message;

  test('a stack that is too low, one that is level, one that is low and turns', () => {
    expect(message(tooLong(-0.02))).toContain('a cut cannot be made higher');
    expect(message(tooLong(0))).toContain('leave its cut as it is');
    expect(message(tooLong(-0.002))).toContain('leave its cut as it is');
  });

  test('a cut so far off that there is not enough metal to take off', () => {
    const job = tooLong(0.03, [
      { cutPosition: null },
      { position: 0.38, cutPosition: 0.8 },
      { cutPosition: null },
    ]);
    expect(message(job)).toMatch(/^No depth of its cut helps chamber 2: its stack stands \.\d+ in too high/);
  });

  test('a cut or a stack that was not measured, and a chamber that is not there', () => {
    const noCut = changed(tooLong(0.004), (copy) => delete copy.keys[0]!.cuts[1]!.rootDepth);
    const noPin = changed(tooLong(0.004), (copy) => {
      delete copy.parts.find((part) => part.id === 'bottom-pin-2')!.length;
    });
    for (const job of [noCut, noPin]) {
      expect(message(job)).toBe('Measure the stack and the cut of chamber 2 first.');
    }
    expect(deeperCut(noCut, SELECTION, 'elsewhere').message).toBe('This chamber is closed.');
  });
});
