/**
 * The cylinders of the lessons: real jobs of one or a few chambers, every size stated and without doubt, so that the engine
 * gives a plain verdict. The frame is the job file's. Lengths mm, angles degrees where the name says so.
 *
 * The usual one has a plug of .748 in, play of .004 in, cuts with a flat of .060 in between sides at 90 degrees, and
 * bottom pins with a pointed foot that stands on the flat. Invented; sizes are common practice, no source.
 */
import type { Cylinder } from '../schema/cylinder-schema.ts';
import type { Selection } from '../measured/selection.ts';
import { type Job, SCHEMA_VERSION } from '../schema/job-schema.ts';
import type { Key } from '../schema/key-schema.ts';
import type { LengthValue } from '../schema/leaf.ts';
import type { EndForm, Part } from '../schema/parts-schema.ts';
import { statedAngle } from '../edit/values.ts';
import { formatLength } from '../units/format-length.ts';
import { inchesToMm, type JobUnit, toStoredMm } from '../units/length-unit.ts';
import { sizeOf } from './draw.ts';

export type PinEnd =
  | { readonly kind: 'flat' | 'dome' }
  | { readonly kind: 'bevel'; readonly width: number }
  | { readonly kind: 'cone'; readonly tipFlat: number }
  | { readonly kind: 'cup'; readonly mouth: number };

export type PracticeChamber = {
  readonly rootDepth: number;
  /** Left out: as long as reaches the line, foot on the root. */
  readonly pin?: number;
  readonly ball?: number;
  readonly foot?: PinEnd;
  readonly top?: PinEnd;
  readonly masterPin?: number;
  readonly driver?: number;
  readonly driverEnd?: PinEnd;
  /** How far the top of the bottom pin sinks below the line with the key out. */
  readonly rest?: number;
};

export type PracticeCylinder = {
  readonly unit: JobUnit;
  readonly chambers: readonly PracticeChamber[];
  readonly plug?: number;
  readonly play?: number;
  readonly floor?: number;
  readonly rootFlat?: number;
  readonly bladeHeight?: number;
  /** How far the key stops short of home. */
  readonly stopShort?: number;
  readonly sleeveDiameter?: number;
  readonly springSolid?: number;
};

/** Inches. */
export const USUAL_IN = {
  plug: 0.748,
  play: 0.004,
  floor: 0.042,
  rootFlat: 0.06,
  bladeHeight: 0.5,
  driver: 0.275,
  chamber: 0.16,
  pin: 0.156,
  first: 0.35,
  spacing: 0.25,
  capDepth: 0.64,
  sleeve: 0.998,
  springSolid: 0.19,
  springFree: 0.7,
} as const;

/** The foot that stands on the flat of a cut, and the usual ends. */
export const ENDS = {
  foot: { kind: 'cone', tipFlat: inchesToMm(0.03) },
  dome: { kind: 'dome' },
  flat: { kind: 'flat' },
  broken: { kind: 'bevel', width: inchesToMm(0.005) },
  wideBroken: { kind: 'bevel', width: inchesToMm(0.01) },
} as const satisfies Record<string, PinEnd>;

/** What every practice job is looked at in. */
export const PRACTICE: Selection = { cylinder: 'cylinder', key: 'key', plan: 'plan' };

export function chamberId(index: number): string {
  return `chamber-${index + 1}`;
}

/** The bottom pin that reaches the line: plug less metal under the key less root depth less ball. mm. */
export function levelPin(cylinder: Omit<PracticeCylinder, 'chambers'>, rootDepth: number, ball = 0): number {
  return toStoredMm(plugOf(cylinder) - floorOf(cylinder) - rootDepth - ball);
}

export function plugOf({ plug, unit }: Omit<PracticeCylinder, 'chambers'>): number {
  return plug ?? sizeOf(USUAL_IN.plug, unit);
}

export function floorOf({ floor, unit }: Omit<PracticeCylinder, 'chambers'>): number {
  return floor ?? sizeOf(USUAL_IN.floor, unit);
}

/** Makes the job. */
export function practiceJob(of: PracticeCylinder): Job {
  const stated = (mm: number) => statedLength(mm, of.unit);
  const stacks = of.chambers.map((chamber, i) => partsOf(of, chamber, i));
  return {
    format: 'shearsight-job',
    schemaVersion: SCHEMA_VERSION,
    id: 'practice',
    revision: 0,
    title: 'Practice',
    settings: {
      unit: of.unit,
      shopRule: stated(inchesToMm(0.001)),
      friction: 0.22,
      steepestRampDeg: 60,
      numbering: 'bow',
      instrument: null,
      session: null,
    },
    instruments: [],
    sessions: [],
    cylinders: [cylinderOf(of)],
    keys: [keyOf(of)],
    seatings: [
      {
        cylinder: 'cylinder',
        key: 'key',
        keywayFloorHeight: stated(floorOf(of)),
        ...(of.stopShort !== undefined && { stopShort: stated(of.stopShort) }),
        standsUpBy: [],
        felt: [],
        knownSets: [],
        pinnedRoutes: {},
      },
    ],
    parts: stacks.flat(),
    groups: [],
    plans: [
      {
        id: 'plan',
        cylinder: 'cylinder',
        kind: 'planned',
        stacks: of.chambers.map(({ rest }, i) => {
          const items = (stacks[i] ?? []).map(({ id }) => ({ part: id }));
          const lower = items.filter(({ part }) => /^(?:ball|bottom-pin)/u.test(part));
          return {
            chamber: chamberId(i),
            items,
            ...(rest !== undefined && { rest: { items: lower, belowLine: stated(rest) } }),
          };
        }),
      },
    ],
    intents: [],
    benchResults: [],
    note: { shared: {}, restricted: {} },
  };
}

