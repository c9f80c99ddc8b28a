/** Edits of what is in the holes, and of its pictures, each with what it is done to; see changes.golden.test.ts. */
import {
  setCoilEnds,
  setCoils,
  setPressed,
  setSpringWire,
  springWireOf,
} from '../../../src/model/edit/edit-spring.ts';
import { setDriverEnds, setKeyFoot, setPinTops } from '../../../src/model/edit/edit-shapes.ts';
import {
  changeStack,
  eachStack,
  lowerStackValue,
  restValue,
  setBallDiameter,
  setLowerStack,
  setPartLength,
  setPinDiameter,
  setRest,
} from '../../../src/model/edit/edit-stack.ts';
import { setWaistKind, setWaistSize } from '../../../src/model/edit/edit-waist.ts';
import { END_NAMES, endForm, endName } from '../../../src/model/edit/end-forms.ts';
import { driverEndsSeen, keyFoot, pinTopsSeen } from '../../../src/model/edit/seen-shapes.ts';
import { stackParts } from '../../../src/model/edit/stack-parts.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { EndForm } from '../../../src/model/schema/parts-schema.ts';
import type { Edits } from '../../support/edit-text.ts';
import { changed } from '../../support/job-builder.ts';
import { inches } from '../../support/values.ts';

/** What the first plan has in chamber 1 without its pin, and in chamber 2 nothing that rides on the key. */
const thinned = (job: Job) =>
  changed(job, (copy) => {
    const [one, two] = copy.plans[0]!.stacks;
    one!.items = [{ part: 'ball-1' }, { part: 'spring-1' }];
    two!.items = [{ part: 'spring-2' }];
  });
const flipped = (job: Job) =>
  changed(job, (copy) => void (copy.plans[0]!.stacks[0]!.items[1]!.flipped = true));

