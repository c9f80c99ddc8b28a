/** What trying the turn shows: how far it is, or what holds it and from what angle. */
import { lineWords } from '../../drawing/split-words.ts';
import { asRadians, type Radians, toDegrees } from '../../model/radians.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { tryTurn, type TurnAttempt } from '../../model/turning/turn-attempt.ts';
import type { Look } from '../shared/look.ts';

const attempts = new WeakMap<Look, Map<Id | null, TurnAttempt | null>>();

/** Tries the turn of what is looked at, once for each line the person may ask for. */
export function turnAttempt(look: Look, line: Id | null): TurnAttempt | null {
  const ofLook = attempts.get(look) ?? new Map<Id | null, TurnAttempt | null>();
  attempts.set(look, ofLook);
  const before = ofLook.get(line);
  if (before !== undefined) return before;
  const attempt = tryTurn(look.bench, look.assembly, look.evaluation, line);
  ofLook.set(line, attempt);
  return attempt;
}

/** rad. A turn that is told as nothing. */
const NOTHING_RAD = asRadians(Math.PI / 720);

/** "The plug turns: 90°", "Stops at about 3°: chamber 5, its bottom pin stands in the shell". */
export function turnWords(look: Look, turn: Radians, line: Id | null): string {
  const attempt = turnAttempt(look, line);
  const first = attempt?.stoppedBy[0];
  if (attempt === null) return '';
  if (first === undefined) return whatTurnsWords(look, attempt, turn);
  // What stops it is told as soon as it is there, and at once where there is nothing to be seen before.
  if (turn < attempt.reach - 1e-6 && attempt.reach >= NOTHING_RAD)
    return turn < NOTHING_RAD ? 'Starting to turn' : `Turned ${angleText(turn)} so far`;
  const number = look.chamberResults.get(first.chamber)?.number ?? 0;
  const more = attempt.stoppedBy.length - 1;
  const others = more === 0 ? '' : more === 1 ? ', and one more holds it' : `, and ${more} more hold it`;
  return `Stops at about ${angleText(attempt.reach)}: chamber ${number}, ${whyWords(look, attempt)}${atLine(look, attempt)}${others}`;
}

function whatTurnsWords({ assembly }: Look, { turning, clear }: TurnAttempt, turn: Radians): string {
  const hasSleeve = assembly.lines.length > 1;
  const what =
    turning.length > 1
      ? 'Plug and sleeve turn together'
      : hasSleeve
        ? 'The plug turns alone'
        : 'The plug turns';
  const other = turning.length > 1 ? 'the plug could turn alone as well' : 'the sleeve could turn with it';
  const far = turn < NOTHING_RAD ? '' : `: ${angleText(turn)}`;
  return `${what}${far}${clear.length > 1 ? `; ${other}` : ''}`;
}

/** Which part stands where it must not: told by the part under or over the split, and the body it reaches into. */
function whyWords({ assembly }: Look, { line, stoppedBy, parting }: TurnAttempt): string {
  const [first] = stoppedBy;
  const at = assembly.lines.find(({ id }) => id === line);
  const role = (body: Id | undefined) => assembly.bodies.find(({ id }) => id === body)?.role ?? 'plug';
  const stack = assembly.stacks.find(({ chamber }) => chamber === first?.chamber)?.parts ?? [];
  const below = stack.findIndex(({ part }) => part === parting.below.get(first?.chamber ?? ''));
  const isLower = first?.binding.side === 'lower part';
  const name = PART_WORDS[stack[isLower ? below : below + 1]?.role ?? (isLower ? 'bottomPin' : 'driver')];
  return isLower
    ? `its ${name} stands in the ${role(at?.outer)}`
    : `its ${name} hangs in the ${role(at?.inner)}`;
}

const PART_WORDS = {
  ball: 'ball',
  bottomPin: 'bottom pin',
  masterPin: 'master pin',
  driver: 'driver',
  spring: 'spring',
} as const;

/** Said only where there is more than one line. */
function atLine({ assembly }: Look, { line }: TurnAttempt): string {
  const index = assembly.lines.findIndex(({ id }) => id === line);
  return assembly.lines.length < 2 ? '' : ` at the ${lineWords(index, assembly.lines.length)}`;
}

/** To half a degree while it is small; nobody can tell more. */
function angleText(turn: Radians): string {
  const degrees = toDegrees(turn);
  return `${degrees < 10 ? Math.round(degrees * 2) / 2 : Math.round(degrees)}°`;
}
