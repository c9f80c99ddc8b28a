/** Edits of parts in the bag and of plans, each with what it is done to; see changes.golden.test.ts. */
import { asPlanned, planToBuild, putInPlan, setLocked } from '../../../src/model/edit/edit-plans.ts';
import {
  measuredOnBall,
  setDimpleMouth,
  setHeightOnBall,
  setPartCondition,
  setPartEnd,
  setPartFrom,
  setPartLabel,
  setPartOriginal,
  setPartQuantity,
} from '../../../src/model/edit/edit-parts.ts';
import { keepPlanAs } from '../../../src/model/edit/keep-plan.ts';
import {
  freeLabel,
  freshLabels,
  labelsOf,
  labelTrouble,
  nextLabel,
  sameLabel,
} from '../../../src/model/edit/labels.ts';
import { heldParts, isMeasured, withoutStandIns } from '../../../src/model/edit/loose-ends.ts';
import { addParts, copyPart, type NewPart, roomForParts } from '../../../src/model/edit/loose-parts.ts';
import { removeParts, whatGoesWith } from '../../../src/model/edit/remove-parts.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { Part } from '../../../src/model/schema/parts-schema.ts';
import type { Edits } from '../../support/edit-text.ts';
import { changed } from '../../support/job-builder.ts';
import { assumedInches, inches, statedInches } from '../../support/values.ts';

const PIN: NewPart = {
  kind: 'pin',
  label: null,
  length: inches(0.21),
  onBall: null,
  diameter: inches(0.115),
  lower: null,
  upper: null,
  quantity: 1,
  from: ' ',
  original: false,
  condition: null,
};
const crowded = (job: Job, parts: number, groups = 0) =>
  changed(job, (copy) => {
    const [part] = copy.parts;
    copy.parts = Array.from({ length: parts }, (_, i) => ({ ...part!, id: `p${i}`, label: `p${i}` }));
    copy.groups = Array.from({ length: groups }, (_, i) => ({ ...copy.groups[0]!, id: `g${i}` }));
  });

export const BAG_EDITS: Edits = {
  label: (job) => setPartLabel(job, 'free', ' A 1 '),
  quantity: (job) => setPartQuantity(job, 'free', 0),
  original: (job) => setPartOriginal(job, 'free-ball', false),
  condition: (job) => setPartCondition(job, 'free', 'poor'),
  'condition not looked at': (job) => setPartCondition(job, 'free', null),
  from: (job) => setPartFrom(job, 'free-ball', ' shed '),
  'from nowhere': (job) => setPartFrom(job, 'free', ' '),
  'lower end': (job) => setPartEnd(job, 'free', 0, 'dimpled'),
  'upper end': (job) => setPartEnd(job, 'free', 1, 'rounded edge'),
  'upper end of one nobody looked at': (job) => setPartEnd(job, 'bottom-pin-3', 1, 'pointed'),
  'dimple as wide': (job) =>
    setDimpleMouth(setPartEnd(job, 'free', 0, 'dimpled'), 'free', inches(0.06)).parts.find(
      ({ id }) => id === 'free',
    )?.ends?.[0],
  'dimple of one that has none': (job) => setDimpleMouth(job, 'free', inches(0.06)),
  'dimple of one nobody looked at': (job) => setDimpleMouth(job, 'bottom-pin-3', inches(0.06)),
  'measured on a ball': (job) =>
    ['stood', 'free-ball', 'bottom-pin-1', 'bottom-pin-3'].map(
      (id) => `${id} ${measuredOnBall(job, id)?.id ?? 'no'}`,
    ),
  'measured with two others': (job) =>
    measuredOnBall(
      changed(job, (copy) => void copy.groups.at(-1)!.parts.push('free')),
      'stood',
    )?.id ?? 'no',
  'on the ball again': (job, newId) => setHeightOnBall(job, 'stood', 'free-ball', inches(0.34), newId),
  'on another ball': (job, newId) => setHeightOnBall(job, 'stood', 'ball-1', inches(0.34), newId),
  'off the ball': (job, newId) => setHeightOnBall(job, 'stood', 'free-ball', undefined, newId),
  'off a ball it never stood on': (job, newId) => setHeightOnBall(job, 'stood', 'ball-1', undefined, newId),
  'one more pin': (job, newId) => addParts(job, [PIN], newId),
  'one of each kind, and one labelled': (job, newId) =>
    addParts(
      job,
      [
        {
          ...PIN,
          label: ' p03 ',
          lower: 'pointed',
          quantity: 4,
          original: true,
          condition: 'fair',
          from: ' shed ',
        },
        { ...PIN, kind: 'ball', lower: 'pointed' },
        { ...PIN, kind: 'spring', upper: 'domed' },
        { ...PIN, upper: 'domed', length: null, diameter: null },
        PIN,
      ],
      newId,
    ),
  'a pin standing on a ball': (job, newId) => addParts(job, [{ ...PIN, onBall: 'free-ball' }], newId),
  'a pin standing on a ball, not measured': (job, newId) =>
    addParts(job, [{ ...PIN, onBall: 'free-ball', length: null }], newId),
  'no part': (job, newId) => addParts(job, [], newId),
  room: (job) => [
    roomForParts(job),
    roomForParts(crowded(job, 3, 5)),
    roomForParts(changed(job, (copy) => void (copy.parts = new Array<Part>(20_001)))),
  ],
  copied: (job, newId) => copyPart(job, 'free', newId),
  'copied, one that stood on a ball': (job, newId) => copyPart(job, 'stood', newId),
  'copied, a ball': (job, newId) => copyPart(job, 'free-ball', newId),
  'copied, one measured with two others': (job, newId) =>
    copyPart(
      changed(job, (copy) => void copy.groups.at(-1)!.parts.push('free')),
      'stood',
      newId,
    ).groups.length,
};

