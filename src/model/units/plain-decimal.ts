/**
 * Writes whole numbers of small parts as decimals: no power of ten, no minus zero, no grouping, a point as the mark.
 */

export type DecimalOptions = {
  /** decimal places in the number of parts: 4 when the parts are ten-thousandths */
  readonly places: number;
  /** places that stay even when they are zeros */
  readonly keptPlaces: number;
  /** ".363" is written "0.363" */
  readonly hasLeadingZero: boolean;
};

/** Writes the size of a number of parts; its sign is the caller's. */
export function plainDecimal(parts: bigint, options: DecimalOptions): string {
  const { places, keptPlaces, hasLeadingZero } = options;
  const digits = String(parts < 0n ? -parts : parts).padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  let end = digits.length;
  while (end > digits.length - places + keptPlaces && digits.charAt(end - 1) === '0') end -= 1;
  const decimals = digits.slice(digits.length - places, end);
  if (decimals === '') return whole;
  return `${whole === '0' && !hasLeadingZero ? '' : whole}.${decimals}`;
}
