/**
 * Draws from what readings leave open: each draw is one way everything could really be, with what is common to several
 * lengths drawn once for all of them. Follows JCGM 101:2008 (propagation of distributions): readings normal, assumed values
 * anywhere in their range alike. Scale errors of one instrument come from one bell-shaped correlation (estimate.ts).
 * Weights and distances mm.
 */
import { type Cause, type Estimate, scaleCorrelation } from '../estimate/estimate.ts';

/** Estimates as rows over common causes: a draw of causes moves all of them together. */
export type DrawPlan = {
  readonly values: readonly number[];
  /** For every estimate: places and weights of its causes. */
  readonly rows: readonly { readonly at: readonly number[]; readonly weight: readonly number[] }[];
  readonly causes: readonly Cause[];
  /** Scale errors of one instrument, with the lower triangle that correlates them. */
  readonly scales: readonly { readonly at: readonly number[]; readonly triangle: readonly number[][] }[];
};

/** Lays out draws for estimates that may share causes. */
export function planDraws(estimates: readonly Estimate[]): DrawPlan {
  const places = new Map<string, number>();
  const causes: Cause[] = [];
  const rows = estimates.map(({ terms }) => {
    const at = terms.map(({ cause }) => {
      const before = places.get(cause.id);
      if (before !== undefined) return before;
      places.set(cause.id, causes.length);
      return causes.push(cause) - 1;
    });
    return { at, weight: terms.map(({ weight }) => weight) };
  });
  return { values: estimates.map(({ value }) => value), rows, causes, scales: scaleGroups(causes) };
}

/**
 * Makes one draw after the other; `visit` gets the values of all estimates in one draw, in a list that is used again.
 *
 * @param random whole 0 up to 1, so that the same seed gives the same draws
 */
export function draw(
  plan: DrawPlan,
  count: number,
  random: () => number,
  visit: (values: readonly number[]) => void,
): void {
  const normal = normals(random);
  const errors = new Float64Array(plan.causes.length);
  const values = [...plan.values];
  for (let n = 0; n < count; n++) {
    plan.causes.forEach(({ kind }, i) => {
      errors[i] = kind === 'assumed' ? evenly(random) : normal();
    });
    for (const { at, triangle } of plan.scales) correlate(errors, at, triangle);
    plan.rows.forEach(({ at, weight }, i) => {
      let value = plan.values[i] ?? 0;
      for (let k = 0; k < at.length; k++) value += (weight[k] ?? 0) * (errors[at[k] ?? -1] ?? 0);
      values[i] = value;
    });
    visit(values);
  }
}

/** A small generator of numbers from 0 up to 1 (mulberry32, public domain): 32 bits of state, the same for the same seed. */
export function seededNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Even over a range whose standard deviation is 1: half-width root 3. */
function evenly(random: () => number): number {
  return Math.sqrt(3) * (2 * random() - 1);
}

/** Standard normal numbers, two at a time (Box and Muller 1958). */
function normals(random: () => number): () => number {
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    const size = Math.sqrt(-2 * Math.log(1 - random()));
    const angle = 2 * Math.PI * random();
    spare = size * Math.sin(angle);
    return size * Math.cos(angle);
  };
}

function scaleGroups(causes: readonly Cause[]): DrawPlan['scales'] {
  const groups = new Map<string, number[]>();
  causes.forEach(({ kind, instrument }, i) => {
    if (kind !== 'scale' || instrument === undefined) return;
    const group = groups.get(instrument);
    if (group === undefined) groups.set(instrument, [i]);
    else group.push(i);
  });
  return [...groups.values()].map((at) => ({
    at,
    triangle: lowerTriangle(at.map((i) => causes[i]?.at ?? 0)),
  }));
}

/** Cholesky's triangle of the correlation of scale errors at these places; places alike share their row. */
function lowerTriangle(places: readonly number[]): number[][] {
  const triangle: number[][] = [];
  places.forEach((place, i) => {
    const row: number[] = [];
    for (let k = 0; k <= i; k++) {
      const before = triangle[k] ?? row;
      let sum = scaleCorrelation(place - (places[k] ?? 0));
      for (let m = 0; m < k; m++) sum -= (row[m] ?? 0) * (before[m] ?? 0);
      const pivot = k === i ? Math.sqrt(Math.max(0, sum)) : (triangle[k]?.[k] ?? 0);
      // A place that follows from the ones before it has nothing of its own left.
      row.push(k === i ? pivot : pivot > 1e-9 ? sum / pivot : 0);
    }
    triangle.push(row);
  });
  return triangle;
}

function correlate(errors: Float64Array, at: readonly number[], triangle: readonly number[][]): void {
  for (let i = at.length - 1; i >= 0; i--) {
    let value = 0;
    for (let k = 0; k <= i; k++) value += (triangle[i]?.[k] ?? 0) * (errors[at[k] ?? -1] ?? 0);
    errors[at[i] ?? -1] = value;
  }
}
