/**
 * A small job in which every field that a job can have is filled in: two chambers with and without a sleeve, two keys, readings of every
 * route, two instruments, a zero check, springs, waists, mouths, bench tests. Invented. Inches and degrees until the job has them.
 */
import type { Job } from '../../src/model/schema/job-schema.ts';
import type { Item } from '../../src/model/schema/key-schema.ts';
import type { EndForm, Part } from '../../src/model/schema/parts-schema.ts';
import { buildJob, changed } from './job-builder.ts';
import { assumedDegrees, assumedInches, CALIPER, degrees, endForm, inches, statedInches } from './values.ts';

export function fullJob(hasSleeve: boolean): Job {
  const job = buildJob({
    instrumentError: 'default',
    plugDiameter: 0.512,
    ...(hasSleeve && { sleeve: { outerDiameter: 0.632, clearance: 0.004 } }),
    chambers: [
      { rootDepth: 0.26, ball: 0.109, masterPins: hasSleeve ? [0.06] : [], restDepth: 0.04 },
      { rootDepth: 0.29, cutPosition: 0.383, restDepth: 0.02 },
    ],
  });
  return changed(job, (copy) => {
    fillSettings(copy);
    fillCylinder(copy);
    fillKeys(copy);
    fillParts(copy);
    fillBench(copy);
  });
}

function fillSettings(job: Job): void {
  const { instruments, sessions, settings } = job;
  instruments[0]!.jawEdge = statedInches(0.02);
  instruments.push({
    id: 'indicator',
    label: 'indicator',
    kind: 'dial indicator',
    resolutionMm: 0.002,
    maxPermissibleErrorMm: 0.01,
    repeatabilityMm: 0.004,
    source: 'checked',
  });
  sessions.push({
    id: 'zero',
    instrument: CALIPER,
    closedReading: inches(0.0005),
    at: '2026-11-02T09:00:00Z',
  });
  settings.session = 'zero';
  settings.thresholds = {
    driverEngagement: statedInches(0.02),
    springMargin: statedInches(0.01),
    readingsSpread: statedInches(0.001),
    plugSpread: statedInches(0.0008),
    thinnestMasterPin: statedInches(0.02),
    crestLow: statedInches(0.002),
    keyMoved: statedInches(0.006),
    depthStep: statedInches(0.015),
  };
  job.depths = { rootDepths: [0.31, 0.295, 0.28, 0.265].map((depth) => statedInches(depth)), largestStep: 2 };
  job.note.shared = { who: 'the workshop', done: 'Two pins replaced.' };
  job.note.restricted = { bitting: 'kept apart' };
}

function fillCylinder(job: Job): void {
  const cylinder = job.cylinders[0]!;
  const plug = cylinder.bodies[0]!;
  const inSession = inches(0.512, 0.5125, 0.5121);
  inSession.readings.forEach((reading) => (reading.session = 'zero'));
  plug.outerDiameter = inSession;
  plug.length = inches(1.1);
  plug.crestDrop = inches(0.001);
  plug.crestDropAt = { [cylinder.chambers[1]!.id]: inches(0.003) };
  cylinder.keywayWidth = inches(0.07);
  cylinder.endPlay = inches(0.004);
  cylinder.lines[0]!.clearance = assumedInches(0.003, 0.001, 0.006);
  const [first, second] = cylinder.chambers;
  first!.holes[0]!.outerMouth = { kind: 'countersunk', size: inches(0.012), basis: 'seen' };
  first!.holes.at(-1)!.innerMouth = { kind: 'deburred along', size: inches(0.004), basis: 'assumed' };
  second!.holes.at(-1)!.sideways = inches(0.003);
  second!.holes[0]!.diameter = assumedInches(0.121, 0.118, 0.124);
}

