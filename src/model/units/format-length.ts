/**
 * Writes lengths for people, for exports, and for reading back.
 *
 * Lengths come in mm. Inches are written the trade's way, without a leading zero: .363, .3345. A value of zero never
 * has a sign. Minus is a true minus sign on screen, a hyphen where machines read.
 *
 *   form        inch                                       mm
 *   screen      ten-thousandths, three places kept: .3346   hundredths: 8.50
 *   bench       half thousandths, what a caliper shows: .3345  hundredths: 8.50
 *   export      hundred-thousandths, leading zero: 0.33450     ten-thousandths: 8.4963
 *   roundTrip   with unit, enough that parseLength gives the stored value back: .362992126 in, 8.4963 mm
 */
import { roundedQuotient } from './exact-number.ts';
import { storedSteps, STORED_STEPS_PER_MM, type JobUnit } from './length-unit.ts';
import { plainDecimal, type DecimalOptions } from './plain-decimal.ts';

export type LengthForm = 'screen' | 'bench' | 'export' | 'roundTrip';

export type FormatLengthOptions = {
  readonly unit: JobUnit;
  /** by default `screen` */
  readonly form?: LengthForm;
  /** writes the unit behind the number; by default only `roundTrip` does */
  readonly hasUnit?: boolean;
  /** keeps every place of `screen` and `bench`, so that points stand under each other; by default idle zeros go */
  readonly keepsPlaces?: boolean;
};

type Layout = DecimalOptions & {
  /** the value is rounded to this many of its last places: 5 for half thousandths in ten-thousandths */
  readonly lastPlaceStep: bigint;
};

const LAYOUTS: Readonly<Record<JobUnit, Readonly<Record<LengthForm, Layout>>>> = {
  in: {
    screen: { places: 4, keptPlaces: 3, hasLeadingZero: false, lastPlaceStep: 1n },
    bench: { places: 4, keptPlaces: 3, hasLeadingZero: false, lastPlaceStep: 5n },
    export: { places: 5, keptPlaces: 5, hasLeadingZero: true, lastPlaceStep: 1n },
    // 1e-9 in is 2.54e-8 mm: half of it is well inside half a stored step, so nothing is lost.
    roundTrip: { places: 9, keptPlaces: 0, hasLeadingZero: false, lastPlaceStep: 1n },
  },
  mm: {
    screen: { places: 2, keptPlaces: 2, hasLeadingZero: true, lastPlaceStep: 1n },
    bench: { places: 2, keptPlaces: 2, hasLeadingZero: true, lastPlaceStep: 1n },
    export: { places: 4, keptPlaces: 4, hasLeadingZero: true, lastPlaceStep: 1n },
    roundTrip: { places: 7, keptPlaces: 0, hasLeadingZero: true, lastPlaceStep: 1n },
  },
};

/** Stored steps in one of each unit, whole for both. */
const STEPS_PER_UNIT: Readonly<Record<JobUnit, bigint>> = {
  in: (BigInt(STORED_STEPS_PER_MM) * 254n) / 10n,
  mm: BigInt(STORED_STEPS_PER_MM),
};

/** Writes a length; rounding is to the nearest, ties away from zero. */
export function formatLength(mm: number, options: FormatLengthOptions): string {
  const { unit, form = 'screen', hasUnit = form === 'roundTrip', keepsPlaces = false } = options;
  const { sign, digits } = signAndDigits(mm, unit, form, keepsPlaces);
  const minus = form === 'screen' || form === 'bench' ? '−' : '-';
  return `${sign < 0 ? minus : ''}${digits}${hasUnit ? ` ${unit}` : ''}`;
}

/**
 * Writes how far a split is from its line: "+" above, "−" below, to the half thousandth or 0.01 mm, without unit.
 * An offset that rounds to nothing has no sign; whether to say "level" instead is the caller's.
 */
export function formatOffset(mm: number, unit: JobUnit): string {
  const { sign, digits } = signAndDigits(mm, unit, 'bench', false);
  return `${sign < 0 ? '−' : sign > 0 ? '+' : ''}${digits}`;
}

/** Writes a length in both units, that of the job first: ".3345 in  8.50 mm". */
export function formatBoth(mm: number, unit: JobUnit): string {
  const other = unit === 'in' ? 'mm' : 'in';
  return `${formatLength(mm, { unit, hasUnit: true })}  ${formatLength(mm, { unit: other, hasUnit: true })}`;
}

/** Rounds to the last place of a form; the sign is that of the rounded value. */
function signAndDigits(
  mm: number,
  unit: JobUnit,
  form: LengthForm,
  keepsPlaces: boolean,
): { sign: number; digits: string } {
  const layout = LAYOUTS[unit][form];
  const { places, lastPlaceStep } = layout;
  const scaled = BigInt(storedSteps(mm)) * 10n ** BigInt(places);
  const parts = roundedQuotient(scaled, STEPS_PER_UNIT[unit] * lastPlaceStep) * lastPlaceStep;
  const digits = plainDecimal(parts, keepsPlaces ? { ...layout, keptPlaces: places } : layout);
  return { sign: parts < 0n ? -1 : parts > 0n ? 1 : 0, digits };
}
