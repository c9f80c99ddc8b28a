/**
 * How steep a side of the key a foot can still climb. Simple rigid model, derived here, not measured.
 *
 *        |  |    |  | guided length G: of the pin's straight sides that the chamber's wall holds
 *        |  |____|  |
 *           \  /      overhang h: from there down to where the key touches
 *            \/___
 *            /        side of the key, at the angle from level
 *
 * The key pushes level, the side lifts with friction against it, and the pin leans on the wall with friction above and
 * below: tan(angle) < (1 - K mu²) / (mu (1 + K)), K = 1 + 2 h / G. A foot without overhang, a ball, has K = 1, and then
 * the angle is a right angle less twice the angle of friction. Radians, mm.
 */
import { asRadians, type Radians } from '../radians.ts';

export type Climber = {
  readonly friction: number;
  readonly overhang: number;
  readonly guided: number;
};

/** Finds the steepest angle that can be climbed; 0 when it jams on any. */
export function steepestClimbable({ friction, overhang, guided }: Climber): Radians {
  if (friction <= 0) return asRadians(Math.PI / 2);
  if (guided <= 0) return asRadians(0);
  const lean = 1 + (2 * Math.max(0, overhang)) / guided;
  const over = 1 - lean * friction ** 2;
  return asRadians(over <= 0 ? 0 : Math.atan(over / (friction * (1 + lean))));
}

/**
 * Finds how high above a ball's lowest point a sharp edge may meet it so that the ball still climbs.
 *
 * @param steepest the steepest angle it climbs
 */
export function highestNose(ballRadius: number, steepest: Radians): number {
  return ballRadius * (1 - Math.cos(steepest));
}
