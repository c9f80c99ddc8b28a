/**
 * Reads cut numbers and increments as a person writes them, and works out the stack of every chamber with its lengths. Bad
 * input gives a sentence: field, problem, example. Lengths mm.
 */
import type { JobUnit } from '../units/length-unit.ts';
import { formatLength } from '../units/format-length.ts';
import { parseLength } from '../units/parse-length.ts';
import { type BuildUpLengths, buildUpLengths, buildUpStack } from './build-up.ts';

export type NumberTexts = Readonly<
  Record<'first' | 'second' | 'offset' | 'total' | 'increment' | 'bottomAtNone' | 'topAtNone', string>
>;

export type NumberChamber = { readonly number: number } & (
  | {
      readonly type: 'stack';
      readonly lengths: BuildUpLengths;
      /** Above the foot of the stack under the deepest cut of the first line's keys. */
      readonly firstLine: number;
      readonly secondLine: number | null;
      readonly words: string;
    }
  | { readonly type: 'error'; readonly message: string }
);

export type ReadNumbers =
  | { readonly type: 'plan'; readonly chambers: readonly NumberChamber[] }
  | { readonly type: 'error'; readonly message: string };

const MOST_CHAMBERS = 12;

/** Reads and plans. */
export function readNumbers(texts: NumberTexts, unit: JobUnit, thinnest: number): ReadNumbers {
  try {
    const keys = texts.first.split(',').map((text) => cutsIn(text, 'Cuts of the keys at the first line'));
    const count = keys[0]?.length ?? 0;
    for (const cuts of keys) sameCount(cuts.length, count);
    const isSecond = texts.second.trim() !== '';
    const second = isSecond ? cutsIn(texts.second, 'Cuts of the key at the second line') : null;
    if (second !== null) sameCount(second.length, count);
    const offset = isSecond ? whole(texts.offset, 'Between the lines') : 0;
    const total = whole(texts.total, 'Whole stack');
    const measures = {
      increment: length(texts.increment, 'One increment', unit),
      bottomAtNone: length(texts.bottomAtNone, 'Bottom pin of number 0', unit),
      topAtNone: length(texts.topAtNone, 'Top pin of number 0', unit),
    };
    const chambers = Array.from({ length: count }, (_, i): NumberChamber => {
      const cuts = keys.flatMap((key) => key[i] ?? []);
      const secondCut = second?.[i] ?? null;
      const planned = buildUpStack({ cuts, secondCut, offset, total });
      if (planned.type === 'error') return { type: 'error', number: i + 1, message: planned.message };
      const lengths = buildUpLengths(planned.stack, measures, thinnest);
      const firstLine = lengths.bottom + lengths.masters.reduce((sum, each) => sum + each, 0);
      return {
        type: 'stack',
        number: i + 1,
        lengths,
        firstLine,
        secondLine: lengths.buildUp === null ? null : firstLine + lengths.buildUp,
        words: wordsOf(i + 1, lengths, unit),
      };
    });
    return { type: 'plan', chambers };
  } catch (error) {
    if (error instanceof Refused) return { type: 'error', message: error.message };
    throw error;
  }
}

class Refused extends Error {}

/** Null for a dash: the line does not pass there. */
function cutsIn(text: string, field: string): (number | null)[] {
  const words = text.trim().split(/[\s;]+/u);
  if (words.length > MOST_CHAMBERS)
    throw new Refused(
      `${field}: ${words.length} cuts are more than a cylinder has chambers, at most ${MOST_CHAMBERS}.`,
    );
  return words.map((word) => (/^[-–]$/u.test(word) ? null : whole(word, field)));
}

function whole(text: string, field: string): number {
  const trimmed = text.trim();
  if (!/^\d{1,3}$/u.test(trimmed))
    throw new Refused(`${field}: "${trimmed}" is no whole number, for example 10.`);
  return Number(trimmed);
}

function length(text: string, field: string, unit: JobUnit): number {
  const read = parseLength(text, { unit });
  if (read.type !== 'length' || !(read.mm > 0) || read.mm > 50)
    throw new Refused(
      `${field}: "${text.trim()}" is no length of a pin, for example ${unit === 'in' ? '.110' : '2.8'}.`,
    );
  return read.mm;
}

function sameCount(count: number, wanted: number): void {
  if (count !== wanted)
    throw new Refused(`Cuts: one key has ${wanted} and another ${count}; write one number for each chamber.`);
}

function wordsOf(number: number, { bottom, masters, buildUp, top }: BuildUpLengths, unit: JobUnit): string {
  const say = (mm: number) => formatLength(mm, { unit, hasUnit: true });
  return [
    `Chamber ${number}, bottom to top: bottom pin ${say(bottom)}`,
    ...masters.map((each) => `master pin ${say(each)}`),
    ...(buildUp === null ? [] : [`build-up pin ${say(buildUp)}`]),
    `top pin ${say(top)}.`,
  ].join(', ');
}
