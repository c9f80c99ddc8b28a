/** Where the key stands, in words: for the line beside the buttons, and for the slider's value. */
import { formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';

export type KeyWay = {
  /** How far out the key still is when it stops, and when its tip has left every stack. mm. */
  readonly seated: number;
  readonly out: number;
};

export const HOME_WORDS = 'Key fully in';

/** Says how far the key is in. */
export function keyWords(travel: number, { seated, out }: KeyWay, unit: JobUnit): string {
  const left = travel - seated;
  const way = Math.max(out - seated, 1e-6);
  // A thousandth of the way is less than anybody sees.
  if (left <= way / 1000) return HOME_WORDS;
  if (left >= way * 0.999) return 'Key out';
  if (Math.abs(left / way - 0.5) < 0.01) return 'Key half way in';
  return `Key ${formatLength(left, { unit, form: 'bench', hasUnit: true })} out`;
}
