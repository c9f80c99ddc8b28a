/**
 * What an evaluation says: the same numbers for the screen, the file and the tests. Lengths mm, angles radians. Offsets
 * are heights of a split above (+) or below (-) its line at the chamber's axis.
 */
import type { Id } from '../schema/leaf.ts';

export type Verdict =
  | 'level'
  | 'low, turns'
  | 'high, rubs'
  | 'too low'
  | 'too high'
  | "can't say yet"
  /** Something needed is not entered yet, or no length can ever turn. */
  | 'unknown'
  | 'never turns';

export type Lean = 'probably turns' | 'probably not' | null;

export type Route = 'subtraction' | 'over the ball' | 'stands up by' | 'known set';

/** One way to the height the key calls for. */
export type RouteResult = {
  readonly route: Route;
  readonly needed: number;
  readonly expandedUncertainty: number;
  /** Differs from the driving route by more than their ± together. */
  readonly disagrees: boolean;
};

export type SplitResult = {
  /** The parts the split lies between. */
  readonly below: Id;
  readonly above: Id | null;
  /** Above the plug's axis. */
  readonly height: number;
  readonly line: Id;
  readonly offset: number;
  readonly window: { readonly lowest: number; readonly noTouch: number; readonly highest: number };
  /** To spare: distance to the nearer end of the window, negative outside. */
  readonly margin: number;
  /** The ± of the offset. */
  readonly expandedUncertainty: number;
  /** The ± of the distance to each end of the window. */
  readonly toLowest: number;
  readonly toHighest: number;
  /** For a high one: the turn angle from which it rubs. */
  readonly rubsFrom: number | null;
  /** Heights from the foot up to this split that would surely do here; about one height when none is certain. */
  readonly useFrom: number;
  readonly useTo: number;
  readonly noneCertain: boolean;
  readonly verdict: Verdict;
  readonly lean: Lean;
  /** What would decide, or what to do: one sentence. */
  readonly nextStep: string | null;
  /** What it hangs on: one sentence each. */
  readonly assumes: readonly string[];
};

export type ChamberResult = {
  readonly chamber: Id;
  /** As counted on screen. */
  readonly number: number;
  /** Foot above the key's resting edge. */
  readonly contactHeight: number | null;
  /** How much of it the sides of the cut add to the root depth. */
  readonly flankLift: number | null;
  readonly neededLowerStack: number | null;
  readonly neededUncertainty: number | null;
  readonly drivingRoute: Route | null;
  readonly routes: readonly RouteResult[];
  /** Plug less metal under the key less root depth, as on paper, and why it differs. */
  readonly simpleLowerStack: number | null;
  readonly simpleDiffers: string | null;
  readonly lowerStack: number | null;
  readonly lowerStackUncertainty: number | null;
  readonly useFrom: number | null;
  readonly useTo: number | null;
  /** The height to aim for. */
  readonly best: number | null;
  /** True when no length is certain and only the middle can be given (useFrom = useTo). */
  readonly noneCertain: boolean;
  readonly splits: readonly SplitResult[];
  /**
   * The verdict of the split that matters at the line, for the table. One for each line. Not known while the split that
   * could let it turn is not measured.
   */
  readonly verdicts: readonly {
    readonly line: Id;
    readonly verdict: Verdict;
    readonly split: number | null;
  }[];
  /** Predicted bench tests with this chamber alone. */
  readonly alone: { readonly lowerStackOnly: Turns; readonly withDriver: Turns } | null;
  /** What is not entered yet and stands in the way, one sentence each. */
  readonly missing: readonly string[];
};

export type Turns = 'turns' | 'does not turn' | 'probably turns' | 'probably not' | 'unknown';

export type LineResult = {
  readonly line: Id;
  readonly verdict: 'turns' | 'will not turn' | "can't say yet" | 'unknown';
  readonly lean: Lean;
  /** Chambers that hold it, or that leave it undecided, by id. */
  readonly blockedBy: readonly Id[];
};

/** Where to look: how far out the key is then (mm), which chamber, and what shows it best. */
export type Show = {
  readonly travel: number;
  readonly chamber: Id | null;
  readonly view: 'section' | 'close-up' | 'readings';
};

export type Finding = {
  readonly code: string;
  readonly severity: 'stops' | 'warns' | 'notes';
  readonly chambers: readonly Id[];
  readonly fields: readonly string[];
  readonly message: string;
  readonly show?: Show;
};

export type InsertionResult = {
  readonly chamber: Id;
  /** Highest the foot is lifted above the key's resting edge while the key goes in, and how far out the key is then. */
  readonly highest: number;
  readonly highestAt: number;
  /** With no key. */
  readonly rest: number | null;
};

/** The same error in every chamber: to be told before the verdicts. */
export type CommonError = { readonly offset: number; readonly message: string };

export type Evaluation = {
  readonly units: { readonly length: 'mm'; readonly angle: 'rad' };
  readonly cylinder: Id;
  readonly key: Id | null;
  readonly plan: Id;
  readonly lines: readonly LineResult[];
  readonly chambers: readonly ChamberResult[];
  readonly commonError: CommonError | null;
  readonly insertion: readonly InsertionResult[];
  readonly findings: readonly Finding[];
};
