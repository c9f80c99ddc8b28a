/** Scales of enlargement: the series of ISO 5455 (2, 5, 10, 20, 50) carried on by tens, with halves between for screens. */

const SERIES = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8] as const;

/** Rounds an enlargement down to the series. */
export function asScale(enlargement: number): number {
  const ten = 10 ** Math.floor(Math.log10(enlargement));
  const step = [...SERIES].reverse().find((each) => each * ten <= enlargement * (1 + 1e-9)) ?? 1;
  return step * ten;
}

/** Writes a scale: "20:1". */
export function scaleText(enlargement: number): string {
  const rounded = enlargement >= 10 ? Math.round(enlargement) : Math.round(enlargement * 10) / 10;
  return `${rounded}:1`;
}
