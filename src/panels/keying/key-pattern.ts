/** "2 ? 4 4 ? 1": which cuts are asked for, chamber by chamber. Depth 1 is the first of the table. */
import type { KeySystem } from '../../model/keying/key-system.ts';

export type Pattern =
  | { readonly type: 'steps'; readonly steps: readonly (readonly number[] | null)[] }
  | { readonly type: 'error'; readonly message: string };

/** Reads a pattern; an empty one asks for anything, a short one leaves the rest open. */
export function readPattern(text: string, { columns, stepCount }: KeySystem): Pattern {
  const words = text
    .trim()
    .split(/[\s,;]+/u)
    .filter((word) => word !== '');
  if (words.length > columns.length)
    return wrong(`Cuts: ${words.length} are named, and there are ${columns.length} chambers.`);
  const steps: (readonly number[] | null)[] = columns.map(() => null);
  for (const [i, word] of words.entries()) {
    if (/^[?*._–-]$/u.test(word)) continue;
    const depth = Number(word);
    if (!/^\d+$/u.test(word) || depth < 1 || depth > stepCount)
      return wrong(
        `Cuts: "${word}" is no depth from 1 to ${stepCount}; write one for each chamber, or ? for any.`,
      );
    steps[i] = [depth - 1];
  }
  return { type: 'steps', steps };
}

function wrong(message: string): Pattern {
  return { type: 'error', message };
}
