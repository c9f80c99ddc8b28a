/** Readings that do not agree with each other, or could not be taken like that. mm. */
import { jawFalseHeight } from '../contact/jaw-false-height.ts';
import { sayAmount, sayLength } from '../evaluate/say.ts';
import type { Finding } from '../evaluate/evaluation.ts';
import { lengthOf } from '../measured/part-ends.ts';
import type { LengthValue } from '../schema/leaf.ts';
import { chamberOver, type Facts, found, numberOf, SAID_FROM_MM } from './facts.ts';

/** Lists what is wrong with the readings themselves. */
export function readingFindings(facts: Facts): Finding[] {
  return [
    ...plugSpread(facts),
    ...cutSpreads(facts),
    ...wideJaws(facts),
    ...routesThatDiffer(facts),
    ...sameErrorEverywhere(facts),
  ];
}

function spreadOf(value: LengthValue | undefined): number {
  const counted = (value?.readings ?? []).filter((reading) => reading.left !== 'out');
  const lengths = counted.map((reading) => reading.value);
  return lengths.length < 2 ? 0 : Math.max(...lengths) - Math.min(...lengths);
}

function plugSpread(facts: Facts): Finding[] {
  const { bench, thresholds, unit } = facts;
  const spread = spreadOf(bench.cylinder.bodies[0]?.outerDiameter);
  if (spread <= thresholds.plugSpread) return [];
  const message = `The readings across the plug differ by ${sayAmount(spread, unit)}: the plug is worn or tapered, or a jaw lay over a hole.`;
  return [
    found(facts, 'plug-readings-spread', 'warns', { fields: ['plug diameter'], message, view: 'readings' }),
  ];
}

function cutSpreads(facts: Facts): Finding[] {
  const { bench, thresholds, unit } = facts;
  return (bench.key?.cuts ?? []).flatMap((cut): Finding[] => {
    const spread = spreadOf(cut.rootDepth);
    if (spread <= thresholds.readingsSpread) return [];
    const message = `${underWhich(facts, cut.id)}: its readings differ by ${sayAmount(spread, unit)}. Take them again; the smallest counts.`;
    return [
      found(facts, 'readings-spread', 'warns', {
        chambers: chambersOver(facts, cut.id),
        fields: ['root depth'],
        message,
        view: 'readings',
      }),
    ];
  });
}

function wideJaws(facts: Facts): Finding[] {
  const { bench, assembly, unit } = facts;
  return (assembly.key?.shape.cuts ?? []).flatMap((cut): Finding[] => {
    const read = bench.key?.cuts.find((each) => each.id === cut.id)?.rootDepth?.readings[0];
    const tool = bench.job.instruments.find((each) => each.id === read?.instrument);
    if (tool?.jawEdge === undefined) return [];
    const jaw = lengthOf(tool.jawEdge, 0);
    const tooHigh = jawFalseHeight(jaw, cut);
    if (tooHigh <= SAID_FROM_MM) return [];
    const message =
      `${underWhich(facts, cut.id)}: the jaw is ${sayLength(jaw, unit)} wide, the root flat ${sayLength(cut.rootFlat, unit)}. ` +
      `The jaw does not reach the root; the reading is ${sayAmount(tooHigh, unit)} too shallow, and the pin comes out too short.`;
    return [
      found(facts, 'jaw-wider-than-flat', 'warns', {
        chambers: chambersOver(facts, cut.id),
        fields: ['root depth', 'root flat'],
        message,
        view: 'readings',
      }),
    ];
  });
}

function routesThatDiffer(facts: Facts): Finding[] {
  const { evaluation, unit } = facts;
  return evaluation.chambers.flatMap((chamber) =>
    chamber.routes
      .filter((route) => route.disagrees)
      .map((route): Finding => {
        const by = route.needed - (chamber.neededLowerStack ?? route.needed);
        const message = `Chamber ${chamber.number}: ${route.route} and ${chamber.drivingRoute ?? 'the other way'} differ by ${sayAmount(by, unit)}, more than their ± together. One of the readings is wrong.`;
        return found(facts, 'routes-disagree', 'warns', {
          chambers: [chamber.chamber],
          fields: [route.route],
          message,
          view: 'readings',
        });
      }),
  );
}

function sameErrorEverywhere(facts: Facts): Finding[] {
  const { commonError, chambers } = facts.evaluation;
  if (commonError === null) return [];
  return [
    found(facts, 'same-error-everywhere', 'warns', {
      chambers: chambers.map((each) => each.chamber),
      fields: ['plug diameter', 'metal under the key'],
      message: commonError.message,
      view: 'readings',
    }),
  ];
}

function chambersOver(facts: Facts, cut: string): string[] {
  const at = facts.assembly.key?.shape.cuts.find((each) => each.id === cut)?.at;
  const chamber = at === undefined ? undefined : chamberOver(facts, at);
  return chamber === undefined ? [] : [chamber.id];
}

function underWhich(facts: Facts, cut: string): string {
  const [chamber] = chambersOver(facts, cut);
  return chamber === undefined ? 'One of the cuts' : `Cut under chamber ${numberOf(facts, chamber)}`;
}
