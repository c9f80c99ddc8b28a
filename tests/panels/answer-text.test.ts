import { describe, expect, test } from 'vitest';
import { answerText, EXPECTED } from '../../src/panels/answer/answer-text.ts';
import { assumptionSentences } from '../../src/panels/answer/assumption-words.ts';
import { verdictWords } from '../../src/panels/answer/verdict-words.ts';
import { type MadeUpChamber, madeUpEvaluation } from './evaluation-builder.ts';

const level: MadeUpChamber = { verdict: 'level', offset: 0.0003 };
const tooHigh: MadeUpChamber = {
  verdict: 'too high',
  offset: 0.0095,
  nextStep: 'Use a ball + bottom pin of .2471 in to .2506 in.',
  assumes: ['driver edge broken .005 in', 'play .004 in (.002 to .006)'],
};
const open: MadeUpChamber = {
  verdict: "can't say yet",
  offset: 0.0029,
  lean: 'probably turns',
  nextStep: 'Try it alone in the empty shell.',
};
const tooLow: MadeUpChamber = { verdict: 'too low', offset: -0.0112, nextStep: 'Use a longer one.' };

describe('a plug that will not turn', () => {
  test('names the chamber, the way, the amount, what is over, and what to use instead', () => {
    const answer = answerText(
      madeUpEvaluation([level, tooHigh], { verdict: 'will not turn', lean: null, blockedBy: [2] }),
      'in',
    );
    expect(answer.tone).toBe('stops');
    expect(answer.headline).toBe('Chamber 2 is too high: the plug will not turn.');
    expect(answer.points).toEqual([
      {
        chamber: 'chamber2',
        text:
          'Its bottom pin stands .0095 in above the shear line, .0055 in higher than lets it turn. ' +
          'Use a ball + bottom pin of .2471 in to .2506 in.',
      },
    ]);
    expect(answer.assumes).toEqual(['Assumes driver edge broken .005 in and play .004 in (.002 to .006).']);
    expect(answer.expected).toBeNull();
  });

  test('tells chambers apart when several hold it, and counts those beyond three', () => {
    const answer = answerText(
      madeUpEvaluation([tooLow, tooHigh, level, tooHigh, tooHigh], {
        verdict: 'will not turn',
        lean: null,
        blockedBy: [1, 2, 4, 5],
      }),
      'in',
    );
    expect(answer.headline).toBe('Chambers 1, 2, 4 and 5 hold the plug: it will not turn.');
    expect(answer.points.map((point) => point.text)).toEqual([
      "Chamber 1: its driver hangs .011 in into the plug, .0035 in deeper than the plug's edge lifts. Use a longer one.",
      expect.stringContaining('Chamber 2: its bottom pin'),
      expect.stringContaining('Chamber 4: its bottom pin'),
      'Chamber 5 too: see the table.',
    ]);
  });

  test('speaks millimetres to a job in millimetres', () => {
    const answer = answerText(
      madeUpEvaluation([tooHigh], { verdict: 'will not turn', lean: null, blockedBy: [1] }),
      'mm',
    );
    expect(answer.points[0]?.text).toContain('stands 0.24 mm above the shear line, 0.14 mm higher');
  });

  test('says when no length can turn with these ends', () => {
    const answer = answerText(
      madeUpEvaluation([{ verdict: 'never turns', offset: 0, nextStep: 'Dome the pin.' }], {
        verdict: 'will not turn',
        lean: null,
        blockedBy: [1],
      }),
      'in',
    );
    expect(answer.headline).toBe('Chamber 1 cannot turn with these ends: the plug will not turn.');
    expect(answer.points[0]?.text).toBe('Dome the pin.');
  });
});

