/** What stands in a field and under it. */
import { lengthOf } from '../../model/measured/part-ends.ts';
import type { LengthValue } from '../../model/schema/leaf.ts';
import { formatBoth, formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import type { LengthReading } from '../../model/units/parse-length.ts';

/** The number in the field, in the job's unit. What is only assumed leaves it empty, unless asked for. */
export function shownText(value: LengthValue | undefined, unit: JobUnit, withAssumed = false): string {
  if (value === undefined || (value.basis === 'assumed') !== withAssumed) return '';
  return formatLength(lengthOf(value, 0), { unit, keepsPlaces: true });
}

/** What is reckoned with while the field's text is not read, with unit; null where nothing is. */
export function countsText(value: LengthValue | undefined, unit: JobUnit): string | null {
  if (value === undefined) return null;
  const text = formatLength(lengthOf(value, 0), { unit, keepsPlaces: true, hasUnit: true });
  return value.basis === 'assumed' ? `the assumed ${text}` : text;
}

/** Under the field: both units while writing, then the other unit; what is assumed, and within what range. */
export function echoOf(value: LengthValue | undefined, live: LengthReading | null, unit: JobUnit): string {
  if (live !== null) return live.type === 'length' ? formatBoth(live.mm, unit) : '';
  if (value === undefined) return '';
  if (value.basis === 'assumed') return assumedWords(value, unit);
  const other = formatLength(lengthOf(value, 0), { unit: unit === 'in' ? 'mm' : 'in', hasUnit: true });
  const counted = value.readings.filter((reading) => reading.left !== 'out');
  if (counted.length > 1)
    return `${other}, ${value.estimator === 'mean' ? 'mean' : 'least'} of ${counted.length}`;
  const typed = counted[0]?.typed ?? '';
  return typed.includes('/') ? `${typed.replace(/\s*in$|"$/u, '')} in, ${other}` : other;
}

function assumedWords(value: LengthValue, unit: JobUnit): string {
  const { range } = value;
  if (range === undefined || range.from === range.to) return 'assumed';
  const [from, to] = [range.from, range.to].map((mm) => formatLength(mm, { unit, form: 'bench' }));
  return `assumed, ${from ?? ''} to ${to ?? ''}`;
}
