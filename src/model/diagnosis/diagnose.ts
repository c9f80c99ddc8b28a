/**
 * From what is seen at the bench back to what would explain it in this job: what its readings show first, then what is
 * near, then what is not measured yet, then what readings never tell, and last what they speak against.
 */
import type { Finding, Show } from '../evaluate/evaluation.ts';
import { allFindings } from '../findings/all-findings.ts';
import type { Facts } from '../findings/facts.ts';
import { type Sign, signsOf } from './signs.ts';
import { type Cause, SYMPTOMS, type Symptom } from './symptoms-table.ts';

export type Standing =
  | 'your readings show it'
  | 'near'
  | 'not measured yet'
  | 'only looking tells'
  | 'not in your readings';

export type Explanation = {
  readonly cause: string;
  readonly text: string;
  readonly standing: Standing;
  /** What in this job speaks for it, one sentence each, with where to look. */
  readonly because: readonly { readonly text: string; readonly show: Show | null }[];
  /** What to measure, for what is not measured yet. */
  readonly measure: string | null;
};

const RANK: Readonly<Record<Standing, number>> = {
  'your readings show it': 0,
  near: 1,
  'not measured yet': 2,
  'only looking tells': 3,
  'not in your readings': 4,
};

const RANK_OF_SIGN: Readonly<Record<Sign['standing'], number>> = { found: 0, near: 1 };

const GRAVITY: Readonly<Record<Finding['severity'], number>> = { stops: 0, warns: 1, notes: 2 };

/** Explains a symptom; the likeliest first. */
export function diagnose(symptom: Symptom, facts: Facts, findings = allFindings(facts)): Explanation[] {
  return symptom.causes
    .map((cause, i) => ({
      explanation: explain(cause, facts, findings),
      gravity: gravityOf(cause, findings),
      i,
    }))
    .sort(
      (one, other) =>
        RANK[one.explanation.standing] - RANK[other.explanation.standing] ||
        one.gravity - other.gravity ||
        one.i - other.i,
    )
    .map(({ explanation }) => explanation);
}

/** Finds a symptom by its name; undefined for none. */
export function symptomOf(id: string): Symptom | undefined {
  return SYMPTOMS.find((each) => each.id === id);
}

/** Graver findings come first; signs count like warnings. */
function gravityOf({ codes }: Cause, findings: readonly Finding[]): number {
  const own = findings.filter((each) => isOneOf(codes, each.code)).map((each) => GRAVITY[each.severity]);
  return own.length === 0 ? 1 : Math.min(...own);
}

function isOneOf(codes: readonly string[], code: string): boolean {
  return codes.includes(code);
}

function explain(cause: Cause, facts: Facts, findings: readonly Finding[]): Explanation {
  const told = findings.filter((each) => isOneOf(cause.codes, each.code));
  const signs = cause.signs.flatMap((name) => signsOf(facts, name));
  const unlike = [...new Map(signs.map((sign) => [sign.text, sign])).values()].sort(
    (one, other) => RANK_OF_SIGN[one.standing] - RANK_OF_SIGN[other.standing],
  );
  const because = [
    ...told.map(({ message, show }) => ({ text: message, show: show ?? null })),
    ...unlike.map(({ text, show }) => ({ text, show })),
  ];
  const common = { cause: cause.id, text: cause.text, because };
  if (told.length > 0 || unlike.some((sign) => sign.standing === 'found'))
    return { ...common, standing: 'your readings show it', measure: null };
  if (unlike.length > 0) return { ...common, standing: 'near', measure: null };
  if (cause.needs === null) return { ...common, standing: 'only looking tells', measure: null };
  const measure = stillToMeasure(cause.needs, facts);
  return { ...common, standing: measure === null ? 'not in your readings' : 'not measured yet', measure };
}

/** What would have to be measured; null when it is. */
function stillToMeasure(needs: NonNullable<Cause['needs']>, facts: Facts): string | null {
  const { rest, evaluation, play, thresholds, bench } = facts;
  switch (needs) {
    case 'nothing':
      return null;
    case 'rest':
      return rest.chambers.some(({ atLines }) => atLines.some((each) => each.state === 'unknown'))
        ? 'Let each stack down with the key out and read how far it sinks below the plug.'
        : null;
    case 'springs': {
      const open = rest.chambers.flatMap(({ spring }) =>
        spring !== null && spring.toSpare === null ? [1] : [],
      );
      return open.length > 0
        ? 'Squeeze a spring solid between the jaws, and read the depth to the cap and the drivers.'
        : null;
    }
    case 'end play':
      return play.play === null ? 'Push and pull the plug and read how far it comes forward.' : null;
    case 'offsets':
      return evaluation.lines.some((line) => line.verdict === 'unknown')
        ? 'Measure the plug, the cuts and the stacks.'
        : null;
    case 'nose':
      return bench.key?.tip?.noseHeight === undefined ? "Read the height of the key's nose." : null;
    case 'step':
      return thresholds.depthStep === null
        ? 'Say how far apart neighbouring depths of this system are, if it has steps.'
        : null;
  }
}
