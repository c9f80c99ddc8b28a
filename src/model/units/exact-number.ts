/**
 * Exact fractions of whole numbers: what typed text means before anything is rounded.
 *
 * Plain numbers, no unit, any sign; the bottom is always above zero. Fractions are not reduced: typed text is short,
 * so the whole numbers stay small enough.
 */
export type ExactNumber = { readonly top: bigint; readonly bottom: bigint };

export const EXACT_ZERO: ExactNumber = { top: 0n, bottom: 1n };

/** Gives the fraction written as whole digits and decimal digits ("12", "345" is 12.345); both may be empty. */
export function exactDecimal(wholeDigits: string, decimalDigits: string): ExactNumber {
  return { top: BigInt(`0${wholeDigits}${decimalDigits}`), bottom: 10n ** BigInt(decimalDigits.length) };
}

export function addExact(first: ExactNumber, second: ExactNumber): ExactNumber {
  return {
    top: first.top * second.bottom + second.top * first.bottom,
    bottom: first.bottom * second.bottom,
  };
}

export function multiplyExact(first: ExactNumber, second: ExactNumber): ExactNumber {
  return { top: first.top * second.top, bottom: first.bottom * second.bottom };
}

/** Divides to the nearest whole number; a tie goes away from zero, so that both signs are treated alike. */
export function roundedQuotient(top: bigint, bottom: bigint): bigint {
  const size = top < 0n ? -top : top;
  const rounded = (2n * size + bottom) / (2n * bottom);
  return top < 0n ? -rounded : rounded;
}
