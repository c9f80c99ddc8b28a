/**
 * A job in which there are two of everything, so that an edit that takes the wrong one shows: two cylinders, one of them with a
 * sleeve; two keys in the first, one of the second that stops at its tip; plans found and planned, parts measured together, felt,
 * stood up and tried; loose parts; every rare field once. Frozen: an edit that writes into it throws. Lengths in inches.
 */
import type { Job } from '../../src/model/schema/job-schema.ts';
import { loose } from './bag-job.ts';
import { buildJob, changed, joinJobs } from './job-builder.ts';
import { assumedInches, CALIPER, degrees, inches, statedInches } from './values.ts';

/** What belongs together in it. */
export const FIRST = { cylinder: 'cylinder', key: 'key', plan: 'plan' } as const;
export const SECOND = { cylinder: 'b-cylinder', key: 'b-key', plan: 'b-plan' } as const;

const AT = '2026-03-04T10:00:00Z';
const item = (part: string) => ({ part });

/** Makes the job; what is written into the copy comes before it is frozen. */
export function pairedJob(change: (copy: Job) => void = () => undefined): Job {
  const first = buildJob({
    sleeve: { outerDiameter: 0.62, clearance: 0.004 },
    chambers: [
      { ball: 0.109, bottomPin: 0.063, lowerStack: 0.172, masterPins: [0.03, 0.045], restDepth: 0.05 },
      { ball: 0.11, bottomPin: 0.06, lowerStack: 0.1705, masterPins: [0.02], restDepth: 0.04 },
      { rootDepth: 0.24 },
    ],
  });
  const second = buildJob({
    prefix: 'b-',
    plugDiameter: 0.65,
    stop: 'tip',
    chambers: [{ ball: 0.12, lowerStack: 0.2 }, { masterPins: [0.025] }],
  });
  const job = changed(joinJobs(first, second), (copy) => {
    withInstruments(copy);
    withKeys(copy);
    withPlans(copy);
    withSeatings(copy);
    withRareFields(copy);
    copy.benchResults.push(
      { ...FIRST_TEST, chamber: 'chamber-1', items: [item('ball-1'), item('bottom-pin-1')], turned: true },
      { ...FIRST_TEST, chamber: 'chamber-2', items: [item('ball-2'), item('bottom-pin-2')], turned: false },
      { ...FIRST_TEST, key: 'spare', chamber: 'all', items: [], turned: true },
      { ...FIRST_TEST, plan: 'found', chamber: 'chamber-1', items: [item('old-ball-1')], turned: true },
      { plan: 'b-plan', key: 'b-key', chamber: 'all', items: [], turned: false, at: AT },
    );
    copy.intents.push(
      { key: 'key', cylinder: 'cylinder', line: 'inner-line', turns: true },
      { key: 'key', cylinder: 'cylinder', line: 'outer-line', turns: false },
      { key: 'spare', cylinder: 'cylinder', line: 'outer-line', turns: true },
      { key: 'b-key', cylinder: 'b-cylinder', line: 'b-line', turns: true },
    );
    copy.note = {
      shared: { technician: 'A. Invented', work: 'Cleaned.' },
      restricted: { toDo: 'File the pin.\nCut the key.', remarks: 'Worn.' },
    };
    change(copy);
  });
  return frozen(job);
}

const FIRST_TEST = { plan: 'plan', key: 'key', at: AT };

function withInstruments(copy: Job): void {
  const [caliper] = copy.instruments;
  copy.instruments.push(
    { ...structuredClone(caliper!), id: 'micrometer', label: 'Micrometer', kind: 'micrometer' },
    { ...structuredClone(caliper!), id: 'dial', label: 'Dial', kind: 'dial caliper', jawEdge: inches(0.02) },
  );
  copy.sessions.push(
    { id: 'morning', instrument: CALIPER, closedReading: inches(0.0005), at: AT },
    { id: 'noon', instrument: 'micrometer', closedReading: inches(0.001), at: AT },
  );
  copy.settings = { ...copy.settings, instrument: 'micrometer', session: 'noon' };
  copy.settings.thresholds = { springMargin: statedInches(0.02), crestLow: statedInches(0.003) };
}

