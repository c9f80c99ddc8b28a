/** Draws against the law of propagation that the ± is computed by. mm. */
import { describe, expect, test } from 'vitest';
import {
  type Cause,
  combine,
  type Estimate,
  standardUncertainty,
  type Term,
} from '../../../src/model/estimate/estimate.ts';
import { draw, planDraws, seededNumbers } from '../../../src/model/sureness/draws.ts';

const field = { owner: 'part', id: 'p', name: 'length' };
const cause = (id: string, kind: Cause['kind'], at?: number): Cause => ({
  id,
  kind,
  field,
  ...(at !== undefined && { instrument: 'caliper', at }),
});
const estimate = (value: number, ...terms: Term[]): Estimate => ({ value, terms });

function momentsOf(estimates: readonly Estimate[], count = 40_000) {
  const sums = estimates.map(() => ({ sum: 0, squares: 0 }));
  draw(planDraws(estimates), count, seededNumbers(7), (values) => {
    values.forEach((value, i) => {
      const own = sums[i];
      if (own === undefined) return;
      own.sum += value;
      own.squares += value ** 2;
    });
  });
  return sums.map(({ sum, squares }) => ({
    mean: sum / count,
    deviation: Math.sqrt(squares / count - (sum / count) ** 2),
  }));
}

describe('draws', () => {
  const length = (id: string, value: number) =>
    estimate(
      value,
      { cause: cause(`${id}#repeat`, 'repeatability'), weight: 0.01 },
      { cause: cause(`caliper@${value}`, 'scale', value), weight: 0.015 },
      { cause: cause(`${id}#assumed`, 'assumed'), weight: 0.004 },
    );
  const near = combine([
    [1, length('a', 9)],
    [-1, length('b', 9.2)],
  ]);
  const far = combine([
    [1, length('a', 9)],
    [-1, length('b', 40)],
  ]);
  const sum = combine([
    [2, length('a', 9)],
    [1, length('b', 3)],
  ]);

  test.each([
    ['a difference of near-equal readings', near],
    ['a difference of readings far apart', far],
    ['a weighted sum', sum],
  ])('%s spreads as the law of propagation says', (_, each) => {
    const [moments] = momentsOf([each]);
    expect(moments?.mean).toBeCloseTo(each.value, 3);
    expect((moments?.deviation ?? 0) / standardUncertainty(each)).toBeCloseTo(1, 1.7);
  });

  test('near-equal readings share most of their scale error', () => {
    expect(standardUncertainty(near)).toBeLessThan(0.7 * standardUncertainty(far));
  });

  test('what is common moves two estimates together', () => {
    const common = { cause: cause('plug#repeat', 'repeatability'), weight: 0.02 };
    const plan = planDraws([estimate(1, common), estimate(5, common)]);
    draw(plan, 200, seededNumbers(3), ([one = 0, other = 0]) => expect(other - one).toBeCloseTo(4, 12));
  });

  test('an assumed value stays in its range', () => {
    const plan = planDraws([estimate(0, { cause: cause('x#assumed', 'assumed'), weight: 1 / Math.sqrt(3) })]);
    let widest = 0;
    draw(plan, 20_000, seededNumbers(5), ([value = 0]) => (widest = Math.max(widest, Math.abs(value))));
    expect(widest).toBeLessThanOrEqual(1);
    expect(widest).toBeGreaterThan(0.999);
  });

  test('the same place on the scale is the same error', () => {
    const one = estimate(9, { cause: cause('caliper@9', 'scale', 9), weight: 1 });
    const other = estimate(9, { cause: cause('caliper@9 again', 'scale', 9), weight: 1 });
    draw(planDraws([one, other]), 100, seededNumbers(2), ([a = 0, b = 0]) => expect(a - b).toBeCloseTo(0, 9));
  });
});
