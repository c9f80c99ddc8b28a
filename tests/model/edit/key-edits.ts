/** Edits of keys and of how they sit, each with what it is done to; see changes.golden.test.ts. */
import { benchOutcome, recordBench } from '../../../src/model/edit/edit-bench.ts';
import {
  setBladeHeight,
  setCutAngle,
  setCutOverBall,
  setCutPosition,
  setCutRootDepth,
  setOverBallDiameter,
  setRootFlat,
  setStop,
  setTip,
  slideCuts,
} from '../../../src/model/edit/edit-key.ts';
import { addKey, removeKey, renameKey, sayKeyGoes } from '../../../src/model/edit/edit-keys.ts';
import {
  changeSeating,
  feltWith,
  pinRoute,
  setBottomEdge,
  setFelt,
  setKeywayFloorHeight,
  setPlugMinusFloor,
  setStandsUpBy,
  setStopShort,
} from '../../../src/model/edit/edit-seating.ts';
import { knownSet, knownStack, setKnownStack } from '../../../src/model/edit/known-set.ts';
import { spaceChambers, spaceCuts, spacingOf } from '../../../src/model/edit/spacing.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { Edits } from '../../support/edit-text.ts';
import { FIRST } from '../../support/paired-job.ts';
import { changed } from '../../support/job-builder.ts';
import { assumedInches, degrees, inches } from '../../support/values.ts';

const EVEN = { first: 0.2, spacing: 0.15 };
/** The same with cuts that nobody looked for, and a tip that nobody looked for either. */
const assumedCuts = (job: Job, isTipAssumed = true) =>
  changed(job, (copy) => {
    for (const cut of copy.keys[0]!.cuts) cut.position = assumedInches(0.3, 0.3, 0.3);
    if (isTipAssumed) copy.keys[0]!.tip!.position = assumedInches(1, 0.9, 1.1);
  });
/** Chambers that stand in the file in another order than they lie in. */
const shuffled = (job: Job) =>
  changed(job, (copy) => {
    copy.cylinders[0]!.chambers.reverse();
  });

export const KEY_EDITS: Edits = {
  'metal under cut 2': (job) => setCutRootDepth(job, 'key', 'cut-2', inches(0.29)),
  'metal under cut 2 taken away': (job) => setCutRootDepth(job, 'key', 'cut-2', undefined),
  'over the ball': (job) => setCutOverBall(job, 'key', 'cut-1', inches(0.37), inches(0.1)),
  'over the ball taken away': (job) => setCutOverBall(job, 'spare', 'spare-cut-1', undefined, inches(0.1)),
  'another ball laid in': (job) => setOverBallDiameter(job, 'spare', inches(0.09)),
  'cut 3 lies elsewhere': (job) => setCutPosition(job, 'key', 'cut-3', inches(0.55)),
  'cuts slid': (job) => slideCuts(job, 'key', 0.127),
  'cuts slid back': (job) => slideCuts(job, 'b-key', -0.127),
  'cuts slid by nothing': (job) => slideCuts(job, 'key', 0),
  'root flat': (job) => setRootFlat(job, 'spare', inches(0.04)),
  'cut angle': (job) => setCutAngle(job, 'key', degrees(100)),
  'cut angle taken away': (job) => setCutAngle(job, 'b-key', undefined),
  'blade height': (job) => setBladeHeight(job, 'key', inches(0.33)),
  'blade height taken away': (job) => setBladeHeight(job, 'key', undefined),
  'nose height': (job) => setTip(job, 'key', 'noseHeight', inches(0.07)),
  'end of the blade taken away': (job) => setTip(job, 'key', 'position', undefined),
  'end of a blade of which nothing is known': (job) =>
    setTip(
      changed(job, (copy) => {
        delete copy.keys[0]!.tip;
      }),
      'key',
      'position',
      inches(1.1),
    ).keys[0]?.tip,
  'stops at its tip': (job) => setStop(job, 'cylinder', 'key', 'tip', inches(1.2)),
  'stops at its shoulder': (job) => setStop(job, 'b-cylinder', 'b-key', 'shoulder', inches(1.3)),
  'stops where it stops': (job) => setStop(job, 'cylinder', 'key', 'shoulder', inches(1.2)),
  'stop of no key': (job) => setStop(job, 'cylinder', 'none', 'tip', inches(1.2)),
  'cuts laid out evenly': (job) => spaceCuts(job, 'spare', EVEN),
  'cuts laid out evenly in mm': (job) =>
    spaceCuts(
      changed(job, (copy) => void (copy.settings.unit = 'mm')),
      'key',
      { first: 5, spacing: 4 },
    ),
  'chambers laid out evenly, cuts measured': (job) => spaceChambers(job, FIRST, EVEN),
  'chambers laid out evenly, cuts assumed': (job) => spaceChambers(assumedCuts(job), FIRST, EVEN),
  'chambers laid out evenly, one cut measured': (job) =>
    spaceChambers(
      changed(assumedCuts(job), (copy) => void (copy.keys[0]!.cuts[1]!.position = inches(0.4))),
      FIRST,
      EVEN,
    ),
  'chambers laid out evenly, tip measured': (job) => spaceChambers(assumedCuts(job, false), FIRST, EVEN),
  'chambers laid out evenly, stop at the tip': (job) =>
    spaceChambers(
      changed(assumedCuts(job), (copy) => void (copy.keys[0]!.stop.kind = 'tip')),
      FIRST,
      EVEN,
    ),
  'chambers laid out evenly, no key': (job) =>
    spaceChambers(job, { cylinder: 'b-cylinder', key: null }, EVEN),
  'chambers laid out evenly, in the file the other way round': (job) =>
    spaceChambers(shuffled(job), FIRST, EVEN),
  'spacing of the chambers': (job) => {
    const places = (at: Job) => at.cylinders[0]!.chambers.map(({ position }) => position);
    return {
      inches: spacingOf(places(job), 'in'),
      mm: spacingOf(places(job), 'mm'),
      shuffled: spacingOf(places(shuffled(job)), 'in'),
      one: spacingOf([inches(0.3)], 'in'),
      two: spacingOf([inches(0.5), inches(0.3)], 'in'),
      none: spacingOf([], 'in'),
    };
  },
  'another key': (job, newId) => addKey(job, 'cylinder', 'Third', newId).job,
  'another key for chambers the other way round': (job, newId) =>
    addKey(shuffled(job), 'cylinder', 'Third', newId).job.keys.at(-1)?.cuts,
  'another key for one chamber, in mm': (job, newId) => {
    const small = changed(job, (copy) => {
      copy.settings.unit = 'mm';
      copy.cylinders[1]!.chambers.length = 1;
    });
    return addKey(small, 'b-cylinder', 'Third', newId).job.keys.at(-1);
  },
  'another key for no chamber': (job, newId) =>
    addKey(
      changed(job, (copy) => void (copy.cylinders[1]!.chambers = [])),
      'b-cylinder',
      'Third',
      newId,
    ).job.keys.at(-1),
  renamed: (job) => renameKey(job, 'spare', 'Old one'),
  'taken away': (job) => removeKey(job, 'key'),
  'taken away, the spare': (job) => removeKey(job, 'spare'),
  'what goes with each': (job) => ['key', 'spare', 'b-key'].map((id) => ({ id, text: sayKeyGoes(job, id) })),
  'what goes with one nothing is known of': (job) =>
    sayKeyGoes(
      changed(job, (copy) => {
        copy.seatings = [];
        copy.benchResults = [];
        copy.keys[0]!.cuts.length = 1;
      }),
      'key',
    ),
};

