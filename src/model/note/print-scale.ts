/** Reads how many times as large a teaching model is to be, and the clearance between its printed parts, as typed. */
export type PrintScaleReading =
  | { readonly type: 'success'; readonly value: number }
  | { readonly type: 'error'; readonly message: string };

/** Twice at least: it is to teach with, not to try in a lock. */
export const LEAST_FACTOR = 2;
export const MOST_FACTOR = 20;
/** mm of the print. */
export const MOST_CLEARANCE_MM = 1;

/** Reads "4", "4:1", "2.5" or "2,5". */
export function readFactor(text: string): PrintScaleReading {
  const value = numberIn(text.replace(/:\s*1\s*$/u, '').replace(/[x×]\s*$/iu, ''));
  return value !== null && value >= LEAST_FACTOR && value <= MOST_FACTOR
    ? { type: 'success', value }
    : {
        type: 'error',
        message: `Enlarged: a number from ${LEAST_FACTOR} to ${MOST_FACTOR}, 4 for example.`,
      };
}

/** Reads "0.2", "0,2" or "0.2 mm": millimetres of the print. */
export function readClearance(text: string): PrintScaleReading {
  const value = numberIn(text.replace(/mm\s*$/iu, ''));
  return value !== null && value <= MOST_CLEARANCE_MM
    ? { type: 'success', value }
    : {
        type: 'error',
        message: `Clearance: from 0 to ${MOST_CLEARANCE_MM} mm of the print, 0.2 for example.`,
      };
}

/** Neither reaches a thousand, so that a comma is the decimal mark. */
function numberIn(text: string): number | null {
  const plain = text.trim();
  return /^(?:\d{1,3}(?:[.,]\d{0,3})?|[.,]\d{1,3})$/u.test(plain) ? Number(plain.replace(',', '.')) : null;
}