function fillKeys(job: Job): void {
  const key = job.keys[0]!;
  key.bladeThickness = inches(0.06);
  key.rootFlat = inches(0.045);
  key.includedAngle = assumedDegrees(90, 80, 100);
  const [first, second] = key.cuts;
  first!.overBall = { reading: inches(0.365, 0.366), ball: statedInches(0.1) };
  first!.rootFlat = inches(0.05);
  second!.includedAngle = degrees(94);
  second!.rootDepth = inches(0.29, 0.2915);
  job.keys.push({
    ...structuredClone(key),
    id: 'other-key',
    label: 'other key',
    stop: { kind: 'tip' },
    cuts: key.cuts.map((cut) => ({ ...structuredClone(cut), id: `other-${cut.id}` })),
  });
  const seating = job.seatings[0]!;
  const chambers = job.cylinders[0]!.chambers.map(({ id }) => id);
  const lower = (chamber: string): Item[] => itemsOf(job, chamber).slice(0, 1);
  seating.bottomEdge = 'above';
  seating.stopShort = inches(0.002);
  seating.plugMinusFloor = inches(0.4315);
  seating.standsUpBy = [
    { chamber: chambers[1]!, items: lower(chambers[1]!), stack: inches(0.144), reading: inches(0.002) },
  ];
  seating.felt = [{ chamber: chambers[0]!, items: itemsOf(job, chambers[0]!).slice(0, 2), is: 'level' }];
  seating.pinnedRoutes = { [chambers[0]!]: 'over the ball' };
  job.seatings.push({
    ...structuredClone(seating),
    key: 'other-key',
    stopAt: inches(1.0),
    bottomEdge: 'level',
  });
  job.intents = job.cylinders[0]!.lines.map(({ id }, i) => ({
    key: key.id,
    cylinder: 'cylinder',
    line: id,
    turns: i === 0,
  }));
}

const itemsOf = (job: Job, chamber: string): Item[] => {
  return structuredClone(job.plans[0]!.stacks.find((each) => each.chamber === chamber)!.items);
};

function fillParts(job: Job): void {
  const part = (id: string): Part => job.parts.find((each) => each.id === id)!;
  const guessed: EndForm = endForm({ kind: 'dome' }, [{ kind: 'flat' }, { kind: 'radius', radius: 0.02 }]);
  part('bottom-pin-1').ends = [endForm({ kind: 'cup', mouthDiameter: 0.08, includedAngleDeg: 110 }), guessed];
  part('driver-1').waist = { kind: 'spool', from: inches(0.05), length: inches(0.1), diameter: inches(0.08) };
  part('driver-2').ends![0] = endForm({ kind: 'bevel', width: 0.005, angleDeg: 45 }, [{ kind: 'flat' }]);
  Object.assign(part('driver-2'), { condition: 'fair', from: 'the second bag', original: true });
  Object.assign(part('spring-1'), { coilEnds: 'closed', shearModulusGPa: 79.3 });
  part('spring-2').pressed = [
    { length: inches(0.3), newtons: 0.8 },
    { length: inches(0.2), newtons: 1.7 },
  ];
  part('bottom-pin-2').length = inches(0.14, 0.1405);
  job.groups.push({ id: 'seated', parts: ['ball-1', 'bottom-pin-1'], height: inches(0.171) });
}

function fillBench(job: Job): void {
  const plan = job.plans[0]!;
  const chambers = plan.stacks.map(({ chamber }) => chamber);
  plan.stacks[1]!.locked = true;
  const found = structuredClone(plan);
  job.plans.push({ ...found, id: 'as-found', kind: 'as found' });
  job.seatings[0]!.knownSets = ['as-found'];
  job.benchResults = [
    {
      plan: plan.id,
      key: 'key',
      chamber: chambers[1]!,
      items: itemsOf(job, chambers[1]!),
      turned: true,
      at: '2026-11-02',
    },
    { plan: plan.id, key: 'key', chamber: 'all', items: [], turned: false, at: '2026-11-03' },
  ];
}
