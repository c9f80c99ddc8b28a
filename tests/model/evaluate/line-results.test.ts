/**
 * A line from its chambers, over every combination of three chambers: it turns if every chamber lets it, it is held if one surely holds
 * it, nobody knows if one is unknown, and else it is open; and what turns, from what the lines do.
 */
import { describe, expect, test } from 'vitest';
import type {
  ChamberResult,
  Evaluation,
  LineResult,
  Verdict,
} from '../../../src/model/evaluate/evaluation.ts';
import { lineResult, namedChambers } from '../../../src/model/evaluate/line-results.ts';
import { meantLine, whatTurns } from '../../../src/model/evaluate/what-turns.ts';
import { buildJob, changed } from '../../support/job-builder.ts';

type State = Verdict | 'likely' | 'unlikely' | 'not told';

const verdictOf = (state: State): Verdict =>
  state === 'likely' || state === 'unlikely' ? "can't say yet" : state === 'not told' ? 'unknown' : state;

/** A chamber with these states at the lines named a, b … */
function chamber(id: string, ...states: readonly State[]): ChamberResult {
  const leans = states.map((state) =>
    state === 'likely' ? 'probably turns' : state === 'unlikely' ? 'probably not' : null,
  );
  return {
    chamber: id,
    splits: leans.map((lean) => ({ lean })),
    verdicts: states.flatMap((state, i) =>
      state === 'not told'
        ? []
        : [{ line: 'ab'[i], verdict: verdictOf(state), split: state === 'unknown' ? null : i }],
    ),
  } as unknown as ChamberResult;
}

const STATES: readonly State[] = [
  'level',
  'low, turns',
  'high, rubs',
  'too low',
  'too high',
  'never turns',
  'likely',
  'unlikely',
  'unknown',
  'not told',
];
const TURN = ['level', 'low, turns', 'high, rubs'];
const HOLD = ['too low', 'too high', 'never turns'];

describe('a line', () => {
  test('is what its chambers make of it, whichever they are', () => {
    for (const one of STATES)
      for (const two of STATES)
        for (const three of STATES) {
          const states = [one, two, three];
          const found = lineResult(
            'a',
            states.map((state, i) => chamber(`c${i}`, state)),
          );
          const where = (is: (state: State) => boolean) =>
            states.flatMap((state, i) => (is(state) ? [`c${i}`] : []));
          const holding = where((state) => HOLD.includes(state));
          const unknown = where((state) => state === 'unknown' || state === 'not told');
          const open = where((state) => state === 'likely' || state === 'unlikely');
          const expected =
            holding.length > 0
              ? { verdict: 'will not turn', lean: null, blockedBy: holding }
              : unknown.length > 0
                ? { verdict: 'unknown', lean: null, blockedBy: unknown }
                : open.length > 0
                  ? {
                      verdict: "can't say yet",
                      lean: states.includes('unlikely') ? 'probably not' : 'probably turns',
                      blockedBy: open,
                    }
                  : { verdict: 'turns', lean: null, blockedBy: [] };
          expect(found, states.join(' | ')).toEqual({ line: 'a', ...expected });
        }
    expect(lineResult('a', [])).toMatchObject({ verdict: 'unknown', blockedBy: [] });
    expect(TURN.length + HOLD.length).toBe(6);
  });

  test('names the chambers that probably hold it; where none does, all that leave it open', () => {
    const named = (...states: readonly State[]) => {
      const chambers = states.map((state, i) => chamber(`c${i}`, state));
      return namedChambers(lineResult('a', chambers), chambers);
    };
    expect(named('level', 'likely', 'unlikely', 'unlikely')).toEqual(['c2', 'c3']);
    expect(named('likely', 'level', 'likely')).toEqual(['c0', 'c2']);
    expect(named('unlikely', 'too low', 'likely')).toEqual(['c1']);
    expect(named('unknown', 'unlikely')).toEqual(['c0']);
    expect(named('level', 'level')).toEqual([]);
  });
});

describe('what turns', () => {
  const line = (
    name: string,
    verdict: LineResult['verdict'],
    held: number,
    lean: LineResult['lean'] = null,
  ) =>
    ({
      line: name,
      verdict,
      lean,
      blockedBy: Array.from({ length: held }, (_, i) => `c${i}`),
    }) satisfies LineResult;
  const of = (
    lines: readonly LineResult[],
    chambers: readonly ChamberResult[] = [],
    meant: string | null = null,
  ) => whatTurns({ lines, chambers } as unknown as Evaluation, meant);

  test('is looked at where it turns, else where it may, else where it is meant or held the least', () => {
    const [turns, other] = [line('a', 'turns', 0), line('b', 'turns', 0)];
    expect(of([turns, other])).toMatchObject({ turning: ['a', 'b'], open: [], focus: 'a' });
    expect(of([turns, other], [], 'b').focus).toBe('b');
    const [held, open, likely] = [
      line('a', 'will not turn', 2),
      line('b', "can't say yet", 1, 'probably not'),
      line('c', "can't say yet", 1, 'probably turns'),
    ];
    expect(of([held, other]).focus).toBe('b');
    expect(of([held, other], [], 'a').focus).toBe('b');
    expect(of([held, open])).toMatchObject({ turning: [], open: ['b'], focus: 'b' });
    expect(of([open, likely]).focus).toBe('c');
    expect(of([open, likely], [], 'b').focus).toBe('c');
    const [more, less] = [line('a', 'will not turn', 3), line('b', 'will not turn', 1)];
    expect(of([more, less]).focus).toBe('b');
    expect(of([more, less], [], 'a').focus).toBe('a');
    expect(of([more, less], [], 'elsewhere').focus).toBe('b');
    expect(of([]).focus).toBeNull();
  });

  test('is a mixture where each line is free in a chamber that holds another', () => {
    const held = [line('a', 'will not turn', 1), line('b', 'will not turn', 1)];
    const isMixed = (...chambers: readonly ChamberResult[]) => of(held, chambers).isMixed;
    expect(isMixed(chamber('c0', 'level', 'too low'), chamber('c1', 'too high', 'level'))).toBe(true);
    expect(isMixed(chamber('c0', 'level', 'too low'), chamber('c1', 'level', 'too high'))).toBe(false);
    expect(isMixed(chamber('c0', 'too low', 'too low'), chamber('c1', 'too high', 'level'))).toBe(false);
    expect(isMixed(chamber('c0', 'level', 'level'), chamber('c1', 'too high', 'level'))).toBe(false);
    expect(of([line('a', 'turns', 0), held[1]!], [chamber('c0', 'level', 'too low')]).isMixed).toBe(false);
  });

  test('a key is meant for the line that somebody said it turns', () => {
    const job = changed(buildJob(), ({ intents }) => {
      intents.push(
        { key: 'key', cylinder: 'cylinder', line: 'locked', turns: false },
        { key: 'other', cylinder: 'cylinder', line: 'b', turns: true },
        { key: 'key', cylinder: 'elsewhere', line: 'c', turns: true },
        { key: 'key', cylinder: 'cylinder', line: 'd', turns: true },
      );
    });
    expect(meantLine(job, 'cylinder', 'key')).toBe('d');
    expect(meantLine(job, 'cylinder', 'other')).toBe('b');
    expect(meantLine(job, 'cylinder', 'third')).toBeNull();
    expect(meantLine(job, 'cylinder', null)).toBeNull();
  });
});
