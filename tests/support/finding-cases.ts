/**
 * For each finding a job in which it is told, and a neighbour of it, one field changed, in which it is not. The base is
 * cylinder H with a wider root flat and stacks that reach the line: nothing at all is told of it. Inches and degrees.
 */
import type { FindingCode } from '../../src/model/findings/finding-codes.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import type { Item } from '../../src/model/schema/key-schema.ts';
import type { Part } from '../../src/model/schema/parts-schema.ts';
import { cylinderH } from './cylinder-h.ts';
import { buildJob, changed } from './job-builder.ts';
import { endForm, inches, statedInches } from './values.ts';

const ROOTS = [0.369, 0.421, 0.333, 0.393, 0.453, 0.303];

/** Nothing is told of this one. */
export function soundJob(): Job {
  return cylinderH((job) => {
    job.keys[0]!.rootFlat = inches(0.066);
    job.groups.forEach((group, i) => (group.height = inches(Math.round((0.706 - ROOTS[i]!) * 1e5) / 1e5)));
    job.parts.forEach((part) => part.kind === 'spring' && (part.solid = inches(0.186)));
  });
}

type Pair = readonly [fires: Job, doesNot: Job];
type Change<T> = (job: Job, value: T) => void;

/** Two jobs that differ in one field. */
function field<T>(change: Change<T>, fires: T, doesNot: T, base: () => Job = soundJob): Pair {
  return [changed(base(), (job) => change(job, fires)), changed(base(), (job) => change(job, doesNot))];
}

const cylinder = (job: Job) => job.cylinders[0]!;
const key = (job: Job) => job.keys[0]!;
const stack = (job: Job, chamber = 1) => job.plans[0]!.stacks[chamber - 1]!;
const part = (job: Job, label: string): Part => job.parts.find((each) => each.label === label)!;
const item = (job: Job, label: string): Item => ({ part: part(job, label).id });
const driverLength = (chamber: number): Change<number> => {
  return (job, length) => (part(job, `driver ${chamber}`).length = inches(length));
};
const sunk: Change<number> = (job, by) => (stack(job).rest!.belowLine = inches(by));
const group: Change<number> = (job, height) => (job.groups[0]!.height = inches(height));
const items: Change<readonly string[]> = (job, labels) => {
  stack(job).items = labels.map((label) => item(job, label));
};
const WHOLE = ['ball 1', 'bottom pin 1', 'driver 1', 'spring 1'];
const springs = (name: 'solid' | 'free'): Change<number> => {
  return (job, length) => (part(job, 'spring 1')[name] = inches(length));
};
const spool = (chambers: readonly number[]) => (job: Job) =>
  chambers.forEach((chamber) => {
    const waist = { from: inches(0.05), length: inches(0.21), diameter: inches(0.115) };
    part(job, `driver ${chamber}`).waist = { kind: 'spool', ...waist };
  });
/** A key whose cuts only descend to its tip, so wide that no wall is left between them. */
const descending = () =>
  changed(soundJob(), (job) => {
    const roots = [0.453, 0.433, 0.413, 0.393, 0.373, 0.353];
    key(job).bladeHeight = inches(0.453);
    key(job).cuts.forEach((cut, i) => (cut.rootDepth = inches(roots[i]!)));
    job.groups.forEach((each, i) => (each.height = inches(0.706 - roots[i]!)));
  });
const pointed = (included: number) =>
  buildJob({ pinFoot: { kind: 'cone', tipFlatDiameter: 0.03, includedAngleDeg: included } });
const sleeved = (reaches: number) =>
  buildJob({
    sleeve: { outerDiameter: 0.632, clearance: 0.003 },
    chambers: [{ rootDepth: 0.26 }, { rootDepth: 0.3, bottomPin: 0.132 + reaches }],
  });

