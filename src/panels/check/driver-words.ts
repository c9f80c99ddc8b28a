/** What the driver table says, in words. */
import type { DriverRoom, RestAtLine, RestState, SpringState } from '../../model/rest/rest-result.ts';
import { formatLength } from '../../model/units/format-length.ts';
import { formatRange } from '../../model/units/format-range.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import type { VerdictSymbol } from '../answer/verdict-words.ts';

export type Said = { readonly symbol: VerdictSymbol; readonly text: string };

const STATES: Readonly<Record<RestState, string>> = {
  'driver across': 'locks, driver across',
  'bottom pin across': 'never opens, bottom pin across',
  'master pin across': 'locks, master pin across',
  'split at the line': 'does not lock, split at the line',
  'driver below': 'does not lock, driver below the line',
  'no driver': 'does not lock, no driver',
  'nothing in it': 'does not lock, empty',
  unknown: 'not measured',
};

/** What the chamber does with the key out, at the line where it does least. */
export function sayRest(atLines: readonly RestAtLine[], hasSpring: boolean): Said {
  const worst =
    atLines.find((each) => each.locks === false) ?? atLines.find((each) => each.locks === null) ?? atLines[0];
  if (worst === undefined) return { symbol: 'none', text: STATES.unknown };
  if (worst.locks === null) return { symbol: 'unsure', text: STATES.unknown };
  if (worst.state === 'driver across' && !hasSpring)
    return { symbol: 'stops', text: 'no spring, take it as open' };
  const isGood = worst.locks && worst.state !== 'bottom pin across';
  return { symbol: isGood ? 'turns' : 'stops', text: STATES[worst.state] };
}

const VERDICTS: Readonly<Record<DriverRoom['verdict'], Said>> = {
  fits: { symbol: 'turns', text: 'fits' },
  'too short': { symbol: 'stops', text: 'too short' },
  'too long': { symbol: 'stops', text: 'too long' },
  'none fits': { symbol: 'stops', text: 'none fits' },
  'no driver': { symbol: 'none', text: 'none in it' },
  unknown: { symbol: 'none', text: 'not known yet' },
};

export function sayDriver(driver: DriverRoom): Said {
  return VERDICTS[driver.verdict];
}

export function sayRange(
  { shortest, longest }: Pick<DriverRoom, 'shortest' | 'longest'>,
  unit: JobUnit,
): string {
  if (shortest !== null && longest !== null && shortest <= longest)
    return formatRange(shortest, longest, unit).join(' to ');
  const length = (mm: number | null) => (mm === null ? '?' : formatLength(mm, { unit, keepsPlaces: true }));
  return `${length(shortest)} to ${length(longest)}`;
}

/** What is left before the spring goes solid. */
export function saySpring(spring: SpringState | null, margin: number, unit: JobUnit): Said {
  if (spring === null) return { symbol: 'stops', text: 'no spring' };
  if (spring.toSpare === null) return { symbol: 'none', text: 'not known yet' };
  const by = formatLength(Math.abs(spring.toSpare), { unit, form: 'bench', keepsPlaces: true });
  if (spring.toSpare < 0) return { symbol: 'stops', text: `goes solid, ${by} short` };
  if (spring.isLooseAtRest === true) return { symbol: 'unsure', text: 'loose with the key out' };
  return { symbol: spring.toSpare < margin ? 'unsure' : 'turns', text: `${by} to spare` };
}
