/**
 * Angles inside are radians and branded, so that a degree cannot slip in. Degrees exist only at the form, the file and
 * the label.
 */
declare const radians: unique symbol;
export type Radians = number & { readonly [radians]: true };

/** Reads an angle given in degrees. */
export function fromDegrees(degrees: number): Radians {
  return ((degrees * Math.PI) / 180) as Radians;
}

/** Gives an angle in degrees, for a label or a file. */
export function toDegrees(angle: Radians): number {
  return (angle * 180) / Math.PI;
}

/** Brands a plain number that is already in radians. */
export function asRadians(value: number): Radians {
  return value as Radians;
}
