/**
 * The bracket test: in one chamber, three lower stacks (one .003 in over, the one in hand, one .003 in under), each tried
 * alone in the empty shell and then with its driver. What each should do is told before; what it really did is entered as a
 * bench result and narrows the height called for. The empty shell tells the high side, only the driver the low side. mm.
 */
import type { SplitAtLine } from '../evaluate/split-results.ts';

/** mm (.003 in). A step of common pin kits. Common practice, no source. */
export const BRACKET_STEP_MM = 0.0762;

export type Forecast = 'turns' | 'does not turn' | 'probably turns' | 'probably not';

export type BracketPin = {
  /** Longer (+) or shorter (-) than the stack in hand. */
  readonly by: number;
  readonly height: number;
  readonly alone: Forecast;
  readonly withDriver: Forecast;
};

/** Foretells the test for the lower stack of a chamber at its line. */
export function bracketTest(
  lowerStack: number,
  { judgement }: SplitAtLine,
  step: number = BRACKET_STEP_MM,
): BracketPin[] {
  const { toLowest, toHighest, toLowestUncertainty, toHighestUncertainty } = judgement;
  return [step, 0, -step].map((by) => {
    const alone = forecast(toHighest.value - by, toHighestUncertainty);
    const low = forecast(toLowest.value + by, toLowestUncertainty);
    return { by, height: lowerStack + by, alone, withDriver: worse(alone, low) };
  });
}

/** Whether a bracket tells anything: the three pins must not all do the same. */
export function tellsSomething(pins: readonly BracketPin[]): boolean {
  return new Set(pins.map(({ withDriver }) => withDriver)).size > 1;
}

function forecast(distance: number, uncertainty: number): Forecast {
  if (distance >= uncertainty) return 'turns';
  if (distance < -uncertainty) return 'does not turn';
  return distance >= 0 ? 'probably turns' : 'probably not';
}

const ORDER: readonly Forecast[] = ['turns', 'probably turns', 'probably not', 'does not turn'];

function worse(one: Forecast, other: Forecast): Forecast {
  return ORDER.indexOf(one) >= ORDER.indexOf(other) ? one : other;
}
