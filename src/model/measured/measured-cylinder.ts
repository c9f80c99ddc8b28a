/**
 * A cylinder as estimates: what was measured, with its doubt, and for what was not measured the usual value, marked as
 * assumed. `null` is what nothing sensible can be assumed for. Frame and signs as in assembly.ts. mm, radians.
 */
import { type Estimate, exact, type FieldRef, within } from '../estimate/estimate.ts';
import { type Measuring, readLength } from '../estimate/read-value.ts';
import type { Chamber, Cylinder, Hole, Mouth } from '../schema/cylinder-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import type { MouthShape } from '../window/window-input.ts';
import { BEARABLE_RADIUS_MM } from '../tolerances.ts';
import { lengthOf } from './part-ends.ts';
import { usualSleeve } from './usual-sleeve.ts';

export type MeasuredHole = {
  readonly body: Id;
  readonly radius: Estimate;
  readonly sideways: number;
  readonly innerMouth: MouthShape;
  readonly outerMouth: MouthShape;
};

export type MeasuredChamber = {
  readonly id: Id;
  readonly number: number;
  readonly position: Estimate;
  readonly capDepth: number;
  readonly holes: readonly MeasuredHole[];
  readonly closed: boolean;
  readonly crestDrops: readonly number[];
};

export type MeasuredLine = {
  readonly id: Id;
  /** Radius of the inner body: half its diameter. */
  readonly radius: Estimate;
  readonly clearance: Estimate;
  readonly lies: 'away from drivers' | 'centred';
};

export type MeasuredCylinder = {
  /** Null until the plug was measured. */
  readonly plugDiameter: Estimate | null;
  readonly lines: readonly MeasuredLine[];
  /** Front to back. */
  readonly chambers: readonly MeasuredChamber[];
};

const { least, most } = BEARABLE_RADIUS_MM;

/** mm. A plug nobody measured yet is drawn this big; it decides nothing. */
const UNMEASURED_PLUG_MM = 12.7;
/** Pins usually are about a fifth of the plug across. For drawing only. Common practice, no source. */
const CHAMBER_SHARE_OF_PLUG = 0.21;
/** The shell's chambers reach about this share of the plug's diameter beyond its bore. For drawing only. */
const CAP_SHARE_OF_PLUG = 0.85;

/** Reads a cylinder. */
export function measureCylinder(
  cylinder: Cylinder,
  numbering: 'bow' | 'tip',
  measuring: Measuring,
): MeasuredCylinder {
  const plug = cylinder.bodies[0];
  const plugDiameter =
    plug?.outerDiameter === undefined
      ? null
      : readLength(plug.outerDiameter, { owner: 'body', id: plug.id, name: 'outerDiameter' }, measuring);
  const nominal = plugDiameter?.value ?? UNMEASURED_PLUG_MM;
  const clearanceName = (i: number) =>
    cylinder.lines.length === 1 ? 'clearance' : i === 0 ? 'clearance/inner' : 'clearance/outer';
  const lines = cylinder.lines.map((line, i): MeasuredLine => {
    const inner = cylinder.bodies[i];
    const isSleeve = inner?.role === 'sleeve';
    const field: FieldRef = {
      owner: 'body',
      id: line.inner,
      name: isSleeve ? 'outerDiameter/sleeve' : 'outerDiameter',
    };
    const unread = isSleeve ? usualSleeve(nominal, lengthOf(cylinder.lines[i - 1]?.clearance, 0)) : undefined;
    const value = inner?.outerDiameter ?? unread;
    const diameter = value === undefined ? exact(nominal) : readLength(value, field, measuring);
    return {
      id: line.id,
      radius: within(halved(diameter), least, most),
      clearance: readLength(
        line.clearance,
        { owner: 'line', id: line.id, name: clearanceName(i) },
        measuring,
      ),
      lies: line.lies,
    };
  });
  const sorted = [...cylinder.chambers].sort((a, b) => lengthOf(a.position, 0) - lengthOf(b.position, 0));
  const count = sorted.length;
  return {
    plugDiameter,
    lines,
    chambers: sorted.map((chamber, i) => ({
      id: chamber.id,
      number: numbering === 'bow' ? i + 1 : count - i,
      position: readLength(
        chamber.position,
        { owner: 'chamber', id: chamber.id, name: 'position' },
        measuring,
      ),
      capDepth: lengthOf(chamber.capDepth, nominal * CAP_SHARE_OF_PLUG),
      holes: cylinder.bodies.map((body) => readHole(chamber, body.id, nominal, measuring)),
      closed: chamber.closed === true,
      crestDrops: cylinder.bodies.slice(0, -1).map((body) => {
        const own = body.crestDropAt?.[chamber.id];
        return lengthOf(own ?? body.crestDrop, 0);
      }),
    })),
  };
}

function readHole(chamber: Chamber, body: Id, plug: number, measuring: Measuring): MeasuredHole {
  const hole: Hole | undefined = chamber.holes.find((each) => each.body === body);
  const diameter: LengthValue | undefined = hole?.diameter ?? chamber.holes[0]?.diameter;
  const field: FieldRef = { owner: 'chamber', id: chamber.id, name: `holeDiameter/${body}` };
  return {
    body,
    radius:
      diameter === undefined
        ? exact((plug * CHAMBER_SHARE_OF_PLUG) / 2)
        : within(halved(readLength(diameter, field, measuring)), least, most),
    // Entered + to the right, looking in from the front; there, x grows to the left.
    sideways: 0 - lengthOf(hole?.sideways, 0),
    innerMouth: readMouth(hole?.innerMouth),
    outerMouth: readMouth(hole?.outerMouth),
  };
}

function readMouth(mouth: Mouth | undefined): MouthShape {
  if (mouth === undefined || mouth.kind === 'sharp') return { kind: 'sharp' };
  return { kind: mouth.kind, size: lengthOf(mouth.size, 0.127) };
}

function halved(estimate: Estimate): Estimate {
  return {
    value: estimate.value / 2,
    terms: estimate.terms.map(({ cause, weight }) => ({ cause, weight: weight / 2 })),
  };
}
