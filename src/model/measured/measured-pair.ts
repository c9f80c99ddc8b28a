/**
 * What belongs to a key in a plug: how much metal the plug has above the key's bottom edge (plug minus floor), by
 * subtraction or in one reading, and what is assumed when a person only said where the edge seems to be. mm.
 */
import { combine, type Estimate, exact, expandedUncertainty, type FieldRef } from '../estimate/estimate.ts';
import { type Measuring, readLength } from '../estimate/read-value.ts';
import type { Seating } from '../schema/key-schema.ts';

export type MeasuredPair = {
  /** From the key's bottom edge up to the plug's crest. Null until the plug was measured. */
  readonly plugMinusFloor: Estimate | null;
  /** From the plug's lowest point up to the key's bottom edge. */
  readonly floor: Estimate;
  /** The floor was neither measured nor said to be level. */
  readonly floorIsGuess: boolean;
};

/** mm. A bottom edge that looks level with the plug's underside may still be this far above it. */
const LOOKS_LEVEL_MM = 0.1;
/** An edge above the underside usually is less than this share of the plug above it. */
const HIGHEST_FLOOR_SHARE = 0.08;

/** Reads how a key sits. */
export function measurePair(
  seating: Seating | null,
  keyId: string,
  plugDiameter: Estimate | null,
  measuring: Measuring,
): MeasuredPair {
  const field = (name: string): FieldRef => ({ owner: 'seating', id: keyId, name });
  const measuredFloor = seating?.keywayFloorHeight;
  const nominal = plugDiameter?.value ?? 0;
  const floor =
    measuredFloor === undefined
      ? guessedFloor(seating?.bottomEdge, nominal, field('keywayFloorHeight'))
      : readLength(measuredFloor, field('keywayFloorHeight'), measuring);
  const subtracted =
    plugDiameter === null
      ? null
      : combine([
          [1, plugDiameter],
          [-1, floor],
        ]);
  const direct =
    seating?.plugMinusFloor === undefined
      ? null
      : readLength(seating.plugMinusFloor, field('plugMinusFloor'), measuring);
  const best = better(direct, subtracted);
  const floorIsGuess = measuredFloor === undefined && direct === null && seating?.bottomEdge !== 'level';
  if (best === direct && direct !== null && plugDiameter !== null) {
    return {
      plugMinusFloor: direct,
      floor: combine([
        [1, plugDiameter],
        [-1, direct],
      ]),
      floorIsGuess,
    };
  }
  return { plugMinusFloor: best, floor, floorIsGuess };
}

function better(one: Estimate | null, other: Estimate | null): Estimate | null {
  if (one === null || other === null) return one ?? other;
  return expandedUncertainty(one) <= expandedUncertainty(other) ? one : other;
}

/** How far above the plug's lowest point the key's bottom edge may lie while nobody measured it. mm. */
export function highestGuess(edge: Seating['bottomEdge'], plugDiameter: number): number {
  return edge === 'level' ? LOOKS_LEVEL_MM : plugDiameter * HIGHEST_FLOOR_SHARE;
}

function guessedFloor(edge: Seating['bottomEdge'], plugDiameter: number, field: FieldRef): Estimate {
  const highest = highestGuess(edge, plugDiameter);
  if (highest === 0) return exact(0);
  const cause = { id: `${field.owner}/${field.id}/${field.name}#assumed`, kind: 'assumed', field } as const;
  if (edge === 'level') return { value: 0, terms: [{ cause, weight: highest / Math.sqrt(3) }] };
  return { value: highest / 2, terms: [{ cause, weight: highest / 2 / Math.sqrt(3) }] };
}
