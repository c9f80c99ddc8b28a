/** Everything the findings are drawn from, worked out once. Lengths mm. */
import type { Assembly, AssemblyChamber, AssemblyStack } from '../assembly/assembly.ts';
import type { Evaluation, Finding, Show } from '../evaluate/evaluation.ts';
import type { Bench } from '../measured/selection.ts';
import type { RestResults } from '../rest/rest-result.ts';
import { restResults } from '../rest/rest-results.ts';
import { type RestSite, restSites } from '../rest/rest-site.ts';
import { type ThresholdsMm, thresholdsOf } from '../rest/thresholds.ts';
import type { Id } from '../schema/leaf.ts';
import { type EndPlay, endPlay, type Loading, loading } from '../travel/passing.ts';
import type { WayResults } from '../travel/way-result.ts';
import { wayResults } from '../travel/way-results.ts';
import type { JobUnit } from '../units/length-unit.ts';
import type { FindingCode } from './finding-codes.ts';

export type Facts = {
  readonly bench: Bench;
  readonly assembly: Assembly;
  readonly evaluation: Evaluation;
  readonly sites: readonly RestSite[];
  readonly rest: RestResults;
  readonly way: WayResults;
  readonly play: EndPlay;
  readonly loading: readonly Loading[];
  readonly thresholds: ThresholdsMm;
  readonly unit: JobUnit;
};

/** Gathers the facts. */
export function gatherFacts(bench: Bench, assembly: Assembly, evaluation: Evaluation): Facts {
  const rest = restResults(bench, assembly);
  return {
    bench,
    assembly,
    evaluation,
    sites: restSites(bench, assembly),
    rest,
    way: wayResults(bench, assembly, rest),
    play: endPlay(bench, assembly),
    loading: loading(assembly),
    thresholds: thresholdsOf(bench.job),
    unit: bench.job.settings.unit,
  };
}

/** mm. Differences below this are not worth a word (a quarter of a thousandth). */
export const SAID_FROM_MM = 0.00635;

export function homeTravel({ assembly }: Pick<Facts, 'assembly'>): number {
  return assembly.key?.seatedTravel ?? 0;
}

export function outTravel({ assembly }: Pick<Facts, 'assembly'>): number {
  return assembly.key?.outTravel ?? 0;
}

export function numberOf({ assembly }: Pick<Facts, 'assembly'>, chamber: Id): number {
  return assembly.chambers.find((each) => each.id === chamber)?.number ?? 0;
}

export function stackOf({ assembly }: Pick<Facts, 'assembly'>, chamber: Id): AssemblyStack | undefined {
  return assembly.stacks.find((each) => each.chamber === chamber);
}

/** The chamber nearest over a place of the seated key; undefined for a cylinder without chambers. */
export function chamberOver(facts: Pick<Facts, 'assembly'>, s: number): AssemblyChamber | undefined {
  const z = s - homeTravel(facts);
  return facts.assembly.chambers.reduce<AssemblyChamber | undefined>(
    (best, each) => (best && Math.abs(best.z - z) <= Math.abs(each.z - z) ? best : each),
    undefined,
  );
}

type Told = {
  readonly chambers?: readonly Id[];
  readonly fields?: readonly string[];
  readonly message: string;
  /** With the key fully in unless told otherwise. */
  readonly travel?: number;
  readonly view: Show['view'];
};

/** A finding with where to look: its first chamber. */
export function found(facts: Facts, code: FindingCode, severity: Finding['severity'], told: Told): Finding {
  const { chambers = [], fields = [], message, travel = homeTravel(facts), view } = told;
  return {
    code,
    severity,
    chambers,
    fields,
    message,
    show: { travel, chamber: chambers[0] ?? null, view },
  };
}

/** "Chamber 2: its ..." */
export function inChamber(facts: Facts, chamber: Id, text: string): string {
  return `Chamber ${numberOf(facts, chamber)}: ${text}`;
}
