/**
 * A key as estimates, laid along the plug: s is the distance from the plug's front face with the key home, growing
 * inwards, whichever end stops the key. What was not measured has the usual size, assumed with a range that counts.
 * mm, radians.
 */
import type { KeyShape } from '../contact/key-profile.ts';
import { combine, type Estimate, exact, type FieldRef } from '../estimate/estimate.ts';
import { type Measuring, readAngle, readLength } from '../estimate/read-value.ts';
import { asRadians, fromDegrees } from '../radians.ts';
import type { Cut, Key, Seating } from '../schema/key-schema.ts';
import type { AngleValue, Id, LengthValue } from '../schema/leaf.ts';

export type MeasuredCut = {
  readonly id: Id;
  readonly at: Estimate;
  readonly rootDepth: Estimate | null;
  readonly overBall: { readonly reading: Estimate; readonly ball: Estimate } | null;
  readonly rootFlat: Estimate;
  readonly includedAngle: Estimate;
};

export type MeasuredKey = {
  readonly id: Id;
  readonly stop: 'shoulder' | 'tip';
  readonly bladeHeight: Estimate;
  readonly bladeHeightKnown: boolean;
  readonly tipAt: Estimate;
  readonly tipHeight: Estimate;
  readonly tipRamp: Estimate;
  /** How far the key still is out when it stops. */
  readonly stopShort: Estimate;
  readonly cuts: readonly MeasuredCut[];
};

/** What cuts usually look like when nobody measured them. Common practice, no source. mm, degrees. */
export const USUAL_CUT = {
  rootFlatMm: { value: 1.524, from: 1.143, to: 1.905 },
  includedAngleDeg: { value: 90, from: 86, to: 100 },
} as const;

/**
 * Reads a key as it sits in a plug.
 *
 * @param plugDiameter for sizes nobody measured, mm
 * @param lastChamber where the innermost chamber is, for a tip nobody measured, mm
 */
export function measureKey(
  key: Key,
  seating: Seating | null,
  plugDiameter: number,
  lastChamber: number,
  measuring: Measuring,
): MeasuredKey {
  const field = (name: string): FieldRef => ({ owner: 'key', id: key.id, name });
  const stopAt =
    seating?.stopAt === undefined
      ? exact(lastChamber + plugDiameter * 0.45)
      : readLength(seating.stopAt, { owner: 'seating', id: key.id, name: 'stopAt' }, measuring);
  const along = (position: Estimate): Estimate =>
    key.stop.kind === 'shoulder'
      ? position
      : combine([
          [1, stopAt],
          [-1, position],
        ]);
  const cuts = key.cuts.map((cut) => measureCut(cut, key, along, measuring));
  const deepest = Math.max(0, ...cuts.map((cut) => cut.rootDepth?.value ?? 0));
  const length = (value: LengthValue | undefined, name: string, otherwise: number): Estimate =>
    value === undefined ? exact(otherwise) : readLength(value, field(name), measuring);
  return {
    id: key.id,
    stop: key.stop.kind,
    bladeHeight: length(
      key.bladeHeight,
      'bladeHeight',
      Math.max(plugDiameter * 0.66, deepest + plugDiameter * 0.05),
    ),
    bladeHeightKnown: key.bladeHeight !== undefined,
    tipAt:
      key.stop.kind === 'tip'
        ? stopAt
        : length(key.tip?.position, 'tipPosition', lastChamber + plugDiameter * 0.45),
    tipHeight: length(key.tip?.noseHeight, 'noseHeight', plugDiameter * 0.08),
    tipRamp: key.tip?.ramp === undefined ? exact(fromDegrees(45)) : readAngle(key.tip.ramp, field('tipRamp')),
    stopShort:
      seating?.stopShort === undefined
        ? exact(0)
        : readLength(seating.stopShort, { owner: 'seating', id: key.id, name: 'stopShort' }, measuring),
    cuts,
  };
}

function measureCut(
  cut: Cut,
  key: Key,
  along: (position: Estimate) => Estimate,
  measuring: Measuring,
): MeasuredCut {
  const field = (name: string): FieldRef => ({ owner: 'cut', id: cut.id, name });
  const common = (name: string): FieldRef => ({ owner: 'key', id: key.id, name });
  const { rootDepth, overBall } = cut;
  return {
    id: cut.id,
    at: along(readLength(cut.position, field('position'), measuring)),
    rootDepth: rootDepth === undefined ? null : readLength(rootDepth, field('rootDepth'), measuring),
    overBall:
      overBall === undefined
        ? null
        : {
            reading: readLength(overBall.reading, field('overBall'), measuring),
            ball: readLength(overBall.ball, field('overBallBall'), measuring),
          },
    rootFlat: flatOf(cut.rootFlat, field('rootFlat'), key.rootFlat, common('rootFlat'), measuring),
    includedAngle: angleOf(
      cut.includedAngle,
      field('includedAngle'),
      key.includedAngle,
      common('includedAngle'),
    ),
  };
}

function flatOf(
  own: LengthValue | undefined,
  ownField: FieldRef,
  common: LengthValue | undefined,
  commonField: FieldRef,
  measuring: Measuring,
): Estimate {
  if (own !== undefined) return readLength(own, ownField, measuring);
  if (common !== undefined) return readLength(common, commonField, measuring);
  const { value, from, to } = USUAL_CUT.rootFlatMm;
  return usual(value, from, to, commonField);
}

function angleOf(
  own: AngleValue | undefined,
  ownField: FieldRef,
  common: AngleValue | undefined,
  commonField: FieldRef,
): Estimate {
  if (own !== undefined) return readAngle(own, ownField);
  if (common !== undefined) return readAngle(common, commonField);
  const { value, from, to } = USUAL_CUT.includedAngleDeg;
  return usual(fromDegrees(value), fromDegrees(from), fromDegrees(to), commonField);
}

function usual(value: number, from: number, to: number, field: FieldRef): Estimate {
  const half = Math.max(value - from, to - value);
  const cause = { id: `${field.owner}/${field.id}/${field.name}#assumed`, kind: 'assumed', field } as const;
  return { value, terms: [{ cause, weight: half / Math.sqrt(3) }] };
}

/** The key's shape at its nominal sizes, with these root depths (a cut whose root is not known leaves no trace). */
export function nominalKeyShape(key: MeasuredKey, rootDepths: ReadonlyMap<Id, number>): KeyShape {
  const bladeHeight = Math.max(0.01, key.bladeHeight.value);
  return {
    bladeHeight,
    stop: key.stop,
    tipAt: key.tipAt.value,
    tipHeight: clamp(key.tipHeight.value, 0, bladeHeight),
    tipRamp: asRadians(clamp(key.tipRamp.value, 0.01, Math.PI / 2)),
    cuts: key.cuts.flatMap((cut) => {
      const rootDepth = rootDepths.get(cut.id);
      if (rootDepth === undefined) return [];
      return {
        id: cut.id,
        at: cut.at.value,
        rootDepth: Math.max(0, rootDepth),
        rootFlat: Math.max(0, cut.rootFlat.value),
        includedAngle: asRadians(clamp(cut.includedAngle.value, 0.05, Math.PI - 0.05)),
      };
    }),
  };
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}
