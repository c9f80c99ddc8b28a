/**
 * Stacks for a second shear line from cut numbers alone, in whole increments: bottom pin, master pins, build-up pin to the
 * second line, top pin. A deeper cut has the larger number, and the pin over it is longer by as many increments.
 *
 *     top pin         |   |
 *     -------------- |===| ----  second line: its key's cut + offset
 *     build-up pin    |   |
 *     -------------- |===| ----  first line: the largest of its keys' cuts
 *     master pin      |   |
 *     -------------- |===| ----  first line: the smallest of its keys' cuts
 *     bottom pin      |   |
 *
 * What the numbers mean in length is the increment's business; bottom and top pin have a length of their own at number 0.
 */

export type BuildUpInput = {
  /** Cuts of the keys that turn the first line, in one chamber. */
  readonly cuts: readonly number[];
  /** Cut of the key that turns the second line; null where the second line does not pass through this chamber. */
  readonly secondCut: number | null;
  /** From the first line to the second, in increments. */
  readonly offset: number;
  /** Of the whole stack, in increments. */
  readonly total: number;
};

export type BuildUpStack = {
  readonly bottom: number;
  /** Bottom to top; none where all keys have the same cut. */
  readonly masters: readonly number[];
  /** Null where the second line does not pass. */
  readonly buildUp: number | null;
  readonly top: number;
};

export type BuildUpResult =
  | { readonly type: 'stack'; readonly stack: BuildUpStack }
  | { readonly type: 'error'; readonly message: string };

/** Works out one chamber's stack. Numbers that cannot be give a sentence. */
export function buildUpStack({ cuts, secondCut, offset, total }: BuildUpInput): BuildUpResult {
  const numbers = [...cuts, ...(secondCut === null ? [] : [secondCut]), offset, total];
  if (numbers.some((number) => !Number.isInteger(number) || number < 0)) {
    return wrong('Cuts, offset and total are whole numbers from 0 up, for example 5, 10 and 23.');
  }
  const steps = [...new Set(cuts)].sort((one, other) => one - other);
  const bottom = steps[0];
  const largest = steps[steps.length - 1];
  if (bottom === undefined || largest === undefined) {
    return wrong('Name the cut of at least one key that turns the first line, for example 5.');
  }
  const masters = steps.slice(1).map((step, i) => step - (steps[i] ?? 0));
  const buildUp = secondCut === null ? null : secondCut + offset - largest;
  if (buildUp !== null && buildUp <= 0) {
    return wrong(
      `With cut ${largest} at the first line and ${secondCut ?? 0} at the second, ${offset} increments apart, there is no room for a build-up pin: choose a smaller cut for the first line, or a larger one for the second.`,
    );
  }
  const top = total - largest - (buildUp ?? 0);
  if (top <= 0) {
    return wrong(
      `The pins under the top pin already make ${total - top} increments of ${total}: there is no room for a top pin.`,
    );
  }
  return { type: 'stack', stack: { bottom, masters, buildUp, top } };
}

function wrong(message: string): BuildUpResult {
  return { type: 'error', message };
}

export type IncrementLengths = {
  /** mm */
  readonly increment: number;
  /** Length of a bottom pin of number 0, mm: it fills from the foot to the line over the shallowest cut. */
  readonly bottomAtNone: number;
  /** Length of a top pin of number 0, mm. */
  readonly topAtNone: number;
};

export type BuildUpLengths = {
  readonly bottom: number;
  readonly masters: readonly number[];
  readonly buildUp: number | null;
  readonly top: number;
  /** Master and build-up pins thinner than the least that holds. */
  readonly thin: readonly number[];
};

/** The stack in mm, and which of its discs are too thin. */
export function buildUpLengths(
  { bottom, masters, buildUp, top }: BuildUpStack,
  { increment, bottomAtNone, topAtNone }: IncrementLengths,
  thinnest: number,
): BuildUpLengths {
  const discs = [...masters, ...(buildUp === null ? [] : [buildUp])].map((steps) => steps * increment);
  return {
    bottom: bottomAtNone + bottom * increment,
    masters: discs.slice(0, masters.length),
    buildUp: buildUp === null ? null : (discs[masters.length] ?? null),
    top: topAtNone + top * increment,
    thin: discs.filter((length) => length < thinnest),
  };
}
