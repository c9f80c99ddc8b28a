import { describe, expect, test } from 'vitest';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import { crossings, keyOutcomes } from '../../../src/model/keying/key-outcomes.ts';
import { setIntent } from '../../../src/model/keying/intent.ts';
import { planKeys } from '../../../src/model/keying/plan-keys.ts';
import { putChosen } from '../../../src/model/keying/put-chosen.ts';
import { putKeysPlan, TO_MAKE } from '../../../src/model/keying/put-plan.ts';
import { matchTwoKeys } from '../../../src/model/matching/two-keys.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { newJob } from '../../../src/model/edit/new-job.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { loose, withBag } from '../../support/bag-job.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { drawnKeysJob } from '../../support/drawn-keys-job.ts';
import { withKey } from '../../support/keyed-job.ts';
import { inches } from '../../support/values.ts';

const inInches = (mm: number | null) => (mm ?? Number.NaN) / 25.4;
const ids = () => {
  let count = 0;
  return () => `new-${(count += 1)}`;
};
/** What each chamber calls for is .432 in less the root depth; the keys' pins stand on their roots. */
const job = withKey(
  withKey(
    buildJob({ chambers: [0.26, 0.28, 0.26].map((rootDepth) => ({ rootDepth })) }),
    'second',
    [0.23, 0.28, 0.29],
  ),
  'third',
  [0.2, 0.28, 0.29],
);
const asks = (...keys: string[]) => ({
  cylinder: 'cylinder',
  plan: 'plan',
  wants: keys.map((key) => ({ key, line: 'line' })),
});
const does = (planned: Job) =>
  keyOutcomes(planned, { cylinder: 'cylinder', plan: 'plan' }, (selection) => evaluate(planned, selection));

describe('two keys on one line', () => {
  const plan = planKeys(job, asks('key', 'second'));

  test('a bottom pin for the one that calls for less, and the difference as master pin', () => {
    const lengths = plan.chambers.map(({ bottom, masters }) =>
      [bottom!, ...masters.map(({ length }) => length)].map((length) => Number(inInches(length).toFixed(6))),
    );
    expect(lengths).toEqual([[0.172, 0.03], [0.152], [0.142, 0.03]]);
  });

  test('put into the plan, both keys turn it, and the one nobody planned for does not', () => {
    const put = putKeysPlan(job, plan, ids()).job;
    expect(does(put).map(({ key, does: what }) => [key, what])).toEqual([
      ['key', 'plug'],
      ['second', 'plug'],
      ['third', 'nothing'],
    ]);
    expect(parseJob(JSON.parse(JSON.stringify(put)))).toMatchObject({ type: 'success' });
  });

  test('the new parts say that they are to make; pins that were measured stay on hand', () => {
    const put = putKeysPlan(job, plan, ids()).job;
    const made = put.parts.filter(({ from }) => from === TO_MAKE);
    expect(made.map(({ label }) => label)).toEqual([
      'bottom pin',
      'master pin',
      'bottom pin',
      'bottom pin',
      'master pin',
    ]);
    expect(put.parts.some(({ id }) => id === 'bottom-pin-1')).toBe(true);
  });

  test('planned anew, the parts that were only planned before are gone', () => {
    const newId = ids();
    const once = putKeysPlan(job, plan, newId).job;
    const twice = putKeysPlan(once, planKeys(once, asks('key', 'third')), newId).job;
    const again = putKeysPlan(twice, planKeys(twice, asks('key', 'second')), newId).job;
    expect(again.parts).toHaveLength(once.parts.length);
    expect(again.groups).toHaveLength(once.groups.length);
    expect(does(again).map(({ does: what }) => what)).toEqual(['plug', 'plug', 'nothing']);
  });

  test('a locked chamber stays as it is', () => {
    const locked = changed(job, (copy) => {
      copy.plans[0]!.stacks[0]!.locked = true;
    });
    const lockedPlan = planKeys(locked, asks('key', 'second'));
    expect(lockedPlan.chambers[0]).toMatchObject({ isLocked: true, splits: [] });
    const put = putKeysPlan(locked, lockedPlan, ids()).job;
    expect(put.plans[0]!.stacks[0]).toEqual(locked.plans[0]!.stacks[0]);
  });

  test('a plan as found stays; what is planned goes into a plan of its own', () => {
    const found = changed(job, (copy) => {
      copy.plans[0]!.kind = 'as found';
    });
    const put = putKeysPlan(found, planKeys(found, asks('key', 'second')), ids());
    expect(put.job.plans[0]).toEqual(found.plans[0]);
    expect(put.job.plans.find(({ id }) => id === put.plan)?.kind).toBe('planned');
  });

  test('a key crosses that turns what is meant for others only', () => {
    const put = putKeysPlan(job, plan, ids()).job;
    // the third key cut like the second one in chamber 1, like the first one elsewhere
    const crossed = changed(withKey(put, 'cross', [0.23, 0.28, 0.26]), (copy) => {
      copy.keys = copy.keys.filter(({ id }) => id !== 'third');
      copy.seatings = copy.seatings.filter(({ key }) => key !== 'third');
    });
    const meant = ['key', 'second'].reduce(
      (now, key) => setIntent(now, { key, cylinder: 'cylinder' }, 'plug'),
      crossed,
    );
    expect(crossings(does(meant))).toEqual([]);
    const said = setIntent(meant, { key: 'cross', cylinder: 'cylinder' }, 'nothing');
    expect(crossings(does(said))).toEqual([{ key: 'cross', line: 'line', meantFor: ['key', 'second'] }]);
    expect(does(said).find(({ key }) => key === 'cross')).toMatchObject({
      isAsMeant: false,
      meant: 'nothing',
    });
    expect(setIntent(said, { key: 'cross', cylinder: 'cylinder' }, null).intents).toEqual(meant.intents);
  });
});

