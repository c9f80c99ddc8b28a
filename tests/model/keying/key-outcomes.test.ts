/**
 * What a key does, from what each line does: every pair of an inner and an outer line, written out. Cylinders without a sleeve have
 * the inner line only.
 */
import { describe, expect, test } from 'vitest';
import type { Evaluation, LineResult } from '../../../src/model/evaluate/evaluation.ts';
import { crossings, keyOutcomes, type Turning } from '../../../src/model/keying/key-outcomes.ts';
import { buildJob, changed } from '../../support/job-builder.ts';

type State = 'turns' | 'held' | 'open' | 'leans to turn';

const line = (name: string, state: State): LineResult => ({
  line: name,
  verdict: state === 'turns' ? 'turns' : state === 'held' ? 'will not turn' : "can't say yet",
  lean: state === 'leans to turn' ? 'probably turns' : state === 'open' ? 'probably not' : null,
  blockedBy: state === 'turns' ? [] : ['chamber-2'],
});

const SLEEVED = buildJob({ chambers: 2, sleeve: { outerDiameter: 0.632, clearance: 0.003 } });
const WHERE = { cylinder: 'cylinder', plan: 'plan' };

function evaluationOf(...lines: readonly LineResult[]): Evaluation {
  return {
    units: { length: 'mm', angle: 'rad' },
    cylinder: 'cylinder',
    key: 'key',
    plan: 'plan',
    lines,
    chambers: [],
    commonError: null,
    insertion: [],
    findings: [],
  };
}

function outcomeOf(inner: State, outer: State | null, job = SLEEVED) {
  const lines = [line('inner-line', inner), ...(outer === null ? [] : [line('outer-line', outer)])];
  return keyOutcomes(job, WHERE, () => evaluationOf(...lines))[0]!;
}

const intent = (key: string, at: string, turns = true) => ({ key, cylinder: 'cylinder', line: at, turns });

describe('what a key does', () => {
  test.each<[State, State | null, Turning | null, Turning | null]>([
    ['turns', 'turns', 'either', 'either'],
    ['turns', 'held', 'plug', 'plug'],
    ['held', 'turns', 'together', 'together'],
    ['held', 'held', 'nothing', 'nothing'],
    ['turns', 'open', null, 'plug'],
    ['turns', 'leans to turn', null, 'either'],
    ['open', 'turns', null, 'together'],
    ['leans to turn', 'turns', null, 'either'],
    ['leans to turn', 'held', null, 'plug'],
    ['open', 'open', null, 'nothing'],
    ['turns', null, 'plug', 'plug'],
    ['held', null, 'nothing', 'nothing'],
    ['open', null, null, 'nothing'],
    ['leans to turn', null, null, 'plug'],
  ])('inner line %s, outer line %s: %s, probably %s', (inner, outer, does, probably) => {
    expect(outcomeOf(inner, outer)).toMatchObject({ does, probably });
  });

  test.each<[readonly string[], Turning, boolean | null]>([
    [['inner-line'], 'plug', true],
    [['outer-line'], 'together', false],
    [['inner-line', 'outer-line'], 'either', false],
  ])('meant for %j is meant to turn %s', (meantFor, meant, isAsMeant) => {
    const job = changed(SLEEVED, ({ intents }) => intents.push(...meantFor.map((at) => intent('key', at))));
    expect(outcomeOf('turns', 'held', job)).toMatchObject({ meant, isAsMeant });
    expect(outcomeOf('turns', 'open', job)).toMatchObject({ meant, isAsMeant: null });
  });

  test('meant to turn nothing is a meaning too; of another cylinder or key it is none', () => {
    const locked = changed(SLEEVED, ({ intents }) => void intents.push(intent('key', 'inner-line', false)));
    expect(outcomeOf('turns', 'held', locked)).toMatchObject({ meant: 'nothing', isAsMeant: false });
    const other = changed(SLEEVED, ({ intents }) =>
      intents.push({ ...intent('key', 'inner-line'), cylinder: 'other' }, intent('other', 'inner-line')),
    );
    expect(outcomeOf('turns', 'held', other)).toMatchObject({ meant: null, isAsMeant: null });
  });
});

test('a key crosses others at a line that it turns and that is meant for them, not for it', () => {
  const job = changed(SLEEVED, ({ keys, seatings, intents }) => {
    for (const id of ['second', 'third']) {
      keys.push({ ...keys[0]!, id, label: id });
      seatings.push({ ...seatings[0]!, key: id });
    }
    intents.push(intent('key', 'inner-line'), intent('second', 'outer-line'));
  });
  const outcomes = keyOutcomes(job, WHERE, () =>
    evaluationOf(line('inner-line', 'turns'), line('outer-line', 'turns')),
  );
  expect(outcomes.map(({ key }) => key)).toEqual(['key', 'second', 'third']);
  expect(crossings(outcomes)).toEqual([
    { key: 'key', line: 'outer-line', meantFor: ['second'] },
    { key: 'second', line: 'inner-line', meantFor: ['key'] },
  ]);
  const held = keyOutcomes(job, WHERE, () =>
    evaluationOf(line('inner-line', 'turns'), line('outer-line', 'held')),
  );
  expect(crossings(held)).toEqual([{ key: 'second', line: 'inner-line', meantFor: ['key'] }]);
});
