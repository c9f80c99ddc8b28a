/**
 * What the first picture tells beside the verdicts; the full list, with where to look, is in findings/all-findings.ts.
 * Code, severity, where, one sentence with numbers. Lengths mm.
 */
import type { Assembly } from '../assembly/assembly.ts';
import { eatenFlats } from '../contact/eaten-flats.ts';
import { thresholdsOf } from '../rest/thresholds.ts';
import type { Bench } from '../measured/selection.ts';
import { rolesOf } from '../measured/measured-stack.ts';
import { lengthOf } from '../measured/part-ends.ts';
import type { LengthValue } from '../schema/leaf.ts';
import type { ChamberResult, Finding } from './evaluation.ts';
import { sayAmount } from './say.ts';

/** mm. Readings of one quantity that differ by more than this are to be taken again (.0015 in). Common practice, no source. */
const SPREAD_MM = 0.0381;
/** mm. A plug whose readings differ by more than this is worn, or was measured over a hole (.002 in). Common practice, no source. */
const PLUG_SPREAD_MM = 0.0508;

/** Lists the findings of an evaluation. */
export function findings(bench: Bench, assembly: Assembly, chambers: readonly ChamberResult[]): Finding[] {
  return [
    ...spreadFindings(bench),
    ...eatenFindings(bench, assembly),
    ...flankFindings(bench, chambers),
    ...routeFindings(bench, chambers),
    ...thinPinFindings(bench, chambers),
  ];
}

function spreadOf(value: LengthValue | undefined): number {
  const counted = (value?.readings ?? [])
    .filter((reading) => reading.left !== 'out')
    .map((reading) => reading.value);
  return counted.length < 2 ? 0 : Math.max(...counted) - Math.min(...counted);
}

function spreadFindings({ job, cylinder, key }: Bench): Finding[] {
  const { unit, thresholds } = job.settings;
  const found: Finding[] = [];
  const plug = spreadOf(cylinder.bodies[0]?.outerDiameter);
  if (plug > lengthOf(thresholds?.plugSpread, PLUG_SPREAD_MM)) {
    found.push({
      code: 'plug-readings-spread',
      severity: 'warns',
      chambers: [],
      fields: ['plug diameter'],
      message: `The readings of the plug differ by ${sayAmount(plug, unit)}: worn, tapered, or measured over a hole.`,
    });
  }
  key?.cuts.forEach((cut) => {
    const spread = spreadOf(cut.rootDepth);
    if (spread <= lengthOf(thresholds?.readingsSpread, SPREAD_MM)) return;
    found.push({
      code: 'readings-spread',
      severity: 'warns',
      chambers: [],
      fields: ['root depth'],
      message: `The readings of one root depth differ by ${sayAmount(spread, unit)}: take them again, the smallest counts.`,
    });
  });
  return found;
}

function eatenFindings({ job }: Bench, { key }: Assembly): Finding[] {
  if (key === null) return [];
  const unit = job.settings.unit;
  return eatenFlats(key.shape).flatMap((eaten): Finding[] => {
    if (eaten.rootDrop <= 0) return [];
    return [
      {
        code: 'neighbour-eats-cut',
        severity: 'warns',
        chambers: [],
        fields: ['root depth'],
        message: `A neighbouring cut eats into this one: its root is ${sayAmount(eaten.rootDrop, unit)} deeper at the middle.`,
      },
    ];
  });
}

function flankFindings({ job }: Bench, chambers: readonly ChamberResult[]): Finding[] {
  const unit = job.settings.unit;
  return chambers.flatMap((chamber): Finding[] => {
    if (chamber.simpleDiffers === null || chamber.flankLift === null || chamber.flankLift < 0.00635)
      return [];
    return [
      {
        code: 'rides-on-sides',
        severity: 'notes',
        chambers: [chamber.chamber],
        fields: ['root flat', 'cut angle', 'cut position'],
        message: `Chamber ${chamber.number} stands ${sayAmount(chamber.flankLift, unit)} above the root of its cut. ${chamber.simpleDiffers}`,
      },
    ];
  });
}

function routeFindings({ job }: Bench, chambers: readonly ChamberResult[]): Finding[] {
  const unit = job.settings.unit;
  return chambers.flatMap((chamber) =>
    chamber.routes
      .filter((route) => route.disagrees)
      .map((route): Finding => {
        const by = route.needed - (chamber.neededLowerStack ?? route.needed);
        return {
          code: 'routes-disagree',
          severity: 'warns',
          chambers: [chamber.chamber],
          fields: [route.route],
          message: `Chamber ${chamber.number}: ${route.route} and ${chamber.drivingRoute ?? 'the other route'} differ by ${sayAmount(by, unit)}, more than their ± together. Check both.`,
        };
      }),
  );
}

function thinPinFindings({ job, plan, parts }: Bench, chambers: readonly ChamberResult[]): Finding[] {
  const { unit } = job.settings;
  const thinnest = thresholdsOf(job).thinnestMasterPin;
  return plan.stacks.flatMap((stack) => {
    const pins = stack.items.flatMap((item) => parts.get(item.part) ?? []);
    const roles = rolesOf(pins.map((part) => part.kind));
    const number = chambers.find((each) => each.chamber === stack.chamber)?.number;
    if (number === undefined) return [];
    return pins.flatMap((part, i): Finding[] => {
      const length = lengthOf(part.length, Infinity);
      if (roles[i] !== 'masterPin' || length >= thinnest) return [];
      return [
        {
          code: 'thin-master-pin',
          severity: 'warns',
          chambers: [stack.chamber],
          fields: ['master pin'],
          message: `The master pin of chamber ${number} is ${sayAmount(length, unit)} long: under about ${sayAmount(thinnest, unit)} they tilt or jam.`,
        },
      ];
    });
  });
}