const LOWER = {
  cylinder: 'cylinder',
  key: 'key',
  chamber: 'chamber-1',
  items: [{ part: 'ball-1' }, { part: 'bottom-pin-1' }],
};
const OLD = { ...LOWER, items: [{ part: 'old-pin-1' }] };
const TEST = { plan: 'plan', key: 'key', chamber: 'chamber-1', items: LOWER.items };
const STOOD = { stack: inches(0.4), reading: inches(0.03), items: LOWER.items };

export const SEATING_EDITS: Edits = {
  'a pairing not there yet': (job) =>
    changeSeating(job, 'b-cylinder', 'spare', (each) => ({ ...each, bottomEdge: 'unknown' })),
  'edge level': (job) => setBottomEdge(job, 'cylinder', 'key', 'level'),
  'edge not known': (job) => setBottomEdge(job, 'cylinder', 'spare', 'unknown'),
  'edge above': (job) => setBottomEdge(job, 'b-cylinder', 'b-key', 'above'),
  'metal under the key': (job) => setKeywayFloorHeight(job, 'b-cylinder', 'b-key', inches(0.07)),
  'metal under the key taken away': (job) => setKeywayFloorHeight(job, 'cylinder', 'key', undefined),
  'metal under the key taken away where nothing was answered': (job) =>
    setKeywayFloorHeight(job, 'b-cylinder', 'b-key', undefined),
  'plug less floor': (job) => setPlugMinusFloor(job, 'cylinder', 'spare', inches(0.43)),
  'plug less floor taken away': (job) => setPlugMinusFloor(job, 'b-cylinder', 'b-key', undefined),
  'stops short': (job) => setStopShort(job, 'cylinder', 'key', inches(0.01)),
  'does not stop short': (job) => setStopShort(job, 'b-cylinder', 'b-key', undefined),
  'stood up again': (job) => setStandsUpBy(job, 'cylinder', 'key', 'chamber-1', STOOD),
  'stood up in chamber 3': (job) => setStandsUpBy(job, 'cylinder', 'key', 'chamber-3', STOOD),
  'stood up taken away': (job) => setStandsUpBy(job, 'cylinder', 'key', 'chamber-2', undefined),
  'felt level now': (job) => setFelt(job, LOWER, 'level'),
  'felt with the old pin taken back': (job) => setFelt(job, OLD, null),
  'felt with the spare key': (job) => setFelt(job, { ...LOWER, key: 'spare' }, 'below'),
  'what was felt': (job) => ({
    lower: feltWith(job.seatings[0]!, 'chamber-1', LOWER.items),
    old: feltWith(job.seatings[0]!, 'chamber-1', OLD.items),
    'ball alone': feltWith(job.seatings[0]!, 'chamber-1', LOWER.items.slice(0, 1)),
    'the other way round': feltWith(job.seatings[0]!, 'chamber-1', LOWER.items.toReversed()),
    elsewhere: feltWith(job.seatings[0]!, 'chamber-2', LOWER.items),
    unpaired: feltWith(null, 'chamber-1', LOWER.items),
  }),
  'route pinned': (job) => pinRoute(job, 'cylinder', 'key', 'chamber-2', 'known set'),
  'another route pinned': (job) => pinRoute(job, 'cylinder', 'key', 'chamber-1', 'stands up by'),
  'route left open': (job) => pinRoute(job, 'cylinder', 'key', 'chamber-3', null),
  'tried again': (job) => recordBench(job, TEST, false, '2026-03-05'),
  'tried with the spare key': (job) => recordBench(job, { ...TEST, key: 'spare' }, true, '2026-03-05'),
  'trial taken back': (job) => recordBench(job, TEST, null, ''),
  outcomes: (job) => ({
    tried: benchOutcome(job, TEST),
    'chamber 2': benchOutcome(job, {
      ...TEST,
      chamber: 'chamber-2',
      items: [{ part: 'ball-2' }, { part: 'bottom-pin-2' }],
    }),
    'all, spare': benchOutcome(job, { ...TEST, key: 'spare', chamber: 'all', items: [] }),
    'other plan': benchOutcome(job, { ...TEST, plan: 'found' }),
    'other key': benchOutcome(job, { ...TEST, key: 'spare' }),
    'other chamber': benchOutcome(job, { ...TEST, chamber: 'chamber-2' }),
    'other parts': benchOutcome(job, { ...TEST, items: [] }),
  }),
};

