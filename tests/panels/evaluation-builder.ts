/** Evaluations made up for the wording tests: one line, chambers with one split each. Lengths given in inches. */
import type {
  ChamberResult,
  Evaluation,
  Lean,
  LineResult,
  SplitResult,
  Verdict,
} from '../../src/model/evaluate/evaluation.ts';

const IN = 25.4;

export type MadeUpChamber = {
  readonly verdict: Verdict;
  readonly offset: number;
  readonly lean?: Lean;
  readonly nextStep?: string;
  readonly assumes?: readonly string[];
  readonly rubsFromDeg?: number;
  readonly missing?: readonly string[];
};

const WINDOW = { lowest: -0.0077 * IN, noTouch: 0, highest: 0.004 * IN };

function chamberOf(made: MadeUpChamber, i: number): ChamberResult {
  const offset = made.offset * IN;
  const split: SplitResult = {
    below: `pin${i}`,
    above: `driver${i}`,
    height: 9.5 + offset,
    line: 'line',
    offset,
    window: WINDOW,
    margin: Math.min(offset - WINDOW.lowest, WINDOW.highest - offset),
    expandedUncertainty: 0.002 * IN,
    toLowest: 0.002 * IN,
    toHighest: 0.002 * IN,
    rubsFrom: made.rubsFromDeg === undefined ? null : (made.rubsFromDeg * Math.PI) / 180,
    useFrom: 8.4,
    useTo: 8.5,
    noneCertain: false,
    verdict: made.verdict,
    lean: made.lean ?? null,
    nextStep: made.nextStep ?? null,
    assumes: made.assumes ?? [],
  };
  const isKnown = made.verdict !== 'unknown';
  return {
    chamber: `chamber${i + 1}`,
    number: i + 1,
    contactHeight: 9,
    flankLift: 0,
    neededLowerStack: 8.5,
    neededUncertainty: 0.05,
    drivingRoute: 'subtraction',
    routes: [],
    simpleLowerStack: 8.5,
    simpleDiffers: null,
    lowerStack: 8.5 + offset,
    lowerStackUncertainty: 0.03,
    useFrom: 8.4,
    useTo: 8.5,
    best: 8.5,
    noneCertain: false,
    splits: isKnown ? [split] : [],
    verdicts: [{ line: 'line', verdict: made.verdict, split: isKnown ? 0 : null }],
    alone: null,
    missing: made.missing ?? [],
  };
}

export function madeUpEvaluation(
  made: readonly MadeUpChamber[],
  line: Pick<LineResult, 'verdict' | 'lean'> & { readonly blockedBy?: readonly number[] },
  commonOffset?: number,
): Evaluation {
  return {
    units: { length: 'mm', angle: 'rad' },
    cylinder: 'cylinder',
    key: 'key',
    plan: 'plan',
    lines: [
      {
        line: 'line',
        verdict: line.verdict,
        lean: line.lean,
        blockedBy: (line.blockedBy ?? []).map((number) => `chamber${number}`),
      },
    ],
    chambers: made.map(chamberOf),
    commonError:
      commonOffset === undefined ? null : { offset: commonOffset * IN, message: 'the same everywhere' },
    insertion: [],
    findings: [],
  };
}
