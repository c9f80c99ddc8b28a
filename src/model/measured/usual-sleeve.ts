/** The sleeve nobody measured across yet: assumed from the plug, with a range that counts in the ±. mm. */
import type { LengthValue } from '../schema/leaf.ts';

/** mm. Walls of sleeves usually are this thick. Common practice, no source. */
const WALL_MM = { usual: 1.6, from: 1.1, to: 2.2 } as const;

/** Gives the outer diameter of a sleeve around a plug of this diameter with this play. mm. */
export function usualSleeve(plugDiameter: number, clearance: number): LengthValue {
  const across = (wall: number) => plugDiameter + clearance + 2 * wall;
  const value = across(WALL_MM.usual);
  return {
    readings: [{ typed: value.toFixed(2), unit: 'mm', value, instrument: null, session: null }],
    estimator: 'mean',
    basis: 'assumed',
    range: { from: across(WALL_MM.from), to: across(WALL_MM.to) },
  };
}
