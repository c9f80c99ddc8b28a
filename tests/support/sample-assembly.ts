/**
 * An invented cylinder for tests of drawings, put together by hand, its parts with every kind of end and waist. Six
 * chambers (or fewer, or seven), one line or two, balls under dimpled pins. mm.
 */
import type {
  Assembly,
  AssemblyBody,
  AssemblyChamber,
  AssemblyLine,
  AssemblyStack,
  StackPart,
} from '../../src/model/assembly/assembly.ts';
import type { Pose } from '../../src/model/assembly/pose.ts';
import { poseAt } from '../../src/model/assembly/pose-at.ts';
import { ballStandsOut } from '../../src/model/contact/dimple.ts';
import { buildKeyProfile, type KeyShape } from '../../src/model/contact/key-profile.ts';
import type { EndShape } from '../../src/model/end-shape.ts';
import type { ChamberResult, Evaluation, SplitResult, Verdict } from '../../src/model/evaluate/evaluation.ts';
import { fromDegrees } from '../../src/model/radians.ts';
import type { MouthShape } from '../../src/model/window/window-input.ts';

export const SAMPLE = {
  plugRadius: 9.4,
  clearance: 0.1,
  sleeveWall: 2.2,
  holeRadius: 2.03,
  pinRadius: 1.98,
  ballRadius: 1.98,
  floor: 1.1,
  first: 8.9,
  spacing: 6.3,
  bladeHeight: 12.2,
  capDepth: 15.6,
} as const;

const ROOTS = [9.0, 10.2, 8.1, 9.7, 11.1, 7.4, 9.3];
/** How far each split stands off its line, mm: level, low, level, high, too high, low. */
export const OFFSETS = [0.005, -0.025, -0.005, 0.06, 0.24, -0.04, 0];

export type SampleOptions = {
  readonly chambers?: number;
  readonly hasSleeve?: boolean;
  readonly offsets?: readonly number[];
  /** Of every stack at the outer line, mm. */
  readonly outerOffset?: number;
  readonly mouth?: MouthShape;
  readonly hasKey?: boolean;
  readonly crestDrop?: number;
  readonly sideways?: number;
  readonly parts?: (chamber: number, parts: StackPart[]) => StackPart[];
};

/** Puts a cylinder together. */
export function sampleAssembly(options: SampleOptions = {}): Assembly {
  const count = options.chambers ?? 6;
  const bodies = sampleBodies(options.hasSleeve ?? false, count);
  const lines = sampleLines(bodies);
  const chambers = Array.from({ length: count }, (_, i) => sampleChamber(i, bodies, lines, options));
  const key = options.hasKey === false ? null : sampleKey(count);
  const bare: Assembly = {
    cylinder: 'cylinder',
    plan: 'plan',
    label: 'Oil-store door',
    bodies,
    lines,
    chambers,
    key,
    stacks: [],
    turn: { angle: fromDegrees(360), ways: 'both' },
    keywayWidth: 2.1,
  };
  return { ...bare, stacks: chambers.map((chamber, i) => sampleStack(bare, chamber, i, options)) };
}

/** Poses it with the key home, or still `travel` out; null: no key. */
export function samplePose(assembly: Assembly, travel: number | null = 0): Pose {
  return poseAt(assembly, { travel });
}

function sampleBodies(hasSleeve: boolean, count: number): AssemblyBody[] {
  const { plugRadius, clearance, sleeveWall, first, spacing } = SAMPLE;
  const backZ = first + (count - 1) * spacing + 12;
  const body = (
    id: 'plug' | 'sleeve' | 'shell',
    outerRadius: number,
    boreRadius: number,
    axisY: number,
  ): AssemblyBody => ({ id, role: id, outerRadius, boreRadius, axisY, frontZ: 0, backZ });
  const bore = plugRadius + clearance / 2;
  const sleeveRadius = bore + sleeveWall;
  if (!hasSleeve) return [body('plug', plugRadius, 0, 0), body('shell', 30, bore, clearance / 2)];
  return [
    body('plug', plugRadius, 0, 0),
    body('sleeve', sleeveRadius, bore, clearance / 2),
    body('shell', 32, sleeveRadius + clearance / 2, clearance),
  ];
}

