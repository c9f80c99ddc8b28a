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

/** "Turned 90°", "Stops at about 3°: chamber 5, its bottom pin stands in the shell". */
export function turnWords(look: Look, turn: Radians): string {
  const attempt = turnAttempt(look);
  const first = attempt?.stoppedBy[0];
  if (attempt === null) return '';
  if (first === undefined) {
    const what = attempt.turning.length > 1 ? 'Plug and sleeve turn together' : 'The plug turns';
    const either = attempt.either ? '; the sleeve could turn as well' : '';
    return `${what}: ${angleText(turn)}${either}`;
  }
  if (turn < attempt.reach - 1e-6) return `Turned ${angleText(turn)}`;
  const number = look.chamberResults.get(first.chamber)?.number ?? 0;
  const why =
    first.binding.side === 'lower part'
      ? 'its bottom pin stands in the shell'
      : 'its driver hangs in the plug';
  const more = attempt.stoppedBy.length - 1;
  const others = more === 0 ? '' : more === 1 ? ', and one more holds it' : `, and ${more} more hold it`;
  return `Stops at about ${angleText(turn)}: chamber ${number}, ${why}${others}`;
}

/** To half a degree while it is small; nobody can tell more. */
function angleText(turn: Radians): string {
  const degrees = toDegrees(turn);
  return `${degrees < 10 ? Math.round(degrees * 2) / 2 : Math.round(degrees)}°`;
}