export const STACK_EDITS: Edits = {
  'a stack locked': (job) => changeStack(job, 'plan', 'chamber-2', (stack) => ({ ...stack, locked: true })),
  'length of a part': (job) => setPartLength(job, 'driver-2', 'length', inches(0.21)),
  'wire of a part': (job) => setPartLength(job, 'spring-2', 'wire', inches(0.01)),
  'length of a part taken away': (job) => setPartLength(job, 'old-pin-1', 'length', undefined),
  'ball and pin again': (job, newId) => setLowerStack(job, 'plan', 'chamber-1', inches(0.175), newId),
  'ball and pin, old plan': (job, newId) => setLowerStack(job, 'found', 'chamber-1', inches(0.175), newId),
  'ball and pin taken away': (job, newId) => setLowerStack(job, 'plan', 'chamber-1', undefined, newId),
  'ball and pin for the first time': (job, newId) =>
    setLowerStack(
      changed(job, (copy) => void (copy.groups = [])),
      'plan',
      'chamber-1',
      inches(0.175),
      newId,
    ),
  'pin alone': (job, newId) => setLowerStack(job, 'plan', 'chamber-3', inches(0.175), newId),
  'ball alone': (job, newId) =>
    setLowerStack(thinned(job), 'plan', 'chamber-1', inches(0.1), newId).parts[0]?.diameter,
  'neither ball nor pin': (job, newId) => {
    const bare = thinned(job);
    return setLowerStack(bare, 'plan', 'chamber-2', inches(0.1), newId) === bare;
  },
  'lower stacks': (job) => [
    ...['plan', 'found', 'b-plan'].flatMap((plan) =>
      eachStack(job, plan).map((parts) => lowerStackValue(parts) ?? 'none'),
    ),
    ...eachStack(thinned(job), 'plan').map((parts) => lowerStackValue(parts) ?? 'none'),
  ],
  'diameter of the balls': (job) => setBallDiameter(job, 'plan', inches(0.105)),
  'diameter of the pins': (job) => setPinDiameter(job, 'plan', inches(0.112)),
  'diameter of the pins, old plan': (job) => setPinDiameter(job, 'found', inches(0.112)),
  'sinks with the key out': (job) => setRest(job, 'plan', 'chamber-3', inches(0.06)),
  'sinks, a pin upside down': (job) =>
    setRest(flipped(job), 'plan', 'chamber-1', inches(0.06)).plans[0]?.stacks[0]?.rest,
  'does not sink': (job) => setRest(job, 'plan', 'chamber-1', undefined),
  'rest depths': (job) => [
    ...['plan', 'found'].flatMap((plan) => eachStack(job, plan).map((parts) => restValue(parts) ?? 'none')),
    ...eachStack(thinned(job), 'plan').map((parts) => restValue(parts) ?? 'none'),
  ],
  'by role': (job) =>
    [...eachStack(job, 'plan'), ...eachStack(job, 'found'), ...eachStack(thinned(job), 'plan')].map(
      ({ stack, ball, bottomPin, masterPins, driver, spring, lower, together }) => ({
        chamber: stack.chamber,
        ball: ball?.id ?? null,
        pin: bottomPin?.id ?? null,
        masters: masterPins.map(({ id }) => id).join(' '),
        driver: driver?.id ?? null,
        spring: spring?.id ?? null,
        lower: lower.map(({ part }) => part).join(' '),
        together: together?.id ?? null,
      }),
    ),
  'of a chamber without a stack': (job) => stackParts(job, job.plans[2]!, 'chamber-3'),
  'with a part that is not there': (job) =>
    stackParts(
      changed(job, (copy) => void (copy.parts = copy.parts.filter(({ id }) => id !== 'ball-1'))),
      job.plans[0]!,
      'chamber-1',
    )?.bottomPin?.id,
  'spool to mushroom': (job) => setWaistKind(job, 'driver-1', 'mushroom'),
  'made a spool': (job) => setWaistKind(job, 'driver-2', 'spool'),
  'made a serrated one, nothing measured, in mm': (job) => {
    const bare = changed(job, (copy) => {
      copy.settings.unit = 'mm';
      const driver = copy.parts.find(({ id }) => id === 'driver-2')!;
      delete driver.length;
      delete driver.diameter;
    });
    return setWaistKind(bare, 'driver-2', 'serrated').parts.find(({ id }) => id === 'driver-2')?.waist;
  },
  'plain again': (job) => setWaistKind(job, 'driver-1', null),
  'waist longer': (job) => setWaistSize(job, 'driver-1', 'length', inches(0.12)),
  'waist usual again': (job) => setWaistSize(job, 'driver-1', 'diameter', undefined),
  'waist of a plain one': (job) => setWaistSize(job, 'driver-2', 'from', inches(0.05)),
  'wound of phosphor bronze': (job) => setSpringWire(job, 'spring-2', 'phosphor bronze'),
  'names of wires': () => [81.7, 69, 41.4, 70, undefined].map((modulus) => `${springWireOf(modulus)}`),
  coils: (job) => setCoils(job, 'spring-2', 12),
  'coils not counted': (job) => setCoils(job, 'spring-1', undefined),
  'coils ground': (job) => setCoilEnds(job, 'spring-1', 'closed and ground'),
  'pressed again': (job) => setPressed(job, 'spring-1', 1, { length: inches(0.25), newtons: 0.9 }),
  'first pressing taken away': (job) => setPressed(job, 'spring-1', 0, null),
  'both pressings taken away': (job) => setPressed(setPressed(job, 'spring-1', 0, null), 'spring-1', 0, null),
  'pressed for the first time': (job) =>
    setPressed(job, 'spring-2', 1, { length: inches(0.25), newtons: 0.9 }),
};

const END_KINDS: readonly EndForm['kind'][] = ['flat', 'bevel', 'radius', 'dome', 'cone', 'cup', 'sphere'];
/** The same with every bottom pin, or every driver, ended so. */
const ended = (job: Job, which: 'pin' | 'driver', end: 0 | 1, form: EndForm) =>
  changed(job, (copy) => {
    for (const part of copy.parts) {
      if (part.id.startsWith(which === 'pin' ? 'bottom-pin' : 'driver')) {
        const ends = part.ends ?? [form, form];
        part.ends = end === 0 ? [form, ends[1]] : [ends[0], form];
      }
    }
  });
