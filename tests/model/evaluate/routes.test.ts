import { describe, expect, test } from 'vitest';
import { type Estimate, exact, expandedUncertainty } from '../../../src/model/estimate/estimate.ts';
import type { Measuring } from '../../../src/model/estimate/read-value.ts';
import {
  byStandingUp,
  bySubtraction,
  drivingRoute,
  effectiveDiameter,
  routesDisagree,
} from '../../../src/model/evaluate/routes.ts';
import type { Instrument } from '../../../src/model/schema/cylinder-schema.ts';
import type { LengthValue } from '../../../src/model/schema/leaf.ts';

const INCH = 25.4;
const caliper: Instrument = {
  id: 'c',
  label: 'caliper',
  kind: 'digital caliper',
  resolutionMm: 0,
  maxPermissibleErrorMm: 0.001 * INCH,
  repeatabilityMm: 0.0005 * INCH,
  source: 'assumed',
};
const measuring: Measuring = { instruments: new Map([['c', caliper]]), sessions: new Map() };
const field = { owner: 'test', id: 'x', name: 'length' };

function read(inches: number, times: number): LengthValue {
  const reading = {
    typed: String(inches),
    unit: 'in' as const,
    value: inches * INCH,
    instrument: 'c',
    session: null,
  };
  return { readings: Array.from({ length: times }, () => reading), estimator: 'mean', basis: 'measured' };
}

function plain(value: number, u: number, id = 'a'): Estimate {
  return { value, terms: [{ cause: { id, kind: 'repeatability', field }, weight: u }] };
}

describe('the routes to the needed height', () => {
  test('subtraction takes the contact height and a filed crest off plug minus floor', () => {
    expect(bySubtraction(exact(17.9), exact(9.4), 0.1).value).toBeCloseTo(8.4, 12);
  });

  // .36000 stands up .02536, so .33464: worked by hand.
  test('what stands up by too much is too long by just that', () => {
    const entry = { chamber: 'k', items: [], stack: read(0.36, 1), reading: read(0.02536, 1) };
    expect(byStandingUp(entry, 0.748 * INCH, measuring).value / INCH).toBeCloseTo(0.33464, 8);
  });

  // Three readings of .0005 in repeatability (stack, zero, pin): 2 x .0005 x sqrt(3) with one each, 2 x .0005 with three.
  test('standing up is good to about .0017 with one reading and .0010 with three', () => {
    const one = byStandingUp(
      { chamber: 'k', items: [], stack: read(0.36, 1), reading: read(0.025, 1) },
      0.748 * INCH,
      {
        ...measuring,
        instruments: new Map([['c', { ...caliper, maxPermissibleErrorMm: 0 }]]),
      },
    );
    const three = byStandingUp(
      { chamber: 'k', items: [], stack: read(0.36, 3), reading: read(0.025, 3) },
      0.748 * INCH,
      {
        ...measuring,
        instruments: new Map([['c', { ...caliper, maxPermissibleErrorMm: 0 }]]),
      },
    );
    expect(expandedUncertainty(one) / INCH).toBeCloseTo(0.00173, 5);
    expect(expandedUncertainty(three) / INCH).toBeCloseTo(0.001, 6);
  });

  test('the error of the scale all but cancels in a difference taken close together on it', () => {
    const entry = {
      chamber: 'k',
      items: [],
      stack: { ...read(0.36, 1), basis: 'stated' as const },
      reading: read(0.025, 1),
    };
    const only = byStandingUp(entry, 0.748 * INCH, {
      ...measuring,
      instruments: new Map([['c', { ...caliper, repeatabilityMm: 0 }]]),
    });
    expect(expandedUncertainty(only) / INCH).toBeLessThan(0.0002);
    expect(expandedUncertainty(only)).toBeGreaterThan(0);
  });

  // r + B = .7061 .7048 .7070 .7055 .7049 .7066: mean .70582, standard deviation .00090, worked by hand.
  test('a set known to work gives its mean, and its spread counts', () => {
    const sums = [0.7061, 0.7048, 0.707, 0.7055, 0.7049, 0.7066];
    const known = sums.map((sum) => ({ contact: exact(sum * INCH * 0.5), stack: exact(sum * INCH * 0.5) }));
    const diameter = effectiveDiameter(known, 0, 'k');
    expect((diameter?.value ?? 0) / INCH).toBeCloseTo(0.70582, 5);
    expect(expandedUncertainty(diameter ?? exact(0)) / INCH).toBeCloseTo(2 * 0.00037, 5);
    expect(effectiveDiameter([], 0, 'k')).toBeNull();
  });

  test('the smallest ± drives unless another is pinned, and routes are never averaged', () => {
    const routes = [
      { route: 'subtraction', needed: plain(9, 0.03) },
      { route: 'stands up by', needed: plain(9.1, 0.01, 'b') },
    ] as const;
    expect(drivingRoute(routes, undefined)?.needed.value).toBe(9.1);
    expect(drivingRoute(routes, 'subtraction')?.needed.value).toBe(9);
    expect(drivingRoute(routes, 'known set')?.needed.value).toBe(9.1);
    expect(drivingRoute([], undefined)).toBeNull();
  });

  test('routes disagree when they differ by more than the ± of their difference', () => {
    expect(routesDisagree(plain(9, 0.03), plain(9.05, 0.03, 'b'))).toBe(false);
    expect(routesDisagree(plain(9, 0.03), plain(9.1, 0.03, 'b'))).toBe(true);
    expect(routesDisagree(plain(9, 0.03), plain(9.01, 0.03))).toBe(true);
  });
});
