/**
 * What each key of a job does in a cylinder against what it is meant to do, and which keys cross: a key that turns what only
 * another one should. A line turns if every chamber has a split in its window; some chambers at one line and some at the
 * other turn nothing.
 */
import type { Evaluation, LineResult } from '../evaluate/evaluation.ts';
import { whatTurns } from '../evaluate/what-turns.ts';
import type { Selection } from '../measured/selection.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';

/** What turns: the plug alone (or the only line), plug and sleeve together, either of them, nothing. */
export type Turning = 'plug' | 'together' | 'either' | 'nothing';

export type KeyOutcome = {
  readonly key: Id;
  readonly label: string;
  readonly lines: readonly LineResult[];
  /** What is decided; null while something is open. */
  readonly does: Turning | null;
  /** With open chambers taken as they lean; null when something needed is not measured. */
  readonly probably: Turning | null;
  /** What it is meant to do; null when nobody said. */
  readonly meant: Turning | null;
  readonly isAsMeant: boolean | null;
  /** Some chambers are clear at one line and some at another, but no line in all of them. */
  readonly isMixed: boolean;
  /** Chambers that hold each line, or leave it open, as counted on screen. */
  readonly heldBy: readonly { readonly line: Id; readonly chambers: readonly number[] }[];
};

export type Crossing = {
  /** Turns it, and is not meant to. */
  readonly key: Id;
  readonly line: Id;
  /** The keys that are meant to turn it. */
  readonly meantFor: readonly Id[];
};

export type EvaluateSelection = (selection: Selection) => Evaluation;

/** What every key that sits in this cylinder, or is meant for it, does with a plan. */
export function keyOutcomes(
  job: Job,
  { cylinder, plan }: { readonly cylinder: Id; readonly plan: Id },
  evaluateSelection: EvaluateSelection,
): KeyOutcome[] {
  const seated = new Set(job.seatings.filter((each) => each.cylinder === cylinder).map(({ key }) => key));
  for (const intent of job.intents) if (intent.cylinder === cylinder) seated.add(intent.key);
  return job.keys
    .filter(({ id }) => seated.has(id))
    .map(({ id, label }) => outcomeOf(job, id, label, evaluateSelection({ cylinder, key: id, plan })));
}

function outcomeOf(job: Job, key: Id, label: string, evaluation: Evaluation): KeyOutcome {
  const { lines, chambers } = evaluation;
  const does = turningOf(lines.map(({ verdict }) => decided(verdict)));
  const probably = turningOf(lines.map(leaning));
  const meant = meantOf(job, key, evaluation);
  const numbers = new Map(chambers.map((each) => [each.chamber, each.number]));
  return {
    key,
    label,
    lines,
    does,
    probably,
    meant,
    isAsMeant: meant === null || does === null ? null : meant === does,
    isMixed: whatTurns(evaluation).isMixed,
    heldBy: lines.map(({ line, blockedBy }) => ({
      line,
      chambers: blockedBy.flatMap((id) => numbers.get(id) ?? []),
    })),
  };
}

function decided(verdict: LineResult['verdict']): boolean | null {
  if (verdict === 'turns') return true;
  return verdict === 'will not turn' ? false : null;
}

function leaning({ verdict, lean }: LineResult): boolean | null {
  return verdict === "can't say yet" ? lean === 'probably turns' : decided(verdict);
}

function turningOf(lines: readonly (boolean | null)[]): Turning | null {
  const [inner, outer = false] = lines;
  if (inner == null || outer === null) return null;
  if (inner) return outer ? 'either' : 'plug';
  return outer ? 'together' : 'nothing';
}

function meantOf(job: Job, key: Id, { cylinder, lines }: Evaluation): Turning | null {
  const own = job.intents.filter((each) => each.key === key && each.cylinder === cylinder);
  if (own.length === 0) return null;
  return turningOf(lines.map(({ line }) => own.some((each) => each.line === line && each.turns)));
}

/** Lists the keys that turn a line that is meant for others. A key nobody said anything about crosses nobody. */
export function crossings(outcomes: readonly KeyOutcome[]): Crossing[] {
  return outcomes.flatMap((outcome) =>
    outcome.lines.flatMap(({ line, verdict }, i): Crossing[] => {
      if (outcome.meant === null || verdict !== 'turns' || isMeantFor(outcome.meant, i)) return [];
      const meantFor = outcomes
        .filter(({ meant, key }) => key !== outcome.key && meant !== null && isMeantFor(meant, i))
        .map(({ key }) => key);
      return [{ key: outcome.key, line, meantFor }];
    }),
  );
}

function isMeantFor(meant: Turning, lineIndex: number): boolean {
  return meant === 'either' || meant === (lineIndex === 0 ? 'plug' : 'together');
}