const withoutBalls = (job: Job) =>
  changed(job, (copy) => {
    for (const stack of copy.plans[0]!.stacks)
      stack.items = stack.items.filter(({ part }) => !part.startsWith('ball'));
  });
const seen = (job: Job) => ({
  tops: pinTopsSeen(job, 'plan'),
  drivers: driverEndsSeen(job, 'plan'),
  foot: keyFoot(job, 'plan'),
});

export const PICTURE_EDITS: Edits = {
  'tops domed': (job) => setPinTops(job, 'plan', 'domed'),
  'tops with a broken edge, old plan': (job) => setPinTops(job, 'found', 'broken edge'),
  'drivers with a rounded edge': (job) => setDriverEnds(job, 'plan', 'rounded edge'),
  'drivers that nobody looked at': (job) =>
    setDriverEnds(
      changed(job, (copy) => {
        delete copy.parts.find(({ id }) => id === 'driver-2')!.ends;
      }),
      'plan',
      'sharp edge',
    )
      .parts.filter(({ id }) => id === 'driver-2')
      .map(({ ends }) => ends),
  'pointed pins ride on the key': (job, newId) => setKeyFoot(job, 'plan', 'pointed pin', newId),
  'rounded pins ride on the key': (job, newId) => setKeyFoot(job, 'plan', 'rounded pin', newId),
  'balls ride on the key': (job, newId) => setKeyFoot(job, 'plan', 'ball', newId),
  'balls ride on the key, pins without a diameter': (job, newId) => {
    const bare = changed(job, (copy) => {
      delete copy.parts.find(({ id }) => id === 'bottom-pin-3')!.diameter;
    });
    return setKeyFoot(bare, 'plan', 'ball', newId).parts.at(-1);
  },
  'balls ride on the key, pins seen pointed': (job, newId) => setKeyFoot(job, 'b-plan', 'ball', newId),
  'pictures of the ends': () =>
    END_NAMES.flatMap((name) =>
      (['in', 'mm'] as const).map((unit) => ({ id: `${name}, ${unit}`, ...endForm(name, unit) })),
    ),
  'names of the ends': () => [
    ...END_KINDS.map((kind) => `${kind} ${endName({ kind, basis: 'seen' })}`),
    `assumed ${endName({ kind: 'flat', basis: 'assumed' })}`,
    `none ${endName(undefined)}`,
  ],
  'what is seen': (job) => seen(job),
  'what is seen, tops': (job) =>
    END_KINDS.map((kind) => `${kind} ${seen(ended(job, 'pin', 1, { kind, basis: 'seen' })).tops}`),
  'what is seen, tops assumed': (job) => seen(ended(job, 'pin', 1, { kind: 'flat', basis: 'assumed' })).tops,
  'what is seen, drivers': (job) =>
    END_KINDS.map((kind) => `${kind} ${seen(ended(job, 'driver', 0, { kind, basis: 'seen' })).drivers}`),
  'what is seen, feet': (job) =>
    END_KINDS.map(
      (kind) => `${kind} ${seen(ended(withoutBalls(job), 'pin', 0, { kind, basis: 'seen' })).foot}`,
    ),
  'what is seen where one differs': (job) => {
    const other: EndForm = { kind: 'flat', basis: 'seen' };
    const alike = ended(ended(job, 'pin', 1, { kind: 'dome', basis: 'seen' }), 'driver', 0, {
      kind: 'bevel',
      basis: 'seen',
    });
    return seen(
      changed(alike, (copy) => {
        copy.parts.find(({ id }) => id === 'bottom-pin-3')!.ends = [other, other];
        copy.parts.find(({ id }) => id === 'driver-3')!.ends = [other, other];
      }),
    );
  },
  'what is seen in no stack': (job) => seen(changed(job, (copy) => void (copy.plans[0]!.stacks = []))),
  'what is seen in empty stacks': (job) =>
    seen(
      changed(job, (copy) => {
        for (const stack of copy.plans[0]!.stacks) stack.items = [];
      }),
    ),
};