function cylinderOf(of: PracticeCylinder): Cylinder {
  const stated = (mm: number) => statedLength(mm, of.unit);
  const play = stated(of.play ?? sizeOf(USUAL_IN.play, of.unit));
  const lies = 'away from drivers' as const;
  const plug = { id: 'plug', role: 'plug' as const, outerDiameter: stated(plugOf(of)) };
  const shell = { id: 'shell', role: 'shell' as const };
  const sleeve = of.sleeveDiameter;
  const bodies =
    sleeve === undefined
      ? [plug, shell]
      : [plug, { id: 'sleeve', role: 'sleeve' as const, outerDiameter: stated(sleeve) }, shell];
  return {
    id: 'cylinder',
    label: 'the practice cylinder',
    turn: { angle: statedAngle(360), ways: 'both' },
    bodies,
    lines: bodies.slice(1).map(({ id }, i) => ({
      id: `line-${i + 1}`,
      inner: bodies[i]?.id ?? '',
      outer: id,
      clearance: play,
      lies,
    })),
    chambers: of.chambers.map((_, i) => ({
      id: chamberId(i),
      position: stated(placeOf(i, of.unit)),
      capDepth: stated(inchesToMm(USUAL_IN.capDepth)),
      holes: bodies.map(({ id }) => ({
        body: id,
        diameter: stated(inchesToMm(USUAL_IN.chamber)),
        innerMouth: { kind: 'sharp', basis: 'seen' },
        outerMouth: { kind: 'sharp', basis: 'seen' },
      })),
    })),
  };
}

function placeOf(index: number, unit: JobUnit): number {
  return sizeOf(USUAL_IN.first + index * USUAL_IN.spacing, unit);
}

function keyOf(of: PracticeCylinder): Key {
  const stated = (mm: number) => statedLength(mm, of.unit);
  const last = placeOf(of.chambers.length - 1, of.unit);
  return {
    id: 'key',
    label: 'practice key',
    bladeHeight: stated(of.bladeHeight ?? sizeOf(USUAL_IN.bladeHeight, of.unit)),
    stop: { kind: 'shoulder' },
    tip: {
      position: stated(last + inchesToMm(0.42)),
      noseHeight: stated(inchesToMm(0.18)),
      ramp: statedAngle(45),
    },
    rootFlat: stated(of.rootFlat ?? inchesToMm(USUAL_IN.rootFlat)),
    includedAngle: statedAngle(90),
    cuts: of.chambers.map(({ rootDepth }, i) => ({
      id: `cut-${i + 1}`,
      position: stated(placeOf(i, of.unit)),
      rootDepth: stated(rootDepth),
    })),
  };
}

/** Bottom to top. */
function partsOf(of: PracticeCylinder, chamber: PracticeChamber, index: number): Part[] {
  const { unit } = of;
  const stated = (mm: number) => statedLength(mm, unit);
  const number = index + 1;
  const part = { quantity: 1, original: false };
  const pin = (name: string, label: string, length: number, ends: readonly [PinEnd, PinEnd]): Part => ({
    ...part,
    id: `${name}-${number}`,
    label,
    kind: 'pin',
    diameter: stated(inchesToMm(USUAL_IN.pin)),
    length: stated(Math.max(0.1, length)),
    ends: [endForm(ends[0], unit), endForm(ends[1], unit)],
  });
  const { ball, masterPin } = chamber;
  const foot = chamber.foot ?? (ball === undefined ? ENDS.foot : ENDS.flat);
  const length = chamber.pin ?? levelPin(of, chamber.rootDepth, ball);
  const driverEnd = chamber.driverEnd ?? ENDS.broken;
  return [
    ...(ball === undefined
      ? []
      : [{ ...part, id: `ball-${number}`, label: 'ball', kind: 'ball' as const, diameter: stated(ball) }]),
    pin('bottom-pin', 'bottom pin', length, [foot, chamber.top ?? ENDS.dome]),
    ...(masterPin === undefined
      ? []
      : [pin('master-pin', 'master pin', masterPin, [ENDS.broken, ENDS.dome])]),
    pin('driver', 'driver', chamber.driver ?? sizeOf(USUAL_IN.driver, unit), [driverEnd, driverEnd]),
    {
      ...part,
      id: `spring-${number}`,
      label: 'spring',
      kind: 'spring',
      diameter: stated(inchesToMm(0.144)),
      solid: stated(of.springSolid ?? inchesToMm(USUAL_IN.springSolid)),
      free: stated(inchesToMm(USUAL_IN.springFree)),
    },
  ];
}

function endForm(end: PinEnd, unit: JobUnit): EndForm {
  const stated = (mm: number) => statedLength(mm, unit);
  const basis = 'seen' as const;
  switch (end.kind) {
    case 'flat':
    case 'dome':
      return { kind: end.kind, basis };
    case 'bevel':
      return { kind: 'bevel', width: stated(end.width), angle: statedAngle(45), basis };
    case 'cone':
      return { kind: 'cone', tipFlatDiameter: stated(end.tipFlat), includedAngle: statedAngle(90), basis };
    case 'cup':
      return { kind: 'cup', mouthDiameter: stated(end.mouth), includedAngle: statedAngle(90), basis };
  }
}

function statedLength(mm: number, unit: JobUnit): LengthValue {
  const value = toStoredMm(mm);
  return {
    readings: [
      {
        typed: formatLength(value, { unit, form: 'roundTrip' }),
        unit,
        value,
        instrument: null,
        session: null,
      },
    ],
    estimator: 'mean',
    basis: 'stated',
  };
}