function sampleLines(bodies: readonly AssemblyBody[]): AssemblyLine[] {
  return bodies.slice(0, -1).map((inner, i) => {
    const outer = bodies[i + 1]!;
    return {
      id: i === 0 ? 'inner line' : 'outer line',
      inner: inner.id,
      outer: outer.id,
      radius: inner.outerRadius,
      clearance: SAMPLE.clearance,
      innerAxisY: inner.axisY,
      outerAxisY: outer.axisY,
      lies: 'away from drivers',
    };
  });
}

function sampleChamber(
  i: number,
  bodies: readonly AssemblyBody[],
  lines: readonly AssemblyLine[],
  options: SampleOptions,
): AssemblyChamber {
  const last = lines.at(-1)!;
  const mouth = options.mouth ?? { kind: 'sharp' };
  return {
    id: `chamber${i + 1}`,
    number: i + 1,
    z: SAMPLE.first + i * SAMPLE.spacing,
    holes: bodies.map((body) => ({
      body: body.id,
      radius: SAMPLE.holeRadius,
      sideways: body.role === 'shell' ? (options.sideways ?? 0) : 0,
      innerMouth: mouth,
      outerMouth: mouth,
    })),
    capY: last.outerAxisY + last.radius + last.clearance / 2 + SAMPLE.capDepth,
    closed: false,
    crestDrops: lines.map(() => options.crestDrop ?? 0),
  };
}

function sampleKey(count: number): NonNullable<Assembly['key']> {
  const { first, spacing, bladeHeight, plugRadius, floor } = SAMPLE;
  const tipAt = first + (count - 1) * spacing + 7.5;
  const shape: KeyShape = {
    bladeHeight,
    stop: 'shoulder',
    tipAt,
    tipHeight: 1.5,
    tipRamp: fromDegrees(45),
    cuts: Array.from({ length: count }, (_, i) => ({
      id: `cut${i + 1}`,
      at: first + i * spacing + (i === 3 ? 0.13 : 0),
      rootDepth: ROOTS[i] ?? 9,
      rootFlat: 1.5,
      includedAngle: fromDegrees(90),
    })),
  };
  return {
    id: 'key',
    shape,
    profile: buildKeyProfile(shape),
    bottomY: -plugRadius + floor,
    thickness: 1.9,
    seatedTravel: 0,
    outTravel: tipAt + 3,
  };
}

const CUP: EndShape = { kind: 'cup', mouthDiameter: 2.6, includedAngle: fromDegrees(90) };

function sampleStack(
  assembly: Assembly,
  chamber: AssemblyChamber,
  i: number,
  options: SampleOptions,
): AssemblyStack {
  const { ballRadius, pinRadius, plugRadius } = SAMPLE;
  const ball = part('ball', `ball ${i}`, ballRadius * 2, ballRadius, { kind: 'sphere' }, { kind: 'sphere' });
  const bare: AssemblyStack = { chamber: chamber.id, parts: [ball], restY: -3.2 };
  const foot = poseAt({ ...assembly, stacks: [bare] }, { travel: 0 }).stacks[0]!.footY;
  const standsOut = ballStandsOut(ballRadius, { mouthDiameter: 2.6, includedAngle: fromDegrees(90) });
  const offset = (options.offsets ?? OFFSETS)[i] ?? 0;
  const length = plugRadius + offset - foot - standsOut;
  const seat = 2 * ballRadius - standsOut;
  const pin: StackPart = {
    ...part('bottomPin', `pin ${i}`, length + 0, pinRadius, CUP, { kind: 'dome', radius: plugRadius }),
    seat,
  };
  const spacers = assembly.lines
    .slice(1)
    .map((line, k) =>
      part(
        'masterPin',
        `spacer ${i} ${k}`,
        line.innerAxisY + line.radius - plugRadius - offset + (options.outerOffset ?? 0.02),
        pinRadius,
        { kind: 'bevel', width: 0.13, angle: fromDegrees(45) },
        { kind: 'bevel', width: 0.13, angle: fromDegrees(45) },
      ),
    );
  const driver = part(
    'driver',
    `driver ${i}`,
    6.9,
    pinRadius,
    { kind: 'bevel', width: 0.13, angle: fromDegrees(45) },
    { kind: 'flat' },
  );
  const isSpool = i === 1 || i === 3;
  const spring: StackPart = {
    ...part('spring', `spring ${i}`, 16, 1.75, { kind: 'flat' }, { kind: 'flat' }),
    solid: 4.2,
    wire: 0.36,
    coils: 11,
  };
  const parts: StackPart[] = [
    ball,
    pin,
    ...spacers,
    { ...driver, waist: isSpool ? { kind: 'spool', from: 1.7, length: 3.6, radius: 1.2 } : null },
    spring,
  ];
  return { ...bare, parts: options.parts?.(i, parts) ?? parts };
}

