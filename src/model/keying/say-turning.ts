/** What a key does, is meant to do, and what holds it, in words. The same words on screen and in the tests. */
import type { KeyOutcome, Turning } from './key-outcomes.ts';

/** "turns the plug", "turns plug and sleeve together", ... */
export function sayTurning(turning: Turning, hasSleeve: boolean): string {
  switch (turning) {
    case 'plug':
      return hasSleeve ? 'turns the plug alone' : 'turns the plug';
    case 'together':
      return 'turns plug and sleeve together';
    case 'either':
      return 'either may turn: the plug alone, or plug and sleeve together';
    case 'nothing':
      return 'turns nothing';
  }
}

/** What it does, with its lean while something is open. */
export function sayOutcome({ does, probably, isMixed, lines }: KeyOutcome): string {
  const hasSleeve = lines.length > 1;
  if (does !== null) {
    const mixed = isMixed ? ': some chambers stand at the inner line, some at the outer' : '';
    return `${sayTurning(does, hasSleeve)}${mixed}`;
  }
  if (probably === null) return 'not measured yet';
  return `can't say yet: probably ${sayTurning(probably, hasSleeve)}`;
}

/** "chamber 2", "chambers 2 and 5", "chambers 1, 2 and 5" */
export function sayChambers(numbers: readonly number[]): string {
  const last = numbers[numbers.length - 1];
  if (last === undefined) return 'no chamber';
  if (numbers.length === 1) return `chamber ${last}`;
  return `chambers ${numbers.slice(0, -1).join(', ')} and ${last}`;
}