function withKeys(copy: Job): void {
  const spare = structuredClone(copy.keys[0]!);
  spare.id = 'spare';
  spare.label = 'Spare';
  spare.cuts.forEach((cut, i) => (cut.id = `spare-cut-${i + 1}`));
  spare.cuts[0]!.overBall = { reading: inches(0.38), ball: inches(0.1) };
  spare.cuts[1]!.overBall = { reading: inches(0.41), ball: inches(0.1) };
  spare.cuts[1]!.rootFlat = inches(0.03);
  spare.cuts[1]!.includedAngle = degrees(100);
  copy.keys.push(spare);
  const reading = copy.keys[0]!.cuts[0]!.rootDepth!.readings[0]!;
  reading.session = 'morning';
}

function withPlans(copy: Job): void {
  copy.parts.push(
    loose('old-ball-1', { kind: 'ball', diameter: 0.1085 }),
    loose('old-pin-1', { length: 0.065 }),
    loose('old-pin-2', { length: 0.17 }),
    loose('free', { length: 0.2, label: 'P01', from: 'barn', quantity: 3, condition: 'good' }),
    loose('free-ball', { kind: 'ball', diameter: 0.115, label: 'B01', original: true }),
    loose('stood', { label: 'P02' }),
  );
  copy.groups.push(
    { id: 'old-group', parts: ['old-ball-1', 'old-pin-1'], height: inches(0.173) },
    { id: 'stood-group', parts: ['free-ball', 'stood'], height: inches(0.33) },
  );
  copy.plans.push({
    id: 'found',
    cylinder: 'cylinder',
    kind: 'as found',
    stacks: [
      {
        chamber: 'chamber-1',
        items: [item('old-ball-1'), item('old-pin-1'), { part: 'driver-1', flipped: true }],
        rest: { items: [item('old-ball-1'), item('old-pin-1')], belowLine: inches(0.03) },
      },
      { chamber: 'chamber-2', items: [item('old-pin-2'), item('driver-2')], locked: true },
    ],
  });
}

function withSeatings(copy: Job): void {
  const [seating, other] = copy.seatings;
  const lower = (chamber: number) => [item(`ball-${chamber}`), item(`bottom-pin-${chamber}`)];
  Object.assign(seating!, {
    bottomEdge: 'above',
    standsUpBy: [1, 2].map((chamber) => ({
      chamber: `chamber-${chamber}`,
      items: lower(chamber),
      stack: inches(0.36),
      reading: inches(0.02 + 0.001 * chamber),
    })),
    felt: [
      { chamber: 'chamber-1', items: lower(1), is: 'above' },
      { chamber: 'chamber-1', items: [item('old-pin-1')], is: 'below' },
      { chamber: 'chamber-2', items: lower(2), is: 'level' },
      { chamber: 'chamber-3', items: [item('bottom-pin-3')], is: 'below' },
    ],
    knownSets: ['found'],
    pinnedRoutes: { 'chamber-1': 'over the ball', 'chamber-3': 'subtraction' },
  });
  Object.assign(other!, { stopAt: inches(1.3), stopShort: inches(0.002), plugMinusFloor: inches(0.44) });
  copy.seatings.push({ ...structuredClone(seating!), key: 'spare', standsUpBy: [], felt: [], knownSets: [] });
}

function withRareFields(copy: Job): void {
  const [cylinder, other] = copy.cylinders;
  const [plug] = cylinder!.bodies;
  plug!.crestDrop = inches(0.001);
  plug!.crestDropAt = { 'chamber-1': inches(0.002), 'chamber-3': inches(0.004) };
  plug!.length = inches(1.1);
  cylinder!.keywayWidth = inches(0.08);
  cylinder!.endPlay = inches(0.004);
  cylinder!.chambers[1]!.closed = true;
  other!.chambers[0]!.position = assumedInches(0.22, 0.21, 0.23);
  const partOf = (id: string) => copy.parts.find((part) => part.id === id)!;
  partOf('driver-1').waist = {
    kind: 'spool',
    from: inches(0.05),
    length: inches(0.1),
    diameter: inches(0.08),
  };
  const spring = partOf('spring-1');
  spring.pressed = [
    { length: inches(0.3), newtons: 0.5 },
    { length: inches(0.2), newtons: 1.1 },
  ];
  partOf('bottom-pin-3').ends = undefined;
}

function frozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null) return value;
  for (const child of Object.values(value)) frozen(child);
  return Object.freeze(value);
}
