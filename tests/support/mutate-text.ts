/** Damages text the way disks, editors and hostile people do. Seeded: the same seed damages in the same way. */
import { hostileNames } from './hostile-names.ts';

export type Random = () => number;

/** A small generator of numbers from 0 up to 1 (mulberry32). */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const pick = <T>(random: Random, list: readonly [T, ...T[]]): T =>
  list[Math.floor(random() * list.length)] ?? list[0];

const ODD_TEXTS = [
  'null',
  '-1',
  '1e999',
  '1e-999',
  '{}',
  '[]',
  '""',
  '"\\ud800"',
  'true',
  '[[[[[[]]]]]]',
] as const;

/** Damages a text: cut off, characters changed, pieces doubled, moved or taken out, values and names replaced. */
export function mutateText(text: string, random: Random): string {
  const at = Math.floor(random() * text.length);
  const to = Math.min(text.length, at + 1 + Math.floor(random() * 40));
  const piece = text.slice(at, to);
  switch (Math.floor(random() * 9)) {
    case 0:
      return text.slice(0, at);
    case 1:
      return text.slice(0, at) + String.fromCharCode(Math.floor(random() * 256)) + text.slice(at + 1);
    case 2:
      return text.slice(0, to) + piece + text.slice(to);
    case 3:
      return text.slice(0, at) + text.slice(to);
    case 4:
      return text.slice(0, at).replace(/-?\d[\d.]*(?=[^"\d]*$)/, pick(random, ODD_TEXTS)) + text.slice(at);
    case 5:
      return replaceNear(text, at, /"[A-Za-z]+"(?= *:)/, JSON.stringify(pick(random, hostileNames)));
    case 6:
      return replaceNear(text, at, /: *("[^"]*"|[\d.-]+|true|false|null)/, `: ${pick(random, ODD_TEXTS)}`);
    case 7:
      return replaceNear(
        text,
        at,
        /\{/,
        `{ ${JSON.stringify(pick(random, hostileNames))}: { "polluted": true }, `,
      );
    default:
      return replaceNear(text, at, /"id": *"[^"]*"/, `"id": ${JSON.stringify(pick(random, hostileNames))}`);
  }
}

function replaceNear(text: string, at: number, pattern: RegExp, replacement: string): string {
  return text.slice(0, at) + text.slice(at).replace(pattern, () => replacement);
}