function part(
  role: StackPart['role'],
  id: string,
  length: number,
  radius: number,
  lower: EndShape,
  upper: EndShape,
): StackPart {
  return {
    part: id,
    label: id,
    role,
    radius,
    length,
    lower,
    upper,
    seat: 0,
    waist: null,
    solid: 0,
    wire: 0,
    coils: 0,
  };
}

/** Says what an evaluation would of a pose: offsets from the pose, windows and verdicts by plain rules. */
export function sampleEvaluation(assembly: Assembly, pose: Pose, expandedUncertainty = 0.035): Evaluation {
  const chambers = assembly.chambers.map((chamber): ChamberResult => {
    const stack = pose.stacks.find((each) => each.chamber === chamber.id)!;
    const solid = stack.parts.filter(({ part: each }) => each.role !== 'spring');
    const splits = assembly.lines.map((line): SplitResult => {
      const tops = solid.slice(1, -1).map((posed) => posed.topY - line.innerAxisY - line.radius);
      const nearest = tops.reduce(
        (best, offset) => (Math.abs(offset) < Math.abs(best) ? offset : best),
        Infinity,
      );
      const at = 1 + tops.indexOf(nearest);
      const offset = nearest;
      return {
        below: solid[at]!.part.part,
        above: solid[at + 1]?.part.part ?? null,
        height: offset + line.innerAxisY + line.radius,
        line: line.id,
        offset,
        window: { lowest: -0.195, noTouch: 0, highest: 0.1 },
        margin: Math.min(offset + 0.195, 0.1 - offset),
        expandedUncertainty,
        toLowest: expandedUncertainty,
        toHighest: expandedUncertainty,
        rubsFrom: offset > 0.025 ? 1.1 : null,
        verdict: verdictFor(offset, expandedUncertainty),
        lean: null,
        nextStep: null,
        assumes: [],
        useFrom: 0,
        useTo: 0,
        noneCertain: false,
      };
    });
    return {
      chamber: chamber.id,
      number: chamber.number,
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
      splits,
      verdicts: splits.map((split, k) => ({ line: split.line, verdict: split.verdict, split: k })),
      alone: null,
      missing: [],
    };
  });
  return {
    units: { length: 'mm', angle: 'rad' },
    cylinder: assembly.cylinder,
    key: assembly.key?.id ?? null,
    plan: assembly.plan,
    lines: assembly.lines.map((line, k) => {
      const blocked = chambers.filter(
        (each) => !['level', 'low, turns', 'high, rubs'].includes(each.splits[k]!.verdict),
      );
      return {
        line: line.id,
        verdict: blocked.length === 0 ? 'turns' : 'will not turn',
        lean: null,
        blockedBy: blocked.map((each) => each.chamber),
      };
    }),
    chambers,
    commonError: null,
    insertion: [],
    findings: [],
  };
}

function verdictFor(offset: number, uncertainty: number): Verdict {
  if (offset > 0.1 + uncertainty) return 'too high';
  if (offset < -0.195 - uncertainty) return 'too low';
  if (offset > 0.1 - uncertainty || offset < -0.195 + uncertainty) return "can't say yet";
  if (Math.abs(offset) <= 0.0254) return 'level';
  return offset > 0 ? 'high, rubs' : 'low, turns';
}