export const FINDING_CASES: Readonly<Record<FindingCode, () => Pair>> = {
  'all-waists-at-line': () =>
    field((job, chambers) => spool(chambers)(job), [1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 5]),
  'ball-above-pin': () => field(items, ['ball 1', 'bottom pin 1', 'ball 1', 'driver 1', 'spring 1'], WHOLE),
  'ball-doubled': () => field(items, ['ball 1', ...WHOLE], WHOLE),
  'ball-falls-through': () =>
    field((job, width: number) => (cylinder(job).keywayWidth = inches(width)), 0.1565, 0.156),
  'ball-missing': () => field(items, WHOLE.slice(1), WHOLE),
  'bottom-pin-as-driver': () =>
    field(
      (job, kind: 'cone' | 'bevel') => (part(job, 'driver 1').ends![0] = { kind, basis: 'seen' }),
      'cone',
      'bevel',
    ),
  'crest-low': () =>
    field((job, drop: number) => (cylinder(job).bodies[0]!.crestDrop = inches(drop)), 0.0021, 0.0019),
  'cut-off-chamber': () =>
    field((job, at: number) => (key(job).cuts[0]!.position = inches(at)), 0.352, 0.3505),
  'driver-barely-across': () => field(driverLength(5), 0.2735, 0.2745),
  'driver-below-at-rest': () => field(driverLength(5), 0.2535, 0.2545),
  // room to the cap above the peak of chamber 3: 1.018 + .332 - .500 - .373 = .477
  'driver-strikes-cap': () => field(driverLength(3), 0.478, 0.476),
  'empty-chamber': () =>
    field(
      (job, isClosed: boolean) => {
        stack(job).items = [];
        if (isClosed) cylinder(job).chambers[0]!.closed = true;
      },
      false,
      true,
    ),
  'end-play-catches': () =>
    field((job, play: number) => (cylinder(job).endPlay = inches(play)), 0.0041, 0.0039),
  'flat-top-corners': () =>
    field(
      (job, kind: 'flat' | 'dome') => (part(job, 'bottom pin 1').ends![1] = { kind, basis: 'seen' }),
      'flat',
      'dome',
    ),
  // the stack of chamber 1 rests .374 - .1715 - .337 + .332 = .1975 above the key's edge
  'hangs-above-key': () =>
    field((job, root: number) => (key(job).cuts[0]!.rootDepth = inches(root)), 0.197, 0.198),
  'jaw-wider-than-flat': () =>
    field((job, jaw: number) => (job.instruments[0]!.jawEdge = statedInches(jaw)), 0.067, 0.066),
  'key-too-short': () => field((job, tip: number) => (key(job).tip!.position = inches(tip)), 1.52, 1.6),
  'loose-for-neighbour': () =>
    field((job, step: number) => (job.settings.thresholds = { depthStep: inches(step) }), 0.0079, 0.0081),
  'mixed-lines': () => [sleeved(0.0615), sleeved(0)],
  'neighbour-eats-cut': () =>
    field((job, root: number) => (key(job).cuts[5]!.rootDepth = inches(root)), 0.23, 0.24),
  'no-driver': () => field(items, ['ball 1', 'bottom pin 1', 'spring 1'], WHOLE),
  // chamber 1: shortest .1915; longest .513 - .010 - solid
  'no-driver-fits': () => field(springs('solid'), 0.312, 0.311),
  'no-length-turns': () =>
    field(
      (job, width: number) => {
        part(job, 'bottom pin 1').ends![1] = { kind: 'flat', basis: 'seen' };
        part(job, 'driver 1').ends![0] = endForm({ kind: 'bevel', width, angleDeg: 45 });
      },
      0.0005,
      0.01,
    ),
  'no-spring': () => field(items, WHOLE.slice(0, 3), WHOLE),
  'nose-too-high': () =>
    // 65.19 degrees are met .0453 above the lowest point of the ball, which rests .194 up in chamber 2
    field((job, nose: number) => (key(job).tip!.noseHeight = inches(nose)), 0.2395, 0.2391),
  'part-too-wide': () =>
    field((job, across: number) => (part(job, 'bottom pin 1').diameter = inches(across)), 0.1605, 0.16),
  'part-used-twice': () =>
    field(
      (job, quantity: number) => {
        stack(job, 2).items[2] = item(job, 'driver 1');
        part(job, 'driver 1').quantity = quantity;
      },
      1,
      2,
    ),
  'pin-across-at-rest': () => field(sunk, -0.0041, -0.0039),
  'pin-upside-down': () =>
    field(
      (job, kind: 'cup' | 'dome') => (part(job, 'bottom pin 1').ends![1] = { kind, basis: 'seen' }),
      'cup',
      'dome',
    ),
  // the window ends .0077 low
  'plug-edge-wears': () => field(group, 0.3315, 0.3325),
  'plug-readings-spread': () =>
    field(
      (job, again: number) => (cylinder(job).bodies[0]!.outerDiameter = inches(0.748, again)),
      0.7501,
      0.7499,
    ),
  'pulls-out-turned': () =>
    field((job, flat: number) => (key(job).rootFlat = inches(flat)), 0.249, 0.066, descending),
  'readings-spread': () =>
    field((job, again: number) => (key(job).cuts[0]!.rootDepth = inches(0.369, again)), 0.3706, 0.3704),
  'rides-on-sides': () => field((job, flat: number) => (key(job).rootFlat = inches(flat)), 0.064, 0.065),
  'routes-disagree': () =>
    field(
      (job, reading: number) => {
        const entry = {
          chamber: stack(job).chamber,
          items: [],
          stack: inches(0.4),
          reading: inches(reading),
        };
        job.seatings[0]!.standsUpBy.push(entry);
      },
      0.066,
      0.063,
    ),
  'same-error-everywhere': () =>
    field((job, floor: number) => (job.seatings[0]!.keywayFloorHeight = inches(floor)), 0.0432, 0.0428),
  'split-at-line-at-rest': () => field(sunk, 0.0076, 0.0078),
  // room of the spring of chamber 1 with the key out: 1.018 - .2025 - .275 = .5405
  'spring-loose': () => field(springs('free'), 0.54, 0.541),
  // spring of chamber 3 at the peak: .477 - .275 = .202
  'spring-solid': () =>
    field((job, solid: number) => (part(job, 'spring 3').solid = inches(solid)), 0.193, 0.191),
  'springs-differ': () => field(springs('free'), 0.689, 0.691),
  'thin-master-pin': () =>
    field(
      (job, length: number) => {
        const thin: Part = { ...part(job, 'driver 1'), id: 'thin', label: 'thin', length: inches(length) };
        job.parts.push(thin);
        stack(job).items.splice(2, 0, { part: 'thin' });
      },
      0.0195,
      0.0205,
    ),
  'tip-rides-on-sides': () => [pointed(120), pointed(86)],
  // sides of 45 degrees are climbed up to a friction of tan(22.5 degrees) = .4142
  'too-steep-coming-out': () =>
    field((job, friction: number) => (job.settings.friction = friction), 0.415, 0.414),
  'too-steep-going-in': () =>
    field((job, friction: number) => (job.settings.friction = friction), 0.415, 0.414),
  // a key past home: its first cut lies .006 towards the tip, which lifts every stack
  'turns-when-drawn': () =>
    field((job, by: number) => (job.seatings[0]!.stopShort = inches(by)), -0.006, -0.004),
  'turns-when-lifted': () =>
    field((job, floor: number) => (job.seatings[0]!.keywayFloorHeight = inches(floor)), 0.034, 0.035),
  'turns-when-rocked': () =>
    field(
      (job, height: number) => {
        job.groups[0]!.height = inches(height);
        job.groups[1]!.height = inches(0.282);
      },
      0.3245,
      0.3295,
    ),
};
