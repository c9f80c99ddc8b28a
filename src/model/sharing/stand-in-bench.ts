/**
 * A cylinder to draw where the bitting is hidden: the same bodies, lines and chambers, with cuts that are all alike and
 * pins that are all alike but for the offsets, which may be shown. Nothing in it comes from the key or the parts of the
 * job, so that nothing can be scaled off the picture. mm.
 *
 *        ======  driver, all alike
 *   -----------  line
 *        =    =  bottom pin: to the line, and its offset more
 *   _____|____|  cuts, all of one depth
 */
import type { Assembly } from '../assembly/assembly.ts';
import { assemble } from '../assembly/build-assembly.ts';
import type { ChamberResult, Evaluation, SplitResult } from '../evaluate/evaluation.ts';
import { layOut } from '../measured/selection.ts';
import type { Cylinder } from '../schema/cylinder-schema.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Key, Seating } from '../schema/key-schema.ts';
import type { AngleValue, Id, LengthValue } from '../schema/leaf.ts';
import type { Part, Plan } from '../schema/parts-schema.ts';
import type { ShareableChamber, ShareableState } from './shareable-view.ts';

export type StandInBench = { readonly assembly: Assembly; readonly evaluation: Evaluation };

/** Shares of the plug's radius, chosen to look like a key and to meet no real one. */
const FLOOR_SHARE = 0.16;
const ROOT_SHARE = 0.7;
const BLADE_SHARE = 1.05;
const DRIVER_SHARE = 0.9;
const THINNEST_MM = 0.2;
const KEY = 'stand-in-key';
const PLAN = 'stand-in-plan';

/** Builds it from a cylinder and what may be shared about one state of it; without a key where the job has none. */
export function standInBench(
  job: Job,
  cylinder: Cylinder,
  state: ShareableState,
  hasKey: boolean,
): StandInBench {
  const empty = bareJob(job, cylinder);
  const bare = assemble(layOut(empty, { cylinder: cylinder.id, key: null, plan: PLAN }));
  const radius = bare.lines[0]?.radius ?? 1;
  const lastZ = Math.max(radius, ...bare.chambers.map(({ z }) => z));
  const foot = (FLOOR_SHARE + ROOT_SHARE - 1) * radius;
  const stacks = state.chambers.map((chamber) => stackOf(bare, chamber, foot, radius));
  const filled: Job = {
    ...empty,
    keys: [keyOf(bare, radius, lastZ)],
    seatings: [seatingOf(cylinder.id, radius)],
    parts: stacks.flatMap(({ parts }) => parts),
    plans: [{ id: PLAN, cylinder: cylinder.id, kind: state.kind, stacks: stacks.map(({ stack }) => stack) }],
  };
  const assembly = assemble(layOut(filled, { cylinder: cylinder.id, key: hasKey ? KEY : null, plan: PLAN }));
  return { assembly, evaluation: evaluationOf(bare, state) };
}

/** The job with its cylinder and instruments, and nothing else that was measured. */
function bareJob(job: Job, cylinder: Cylinder): Job {
  return {
    ...job,
    cylinders: [cylinder],
    keys: [],
    seatings: [],
    parts: [],
    groups: [],
    plans: [{ id: PLAN, cylinder: cylinder.id, kind: 'planned', stacks: [] }],
    intents: [],
    benchResults: [],
    note: { shared: {}, restricted: {} },
  };
}

function keyOf({ chambers }: Assembly, radius: number, lastZ: number): Key {
  const widest = 2 * Math.max(...chambers.map(({ holes }) => holes[0]?.radius ?? 0), 0.1);
  return {
    id: KEY,
    label: 'stand-in',
    bladeHeight: stated(BLADE_SHARE * radius),
    stop: { kind: 'shoulder' },
    tip: { position: stated(lastZ + 0.9 * radius), noseHeight: stated(0.3 * radius), ramp: degrees(45) },
    rootFlat: stated(widest * 0.4),
    includedAngle: degrees(100),
    cuts: chambers.map(({ id, z }) => ({
      id: `cut-${id}`,
      position: stated(z),
      rootDepth: stated(ROOT_SHARE * radius),
    })),
  };
}

function seatingOf(cylinder: Id, radius: number): Seating {
  return {
    cylinder,
    key: KEY,
    keywayFloorHeight: stated(FLOOR_SHARE * radius),
    standsUpBy: [],
    felt: [],
    knownSets: [],
    pinnedRoutes: {},
  };
}