describe('a plug that should turn', () => {
  const high: MadeUpChamber = { verdict: 'high, rubs', offset: 0.0024, rubsFromDeg: 68 };
  const answer = answerText(madeUpEvaluation([level, high, level], { verdict: 'turns', lean: null }), 'in');

  test('says so with the sentence that sends people to the bench', () => {
    expect(answer.headline).toBe('It should turn: all three chambers meet the shear line.');
    expect(answer.expected).toBe(EXPECTED);
  });

  test('names the chamber with the least to spare, and the one that rubs, to ten degrees', () => {
    expect(answer.points.map((point) => point.text)).toEqual([
      'Chamber 2 has the least to spare: .0015 in.',
      'Chamber 2 is high and rubs from about 70°: a slightly shorter stack is better.',
    ]);
  });
});

describe('cuts that do not lie under their chambers', () => {
  test('are named beside the answer, one by its amount, several by the most', () => {
    const evaluation = madeUpEvaluation([level, level], { verdict: 'turns', lean: null });
    const off = (number: number, inches: number) => ({
      chamber: `chamber${number}`,
      number,
      offBy: inches * 25.4,
    });
    const lastPoint = (offCuts: ReturnType<typeof off>[]) =>
      answerText(evaluation, 'in', { offCuts }).points.at(-1)?.text;
    expect(lastPoint([off(2, -0.005)])).toMatch(/^Chamber 2 sits \.005 in off its cut/);
    expect(lastPoint([off(1, 0.004), off(2, -0.006)])).toMatch(/^Chambers 1 and 2 sit off .* up to \.006 in/);
  });
});

describe("a plug that can't be told yet", () => {
  test('leans, names who decides, and what would', () => {
    const answer = answerText(
      madeUpEvaluation([level, open], { verdict: "can't say yet", lean: 'probably turns', blockedBy: [2] }),
      'in',
    );
    expect(answer.headline).toBe('It probably turns: chamber 2 decides.');
    expect(answer.points[0]?.text).toBe(
      'Its bottom pin stands .003 in above the shear line, good to about ±.002 in: too close to a limit to say. ' +
        'Try it alone in the empty shell.',
    );
    expect(answer.expected).toBe(EXPECTED);
  });

  test('gives no such promise when it leans the other way', () => {
    const answer = answerText(
      madeUpEvaluation([{ ...open, lean: 'probably not' }], {
        verdict: "can't say yet",
        lean: 'probably not',
        blockedBy: [1],
      }),
      'in',
    );
    expect(answer.headline).toBe('Chamber 1 is probably too high: the plug will probably not turn.');
    expect(answer.expected).toBeNull();
  });
});

describe('one doubt behind most chambers', () => {
  test('is said once and first, with the way around it, and the chamber that leans the wrong way after it', () => {
    const doubtful = (offset: number, lean: 'probably turns' | 'probably not'): MadeUpChamber => ({
      verdict: "can't say yet",
      offset,
      lean,
      nextStep: 'Try it with its driver. Measuring the root flat of the cuts would help most.',
    });
    const answer = answerText(
      madeUpEvaluation(
        [doubtful(0, 'probably turns'), doubtful(-0.003, 'probably turns'), doubtful(0.0095, 'probably not')],
        { verdict: "can't say yet", lean: 'probably not', blockedBy: [1, 2, 3] },
      ),
      'in',
    );
    expect(answer.headline).toBe('Chamber 3 is probably too high: the plug will probably not turn.');
    expect(answer.points.map((point) => point.text)).toEqual([
      'All of it is only good to about ±.002 in. Measuring the root flat of the cuts would help most. ' +
        'Or lay a ball in each cut and read over it: that needs none.',
      'Its bottom pin stands .0095 in above the shear line, good to about ±.002 in: too close to a limit to say. ' +
        'Try it with its driver.',
    ]);
  });

  test('leaves no chamber certain', () => {
    const answer = answerText(
      madeUpEvaluation([open, open], { verdict: "can't say yet", lean: 'probably turns', blockedBy: [1, 2] }),
      'in',
    );
    expect(answer.headline).toBe('It probably turns, but no chamber is certain yet.');
  });
});