const sinks = (job: Job, chamber: number, part: string) =>
  changed(
    job,
    (copy) => void (copy.plans[0]!.stacks[chamber]!.rest = { items: [{ part }], belowLine: inches(0.05) }),
  );
const says = (job: Job, ...ids: readonly string[]) => whatGoesWith(job, new Set(ids));

export const REMOVALS: Edits = {
  'one in use': (job) => removeParts(job, new Set(['bottom-pin-1'])),
  'one of a plan that was found': (job) => removeParts(job, new Set(['old-pin-1'])),
  'two of one plan': (job) => removeParts(job, new Set(['driver-3', 'spring-3'])),
  'a loose one': (job) => removeParts(job, new Set(['free'])),
  'the ball of a pin': (job) => removeParts(job, new Set(['free-ball'])),
  'one that only sank': (job) => removeParts(sinks(job, 2, 'free'), new Set(['free'])).plans[0],
  none: (job) => removeParts(job, new Set()),
  'what goes': (job) =>
    Object.fromEntries(
      [
        ['free'],
        ['bottom-pin-1'],
        ['ball-1'],
        ['ball-1', 'bottom-pin-1'],
        ['bottom-pin-3'],
        ['driver-1'],
        ['driver-1', 'driver-2'],
        ['old-pin-1'],
        ['old-ball-1'],
        ['free-ball'],
        ['free-ball', 'ball-1', 'ball-2', 'bottom-pin-1', 'bottom-pin-2', 'old-pin-1'],
      ].map((ids) => [ids.join(' + '), says(job, ...ids).join(' ')]),
    ),
  'what goes with one that only sank': (job) => says(sinks(job, 2, 'free'), 'free'),
  'what goes with one that sank twice': (job) => says(sinks(sinks(job, 2, 'free'), 1, 'free'), 'free'),
  'what goes with one built in': (job) =>
    says(
      changed(job, (copy) => void (copy.plans[2]!.kind = 'as built')),
      'old-pin-2',
      'driver-1',
    ),
};

const LANDING = [{ chamber: 'chamber-1', items: [{ part: 'free', flipped: true as const }] }];

