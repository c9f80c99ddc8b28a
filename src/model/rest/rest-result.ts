/**
 * What is said of every chamber with no key in it, and of the driver and spring that stand there. Lengths mm, forces N,
 * angles radians. `missing` names in plain words what would have to be measured; nothing in here is guessed.
 */
import type { Radians } from '../radians.ts';
import type { Id } from '../schema/leaf.ts';

/** What stands across a line with no key in. */
export type RestState =
  | 'driver across'
  /** It locks, and no key can open it: a key only lifts further. */
  | 'bottom pin across'
  | 'master pin across'
  /** The split itself lies in the line's window: this chamber does not lock. */
  | 'split at the line'
  /** The driver fell wholly below the line; the spring, or nothing, stands in it. */
  | 'driver below'
  | 'no driver'
  | 'nothing in it'
  | 'unknown';

export type RestAtLine = {
  readonly line: Id;
  readonly state: RestState;
  /** How far the driver's lower end (of a stack without one, the top) lies below the line; negative above. */
  readonly recess: number | null;
  /** How far the driver reaches past the line on the side where it reaches less. Null unless it stands across. */
  readonly engaged: number | null;
  /** Whether the chamber keeps this line from turning. Without a spring it cannot be relied on: false. */
  readonly locks: boolean | null;
};

export type DriverRoom = {
  readonly length: number | null;
  readonly shortest: number | null;
  readonly longest: number | null;
  readonly verdict: 'fits' | 'too short' | 'too long' | 'none fits' | 'no driver' | 'unknown';
  /** The highest point that the top under the driver passes on the key's way, above the plug's axis, and how far out the key is. */
  readonly peak: { readonly height: number; readonly travel: number } | null;
  /** Highest the driver's own top gets, below the underside of the cap. */
  readonly roomLeft: number | null;
};

export type SpringState = {
  readonly solid: number | null;
  readonly free: number | null;
  readonly rate: number | null;
  readonly atRest: number | null;
  /** With the key at the worst point of its way. */
  readonly atWorst: number | null;
  readonly worstTravel: number | null;
  readonly forceAtRest: number | null;
  readonly forceAtWorst: number | null;
  /** What is left before it goes solid; negative: the key cannot pass. */
  readonly toSpare: number | null;
  readonly isLooseAtRest: boolean | null;
};

export type WaistState = {
  readonly kind: 'spool' | 'serrated' | 'mushroom';
  /** Where the waist begins and ends below (-) or above (+) the line at rest. */
  readonly from: number;
  readonly to: number;
  readonly isAtLine: boolean;
  /** How far the plug can be turned to and fro at most, and the same for a plain driver. */
  readonly slack: Radians;
  readonly plainSlack: Radians;
};

export type RestResult = {
  readonly chamber: Id;
  readonly number: number;
  /** Foot above the key's resting edge with no key in. */
  readonly restHeight: number | null;
  /** Inside to outside. */
  readonly atLines: readonly RestAtLine[];
  readonly driver: DriverRoom;
  /** Null for a stack without a spring. */
  readonly spring: SpringState | null;
  readonly waist: WaistState | null;
  readonly missing: readonly string[];
};

export type RestResults = {
  readonly chambers: readonly RestResult[];
  /** Lengths that suit every chamber; null when there is none, or not all is known. */
  readonly commonDriver: { readonly shortest: number; readonly longest: number } | null;
};