describe('the same error everywhere', () => {
  test('comes first and instead of the verdicts', () => {
    const answer = answerText(
      madeUpEvaluation(
        [tooHigh, tooHigh, tooHigh],
        { verdict: 'will not turn', lean: null, blockedBy: [1, 2, 3] },
        0.0095,
      ),
      'in',
    );
    expect(answer.headline).toBe('Every chamber is high by about .0095 in.');
    expect(answer.verdictsWait).toBe(true);
    expect(answer.points.map((point) => point.text).join(' ')).toContain('zero of the caliper');
    expect(answer.points.map((point) => point.text).join(' ')).not.toContain('Chamber 2');
    expect(answer.points[0]?.text).toContain('That is one wrong measurement');
  });

  test('accuses nobody of what the readings leave open', () => {
    const slightly: MadeUpChamber = { verdict: "can't say yet", offset: 0.0002 };
    const answer = answerText(
      madeUpEvaluation([slightly, slightly, slightly], { verdict: "can't say yet", lean: null }, 0.0002),
      'in',
    );
    expect(answer.verdictsWait).toBe(true);
    expect(answer.points[0]?.text).toMatch(
      /^That is no more than the readings leave open \(±\.\d+ in\): no pin/,
    );
  });
});

describe('a job that is not measured yet', () => {
  test('says what to measure next, how far it is, and what is already known to hold', () => {
    const answer = answerText(
      madeUpEvaluation(
        [level, tooHigh, { verdict: 'unknown', offset: 0, missing: ['Measure the cut under chamber 3.'] }],
        { verdict: 'unknown', lean: null, blockedBy: [3] },
      ),
      'in',
    );
    expect(answer.tone).toBe('waiting');
    expect(answer.headline).toBe('Measure the cut under chamber 3.');
    expect(answer.points.map((point) => point.text)).toEqual([
      'Measured so far: two of three chambers.',
      expect.stringContaining('bottom pin stands .0095 in above the shear line'),
    ]);
  });
});

describe('assumptions', () => {
  test('are told once, and chambers that flip alike are told together', () => {
    expect(
      assumptionSentences([
        'driver edge broken .005 in; if flat with a sharp edge, chamber 3 is too low',
        'play .004 in (.002 to .006)',
        'driver edge broken .005 in; if flat with a sharp edge, chamber 2 is too low',
        'pin top domed to .374 in; if edge broken .005 in, chamber 5 is too high',
        'play .004 in (.002 to .006)',
      ]),
    ).toEqual([
      'Assumes driver edge broken .005 in, play .004 in (.002 to .006) and pin top domed to .374 in.',
      'If the drivers are flat with a sharp edge, chambers 2 and 3 are too low.',
      'If the pin tops have their edge broken .005 in, chamber 5 is too high.',
    ]);
  });

  test('are not mentioned when there are none', () => {
    expect(assumptionSentences([])).toEqual([]);
  });
});

describe('verdict words', () => {
  const wordsOf = (made: MadeUpChamber) => {
    const [chamber] = madeUpEvaluation([made], { verdict: 'turns', lean: null }).chambers;
    if (chamber === undefined) throw new Error('no chamber');
    return verdictWords(chamber, 'in');
  };

  test('are level inside the shop rule, else a way and an amount to the half thousandth', () => {
    expect(wordsOf(level)).toEqual({ offset: 'level', verdict: 'turns', symbol: 'turns' });
    expect(wordsOf({ verdict: 'low, turns', offset: -0.00364 })).toEqual({
      offset: 'low .0035',
      verdict: 'low, turns',
      symbol: 'turns',
    });
    expect(wordsOf({ verdict: "can't say yet", offset: 0.00286, lean: 'probably turns' })).toEqual({
      offset: 'high .0030',
      verdict: "can't say yet: probably turns",
      symbol: 'unsure',
    });
  });

  test('never show a high stack as good', () => {
    expect(wordsOf({ verdict: 'high, rubs', offset: 0.0014 }).symbol).toBe('rubs');
    expect(wordsOf({ verdict: 'too high', offset: 0.0095 }).symbol).toBe('stops');
  });

  test('say that nothing is measured', () => {
    expect(wordsOf({ verdict: 'unknown', offset: 0 })).toEqual({
      offset: '–',
      verdict: 'not measured yet',
      symbol: 'none',
    });
  });
});
