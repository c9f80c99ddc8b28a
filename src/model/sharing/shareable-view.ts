/**
 * What may leave the shop without giving the key away: where each split stands against its line, the window it turns in, the
 * verdict, and what was written on the shareable page. No root depth, no length of a part, no place of a cut, nothing that
 * is counted, named or derived from them. Offsets are rounded to what is said (half a thousandth or 0.01 mm), so that the
 * last places cannot carry anything. Lengths mm, offsets + high, - low.
 */
import type { Evaluation, Lean, LineResult, Verdict } from '../evaluate/evaluation.ts';
import { SHARED_FIELDS } from '../note/note-fields.ts';
import type { Cylinder } from '../schema/cylinder-schema.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Key } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { Plan } from '../schema/parts-schema.ts';
import type { JobUnit } from '../units/length-unit.ts';

export type ShareableSplit = {
  readonly line: Id;
  /** Null while it is not known. */
  readonly at: {
    readonly offset: number;
    readonly window: { readonly lowest: number; readonly noTouch: number; readonly highest: number };
  } | null;
  readonly verdict: Verdict;
  readonly lean: Lean;
};

export type ShareableChamber = {
  readonly chamber: Id;
  readonly number: number;
  /** One for each line, inside to outside. */
  readonly splits: readonly ShareableSplit[];
};

export type ShareableState = {
  readonly kind: Plan['kind'];
  readonly lines: readonly LineResult[];
  readonly chambers: readonly ShareableChamber[];
  /** All chambers off by the same. */
  readonly commonOffset: number | null;
};

export type ShareableTest = {
  readonly kind: Plan['kind'];
  /** Null: all chambers together. */
  readonly number: number | null;
  readonly turned: boolean;
  /** ISO 8601. */
  readonly at: string;
};

export type ShareableView = {
  readonly title: string;
  readonly unit: JobUnit;
  readonly cylinder: string;
  readonly chamberCount: number;
  readonly key: string | null;
  /** The written fields that are not empty, in the order of the page. */
  readonly fields: readonly { readonly label: string; readonly text: string }[];
  readonly states: readonly ShareableState[];
  readonly tests: readonly ShareableTest[];
};

/** One state of the cylinder with what was evaluated about it. */
export type EvaluatedPlan = { readonly plan: Plan; readonly evaluation: Evaluation };

/** Takes from a job what may be shared. */
export function shareableView(
  job: Job,
  cylinder: Cylinder,
  key: Key | null,
  plans: readonly EvaluatedPlan[],
): ShareableView {
  const { unit } = job.settings;
  return {
    title: job.title,
    unit,
    cylinder: cylinder.label,
    chamberCount: cylinder.chambers.length,
    key: key?.label ?? null,
    fields: SHARED_FIELDS.flatMap(({ name, label }) => {
      const text = job.note.shared[name] ?? '';
      return text === '' ? [] : [{ label, text }];
    }),
    states: plans.map((each) => stateOf(each, unit)),
    tests: plans.flatMap(({ plan, evaluation }) =>
      job.benchResults
        .filter((each) => each.plan === plan.id && each.key === key?.id)
        .map(({ chamber, turned, at }) => ({
          kind: plan.kind,
          number:
            chamber === 'all'
              ? null
              : (evaluation.chambers.find((each) => each.chamber === chamber)?.number ?? null),
          turned,
          at,
        })),
    ),
  };
}

function stateOf({ plan, evaluation }: EvaluatedPlan, unit: JobUnit): ShareableState {
  return {
    kind: plan.kind,
    lines: evaluation.lines.map(({ line, verdict, lean, blockedBy }) => ({
      line,
      verdict,
      lean,
      blockedBy: [...blockedBy],
    })),
    chambers: evaluation.chambers.map(({ chamber, number, verdicts, splits }) => ({
      chamber,
      number,
      splits: verdicts.map(({ line, verdict, split: place }): ShareableSplit => {
        const split = place === null ? undefined : splits[place];
        if (split === undefined) return { line, at: null, verdict, lean: null };
        const { lowest, noTouch, highest } = split.window;
        return {
          line,
          at: {
            offset: asSaid(split.offset, unit),
            window: {
              lowest: asSaid(lowest, unit),
              noTouch: asSaid(noTouch, unit),
              highest: asSaid(highest, unit),
            },
          },
          verdict,
          lean: split.lean,
        };
      }),
    })),
    commonOffset: evaluation.commonError === null ? null : asSaid(evaluation.commonError.offset, unit),
  };
}

/** Half a thousandth of an inch, or 0.01 mm. */
const SAID_STEP_MM: Readonly<Record<JobUnit, number>> = { in: 0.0127, mm: 0.01 };
/** Nobody measures a nanometre: what the arithmetic leaves below it must not decide how a tie is rounded. */
const NOISE_MM = 1e-6;

/** Rounds to what is said, ties away from zero. mm. */
export function asSaid(mm: number, unit: JobUnit): number {
  if (!Number.isFinite(mm)) return mm;
  const step = SAID_STEP_MM[unit];
  const clean = Math.round(mm / NOISE_MM) * NOISE_MM;
  const steps = Math.floor(Math.abs(clean) / step + 0.5 + NOISE_MM);
  return steps === 0 ? 0 : Math.sign(clean) * Number((steps * step).toFixed(4));
}
