/** Edits of chambers, sleeve, master pins and whole cylinders, each with what it is done to; see changes.golden.test.ts. */
import { addChamber, removeChamber } from '../../../src/model/edit/chamber-count.ts';
import { chamberRows } from '../../../src/model/edit/chamber-rows.ts';
import {
  addCylinder,
  addCylinderLike,
  counted,
  listed,
  removeCylinder,
  renameCylinder,
  sayCylinderGoes,
} from '../../../src/model/edit/edit-cylinders.ts';
import {
  addMasterPin,
  masterEndSeen,
  masterPinsIn,
  moveMasterPin,
  removeMasterPin,
  setMasterEnd,
} from '../../../src/model/edit/edit-master-pins.ts';
import {
  addSleeve,
  removeSleeve,
  setSleeveDiameter,
  setSleeveMouths,
  sleeveDiameter,
  sleeveMouthsSeen,
  sleeveOf,
} from '../../../src/model/edit/edit-sleeve.ts';
import type { Selection } from '../../../src/model/measured/selection.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { EndForm } from '../../../src/model/schema/parts-schema.ts';
import type { Edits } from '../../support/edit-text.ts';
import { FIRST, SECOND } from '../../support/paired-job.ts';
import { changed } from '../../support/job-builder.ts';
import { assumedInches, inches } from '../../support/values.ts';

const shuffled = (job: Job) =>
  changed(job, (copy) => {
    copy.cylinders[0]!.chambers.reverse();
    copy.keys[0]!.cuts.reverse();
  });
const withChambers = (job: Job, count: number) =>
  changed(job, (copy) => {
    const [cylinder] = copy.cylinders;
    while (cylinder!.chambers.length < count)
      cylinder!.chambers.push({
        ...structuredClone(cylinder!.chambers[0]!),
        id: `more-${cylinder!.chambers.length}`,
      });
    cylinder!.chambers.length = count;
  });

export const CHAMBER_EDITS: Edits = {
  'one more': (job, newId) => addChamber(job, FIRST, newId),
  'one more, the file the other way round': (job, newId) =>
    addChamber(shuffled(job), FIRST, newId).cylinders[0]!.chambers.at(-1)?.position,
  'one more, stop at the tip': (job, newId) => addChamber(job, SECOND, newId),
  'one more, tip assumed': (job, newId) => {
    const assumed = changed(job, (copy) => void (copy.keys[0]!.tip!.position = assumedInches(1.2, 1.1, 1.3)));
    return addChamber(assumed, FIRST, newId).keys[0]!.tip?.position;
  },
  'one more, key without cuts': (job, newId) =>
    addChamber(
      changed(job, (copy) => void (copy.keys[0]!.cuts = [])),
      FIRST,
      newId,
    ).keys[0]!.cuts,
  'second after one': (job, newId) => {
    const one = changed(withChambers(job, 1), (copy) => void (copy.keys[0]!.cuts.length = 1));
    const next = addChamber(one, FIRST, newId);
    return {
      chamber: next.cylinders[0]!.chambers.at(-1)?.position,
      cut: next.keys[0]!.cuts.at(-1)?.position,
    };
  },
  'eighth and ninth': (job, newId) =>
    [7, 8].map((count) => addChamber(withChambers(job, count), FIRST, newId).cylinders[0]!.chambers.length),
  'one less': (job) => removeChamber(job, FIRST),
  'one less, stop at the tip': (job) => removeChamber(job, SECOND),
  'one less, the file the other way round': (job) => {
    const next = removeChamber(shuffled(job), FIRST);
    return [...next.cylinders[0]!.chambers, ...next.keys[0]!.cuts].map(({ id }) => id);
  },
  'one less, a cut less already': (job) =>
    removeChamber(
      changed(job, (copy) => void copy.keys[0]!.cuts.pop()),
      FIRST,
    ).keys[0]!.cuts.map(({ id }) => id),
  'none left': (job) => {
    const one = withChambers(job, 1);
    return removeChamber(one, FIRST) === one;
  },
};

const rowsOf = (job: Job, selection: Selection) => {
  const { rows, looseCuts } = chamberRows(job, selection);
  return {
    rows: rows.map(({ chamber, number, z, under, offBy, parts }) => ({
      id: chamber.id,
      number,
      z,
      cut: under === null ? null : `${under.number} ${under.cut.id}`,
      offBy,
      stack: parts?.stack.items.length ?? null,
    })),
    loose: looseCuts.map(({ cut, number, z }) => ({ id: cut.id, number, z })),
  };
};
const cutsAt = (job: Job, ...places: readonly number[]) =>
  changed(job, (copy) => {
    const [cut] = copy.keys[0]!.cuts;
    copy.keys[0]!.cuts = places.map((place, i) => ({ ...cut!, id: `at-${i + 1}`, position: inches(place) }));
  });

