/**
 * Reads an angle typed in degrees: "90", "90°", "90 deg", "7,5". Degrees exist only where a person types or reads.
 *
 * Answers like parseLength: an angle outside the caller's range is never taken; a value sent twice ("9090") is offered
 * once, as a question. Any string is answered.
 */
import { assert } from '../assert.ts';
import { cleanTypedText, halfOfRepeated } from './clean-typed-text.ts';
import type { ExactNumber } from './exact-number.ts';
import { readDecimal } from './read-decimal.ts';

export type AngleChoice = { readonly degrees: number; readonly says: string };

export type AngleReading =
  | { readonly type: 'angle'; readonly degrees: number; readonly typed: string }
  | {
      readonly type: 'ask';
      readonly typed: string;
      /** never empty; none may be stored before a person picked it */
      readonly choices: readonly AngleChoice[];
      readonly reason: 'doubled' | 'ambiguous-comma';
      readonly message: string;
    }
  | { readonly type: 'error'; readonly typed: string; readonly message: string }
  | { readonly type: 'empty' };

export type AngleOptions = {
  /** by default 0 */
  readonly fromDeg?: number;
  /** by default 360 */
  readonly toDeg?: number;
};

type AngleText =
  | { readonly type: 'degrees'; readonly degrees: number; readonly isAmbiguous: boolean }
  | { readonly type: 'wrong' };

const ANGLE = /^(?<sign>[-+]?) ?(?<number>[0-9.,]+) ?(?:°|deg|degs|deg\.|degree|degrees)?$/iu;

/** Reads a typed angle; see the head of this file. */
export function parseAngle(text: string, options: AngleOptions = {}): AngleReading {
  const { fromDeg = 0, toDeg = 360 } = options;
  assert(fromDeg <= toDeg, `a range runs from ${fromDeg} to ${toDeg} degrees`);
  const isInside = (degrees: number): boolean => degrees >= fromDeg && degrees <= toDeg;
  const example = `${isInside(90) ? 90 : (fromDeg + toDeg) / 2}°`;
  const clean = cleanTypedText(text);
  if (clean === undefined) {
    return {
      type: 'error',
      typed: '',
      message: `This is too long to be an angle; write it like ${example}.`,
    };
  }
  const { typed, plain } = clean;
  if (plain === '') return { type: 'empty' };
  const read = readAngle(plain);
  if (read.type === 'degrees' && isInside(read.degrees)) {
    const { degrees } = read;
    if (!read.isAmbiguous) return { type: 'angle', degrees, typed };
    return askAngle(typed, degrees, 'ambiguous-comma');
  }
  const half = halfOfRepeated(plain);
  const halfRead = half === undefined ? undefined : readAngle(half);
  if (halfRead?.type === 'degrees' && isInside(halfRead.degrees)) {
    return askAngle(typed, halfRead.degrees, 'doubled');
  }
  const message =
    read.type === 'wrong'
      ? `“${typed.slice(0, 24)}” is not an angle in degrees; write it like ${example}.`
      : `“${typed.slice(0, 24)}” is outside ${fromDeg}° to ${toDeg}°; write it like ${example}.`;
  return { type: 'error', typed, message };
}

function readAngle(plain: string): AngleText {
  const { sign, number } = ANGLE.exec(plain)?.groups ?? {};
  if (number === undefined) return { type: 'wrong' };
  const read = readDecimal(number);
  if (read.type === 'wrong') return read;
  const size = nearestNumber(read.value);
  return {
    type: 'degrees',
    degrees: sign === '-' && size > 0 ? -size : size,
    isAmbiguous: read.grouped !== undefined,
  };
}

/** Gives the number nearest to a decimal fraction: its digits are read by the language, which rounds correctly. */
function nearestNumber(value: ExactNumber): number {
  const places = value.bottom.toString().length - 1;
  return Number(`${value.top}e-${places}`);
}

function askAngle(typed: string, degrees: number, reason: 'doubled' | 'ambiguous-comma'): AngleReading {
  const says = `${degrees}°`;
  const why =
    reason === 'doubled'
      ? `“${typed}” looks like one value sent twice.`
      : `The comma in “${typed}” can be a decimal mark or part thousands.`;
  return {
    type: 'ask',
    typed,
    choices: [{ degrees, says }],
    reason,
    message: `${why} Did you mean ${says}?`,
  };
}
