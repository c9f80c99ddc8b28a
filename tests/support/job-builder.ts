/**
 * Valid jobs for tests: one cylinder, one key, one plan, everything in inches and degrees, every field with a default, so
 * that a test says only what it is about. Without options: five chambers whose stacks reach the line exactly.
 *
 *    buildJob()                                              five chambers, all level
 *    buildJob({ chambers: 7, plugDiameter: 0.6 })
 *    buildJob({ chambers: [{ rootDepth: 0.24 }, { rootDepth: 0.28, bottomPin: 0.12 }], instrumentError: 'default' })
 *    changed(buildJob(), (job) => { job.title = 'Other'; })  anything the options do not reach
 *    joinJobs(buildJob(), buildJob({ prefix: 'b-' }))         two cylinders, two keys in one job
 *
 * Ids tell what they are, behind the prefix: cylinder, plug, sleeve, shell, inner-line (or line), outer-line, key, plan,
 * chamber-1, cut-1, ball-1, bottom-pin-1, master-pin-1-1, driver-1, spring-1, group-1. Chamber 1 is the one next to the bow.
 */
import type { Chamber, Cylinder, Instrument } from '../../src/model/schema/cylinder-schema.ts';
import { type Job, SCHEMA_VERSION } from '../../src/model/schema/job-schema.ts';
import type { Key, Seating } from '../../src/model/schema/key-schema.ts';
import type { LengthValue } from '../../src/model/schema/leaf.ts';
import type { ChamberOptions, FullJobOptions, JobOptions } from './job-options.ts';
import { type Built, stackOf } from './stack-builder.ts';
import { CALIPER, degrees, inches, statedInches } from './values.ts';

export type { ChamberOptions, JobOptions } from './job-options.ts';

/** An invented cylinder; the foot of its pins is narrower than the cuts' flats, so that it reaches the root. */
const DEFAULTS: Omit<FullJobOptions, 'sleeve'> = {
  prefix: '',
  title: 'Test job',
  unit: 'in',
  instrumentError: 'none',
  shopRule: 0.001,
  numbering: 'bow',
  plugDiameter: 0.512,
  clearance: 0.003,
  lies: 'away from drivers',
  turnDeg: 360,
  turnWays: 'both',
  firstChamber: 0.22,
  chamberSpacing: 0.16,
  chamberDiameter: 0.12,
  capDepth: 0.42,
  stop: 'shoulder',
  bladeHeight: 0.34,
  rootFlat: 0.05,
  cutAngleDeg: 90,
  tip: { position: 1.2, noseHeight: 0.06, rampDeg: 45 },
  floorHeight: 0.08,
  pinDiameter: 0.116,
  pinFoot: { kind: 'cone', tipFlatDiameter: 0.03, includedAngleDeg: 90 },
  pinTop: { kind: 'dome' },
  driverEnd: { kind: 'bevel', width: 0.005, angleDeg: 45 },
  driverLength: 0.2,
  spring: { free: 0.4, solid: 0.08, wire: 0.008, coils: 10 },
};

/** Root depths of chambers that do not state one, over and over. Inches. */
const ROOT_DEPTHS = [0.26, 0.3, 0.24, 0.28, 0.22] as const;

/** Builds a valid job. */
export function buildJob(options: JobOptions = {}): Job {
  const full: FullJobOptions = { ...DEFAULTS, ...options };
  const id = (name: string) => `${full.prefix}${name}`;
  const chambers = chambersOf(full, options.chambers ?? 5);
  const stacks = chambers.map((chamber, i) => stackOf(full, chamber, i + 1));
  const caliper = full.instrumentError === 'none' ? EXACT_CALIPER : DEFAULT_CALIPER;
  return {
    format: 'shearsight-job',
    schemaVersion: SCHEMA_VERSION,
    id: id('job'),
    revision: 0,
    title: full.title,
    settings: {
      unit: full.unit,
      shopRule: statedInches(full.shopRule),
      friction: 0.2,
      steepestRampDeg: 60,
      numbering: full.numbering,
      instrument: CALIPER,
      session: null,
    },
    instruments: [caliper],
    sessions: [],
    cylinders: [cylinderOf(full, chambers)],
    keys: [keyOf(full, chambers)],
    seatings: [seatingOf(full)],
    parts: stacks.flatMap(({ parts }) => parts),
    groups: stacks.flatMap(({ groups }) => groups),
    plans: [
      { id: id('plan'), cylinder: id('cylinder'), kind: 'planned', stacks: stacks.map(({ stack }) => stack) },
    ],
    intents: [],
    benchResults: [],
    note: { shared: {}, restricted: {} },
  };
}

/** Gives a copy of a job, changed by writing into it. */
export function changed(job: Job, change: (copy: Job) => void): Job {
  const copy = structuredClone(job);
  change(copy);
  return copy;
}

