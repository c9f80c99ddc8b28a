/**
 * A number and what it is made of: the value, and for each independent cause of doubt how far that cause moves it.
 * Sums and differences keep the causes apart, so that what is common to two lengths cancels or adds as it really does.
 * Follows the law of propagation of uncertainty (JCGM 100:2008, 5.1 and 5.2). Values mm (or radians), weights in units of
 * the value per standard uncertainty.
 *
 * Causes are independent of each other, but for the scale errors of one instrument: two readings of the same caliper at
 * lengths near each other share most of theirs. See `scaleCorrelation`.
 */

/** Something that could be different from what was written down. */
export type Cause = {
  /** The same id is the same cause wherever it turns up. */
  readonly id: string;
  readonly kind: 'repeatability' | 'resolution' | 'scale' | 'zero' | 'assumed' | 'bench';
  /** For scale errors: the instrument, and where on its scale (mm). */
  readonly instrument?: string;
  readonly at?: number;
  /** What a person would repeat or replace to shrink it. */
  readonly field: FieldRef;
};

/** The entered quantity a cause belongs to, for "what would help most" and for pointing at the field. */
export type FieldRef = { readonly owner: string; readonly id: string; readonly name: string };

export type Term = { readonly cause: Cause; readonly weight: number };
export type Estimate = { readonly value: number; readonly terms: readonly Term[] };

/** An estimate without doubt. */
export function exact(value: number): Estimate {
  return { value, terms: [] };
}

/** Adds estimates, each times its factor. */
export function combine(parts: readonly (readonly [factor: number, estimate: Estimate])[]): Estimate {
  let value = 0;
  const weights = new Map<string, Term>();
  for (const [factor, estimate] of parts) {
    value += factor * estimate.value;
    for (const { cause, weight } of estimate.terms) {
      const before = weights.get(cause.id)?.weight ?? 0;
      weights.set(cause.id, { cause, weight: before + factor * weight });
    }
  }
  return { value, terms: [...weights.values()].filter((term) => term.weight !== 0) };
}

/** Adds a number without doubt. */
export function shift(estimate: Estimate, by: number): Estimate {
  return { value: estimate.value + by, terms: estimate.terms };
}

/** Keeps a value within limits that geometry can bear; its causes of doubt stay. */
export function within(estimate: Estimate, least: number, most: number): Estimate {
  return { value: Math.min(most, Math.max(least, estimate.value)), terms: estimate.terms };
}

/** Standard uncertainty, in units of the value. */
export function standardUncertainty(estimate: Estimate): number {
  return Math.sqrt(Math.max(0, variance(estimate.terms)));
}

/** The ± told to people: nineteen times in twenty (coverage factor 2). */
export const COVERAGE_FACTOR = 2;
export function expandedUncertainty(estimate: Estimate): number {
  return COVERAGE_FACTOR * standardUncertainty(estimate);
}

/** Variance of a sum of terms, scale errors of one instrument correlated. */
export function variance(terms: readonly Term[]): number {
  let total = 0;
  const scale = new Map<string, Term[]>();
  for (const term of terms) {
    const { kind, instrument } = term.cause;
    if (kind === 'scale' && instrument !== undefined) {
      const group = scale.get(instrument);
      if (group === undefined) scale.set(instrument, [term]);
      else group.push(term);
    } else total += term.weight ** 2;
  }
  for (const group of scale.values()) total += scaleVariance(group);
  return total;
}

function scaleVariance(group: readonly Term[]): number {
  let total = 0;
  for (let i = 0; i < group.length; i++) {
    const a = group[i];
    if (a === undefined) continue;
    total += a.weight ** 2;
    for (let t = i + 1; t < group.length; t++) {
      const b = group[t];
      if (b === undefined) continue;
      total += 2 * a.weight * b.weight * scaleCorrelation((a.cause.at ?? 0) - (b.cause.at ?? 0));
    }
  }
  return total;
}

/** mm. Over this span the error of a caliper's scale stops being the same error. An assumption: no source gives one. */
const SCALE_ERROR_SPAN_MM = 5;

/**
 * How alike the scale errors of one instrument are at two places this far apart: 1 at the same place, 0 far away. The
 * bell shape keeps every set of readings consistent (positive definite) and makes near-equal readings cancel.
 */
export function scaleCorrelation(apartMm: number): number {
  return Math.exp(-((apartMm / SCALE_ERROR_SPAN_MM) ** 2) / 2);
}
