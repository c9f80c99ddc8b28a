/** What is said of the key's way in and out. Lengths mm, forces N, angles radians from level. Travel: how far the key still is out. */
import type { Radians } from '../radians.ts';
import type { Id } from '../schema/leaf.ts';

export type Climb = {
  readonly angle: Radians;
  readonly travel: number;
  /** What is climbed: the key's tip, a side of a cut, or the step up to the blade. */
  readonly from: 'tip' | 'side' | 'blade' | 'root';
  readonly canClimb: boolean;
};

export type ChamberWay = {
  readonly chamber: Id;
  readonly number: number;
  /** Steepest that the foot climbs; null where it climbs nothing. */
  readonly goingIn: Climb | null;
  readonly comingOut: Climb | null;
  /** The steepest it can climb, with friction and a short pin's tilt. */
  readonly steepest: Radians;
  /** How far the key's nose stands above the foot's lowest point at rest; null when either was never seen. */
  readonly noseAboveFoot: number | null;
  /** Highest that the key lifts the foot, and how far out the key is then; above the key's resting edge. */
  readonly highest: number;
  readonly highestAt: number;
  /** How far above the seated key the foot hangs, held by its chamber and not by the key; 0 on the key. */
  readonly hangsBy: number;
  /** Whether the seated key reaches under the foot at all. */
  readonly isReached: boolean;
  /** How far a peak would have to push the lower stack into the shell to let the key out while turned: + holds it. */
  readonly holdsKey: number | null;
};

export type ForceAt = { readonly travel: number; readonly force: number };

export type WayResults = {
  readonly chambers: readonly ChamberWay[];
  /** Whether some peak holds the key while the plug is turned; null when nothing is known. */
  readonly keyIsHeld: boolean | null;
  /** Force of all springs together along the way, key out first; empty while a spring's force is not known. */
  readonly springs: readonly ForceAt[];
  readonly mostForce: ForceAt | null;
};
