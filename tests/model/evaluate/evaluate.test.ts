import { describe, expect, test } from 'vitest';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import type { Evaluation } from '../../../src/model/evaluate/evaluation.ts';
import { allSelections, firstSelection } from '../../../src/model/measured/selection.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { buildJob, changed } from '../../support/job-builder.ts';

const INCH = 25.4;

function of(job: Job): Evaluation {
  const selection = firstSelection(job);
  if (selection === null) throw new Error('no selection');
  return evaluate(job, selection);
}

const offsets = (evaluation: Evaluation) =>
  evaluation.chambers.map((chamber) => (chamber.splits[0]?.offset ?? Number.NaN) / INCH);

describe('evaluating a job', () => {
  test('stacks made by subtraction are level, and the plug turns', () => {
    const evaluation = of(buildJob({ rootFlat: 0.09 }));
    for (const offset of offsets(evaluation)) expect(offset).toBeCloseTo(0, 6);
    expect(evaluation.lines).toEqual([{ line: 'line', verdict: 'turns', lean: null, blockedBy: [] }]);
  });

  test('one stack too long holds the line, and says what to use', () => {
    const job = changed(buildJob({ rootFlat: 0.09 }), (draft) => {
      for (const group of draft.parts.filter((part) => part.id === 'bottom-pin-2')) {
        for (const reading of group.length?.readings ?? []) reading.value += 0.02 * INCH;
      }
    });
    const evaluation = of(job);
    expect(evaluation.lines[0]).toMatchObject({ verdict: 'will not turn', blockedBy: ['chamber-2'] });
    expect(evaluation.chambers[1]?.splits[0]?.nextStep).toMatch(
      /^Use a bottom pin of \.\d+ in to \.\d+ in\.$/,
    );
  });

  test('no pin shorter than nothing is called for', () => {
    // A round driver is lifted by the plug from any depth, so that anything shorter than the highest does.
    const round = of(
      buildJob({
        driverEnd: { kind: 'sphere' },
        floorHeight: 0.2,
        chambers: [{ rootDepth: 0.3, bottomPin: 0.05 }],
      }),
    );
    expect(round.chambers[0]?.splits[0]?.nextStep).toMatch(/^Use a bottom pin of up to \.\d+ in\.$/);
    const lifted = of(buildJob({ floorHeight: 0.3, chambers: [{ bottomPin: 0.05 }] }));
    expect(lifted.chambers[0]?.splits[0]?.nextStep).toMatch(/^No stack is short enough: /);
  });

  test('a key that is not home lifts a ball on its cut side', () => {
    const narrow = buildJob({ rootFlat: 0.04, chambers: [{ ball: 0.125 }, { ball: 0.125 }] });
    const job = changed(narrow, (draft) => {
      const [seating] = draft.seatings;
      if (seating === undefined) throw new Error('no seating');
      seating.stopShort = {
        readings: [{ typed: '.010', unit: 'in', value: 0.01 * INCH, instrument: null, session: null }],
        estimator: 'mean',
        basis: 'stated',
      };
    });
    const home = of(narrow);
    const short = of(job);
    short.chambers.forEach((chamber, i) => {
      expect(chamber.contactHeight ?? 0).toBeGreaterThan(home.chambers[i]?.contactHeight ?? Infinity);
    });
  });

  test('every chamber off the same way is told as one error', () => {
    const job = changed(buildJob({ rootFlat: 0.09 }), (draft) => {
      for (const reading of draft.cylinders[0]?.bodies[0]?.outerDiameter?.readings ?? [])
        reading.value -= 0.003 * INCH;
    });
    const evaluation = of(job);
    expect((evaluation.commonError?.offset ?? 0) / INCH).toBeCloseTo(0.003, 6);
    expect(evaluation.commonError?.message).toContain('Every chamber is high by about .003.');
  });

  test('what the caliper reads closed is taken off every reading', () => {
    const job = changed(buildJob({ rootFlat: 0.09, floorHeight: 0 }), (draft) => {
      const tool = draft.instruments[0]?.id ?? '';
      draft.sessions.push({
        id: 'zero',
        instrument: tool,
        at: '',
        closedReading: {
          readings: [{ typed: '.002', unit: 'in', value: 0.002 * INCH, instrument: tool, session: null }],
          estimator: 'mean',
          basis: 'measured',
        },
      });
      const values = [
        draft.cylinders[0]?.bodies[0]?.outerDiameter,
        ...(draft.keys[0]?.cuts.map((cut) => cut.rootDepth) ?? []),
      ];
      for (const value of values) {
        for (const reading of value?.readings ?? []) {
          reading.session = 'zero';
          reading.value += 0.002 * INCH;
        }
      }
    });
    for (const offset of offsets(of(job))) expect(offset).toBeCloseTo(0, 6);
  });

  test('what was felt and tried narrows the needed height', () => {
    const plain = buildJob({ instrumentError: 'default', rootFlat: 0.09 });
    const items = plain.plans[0]?.stacks[0]?.items.slice(0, 1) ?? [];
    const felt = changed(plain, (draft) => {
      draft.seatings[0]?.felt.push({ chamber: 'chamber-1', items, is: 'level' });
    });
    const before = of(plain).chambers[0];
    const after = of(felt).chambers[0];
    expect(after?.neededUncertainty ?? 9).toBeLessThan((before?.neededUncertainty ?? 0) * 0.6);
    const below = changed(plain, (draft) => {
      draft.seatings[0]?.felt.push({ chamber: 'chamber-1', items, is: 'below' });
    });
    expect(of(below).chambers[0]?.neededLowerStack ?? 0).toBeGreaterThan(
      before?.neededLowerStack ?? Infinity,
    );
  });

  test('a test in the empty shell that did not turn says the stack is too long', () => {
    const plain = buildJob({ instrumentError: 'default', rootFlat: 0.09 });
    const tried = changed(plain, (draft) => {
      const stack = draft.plans[0]?.stacks[0];
      draft.benchResults.push({
        plan: 'plan',
        key: 'key',
        chamber: 'chamber-1',
        items: stack?.items.slice(0, 1) ?? [],
        turned: false,
        at: '',
      });
    });
    expect(of(tried).chambers[0]?.neededLowerStack ?? 99).toBeLessThan(
      of(plain).chambers[0]?.neededLowerStack ?? 0,
    );
  });

  test('without a plug diameter the chambers say what is missing, and no verdict is given', () => {
    const job = changed(buildJob(), (draft) => {
      delete draft.cylinders[0]?.bodies[0]?.outerDiameter;
    });
    const evaluation = of(job);
    expect(evaluation.lines[0]?.verdict).toBe('unknown');
    expect(evaluation.chambers[0]?.missing[0]).toBe('Measure the plug across its solid part.');
    expect(evaluation.chambers[0]?.splits).toEqual([]);
  });

  test('a cut that nobody measured yet is not taken for uncut metal: its chamber waits, the others do not', () => {
    const job = changed(buildJob({ rootFlat: 0.09 }), (draft) => {
      delete draft.keys[0]?.cuts[2]?.rootDepth;
    });
    const evaluation = of(job);
    expect(evaluation.chambers[2]?.contactHeight).toBeNull();
    expect(evaluation.chambers[2]?.verdicts[0]?.verdict).toBe('unknown');
    expect(evaluation.chambers[2]?.missing[0]).toContain('Measure the cut under chamber 3');
    expect(evaluation.chambers[1]?.verdicts[0]?.verdict).toBe('level');
  });

  test('an empty hole still says which height to look for', () => {
    const job = changed(buildJob({ instrumentError: 'default' }), (draft) => {
      for (const stack of draft.plans[0]?.stacks ?? []) stack.items = [];
    });
    const chamber = of(job).chambers[0];
    expect(chamber?.useFrom).toBeLessThan(chamber?.useTo ?? 0);
    expect(chamber?.missing[0]).toContain('Nothing is in chamber 1 yet');
  });

  test('chambers counted from the tip are numbered the other way, nothing else changes', () => {
    const bow = of(buildJob());
    const tip = of(buildJob({ numbering: 'tip' }));
    expect(tip.chambers.map((chamber) => chamber.number)).toEqual([5, 4, 3, 2, 1]);
    expect(offsets(tip)).toEqual(offsets(bow));
  });

  test('a job is evaluated for every key with every cylinder it is paired with', () => {
    expect(allSelections(buildJob())).toEqual([{ cylinder: 'cylinder', key: 'key', plan: 'plan' }]);
  });
});

describe('a sleeve around the plug', () => {
  const job = buildJob({
    rootFlat: 0.09,
    sleeve: { outerDiameter: 0.62, clearance: 0.004 },
    chambers: [{ masterPins: [0.06] }, { masterPins: [0.06] }],
  });

  test('has a window for every split at both lines', () => {
    const evaluation = of(job);
    expect(evaluation.lines.map((line) => line.line)).toEqual(['inner-line', 'outer-line']);
    expect(evaluation.chambers[0]?.splits.map((split) => split.line)).toEqual([
      'inner-line',
      'outer-line',
      'inner-line',
      'outer-line',
    ]);
  });

  test('an outer crest stands half the inner play higher', () => {
    const clearance = (inches: number) =>
      of(
        changed(job, (draft) => {
          for (const reading of draft.cylinders[0]?.lines[0]?.clearance.readings ?? [])
            reading.value = inches * INCH;
        }),
      ).chambers[0]?.splits.find((split) => split.line === 'outer-line')?.offset ?? Number.NaN;
    expect((clearance(0.004) - clearance(0)) / INCH).toBeCloseTo(-0.002, 8);
  });
});
