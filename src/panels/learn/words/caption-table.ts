/**
 * Captions said in another language by a table: each entry is a whole caption, `#` for what stays as it is (a length, a
 * number). Captions that a drawing joins are said piece by piece.
 */
import type { Captions } from '../../../drawing/captions.ts';
import { inTongue } from '../fill.ts';

const FIGURE = String.raw`([+−-]?[\d.,:°]+(?: (?:in|mm))?(?: \([^)]*\))?)`;

/** What captions are joined with, the strongest first. */
const JOINTS = [': ', '; ', ' · ', ', '] as const;

/** What has no words in it: numbers, units, signs. */
const WORDLESS = /^(?:[\s\d.,:°+−×±-]|\b(?:in|mm)\b)*$/u;

type Entry = { readonly pattern: RegExp; readonly said: string };

/**
 * Makes captions from a table. `onUnknown` hears of every caption with words in it that the table does not know.
 */
export function captionsOf(
  table: Readonly<Record<string, string>>,
  tongue: string,
  onUnknown: (caption: string) => void = () => undefined,
): Captions {
  const entries: readonly Entry[] = Object.entries(table).map(([english, said]) => ({
    pattern: new RegExp(
      `^${english.replace(/[.+*?()[\]|]/gu, String.raw`\$&`).replaceAll('#', FIGURE)}$`,
      'u',
    ),
    said,
  }));
  const whole = (caption: string): string | null => {
    if (WORDLESS.test(caption)) return inTongue(caption, tongue);
    for (const { pattern, said } of entries) {
      const found = pattern.exec(caption);
      if (found === null) continue;
      let next = 1;
      return said.replaceAll('#', () => inTongue(found[next++] ?? '', tongue));
    }
    return null;
  };
  const inPieces = (caption: string, joint: string): string | null => {
    if (!caption.includes(joint)) return null;
    const pieces = caption.split(joint).map((piece) => say(piece));
    return pieces.every((piece) => piece !== null) ? pieces.join(joint) : null;
  };
  const say = (caption: string): string | null =>
    JOINTS.reduce<string | null>((said, joint) => said ?? inPieces(caption, joint), whole(caption));
  const memory = new Map<string, string>();
  return (caption) => {
    const before = memory.get(caption);
    if (before !== undefined) return before;
    const said = say(caption);
    if (said === null) onUnknown(caption);
    // A slide of the key makes new numbers all the time: what is remembered must not grow without end.
    if (memory.size > 500) memory.clear();
    memory.set(caption, said ?? caption);
    return said ?? caption;
  };
}