export const ROW_ANSWERS: Edits = {
  'as they are': (job) => rowsOf(job, FIRST),
  'from the tip': (job) =>
    rowsOf(
      changed(job, (copy) => void (copy.settings.numbering = 'tip')),
      FIRST,
    ),
  'the file the other way round': (job) => rowsOf(shuffled(job), FIRST),
  'stop at the tip, short of home': (job) => rowsOf(job, SECOND),
  'no key': (job) => rowsOf(job, { ...FIRST, key: null }),
  'key that was never in it': (job) => rowsOf(job, { ...FIRST, key: 'b-key' }),
  'plan that is not there': (job) => rowsOf(job, { ...FIRST, plan: 'none' }),
  'cylinder that is not there': (job) => rowsOf(job, { ...FIRST, cylinder: 'none' }),
  // spaced .16 in: half of that is the reach
  'two cuts near one chamber': (job) => rowsOf(cutsAt(job, 0.25, 0.23, 0.54), FIRST),
  'nearest pairs first': (job) => rowsOf(cutsAt(job, 0.29, 0.31), FIRST),
  'just within reach and just out of it': (job) => rowsOf(cutsAt(job, 0.1401, 0.6199, 0.6201), FIRST),
  'one chamber alone': (job) => rowsOf(withChambers(cutsAt(job, 0.22 + 0.0787, 0.22 - 0.0788), 1), FIRST),
};

const MASTERS = ['plan', 'chamber-1'] as const;
const endsOf = (job: Job, form: EndForm | undefined) => {
  const part = {
    ...job.parts[2]!,
    ends: form && ([form, { kind: 'flat', basis: 'seen' }] as [EndForm, EndForm]),
  };
  return `${form?.kind ?? 'none'} ${masterEndSeen(part, 'lower')}, ${masterEndSeen(part, 'upper')}`;
};
const rid = (job: Job, change: (copy: Job) => void) =>
  removeMasterPin(changed(job, change), ...MASTERS, 'master-pin-1-1').parts.some(
    ({ id }) => id === 'master-pin-1-1',
  );
const PIN = [{ part: 'master-pin-1-1' }];

