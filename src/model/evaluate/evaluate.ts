/**
 * The one evaluation behind the screen, the file and the tests: a job, and which cylinder, key and plan to look at.
 * Pure: the same job gives the same numbers. mm, radians; frame and signs as in docs/model.md.
 */
import { known } from '../assert.ts';
import type { Assembly } from '../assembly/assembly.ts';
import { assemble } from '../assembly/build-assembly.ts';
import { measureItems } from '../assembly/build-stack.ts';
import type { Estimate } from '../estimate/estimate.ts';
import { type MeasuredCylinder, measureCylinder } from '../measured/measured-cylinder.ts';
import { measureKey } from '../measured/measured-key.ts';
import { measurePair } from '../measured/measured-pair.ts';
import { lowerStackEnd, type MeasuredStack } from '../measured/measured-stack.ts';
import { lengthOf } from '../measured/part-ends.ts';
import { type Bench, layOut, type Selection } from '../measured/selection.ts';
import { standInStack } from '../measured/stand-in.ts';
import type { Job } from '../schema/job-schema.ts';
import { type ChamberSetting, evaluateChamber } from './chamber-result.ts';
import { findCommonError } from './common-error.ts';
import { estimateContact, type KeyReading, readKey } from './contact-estimate.ts';
import type { ChamberResult, Evaluation, LineResult } from './evaluation.ts';
import { findings } from './findings.ts';
import { insertionResults } from './insertion.ts';
import { lineResult } from './line-results.ts';
import { effectiveDiameter, type KnownStack } from './routes.ts';
import { linePlaces } from './split-place.ts';
import { windowMemo } from './window-memo.ts';

/** Evaluates one cylinder with one key and one plan. The selection must exist in the job. */
export function evaluate(job: Job, selection: Selection): Evaluation {
  const bench = layOut(job, selection);
  return evaluateBench(bench, assemble(bench));
}

/** Evaluates what is laid out, with its assembly at hand. */
export function evaluateBench(bench: Bench, assembly: Assembly): Evaluation {
  const { job, cylinder } = bench;
  const measured = measureCylinder(cylinder, job.settings.numbering, bench.measuring);
  const chambers = chamberSettings(bench, assembly, measured).map(evaluateChamber);
  const lineResults = measured.lines.map((line) => lineResult(line.id, chambers));
  return {
    units: { length: 'mm', angle: 'rad' },
    cylinder: cylinder.id,
    key: bench.key?.id ?? null,
    plan: bench.plan.id,
    lines: lineResults,
    chambers,
    commonError: commonError(bench, chambers, lineResults),
    insertion: insertionResults(assembly),
    findings: findings(bench, assembly, chambers),
  };
}

/** What each open chamber is evaluated from. */
export function chamberSettings(
  bench: Bench,
  assembly: Assembly,
  measured: MeasuredCylinder,
): ChamberSetting[] {
  const { measuring } = bench;
  const radius = assembly.lines[0]?.radius ?? 1;
  const keyReadings = readKeys(bench, assembly, radius);
  const pair = measurePair(bench.seating, bench.key?.id ?? '', measured.plugDiameter, measuring);
  const lines = linePlaces(measured.lines);
  const common = { bench, assembly, lines, pair, keyReadings, windowOf: windowMemo() };
  const effective =
    keyReadings[0] === undefined ? null : knownSet(bench, assembly, measured, keyReadings[0], radius);
  return assembly.chambers.flatMap((chamber, i): ChamberSetting[] => {
    if (chamber.closed) return [];
    return [
      {
        ...common,
        chamber,
        measured: known(measured.chambers[i], 'measured chamber'),
        stack: stackIn(bench, chamber.id, radius, chamber.holes[0]?.radius ?? 1),
        effectiveDiameter: effective,
      },
    ];
  });
}

function readKeys(bench: Bench, assembly: Assembly, radius: number): KeyReading[] {
  if (bench.key === null) return [];
  const last = assembly.chambers.at(-1)?.z ?? 2 * radius;
  const key = measureKey(bench.key, bench.seating, 2 * radius, last, bench.measuring);
  const readings: KeyReading[] = [];
  if (key.cuts.some((cut) => cut.rootDepth !== null)) readings.push(readKey(key, 'rootDepth'));
  if (key.cuts.some((cut) => cut.overBall !== null)) readings.push(readKey(key, 'overBall'));
  return readings;
}

function stackIn(bench: Bench, chamber: string, radius: number, holeRadius: number): MeasuredStack {
  const items = bench.plan.stacks.find((each) => each.chamber === chamber)?.items ?? [];
  if (items.length === 0) return standInStack(bench, radius, holeRadius);
  return measureItems(bench, items, radius, holeRadius);
}

/** The effective diameter from the sets that are known to have worked with this key in this cylinder. */
function knownSet(
  bench: Bench,
  assembly: Assembly,
  measured: MeasuredCylinder,
  reading: KeyReading,
  radius: number,
): Estimate | null {
  const known: KnownStack[] = [];
  for (const id of bench.seating?.knownSets ?? []) {
    const plan = bench.job.plans.find((each) => each.id === id && each.cylinder === bench.cylinder.id);
    for (const { chamber: chamberId, items } of plan?.stacks ?? []) {
      const at = assembly.chambers.findIndex((each) => each.id === chamberId);
      const chamber = measured.chambers[at];
      if (chamber === undefined || items.length === 0) continue;
      const stack = measureItems(bench, items, radius, assembly.chambers[at]?.holes[0]?.radius ?? 1);
      const foot = stack.parts[0];
      const height = stack.tops[lowerStackEnd(stack)];
      const contact = foot === undefined ? null : estimateContact(reading, chamber.position, foot);
      if (contact !== null && height != null) known.push({ contact: contact.height, stack: height });
    }
  }
  return effectiveDiameter(known, lengthOf(bench.job.settings.shopRule, 0.0254), bench.key?.id ?? '');
}

/** The same error at the line it is smallest at, judged by the splits that matter there. */
function commonError(
  bench: Bench,
  chambers: readonly ChamberResult[],
  lines: readonly LineResult[],
): Evaluation['commonError'] {
  const settings = bench.job.settings;
  const found = lines.map(({ line, verdict }) => {
    const offsets = chambers.flatMap((chamber) => {
      const best = chamber.verdicts.find((each) => each.line === line)?.split;
      const split = best == null ? undefined : chamber.splits[best];
      return split === undefined ? [] : [split.offset];
    });
    return {
      turns: verdict === 'turns',
      error: findCommonError(offsets, lengthOf(settings.shopRule, 0.0254), settings.unit),
    };
  });
  // A line that turns without such an error says that the readings are right: the other line only lies elsewhere.
  if (found.some(({ turns, error }) => turns && error === null)) return null;
  const errors = found.flatMap(({ error }) => (error === null ? [] : [error]));
  return errors.sort((one, other) => Math.abs(one.offset) - Math.abs(other.offset))[0] ?? null;
}
