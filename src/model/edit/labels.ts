/** Labels of loose parts: made by counting on from those there are, and never the same for two parts a person labelled. */
import type { Part } from '../schema/parts-schema.ts';

/** One letter for each kind, as it stands on the little bag. */
const LETTERS: Readonly<Record<Part['kind'], string>> = { pin: 'P', ball: 'B', spring: 'S' };

/** Characters a label may have, as in the job file. */
export const MOST_LABEL_CHARACTERS = 80;

/** Two labels that differ only in case or blanks are the same on a bench. */
export function sameLabel(label: string): string {
  return label.trim().replaceAll(/\s+/gu, ' ').toLowerCase();
}

/** The labels that are taken. */
export function labelsOf(parts: readonly Pick<Part, 'label'>[]): Set<string> {
  return new Set(parts.map(({ label }) => sameLabel(label)));
}

/** Gives labels one after another, P01, P02 …, counting on from the highest there is; each is taken once it is given. */
export function* freshLabels(kind: Part['kind'], taken: Set<string>): Generator<string, never, void> {
  const letter = LETTERS[kind];
  const numbered = new RegExp(`^${letter.toLowerCase()}(\\d{1,9})$`, 'u');
  let number = 0;
  for (const label of taken) number = Math.max(number, Number(numbered.exec(label)?.[1] ?? 0));
  for (;;) {
    number += 1;
    const label = `${letter}${String(number).padStart(2, '0')}`;
    if (taken.has(sameLabel(label))) continue;
    taken.add(sameLabel(label));
    yield label;
  }
}

/** The label a further part would get. */
export function nextLabel(parts: readonly Pick<Part, 'label'>[], kind: Part['kind']): string {
  return freshLabels(kind, labelsOf(parts)).next().value;
}

/** Gives a label near the wanted one that is not taken, and takes it: "A1" becomes "A1-2". */
export function freeLabel(wanted: string, taken: Set<string>): string {
  const whole = wanted.trim();
  for (let copy = 1; ; copy++) {
    const ending = copy === 1 ? '' : `-${copy}`;
    const label = `${whole.slice(0, MOST_LABEL_CHARACTERS - ending.length)}${ending}`;
    if (taken.has(sameLabel(label))) continue;
    taken.add(sameLabel(label));
    return label;
  }
}

/** Says why a part cannot be called so; null when it can. */
export function labelTrouble(parts: readonly Part[], part: Part['id'], wanted: string): string | null {
  const label = wanted.trim();
  if (label === '') return 'A part needs a label to be found by; write one, like P01.';
  if (label.length > MOST_LABEL_CHARACTERS)
    return `A label has at most ${MOST_LABEL_CHARACTERS} characters; shorten it, like P01.`;
  const other = parts.find((each) => each.id !== part && sameLabel(each.label) === sameLabel(label));
  if (other === undefined) return null;
  return `${other.label} is the label of another part; choose one that is free, like ${freeLabel(label, labelsOf(parts))}.`;
}