export const PLAN_EDITS: Edits = {
  'plan to build': (job) => {
    const found = changed(job, (copy) => void (copy.plans[0]!.kind = 'as built'));
    const ask = (at: Job, cylinder: string, picked: string | null) =>
      planToBuild(at, cylinder, picked) ?? 'none';
    return {
      'the planned one': ask(job, 'cylinder', null),
      'not the one shown, which was found': ask(job, 'cylinder', 'found'),
      'the one shown, planned': ask(
        changed(job, (copy) => void (copy.plans[2]!.kind = 'planned')),
        'cylinder',
        'found',
      ),
      'none planned, one shown': ask(found, 'cylinder', 'found'),
      'none planned, none shown': ask(found, 'cylinder', null),
      'not one of another cylinder': ask(job, 'cylinder', 'b-plan'),
      'no plan at all': ask(job, 'none', null),
    };
  },
  landed: (job, newId) => putInPlan(job, 'plan', LANDING, newId).job,
  'landed in a plan that was found': (job, newId) => putInPlan(job, 'found', LANDING, newId).job,
  'landed twice, once where no stack is': (job, newId) => {
    const bare = changed(job, (copy) => void copy.plans[0]!.stacks.pop());
    return putInPlan(
      bare,
      'plan',
      [...LANDING, { chamber: 'chamber-3', items: [{ part: 'stood' }] }],
      newId,
    ).job.plans[0]!.stacks.map(
      ({ chamber, items }) => `${chamber} ${items.map(({ part }) => part).join(' ')}`,
    );
  },
  'landed on a part that is not there': (job, newId) => {
    const odd = changed(
      job,
      (copy) => void (copy.plans[0]!.stacks[0]!.items = [{ part: 'none' }, { part: 'driver-1' }]),
    );
    return putInPlan(odd, 'plan', LANDING, newId).job.plans[0]!.stacks[0]!.items;
  },
  'as planned': (job, newId) =>
    ['plan', 'found'].map((id) => {
      const landed = asPlanned(job, job.plans.find((plan) => plan.id === id)!, newId);
      return `${id}: ${landed.plan}, ${landed.job === job ? 'same job' : 'a plan more'}`;
    }),
  locked: (job) => setLocked(job, 'plan', 'chamber-2', true),
  freed: (job) => setLocked(job, 'found', 'chamber-2', false),
  'kept as found': (job, newId) => keepPlanAs(job, 'plan', 'as found', newId),
  'kept as built': (job, newId) => keepPlanAs(job, 'found', 'as built', newId),
  'kept, with a part that is not there': (job, newId) =>
    keepPlanAs(
      changed(
        job,
        (copy) => void (copy.plans[0]!.stacks[0]!.items = [{ part: 'none' }, { part: 'driver-1' }]),
      ),
      'plan',
      'as built',
      newId,
    ).plans.at(-1)!.stacks[0]!.items,
  'held parts': (job) => [...heldParts(job)].sort(),
  'measured, and what makes it so': (job) => {
    const bare: Part = { id: 'p', label: 'p', kind: 'pin', quantity: 1, original: true };
    const assumed = assumedInches(0.1, 0.09, 0.11);
    return {
      nothing: isMeasured(bare),
      assumed: isMeasured({
        ...bare,
        diameter: assumed,
        length: assumed,
        solid: assumed,
        free: assumed,
        wire: assumed,
      }),
      ...Object.fromEntries(
        (['diameter', 'length', 'solid', 'free', 'wire'] as const).map((name) => [
          name,
          isMeasured({ ...bare, [name]: inches(0.1) }),
        ]),
      ),
      stated: isMeasured({ ...bare, length: statedInches(0.1) }),
      two: isMeasured({ ...bare, quantity: 2 }),
      none: isMeasured({ ...bare, quantity: 0 }),
      from: isMeasured({ ...bare, from: '' }),
      parts: job.parts.filter((part) => !isMeasured(part)).map(({ id }) => id),
    };
  },
  'stand-ins that go': (job) => {
    const bare = { kind: 'pin', quantity: 1, original: false } as const;
    const odd = changed(job, (copy) => {
      copy.parts.push(
        ...['alone', 'asked-not', 'in-plan', 'sunk', 'felt', 'stood-up', 'tried', 'grouped'].map((id) => ({
          ...bare,
          id,
          label: id,
        })),
        { ...bare, id: 'measured', label: 'measured', length: inches(0.1) },
      );
      copy.plans[1]!.stacks[0]!.items.push({ part: 'in-plan' });
      copy.plans[0]!.stacks[1]!.rest = { items: [{ part: 'sunk' }], belowLine: inches(0.1) };
      copy.seatings[0]!.felt[0]!.items.push({ part: 'felt' });
      copy.seatings[0]!.standsUpBy[0]!.items.push({ part: 'stood-up' });
      copy.benchResults[2]!.items.push({ part: 'tried' });
      copy.groups[0]!.parts.push('grouped');
    });
    const asked = ['alone', 'in-plan', 'sunk', 'felt', 'stood-up', 'tried', 'grouped', 'measured', 'none'];
    const left = new Set(withoutStandIns(odd, asked).parts.map(({ id }) => id));
    return {
      gone: odd.parts.filter(({ id }) => !left.has(id)).map(({ id }) => id),
      'nothing asked': withoutStandIns(odd, []) === odd,
      'nothing goes': withoutStandIns(odd, ['measured']) === odd,
    };
  },
};

const named = (...labels: readonly string[]) => labels.map((label) => ({ label }));
const LONG = 'x'.repeat(80);

export const LABEL_ANSWERS: Edits = {
  alike: () => [' A  1 ', 'a 1', 'A\t1', 'A1'].map((label) => sameLabel(label)),
  next: () => ({
    none: nextLabel([], 'pin'),
    'after nine': nextLabel(named('P09'), 'pin'),
    'after a gap': nextLabel(named('P02', 'P05', 'p 9', 'XP7', 'P8x'), 'pin'),
    'after a hundred': nextLabel(named('P100'), 'pin'),
    'of another kind': nextLabel(named('P05'), 'ball'),
    springs: nextLabel(named('S01'), 'spring'),
    'a number too long': nextLabel(named('P1234567890'), 'pin'),
  }),
  several: () => {
    const fresh = freshLabels('ball', labelsOf(named('B01')));
    return [1, 2, 3].map(() => fresh.next().value);
  },
  'several, one taken meanwhile': () => {
    const taken = labelsOf(named('B01'));
    const fresh = freshLabels('ball', taken);
    const first = fresh.next().value;
    taken.add('b03');
    return [first, fresh.next().value];
  },
  free: () => {
    const taken = labelsOf(named('A1', 'a1-2', LONG));
    const given = [' A1 ', 'A1', 'B', 'b', LONG, LONG].map((label) => freeLabel(label, taken));
    return given.map((label) =>
      label.length > 20 ? `${label.length} characters, …${label.slice(-4)}` : label,
    );
  },
  trouble: (job) =>
    Object.fromEntries(
      [' ', LONG, `${LONG}x`, ` ${LONG} `, 'p01', ' B01 ', 'P02', 'new'].map((label) => [
        `“${label.length > 20 ? `${label.trim().length} characters` : label}”`,
        labelTrouble(job.parts, 'free', label) ?? 'none',
      ]),
    ),
};
