/**
 * How wide the first section and the first station are, CSS px: as wide as what stands in their places before the app is there.
 * So they are drawn once, not once without and once with a width, and the page is laid out once. 0 when it is not known, and
 * after both are on the page.
 */
export type FirstWidths = { readonly section: number; readonly station: number };

const UNKNOWN: FirstWidths = { section: 0, station: 0 };

let widths = UNKNOWN;

export function firstWidths(): FirstWidths {
  return widths;
}

export function setFirstWidths(known: FirstWidths): void {
  widths = known;
}

export function forgetFirstWidths(): void {
  widths = UNKNOWN;
}