/** Puts what is in several jobs into one; settings, title and instruments are the first one's. */
export function joinJobs(first: Job, ...others: readonly Job[]): Job {
  const all = [first, ...others];
  return {
    ...first,
    cylinders: all.flatMap((job) => job.cylinders),
    keys: all.flatMap((job) => job.keys),
    seatings: all.flatMap((job) => job.seatings),
    parts: all.flatMap((job) => job.parts),
    groups: all.flatMap((job) => job.groups),
    plans: all.flatMap((job) => job.plans),
    intents: all.flatMap((job) => job.intents),
    benchResults: all.flatMap((job) => job.benchResults),
  };
}

const EXACT_CALIPER: Instrument = {
  id: CALIPER,
  label: 'Caliper without error',
  kind: 'digital caliper',
  resolutionMm: 0,
  maxPermissibleErrorMm: 0,
  repeatabilityMm: 0,
  source: 'assumed',
};

const DEFAULT_CALIPER: Instrument = {
  ...EXACT_CALIPER,
  label: '0.0005 in digital caliper',
  resolutionMm: 0.0127,
  maxPermissibleErrorMm: 0.0254,
  repeatabilityMm: 0.0127,
};

function chambersOf(full: FullJobOptions, chambers: number | readonly ChamberOptions[]): Built[] {
  const given: readonly ChamberOptions[] =
    typeof chambers === 'number' ? Array.from({ length: chambers }, () => ({})) : chambers;
  return given.map((chamber, i) => {
    const position = chamber.position ?? full.firstChamber + i * full.chamberSpacing;
    return {
      ...chamber,
      position,
      cutPosition: chamber.cutPosition === undefined ? position : chamber.cutPosition,
      rootDepth: chamber.rootDepth ?? ROOT_DEPTHS[i % ROOT_DEPTHS.length] ?? 0,
    };
  });
}

function cylinderOf(full: FullJobOptions, chambers: readonly Built[]): Cylinder {
  const id = (name: string) => `${full.prefix}${name}`;
  const { sleeve, lies } = full;
  const plug = { id: id('plug'), role: 'plug' as const, outerDiameter: inches(full.plugDiameter) };
  const shell = { id: id('shell'), role: 'shell' as const };
  const clearance = inches(full.clearance);
  const bodies =
    sleeve === undefined
      ? [plug, shell]
      : [
          plug,
          { id: id('sleeve'), role: 'sleeve' as const, outerDiameter: inches(sleeve.outerDiameter) },
          shell,
        ];
  const lines =
    sleeve === undefined
      ? [{ id: id('line'), inner: id('plug'), outer: id('shell'), clearance, lies }]
      : [
          { id: id('inner-line'), inner: id('plug'), outer: id('sleeve'), clearance, lies },
          {
            id: id('outer-line'),
            inner: id('sleeve'),
            outer: id('shell'),
            clearance: inches(sleeve.clearance),
            lies,
          },
        ];
  return {
    id: id('cylinder'),
    label: `${full.prefix}Cylinder`,
    turn: { angle: degrees(full.turnDeg), ways: full.turnWays },
    bodies,
    lines,
    chambers: chambers.map(
      (chamber, i): Chamber => ({
        id: id(`chamber-${i + 1}`),
        position: inches(chamber.position),
        capDepth: inches(full.capDepth),
        holes: bodies.map((body) => ({
          body: body.id,
          diameter: inches(full.chamberDiameter),
          innerMouth: { kind: 'sharp', basis: 'seen' },
          outerMouth: { kind: 'sharp', basis: 'seen' },
        })),
      }),
    ),
  };
}

function keyOf(full: FullJobOptions, chambers: readonly Built[]): Key {
  const { tip } = full;
  return {
    id: `${full.prefix}key`,
    label: `${full.prefix}Key`,
    bladeHeight: inches(full.bladeHeight),
    stop: { kind: full.stop },
    tip: { position: inches(tip.position), noseHeight: inches(tip.noseHeight), ramp: degrees(tip.rampDeg) },
    rootFlat: inches(full.rootFlat),
    includedAngle: degrees(full.cutAngleDeg),
    cuts: chambers.flatMap((chamber, i) => {
      const { cutPosition, rootDepth, overBall } = chamber;
      if (cutPosition === null) return [];
      const depth: { rootDepth: LengthValue } | { overBall: { reading: LengthValue; ball: LengthValue } } =
        overBall === undefined
          ? { rootDepth: inches(rootDepth) }
          : { overBall: { reading: inches(overBall.reading), ball: inches(overBall.ball) } };
      return [{ id: `${full.prefix}cut-${i + 1}`, position: inches(cutPosition), ...depth }];
    }),
  };
}

function seatingOf(full: FullJobOptions): Seating {
  return {
    cylinder: `${full.prefix}cylinder`,
    key: `${full.prefix}key`,
    keywayFloorHeight: inches(full.floorHeight),
    standsUpBy: [],
    felt: [],
    knownSets: [],
    pinnedRoutes: {},
  };
}