const NAMES = ['bottom-pin', 'master-pin', 'upper-master-pin'] as const;

/** The parts up to the last line whose split is known, and a driver and a spring on them. */
function stackOf(
  bare: Assembly,
  { chamber, splits }: ShareableChamber,
  foot: number,
  radius: number,
): { parts: Part[]; stack: Plan['stacks'][number] } {
  const place = bare.chambers.find(({ id }) => id === chamber);
  const diameter = stated(2 * (place?.holes[0]?.radius ?? 0.2 * radius) * 0.975);
  const pin = (name: string, length: number): Part => ({
    id: `${name}-${chamber}`,
    label: 'stand-in',
    kind: 'pin',
    diameter,
    length: stated(length),
    ...(name === 'bottom-pin' ? { ends: FOOT_AND_CROWN } : {}),
    quantity: 1,
    original: false,
  });
  const parts: Part[] = [];
  let below = foot;
  for (const [i, { at }] of splits.entries()) {
    if (at === null) break;
    const top = Math.max(levelOf(bare, i) + at.offset, below + THINNEST_MM);
    parts.push(pin(NAMES[i] ?? 'bottom-pin', top - below));
    below = top;
  }
  if (parts.length > 0)
    parts.push(pin('driver', DRIVER_SHARE * radius), {
      id: `spring-${chamber}`,
      label: 'stand-in',
      kind: 'spring',
      free: stated(2 * radius),
      quantity: 1,
      original: false,
    });
  return { parts, stack: { chamber, items: parts.map(({ id }) => ({ part: id })) } };
}

const FOOT_AND_CROWN: NonNullable<Part['ends']> = [
  { kind: 'cone', basis: 'seen' },
  { kind: 'dome', basis: 'seen' },
];

function levelOf({ lines }: Assembly, index: number): number {
  const line = lines[index];
  return line === undefined ? 0 : line.innerAxisY + line.radius;
}

/** What may be shared, in the form that drawings read. */
function evaluationOf(bare: Assembly, state: ShareableState): Evaluation {
  return {
    units: { length: 'mm', angle: 'rad' },
    cylinder: bare.cylinder,
    key: KEY,
    plan: PLAN,
    lines: state.lines,
    chambers: state.chambers.map((chamber) => resultOf(bare, chamber)),
    commonError: state.commonOffset === null ? null : { offset: state.commonOffset, message: '' },
    insertion: [],
    findings: [],
  };
}

function resultOf(bare: Assembly, { chamber, number, splits }: ShareableChamber): ChamberResult {
  const results = splits.flatMap((split, i): SplitResult[] => {
    const { at, line, verdict, lean } = split;
    if (at === null) return [];
    const { offset, window } = at;
    return [
      {
        below: `${NAMES[i] ?? 'bottom-pin'}-${chamber}`,
        above: null,
        height: levelOf(bare, i) + offset,
        line,
        offset,
        window,
        margin: Math.min(offset - window.lowest, window.highest - offset),
        expandedUncertainty: 0,
        toLowest: 0,
        toHighest: 0,
        rubsFrom: null,
        useFrom: 0,
        useTo: 0,
        noneCertain: false,
        verdict,
        lean,
        nextStep: null,
        assumes: [],
      },
    ];
  });
  return {
    chamber,
    number,
    contactHeight: null,
    flankLift: null,
    neededLowerStack: null,
    neededUncertainty: null,
    drivingRoute: null,
    routes: [],
    simpleLowerStack: null,
    simpleDiffers: null,
    lowerStack: null,
    lowerStackUncertainty: null,
    useFrom: null,
    useTo: null,
    best: null,
    noneCertain: false,
    splits: results,
    verdicts: splits.map(({ line, verdict }) => {
      const split = results.findIndex((each) => each.line === line);
      return { line, verdict, split: split < 0 ? null : split };
    }),
    alone: null,
    missing: [],
  };
}

function stated(mm: number): LengthValue {
  return {
    readings: [{ typed: '', unit: 'mm', value: mm, instrument: null, session: null }],
    estimator: 'mean',
    basis: 'stated',
  };
}

function degrees(value: number): AngleValue {
  return {
    readings: [{ typed: '', unit: 'deg', value, instrument: null, session: null }],
    estimator: 'mean',
    basis: 'stated',
  };
}