const WHERE = { cylinder: 'cylinder', key: 'key' };
const OTHER = { cylinder: 'b-cylinder', key: 'b-key' };
const SPARE = { cylinder: 'cylinder', key: 'spare' };

export const SET_EDITS: Edits = {
  sets: (job) =>
    [WHERE, SPARE, OTHER].map((where) => ({ id: where.key, plan: knownSet(job, where)?.id ?? null })),
  stacks: (job) => [
    ...['chamber-1', 'chamber-2', 'chamber-3'].map((chamber) => knownStack(job, WHERE, chamber) ?? 'none'),
    knownStack(job, SPARE, 'chamber-1') ?? 'none',
  ],
  'chamber 1 renewed': (job, newId) => setKnownStack(job, WHERE, 'chamber-1', inches(0.18), newId),
  'chamber 2 renewed, a pin alone': (job, newId) =>
    setKnownStack(job, WHERE, 'chamber-2', inches(0.18), newId),
  'chamber 3 added, where no ball is': (job, newId) =>
    setKnownStack(job, WHERE, 'chamber-3', inches(0.18), newId),
  'begun for the spare key': (job, newId) => setKnownStack(job, SPARE, 'chamber-1', inches(0.18), newId),
  'begun in the second cylinder': (job, newId) =>
    setKnownStack(job, OTHER, 'b-chamber-1', inches(0.18), newId),
  'begun where the plan has no stack': (job, newId) =>
    setKnownStack(
      changed(job, (copy) => void copy.plans[1]!.stacks.shift()),
      OTHER,
      'b-chamber-1',
      inches(0.18),
      newId,
    ),
  'begun where there is no plan': (job, newId) =>
    setKnownStack(
      changed(job, (copy) => void (copy.plans = copy.plans.filter(({ id }) => id !== 'b-plan'))),
      OTHER,
      'b-chamber-1',
      inches(0.18),
      newId,
    ),
  'nothing taken away where nothing is': (job, newId) =>
    setKnownStack(job, OTHER, 'b-chamber-1', undefined, newId),
  'chamber 1 taken away': (job, newId) => setKnownStack(job, WHERE, 'chamber-1', undefined, newId),
  'chamber 3 taken away, which it has not': (job, newId) =>
    setKnownStack(job, WHERE, 'chamber-3', undefined, newId),
  'all taken away': (job, newId) =>
    setKnownStack(
      setKnownStack(job, WHERE, 'chamber-1', undefined, newId),
      WHERE,
      'chamber-2',
      undefined,
      newId,
    ),
  'all taken away, one of two sets': (job, newId) => {
    const two = changed(job, (copy) => {
      copy.plans.push({ id: 'found-2', cylinder: 'cylinder', kind: 'as found', stacks: [] });
      copy.seatings[0]!.knownSets = ['found-2', 'found'];
      copy.seatings[2]!.knownSets = ['found'];
    });
    return setKnownStack(two, SPARE, 'chamber-1', undefined, newId);
  },
};
