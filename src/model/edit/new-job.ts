/**
 * An empty job: a cylinder with its chambers, a key with as many cuts, and in each hole a ball, a bottom pin, a driver and
 * a spring that nobody measured yet. What has a usual value is assumed, with its range; the plug, the cuts and the
 * stacks are left to be measured.
 */
import type { Cylinder, Instrument } from '../schema/cylinder-schema.ts';
import { type Job, SCHEMA_VERSION } from '../schema/job-schema.ts';
import type { Key } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { JobUnit } from '../units/length-unit.ts';
import { usualInstrument } from './instruments.ts';
import { newParts } from './new-parts.ts';
import {
  USUAL_CLEARANCE,
  USUAL_CUT_ANGLE_DEG,
  USUAL_FRICTION,
  USUAL_SHOP_RULE,
  USUAL_STEEPEST_RAMP_DEG,
  USUAL_TIP_RAMP_DEG,
  usualSizes,
} from './usual-values.ts';
import { assumedAngle, assumedValue, statedAngle, statedValue } from './values.ts';
import { newSeating } from './edit-seating.ts';
import { assumedKeyEnd, assumedPositions } from './usual-positions.ts';

export type NewJobOptions = {
  /** Makes an id that was never used. */
  readonly newId: () => Id;
  readonly unit: JobUnit;
  readonly chambers: number;
  readonly title?: string;
  /** What is in the hand; by default a digital caliper with the figures usual for one. */
  readonly instrument?: Omit<Instrument, 'id'> | null;
};

/** Makes an empty job of one cylinder and one key. */
export function newJob(options: NewJobOptions): Job {
  const { newId, unit, chambers, title = 'My cylinder', instrument: inHand = null } = options;
  const instrument: Instrument =
    inHand === null ? usualInstrument('digital caliper', newId(), unit) : { id: newId(), ...inHand };
  const positions = assumedPositions(chambers, unit, null);
  const cylinder = newCylinder(newId, unit, positions);
  const key = newKey(newId, unit, positions);
  const stacks = cylinder.chambers.map((chamber) => ({ chamber: chamber.id, parts: newParts(newId, unit) }));
  return {
    format: 'shearsight-job',
    schemaVersion: SCHEMA_VERSION,
    id: newId(),
    revision: 0,
    title,
    settings: {
      unit,
      shopRule: statedValue(USUAL_SHOP_RULE[unit], unit),
      friction: USUAL_FRICTION,
      steepestRampDeg: USUAL_STEEPEST_RAMP_DEG,
      numbering: 'bow',
      instrument: instrument.id,
      session: null,
    },
    instruments: [instrument],
    sessions: [],
    cylinders: [cylinder],
    keys: [key],
    seatings: [newSeating(cylinder.id, key.id)],
    parts: stacks.flatMap((stack) => stack.parts),
    groups: [],
    plans: [
      {
        id: newId(),
        cylinder: cylinder.id,
        kind: 'planned',
        stacks: stacks.map(({ chamber, parts }) => ({
          chamber,
          items: parts.map((part) => ({ part: part.id })),
        })),
      },
    ],
    intents: [],
    benchResults: [],
    note: { shared: {}, restricted: {} },
  };
}

/** Makes a cylinder that nobody measured yet, with chambers at these places. */
export function newCylinder(newId: () => Id, unit: JobUnit, positions: readonly string[]): Cylinder {
  const sizes = usualSizes(null);
  const plug = newId();
  const shell = newId();
  return {
    id: newId(),
    label: 'Cylinder',
    turn: { angle: statedAngle(360), ways: 'both' },
    bodies: [
      { id: plug, role: 'plug' },
      { id: shell, role: 'shell' },
    ],
    lines: [
      {
        id: newId(),
        inner: plug,
        outer: shell,
        clearance: assumedValue(USUAL_CLEARANCE[unit], unit),
        lies: 'away from drivers',
      },
    ],
    chambers: positions.map((position) => ({
      id: newId(),
      position: assumedValue([position, position, position], unit),
      capDepth: assumedValue(sizes.capDepth[unit], unit),
      holes: [plug, shell].map((body) => ({
        body,
        diameter: assumedValue(sizes.chamberDiameter[unit], unit),
      })),
    })),
  };
}

/** Makes a key that nobody measured yet, with cuts at these places, for a plug of this diameter; null: not known. mm. */
export function newKey(
  newId: () => Id,
  unit: JobUnit,
  positions: readonly string[],
  plugDiameterMm: number | null = null,
): Key {
  const sizes = usualSizes(plugDiameterMm);
  const { value, from, to } = USUAL_CUT_ANGLE_DEG;
  return {
    id: newId(),
    label: 'Key',
    bladeHeight: assumedValue(sizes.bladeHeight[unit], unit),
    bladeThickness: assumedValue(sizes.bladeThickness[unit], unit),
    stop: { kind: 'shoulder' },
    tip: {
      ...assumedKeyEnd(positions, unit, plugDiameterMm),
      ramp: assumedAngle(USUAL_TIP_RAMP_DEG.value, USUAL_TIP_RAMP_DEG.from, USUAL_TIP_RAMP_DEG.to),
    },
    rootFlat: assumedValue(sizes.rootFlat[unit], unit),
    includedAngle: assumedAngle(value, from, to),
    cuts: positions.map((position) => ({
      id: newId(),
      position: assumedValue([position, position, position], unit),
    })),
  };
}
