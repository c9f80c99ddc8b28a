/** What trying the turn shows: how far it is, or what holds it and from what angle. */
import { type Radians, toDegrees } from '../../model/radians.ts';
import { tryTurn, type TurnAttempt } from '../../model/turning/turn-attempt.ts';
import type { Look } from '../shared/look.ts';

const attempts = new WeakMap<Look, { readonly attempt: TurnAttempt | null }>();

/** Tries the turn of what is looked at, once. */
export function turnAttempt(look: Look): TurnAttempt | null {
  const before = attempts.get(look);
  if (before !== undefined) return before.attempt;
  const attempt = tryTurn(look.bench, look.assembly, look.evaluation);
  attempts.set(look, { attempt });
  return attempt;
}

/** "Turned 90°", "Binds at about 3°: chamber 5". */
export function turnWords(look: Look, turn: Radians): string {
  const degrees = Math.round(toDegrees(turn));
  const attempt = turnAttempt(look);
  const first = attempt?.stoppedBy[0];
  if (attempt === null || first === undefined || turn < attempt.reach - 1e-6) return `Turned ${degrees}°`;
  const number = look.chamberResults.get(first.chamber)?.number ?? 0;
  return `Binds at about ${degrees}°: chamber ${number} holds the plug`;
}