export const SLEEVE_EDITS: Edits = {
  sleeves: (job) => job.cylinders.map((each) => sleeveOf(each)?.id ?? 'none'),
  added: (job, newId) => addSleeve(job, 'b-cylinder', newId),
  'added to chambers of which the plug is measured': (job, newId) =>
    addSleeve(
      changed(job, (copy) => {
        const [one, two] = copy.cylinders[1]!.chambers;
        one!.holes = [{ body: 'b-plug', diameter: assumedInches(0.12, 0.118, 0.122) }];
        two!.holes = [{ body: 'b-shell' }];
        copy.settings.unit = 'mm';
      }),
      'b-cylinder',
      newId,
    ).cylinders[1],
  'added where one is': (job, newId) => addSleeve(job, 'cylinder', newId),
  removed: (job) => removeSleeve(job, 'cylinder'),
  'removed where none is': (job) => removeSleeve(job, 'b-cylinder'),
  diameters: (job) => {
    const bare = changed(job, (copy) => {
      delete copy.cylinders[0]!.bodies[1]!.outerDiameter;
      delete copy.cylinders[1]!.bodies[0]!.outerDiameter;
    });
    return [...job.cylinders, ...bare.cylinders].map((each) => sleeveDiameter(each) ?? 'none');
  },
  wider: (job) => setSleeveDiameter(job, 'cylinder', inches(0.63)),
  'not known': (job) => setSleeveDiameter(job, 'cylinder', undefined),
  'edges inside countersunk': (job) => setSleeveMouths(job, 'cylinder', 'innerMouth', 'countersunk'),
  'edges outside sharp': (job) => setSleeveMouths(job, 'cylinder', 'outerMouth', 'sharp'),
  'edges outside deburred, in mm': (job) =>
    setSleeveMouths(
      changed(job, (copy) => void (copy.settings.unit = 'mm')),
      'cylinder',
      'outerMouth',
      'deburred along',
    ).cylinders[0]!.chambers[0]!.holes,
  'edges as seen': (job) => {
    const answers = (at: Job) =>
      (['innerMouth', 'outerMouth'] as const)
        .map((which) => `${sleeveMouthsSeen(at.cylinders[0]!, which)}`)
        .join(', ');
    const hole = (copy: Job, chamber: number) => copy.cylinders[0]!.chambers[chamber]!.holes[1]!;
    return {
      all: answers(job),
      'second cylinder': sleeveMouthsSeen(job.cylinders[1]!, 'innerMouth'),
      'one other': answers(
        changed(job, (copy) => void (hole(copy, 2).innerMouth = { kind: 'countersunk', basis: 'seen' })),
      ),
      'one assumed': answers(changed(job, (copy) => void (hole(copy, 1).outerMouth!.basis = 'assumed'))),
      'one not said': answers(
        changed(job, (copy) => {
          delete hole(copy, 0).innerMouth;
        }),
      ),
      'no chambers': answers(changed(job, (copy) => void (copy.cylinders[0]!.chambers = []))),
    };
  },
  'master pins': (job) =>
    ['chamber-1', 'chamber-2', 'chamber-3', 'none'].map(
      (chamber) =>
        `${chamber}: ${masterPinsIn(job, 'plan', chamber)
          .map(({ id }) => id)
          .join(' ')}`,
    ),
  'a master pin more': (job, newId) => addMasterPin(job, ...MASTERS, inches(0.02), newId),
  'a master pin where none is, not measured': (job, newId) =>
    addMasterPin(job, 'plan', 'chamber-3', undefined, newId),
  'a master pin on a bottom pin of unknown width, in mm': (job, newId) => {
    const bare = changed(job, (copy) => {
      copy.settings.unit = 'mm';
      delete copy.parts.find(({ id }) => id === 'bottom-pin-3')!.diameter;
    });
    return addMasterPin(bare, 'plan', 'chamber-3', undefined, newId).parts.at(-1);
  },
  'a master pin without a driver': (job, newId) => {
    const bare = changed(job, (copy) => void (copy.plans[0]!.stacks[2]!.items = [{ part: 'bottom-pin-3' }]));
    return addMasterPin(bare, 'plan', 'chamber-3', undefined, newId) === bare;
  },
  'a seventh': (job, newId) => {
    let full = job;
    for (let i = 0; i < 6; i++) full = addMasterPin(full, ...MASTERS, undefined, newId);
    return [masterPinsIn(full, ...MASTERS).length, addMasterPin(full, ...MASTERS, undefined, newId) === full];
  },
  'one less': (job) => removeMasterPin(job, ...MASTERS, 'master-pin-1-1'),
  'one less, and whether it stays a part': (job) => ({
    plain: rid(job, () => undefined),
    'in another plan': rid(job, (copy) => void copy.plans[1]!.stacks[0]!.items.push(...PIN)),
    'sunk with it': rid(job, (copy) => void (copy.plans[2]!.stacks[0]!.rest!.items = PIN)),
    'measured together': rid(
      job,
      (copy) => void copy.groups.push({ id: 'g', parts: ['master-pin-1-1', 'free'], height: inches(0.1) }),
    ),
    tried: rid(job, (copy) => void (copy.benchResults[2]!.items = PIN)),
    'stood up': rid(job, (copy) => void (copy.seatings[0]!.standsUpBy[1]!.items = PIN)),
    felt: rid(job, (copy) => void (copy.seatings[0]!.felt[1]!.items = PIN)),
  }),
  'moved up': (job) => moveMasterPin(job, ...MASTERS, 'master-pin-1-1', 'up'),
  'moved down': (job) => moveMasterPin(job, ...MASTERS, 'master-pin-1-2', 'down'),
  'moved up past the last': (job) => moveMasterPin(job, ...MASTERS, 'master-pin-1-2', 'up'),
  'moved down past the first': (job) => moveMasterPin(job, ...MASTERS, 'master-pin-1-1', 'down'),
  'moved, one that is not there': (job) => moveMasterPin(job, ...MASTERS, 'none', 'up'),
  'moved, one at the very end': (job) =>
    moveMasterPin(
      changed(
        job,
        (copy) =>
          void (copy.plans[0]!.stacks[0]!.items = [
            { part: 'ball-1' },
            { part: 'bottom-pin-1' },
            { part: 'master-pin-1-1' },
          ]),
      ),
      ...MASTERS,
      'master-pin-1-1',
      'up',
    ).plans[0]!.stacks[0]!.items,
  'moved, one at the very beginning': (job) =>
    moveMasterPin(
      changed(
        job,
        (copy) => void (copy.plans[0]!.stacks[0]!.items = [{ part: 'master-pin-1-1' }, { part: 'driver-1' }]),
      ),
      ...MASTERS,
      'master-pin-1-1',
      'down',
    ).plans[0]!.stacks[0]!.items,
  'lower end domed': (job) => setMasterEnd(job, 'master-pin-1-1', 'lower', 'domed'),
  'upper end sharp where nobody looked': (job) =>
    setMasterEnd(
      changed(job, (copy) => {
        delete copy.parts[2]!.ends;
      }),
      'master-pin-1-1',
      'upper',
      'sharp edge',
    ).parts[2]?.ends,
  'lower end broken where nobody looked': (job) =>
    setMasterEnd(
      changed(job, (copy) => {
        delete copy.parts[2]!.ends;
      }),
      'master-pin-1-1',
      'lower',
      'broken edge',
    ).parts[2]?.ends,
  'ends as seen': (job) => [
    ...(['flat', 'bevel', 'radius', 'dome', 'cone', 'cup', 'sphere'] as const).map((kind) =>
      endsOf(job, { kind, basis: 'seen' }),
    ),
    endsOf(job, { kind: 'dome', basis: 'assumed' }),
    endsOf(job, undefined),
  ],
};

