/**
 * Everything the model answers about one cylinder with one key and one plan, as text: what is judged, what the parts do with no
 * key and on the key's way, what is found and why, how sure it is, how to put it together. mm, N, rad.
 */
import type { Assembly } from '../../src/model/assembly/assembly.ts';
import { assemble } from '../../src/model/assembly/build-assembly.ts';
import { poseAt } from '../../src/model/assembly/pose-at.ts';
import { diagnose } from '../../src/model/diagnosis/diagnose.ts';
import { SYMPTOMS } from '../../src/model/diagnosis/symptoms-table.ts';
import { evaluateBench } from '../../src/model/evaluate/evaluate.ts';
import type { Show } from '../../src/model/evaluate/evaluation.ts';
import { allFindings } from '../../src/model/findings/all-findings.ts';
import { gatherFacts } from '../../src/model/findings/facts.ts';
import { loadSheet } from '../../src/model/load-sheet/load-sheet.ts';
import { layOut, type Selection } from '../../src/model/measured/selection.ts';
import { commonMeasures, pinningRows } from '../../src/model/note/pinning-rows.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { shareableView } from '../../src/model/sharing/shareable-view.ts';
import { standInBench } from '../../src/model/sharing/stand-in-bench.ts';
import { sureness } from '../../src/model/sureness/sureness.ts';
import { asRadians } from '../../src/model/radians.ts';
import { type TurnAttempt, tryTurn } from '../../src/model/turning/turn-attempt.ts';

/** Asks for everything. */
export function everyAnswer(job: Job, selection: Selection): Record<string, unknown> {
  const { bench, assembly, shared } = lookAt(job, selection);
  const state = shared.states[0];
  return {
    ...quickAnswers(job, selection),
    sureness: sureness(bench, assembly),
    standIn: state && standInBench(job, bench.cylinder, state, bench.key !== null),
  };
}

/** Asks for what takes a moment only: neither for thousands of draws nor for a cylinder to stand in. */
export function quickAnswers(job: Job, selection: Selection): Record<string, unknown> {
  const { bench, assembly, evaluation, facts, shared } = lookAt(job, selection);
  const { rest, way, play, loading, thresholds } = facts;
  const findings = allFindings(facts);
  return {
    judged: { ...evaluation, chambers: undefined, findings: undefined },
    chambers: evaluation.chambers.map(({ splits, ...chamber }) => ({ ...chamber, splits })),
    heights: travelsOf(assembly).map((travel) => ({
      travel,
      stacks: poseAt(assembly, { travel }).stacks.map(({ chamber, footY, heldBy, crushedBy }) => ({
        chamber,
        footY,
        heldBy,
        crushedBy,
      })),
    })),
    rest,
    way,
    play,
    loading,
    thresholds,
    findings,
    turn: turnText(tryTurn(bench, assembly, evaluation)),
    // What it comes from is written above: the findings.
    diagnosis: SYMPTOMS.flatMap((symptom) =>
      diagnose(symptom, facts, findings).map(({ cause, standing, because, measure }) => ({
        id: `${symptom.id}, ${cause}`,
        standing,
        because: because.map(({ text, show }) => `${text} ${sayShow(show)}`),
        measure,
      })),
    ),
    loadSheet: loadSheet(facts),
    pinning: pinningRows(bench, evaluation),
    common: commonMeasures(bench),
    shared,
  };
}

function lookAt(job: Job, selection: Selection) {
  const bench = layOut(job, selection);
  const assembly = assemble(bench);
  const evaluation = evaluateBench(bench, assembly);
  const facts = gatherFacts(bench, assembly, evaluation);
  const shared = shareableView(job, bench.cylinder, bench.key, [{ plan: bench.plan, evaluation }]);
  return { bench, assembly, evaluation, facts, shared };
}

function travelsOf({ key }: Assembly): number[] {
  return key === null ? [] : [key.outTravel, key.seatedTravel + 4.2, key.seatedTravel + 1, key.seatedTravel];
}

function sayShow(show: Show | null): string {
  return show === null
    ? ''
    : `(${show.view}, chamber ${show.chamber ?? 'none'}, ${show.travel.toFixed(4)} out)`;
}

function turnText(turn: TurnAttempt | null): unknown {
  if (turn === null) return null;
  const { parting, driverFloors, ...said } = turn;
  const floors = [0.02, 0.3].map((angle) => ({ angle, floors: driverFloors(asRadians(angle)) }));
  return { ...said, parting, floors };
}
