/**
 * The height a key calls for, by every route a person gave readings for: the lower stack that would stand level with the
 * plug's crest. The route with the smallest ± drives unless another is pinned; routes are never averaged. mm.
 *
 *   subtraction     plug minus floor, less the contact height from the root depth
 *   over the ball   the same, with the contact height from a reading over a ball in the cut
 *   stands up by    a stack surely too long, less what it stood up by: plug, floor, cut and zero drop out
 *   known set       contact height plus stack of a set that worked, averaged over its chambers, less the contact height
 */
import {
  combine,
  type Estimate,
  expandedUncertainty,
  type FieldRef,
  shift,
  standardUncertainty,
  type Term,
} from '../estimate/estimate.ts';
import { type Measuring, readLength } from '../estimate/read-value.ts';
import type { StandsUpBy } from '../schema/key-schema.ts';
import type { Route } from './evaluation.ts';

export type RouteEstimate = { readonly route: Route; readonly needed: Estimate };

/** The route that drives: the pinned one if it was measured, else the one with the smallest ±. */
export function drivingRoute(
  routes: readonly RouteEstimate[],
  pinned: Route | undefined,
): RouteEstimate | null {
  const chosen = routes.find((each) => each.route === pinned);
  if (chosen !== undefined) return chosen;
  let best: RouteEstimate | null = null;
  for (const each of routes) {
    if (best === null || standardUncertainty(each.needed) < standardUncertainty(best.needed)) best = each;
  }
  return best;
}

/** Do two routes differ by more than the ± of their difference? */
export function routesDisagree(one: Estimate, other: Estimate): boolean {
  const difference = combine([
    [1, one],
    [-1, other],
  ]);
  return Math.abs(difference.value) > expandedUncertainty(difference) + 1e-9;
}

/** Subtraction: what is left of plug minus floor above the contact height, less a filed crest. */
export function bySubtraction(plugMinusFloor: Estimate, contact: Estimate, crestDrop: number): Estimate {
  return shift(
    combine([
      [1, plugMinusFloor],
      [-1, contact],
    ]),
    -crestDrop,
  );
}

/**
 * Stands up by: the caliper zeroed across the plug beside the chamber, then read across the pin. Both readings lie close
 * together on the scale, so its error all but cancels; zeroing counts as a reading of its own.
 */
export function byStandingUp(entry: StandsUpBy, plugDiameter: number, measuring: Measuring): Estimate {
  const field: FieldRef = { owner: 'standsUpBy', id: entry.chamber, name: 'reading' };
  const stack = readLength(entry.stack, { ...field, name: 'stack' }, measuring);
  const plain = readLength(entry.reading, field, measuring);
  const reading: Estimate = {
    value: plain.value,
    terms: plain.terms.flatMap((term) => differenceTerms(term, plugDiameter)),
  };
  return combine([
    [1, stack],
    [-1, reading],
  ]);
}

/** Turns the doubt of a plain reading into that of a difference from a zero set at the plug. */
function differenceTerms(term: Term, plugDiameter: number): Term[] {
  const { cause, weight } = term;
  switch (cause.kind) {
    case 'scale': {
      const at = plugDiameter + (cause.at ?? 0);
      const zeroed = { ...cause, id: `${cause.instrument ?? ''}@${plugDiameter}`, at: plugDiameter };
      return [
        { cause: { ...cause, id: `${cause.instrument ?? ''}@${at}`, at }, weight },
        { cause: zeroed, weight: -weight },
      ];
    }
    case 'zero':
      return [];
    case 'repeatability':
    case 'resolution':
      return [term, { cause: { ...cause, id: `${cause.id}/zeroing` }, weight }];
    case 'assumed':
    case 'bench':
      return [term];
  }
}

export type KnownStack = { readonly contact: Estimate; readonly stack: Estimate };

/**
 * A set known to work: its effective diameter is contact height plus stack, averaged; the spread between its chambers
 * counts, and so does the shop rule, since a set that works need not be level.
 */
export function effectiveDiameter(
  known: readonly KnownStack[],
  shopRule: number,
  keyId: string,
): Estimate | null {
  if (known.length === 0) return null;
  const sums = known.map(({ contact, stack }) =>
    combine([
      [1, contact],
      [1, stack],
    ]),
  );
  const middle = combine(sums.map((sum) => [1 / sums.length, sum]));
  const spread =
    sums.length < 2
      ? 0
      : Math.sqrt(
          sums.reduce((total, sum) => total + (sum.value - middle.value) ** 2, 0) / (sums.length - 1),
        );
  const field: FieldRef = { owner: 'seating', id: keyId, name: 'knownSets' };
  const terms: Term[] = [
    ...middle.terms,
    {
      cause: { id: `knownSet/${keyId}#spread`, kind: 'bench', field },
      weight: spread / Math.sqrt(sums.length),
    },
    { cause: { id: `knownSet/${keyId}#level`, kind: 'assumed', field }, weight: shopRule / Math.sqrt(3) },
  ];
  return { value: middle.value, terms: terms.filter((term) => term.weight !== 0) };
}