export const WHOLE_EDITS: Edits = {
  'another cylinder, empty': (job, newId) => addCylinder(job, 'Third', 2, newId).job,
  'another like the first': (job, newId) => addCylinderLike(job, 'cylinder', 'Third', newId).job,
  'another like the second': (job, newId) =>
    addCylinderLike(job, 'b-cylinder', 'Third', newId).job.cylinders.at(-1),
  'another like one that only has what was found': (job, newId) => {
    const found = changed(job, (copy) => void copy.plans.shift());
    return addCylinderLike(found, 'cylinder', 'Third', newId).job.plans.at(-1);
  },
  'another like one without a plan': (job, newId) => {
    const bare = changed(
      job,
      (copy) => void (copy.plans = copy.plans.filter(({ cylinder }) => cylinder !== 'cylinder')),
    );
    const { plans, parts } = addCylinderLike(bare, 'cylinder', 'Third', newId).job;
    return {
      stacks: plans.at(-1)?.stacks.map(({ items }) => items.length),
      parts: parts.length - job.parts.length,
    };
  },
  'another like one of which little is known': (job, newId) => {
    const bare = changed(job, (copy) => {
      const [, cylinder] = copy.cylinders;
      for (const body of cylinder!.bodies) delete body.outerDiameter;
      for (const chamber of cylinder!.chambers) {
        delete chamber.capDepth;
        for (const hole of chamber.holes) delete hole.diameter;
      }
      for (const part of copy.parts.filter(({ id }) => id.startsWith('b-'))) {
        for (const name of ['diameter', 'length', 'ends', 'solid', 'free'] as const)
          Reflect.deleteProperty(part, name);
      }
    });
    const next = addCylinderLike(bare, 'b-cylinder', 'Third', newId).job;
    return { cylinder: next.cylinders.at(-1), parts: next.parts.slice(job.parts.length) };
  },
  renamed: (job) => renameCylinder(job, 'b-cylinder', 'Boat house'),
  'taken away, the first': (job) => removeCylinder(job, 'cylinder'),
  'taken away, the second': (job) => removeCylinder(job, 'b-cylinder'),
  'taken away, one whose plan others learned from': (job) =>
    removeCylinder(
      changed(job, (copy) => void (copy.seatings[0]!.knownSets = ['b-plan', 'found'])),
      'b-cylinder',
    ).seatings[0]!.knownSets,
  'what goes with each': (job) =>
    ['cylinder', 'b-cylinder'].map((id) => ({ id, text: sayCylinderGoes(job, id) })),
  'what goes with one of which little is known': (job) =>
    sayCylinderGoes(
      changed(job, (copy) => {
        copy.benchResults = [];
        copy.seatings = [];
        copy.cylinders[1]!.chambers.length = 1;
      }),
      'b-cylinder',
    ),
  'counted and listed': () => ({
    counts: [0, 1, 2].map((count) => counted(count, 'pin')).join(', '),
    lists: [[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map((list) => listed(list)).join(' | '),
  }),
};