test('three keys: two master pins where all three differ, one where two agree', () => {
  const plan = planKeys(job, asks('key', 'second', 'third'));
  const lengths = plan.chambers.map(({ bottom, masters }) =>
    [bottom!, ...masters.map(({ length }) => length)].map((length) => Number(inInches(length).toFixed(6))),
  );
  expect(lengths).toEqual([[0.172, 0.03, 0.03], [0.152], [0.142, 0.03]]);
  const put = putKeysPlan(job, plan, ids()).job;
  expect(does(put).map(({ does: what }) => what)).toEqual(['plug', 'plug', 'plug']);
});

test('parts on hand that are chosen for two keys take the place of the lower stacks; drivers and springs stay', () => {
  const disc = (id: string) =>
    loose(id, { length: 0.03, foot: { kind: 'bevel', width: 0.005, angleDeg: 45 }, top: { kind: 'dome' } });
  const pins = [0.172, 0.152, 0.142].map((length, i) => loose(`pin-${i + 1}`, { length }));
  const bagged = withBag(job, [...pins, disc('disc-1'), disc('disc-2')]);
  const [one, other] = asks('key', 'second').wants;
  const match = matchTwoKeys(bagged, { cylinder: 'cylinder', plan: 'plan', wants: [one!, other!] });
  const put = putChosen(bagged, 'plan', match.chambers, ids()).job;
  expect(put.plans[0]!.stacks[1]!.items.map(({ part }) => part)).toEqual(['pin-2', 'driver-2', 'spring-2']);
  expect(put.plans[0]!.stacks[0]!.items).toHaveLength(4);
  expect(does(put).map(({ does: what }) => what)).toEqual(['plug', 'plug', 'nothing']);
});

describe('a difference too thin for a master pin', () => {
  const near = withKey(
    buildJob({ chambers: [{ rootDepth: 0.26 }, { rootDepth: 0.26 }] }),
    'second',
    [0.257, 0.245],
  );
  const wants = asks('key', 'second');

  test('is told, and one split is offered where a height serves both', () => {
    const [first, second] = planKeys(near, wants).chambers;
    expect(inInches(first!.masters[0]!.length)).toBeCloseTo(0.003, 6);
    expect(first!.masters[0]!.isThin).toBe(true);
    expect(first!.offer?.splits[0]?.serves.map(({ offset }) => Number(inInches(offset).toFixed(4)))).toEqual([
      0, -0.003,
    ]);
    // .015 apart: no height stands in both windows
    expect(second!.masters[0]!.isThin).toBe(true);
    expect(second!.offer).toBeNull();
  });

  test('the least is what the person says', () => {
    const [, second] = planKeys(near, { ...wants, thinnest: 0.3 }).chambers;
    expect(second!.masters[0]!.isThin).toBe(false);
  });

  test('merged, the stack has no master pin and both keys turn', () => {
    const plan = planKeys(near, { ...wants, merged: ['chamber-1'] });
    expect(plan.chambers[0]).toMatchObject({ isMerged: true, masters: [], offer: null });
    const put = putKeysPlan(near, plan, ids()).job;
    expect(does(put).map(({ does: what }) => what)).toEqual(['plug', 'plug']);
  });
});

