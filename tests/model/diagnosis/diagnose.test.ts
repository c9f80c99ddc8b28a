/** What is seen at the bench, explained by the job in which a cause was built in on purpose. */
import { describe, expect, test } from 'vitest';
import { diagnose, symptomOf } from '../../../src/model/diagnosis/diagnose.ts';
import { SYMPTOMS } from '../../../src/model/diagnosis/symptoms-table.ts';
import { type FindingCode, FINDING_CODES } from '../../../src/model/findings/finding-codes.ts';
import { gatherFacts } from '../../../src/model/findings/facts.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { cylinderH, lookAt } from '../../support/cylinder-h.ts';
import { FINDING_CASES, soundJob } from '../../support/finding-cases.ts';
import { changed } from '../../support/job-builder.ts';
import { inches } from '../../support/values.ts';

function explained(id: string, job: Job) {
  const symptom = symptomOf(id);
  if (symptom === undefined) throw new Error(`no symptom ${id}`);
  const { bench, assembly, evaluation } = lookAt(job);
  return diagnose(symptom, gatherFacts(bench, assembly, evaluation));
}

const inJob = (code: FindingCode) => FINDING_CASES[code]()[0];

describe('the cause that was built in comes first', () => {
  test.each([
    ['stops-short', 'spring-solid', inJob('driver-strikes-cap')],
    ['stops-short', 'nose', inJob('nose-too-high')],
    ['stops-short', 'wide', inJob('part-too-wide')],
    ['stops-short', 'foreign', inJob('ball-doubled')],
    ['no-turn', 'common', inJob('same-error-everywhere')],
    ['no-turn', 'mixed', inJob('mixed-lines')],
    ['one-blocks', 'ball', inJob('ball-missing')],
    ['lifted', 'low', inJob('turns-when-lifted')],
    ['lifted', 'bow', inJob('turns-when-rocked')],
    ['drawn', 'stop', inJob('turns-when-drawn')],
    ['a-little', 'waist', inJob('all-waists-at-line')],
    ['rough', 'edge', inJob('plug-edge-wears')],
    ['trapped', 'end-play', inJob('end-play-catches')],
    ['trapped', 'steep', inJob('too-steep-coming-out')],
    ['pulls-out', 'no-peak', inJob('pulls-out-turned')],
    ['no-key', 'split', inJob('split-at-line-at-rest')],
    ['no-key', 'short', inJob('driver-below-at-rest')],
    ['no-key', 'none', inJob('no-driver')],
    ['any-key', 'loose', inJob('loose-for-neighbour')],
    ['any-key', 'hangs', inJob('hangs-above-key')],
    ['rattles', 'waist', inJob('all-waists-at-line')],
  ])('%s: %s', (symptom, cause, job) => {
    const [first] = explained(symptom, job);
    expect(first).toMatchObject({ cause, standing: 'your readings show it' });
    expect(first?.because[0]?.show).not.toBeNull();
  });
});

test('a chamber that is far too high explains that one chamber blocks, with its amount', () => {
  const job = changed(soundJob(), (copy) => (copy.groups[1]!.height = inches(0.295)));
  const [first] = explained('one-blocks', job);
  expect(first).toMatchObject({ cause: 'off', standing: 'your readings show it' });
  expect(first?.because[0]?.text).toBe('Chamber 2 is too high, .006 in outside where it turns.');
});

test('what is nearly so comes before what is not, and what is not measured says what to measure', () => {
  // cylinder H itself: the spring of chamber 3 is .011 from solid, and nobody measured its end play
  const short = explained('stops-short', cylinderH());
  expect(short[0]).toMatchObject({ cause: 'spring-solid', standing: 'near' });
  expect(short[0]?.because[0]?.text).toBe(
    'The spring of chamber 3 is .011 in from solid at the worst place.',
  );
  const trapped = explained('trapped', soundJob()).find((each) => each.cause === 'end-play');
  expect(trapped).toMatchObject({ standing: 'not measured yet', because: [] });
  expect(trapped?.measure).toMatch(/how far it comes forward/u);
});

test('in a sound job nothing is said to be shown, and looking ranks before what the readings speak against', () => {
  for (const { id } of SYMPTOMS) {
    const all = explained(id, soundJob());
    expect(
      all.filter((each) => each.standing === 'your readings show it'),
      id,
    ).toEqual([]);
    const order = all.map(({ standing }) => standing);
    if (order.includes('only looking tells'))
      expect(order.lastIndexOf('only looking tells'), id).toBeLessThan(
        order.concat('not in your readings').indexOf('not in your readings'),
      );
  }
});

test('every finding that keeps a lock from working is an explanation of some symptom', () => {
  const used = new Set<string>(SYMPTOMS.flatMap(({ causes }) => causes.flatMap(({ codes }) => codes)));
  const notes: readonly FindingCode[] = [
    'readings-spread',
    'bottom-pin-as-driver',
    'no-driver-fits',
    'part-used-twice',
  ];
  expect(FINDING_CODES.filter((code) => !used.has(code) && !notes.includes(code))).toEqual([]);
});