describe('heights that are not known', () => {
  test('a cut nobody measured: the chamber says so, the others are planned', () => {
    const open = changed(job, (copy) => {
      delete copy.keys[1]!.cuts[1]!.rootDepth;
    });
    const { chambers } = planKeys(open, asks('key', 'second'));
    expect(chambers.map(({ problem }) => problem === null)).toEqual([true, false, true]);
    expect(chambers[1]?.problem).toMatch(
      /^The heights that the keys call for in chamber 2 are not known yet/,
    );
  });

  test('a key that never was in this plug: its metal under the key is a guess, and that is said', () => {
    const unseated = changed(job, (copy) => {
      copy.seatings = copy.seatings.filter(({ key }) => key !== 'second');
    });
    expect(planKeys(unseated, asks('key', 'second')).guessed).toEqual(['second']);
    expect(planKeys(job, asks('key', 'second')).guessed).toEqual([]);
  });

  test('an empty job: nothing can be planned, nothing breaks', () => {
    const empty = newJob({ newId: ids(), unit: 'in', chambers: 5 });
    const { id, lines } = empty.cylinders[0]!;
    const want = { key: empty.keys[0]!.id, line: lines[0]!.id };
    const plan = planKeys(empty, { cylinder: id, plan: empty.plans[0]!.id, wants: [want, want] });
    expect(plan.chambers).toHaveLength(5);
    expect(plan.chambers.every(({ problem }) => problem !== null)).toBe(true);
    expect(putKeysPlan(empty, plan, ids()).job).toEqual(empty);
  });
});

test('from an empty job on balls: ball + bottom pin together, and placeholders go', () => {
  const newId = ids();
  const empty = newJob({ newId, unit: 'in', chambers: 3 });
  const measured = changed(empty, (copy) => {
    copy.instruments[0]!.id = 'caliper';
    copy.settings.instrument = 'caliper';
    copy.cylinders[0]!.bodies[0]!.outerDiameter = inches(0.5);
    copy.seatings[0]!.keywayFloorHeight = inches(0.05);
    copy.keys[0]!.cuts.forEach((cut, i) => (cut.rootDepth = inches([0.25, 0.22, 0.27][i]!)));
    copy.keys[0]!.id = 'key';
    copy.seatings[0]!.key = 'key';
  });
  const two = withKey(measured, 'second', [0.22, 0.25, 0.27]);
  const { id, lines } = two.cylinders[0]!;
  const wants = ['key', 'second'].map((key) => ({ key, line: lines[0]!.id }));
  const plan = planKeys(two, { cylinder: id, plan: two.plans[0]!.id, wants });
  expect(inInches(plan.chambers[0]!.ball)).toBeCloseTo(0.115, 6);
  const put = putKeysPlan(two, plan, newId).job;
  expect(put.parts.filter(({ label }) => label === 'bottom pin').map(({ from }) => from)).toEqual([
    TO_MAKE,
    TO_MAKE,
    TO_MAKE,
  ]);
  expect(put.groups).toHaveLength(3);
  for (const key of ['key', 'second']) {
    const { chambers } = evaluate(put, { cylinder: id, key, plan: put.plans[0]!.id });
    for (const { verdicts } of chambers) expect(verdicts[0]?.verdict).toMatch(/level|can't say yet/);
    for (const { verdicts, splits } of chambers)
      expect(Math.abs(inInches(splits[verdicts[0]!.split!]!.offset))).toBeLessThan(0.0002);
  }
});

test.each(Array.from({ length: 60 }, (_, i) => i + 1))(
  'one split in place of several turns every key it serves, job %i',
  (seed) => {
    const drawn = drawnKeysJob(seed);
    const ask = { cylinder: 'cylinder', plan: 'plan', wants: drawn.wants };
    const { chambers } = planKeys(drawn.job, ask);
    const merged = planKeys(drawn.job, { ...ask, merged: chambers.map(({ chamber }) => chamber) });
    const offered = chambers.flatMap(({ offer }) => offer?.splits ?? []);
    for (const { serves } of [...offered, ...merged.chambers.flatMap(({ splits }) => splits)]) {
      for (const { offset, lowest, highest } of serves.length < 2 ? [] : serves) {
        expect(offset).toBeGreaterThanOrEqual(lowest - 1e-6);
        expect(offset).toBeLessThanOrEqual(highest + 1e-6);
      }
    }
  },
);
