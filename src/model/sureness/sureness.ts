/**
 * How sure, and what would make it surer: worked out when somebody asks, from the same readings and with the same doubt as the
 * verdicts. Pure; the same job gives the same answer. Lengths mm.
 */
import { known } from '../assert.ts';
import type { Assembly } from '../assembly/assembly.ts';
import { type ChamberSetting, judgedSplits, routesTo } from '../evaluate/chamber-result.ts';
import { chamberSettings } from '../evaluate/evaluate.ts';
import { drivingRoute } from '../evaluate/routes.ts';
import type { SplitAtLine } from '../evaluate/split-results.ts';
import { measureCylinder } from '../measured/measured-cylinder.ts';
import type { Bench } from '../measured/selection.ts';
import type { Id } from '../schema/leaf.ts';
import { type ChamberSplits, howSure, type HowSure } from './all-turn.ts';
import { type BracketPin, bracketTest } from './bracket-test.ts';
import { type Help, type OpenChamber, whatHelps } from './what-helps.ts';

export type Sureness = {
  readonly lines: readonly HowSure[];
  /** Best first; empty when every verdict stands. */
  readonly helps: readonly Help[];
  readonly brackets: readonly { readonly chamber: Id; readonly pins: readonly BracketPin[] }[];
};

/** Works out how sure the verdicts of a bench are. */
export function sureness(bench: Bench, assembly: Assembly): Sureness {
  const { job, cylinder, measuring } = bench;
  const measured = measureCylinder(cylinder, job.settings.numbering, measuring);
  const settings = chamberSettings(bench, assembly, measured);
  const chambers = settings.map(
    (setting): ChamberSplits => ({
      chamber: setting.chamber.id,
      splits: judgedSplits(setting),
    }),
  );
  const open = settings.flatMap((setting, i) => openChamber(setting, known(chambers[i], 'splits').splits));
  return {
    lines: howSure(
      chambers,
      measured.lines.map(({ id }) => id),
    ),
    helps: whatHelps(open, {
      unit: job.settings.unit,
      measuring,
      instrument: job.settings.instrument,
    }),
    brackets: chambers.flatMap(({ chamber, splits }, i) => {
      const first = splits[0];
      const height = lowerStackOf(known(settings[i], 'setting'), first);
      return first === undefined || height === null ? [] : [{ chamber, pins: bracketTest(height, first) }];
    }),
  };
}

function lowerStackOf({ stack }: ChamberSetting, first: SplitAtLine | undefined): number | null {
  if (first === undefined) return null;
  const at = stack.parts.findIndex(({ part }) => part.id === first.split.below);
  return stack.tops[at]?.value ?? null;
}

/** The first split of a chamber that waits for a smaller ±. */
function openChamber(setting: ChamberSetting, splits: readonly SplitAtLine[]): OpenChamber[] {
  const waiting = splits.find(({ split }) => split.verdict === "can't say yet");
  if (waiting === undefined) return [];
  const { chamber, bench, assembly } = setting;
  const { toLowest, toHighest, toLowestUncertainty, toHighestUncertainty } = waiting.judgement;
  const isLow = toLowest.value - toLowestUncertainty < toHighest.value - toHighestUncertainty;
  const driving = drivingRoute(routesTo(setting), bench.seating?.pinnedRoutes[chamber.id]);
  return [
    {
      chamber: chamber.id,
      number: chamber.number,
      distance: isLow ? toLowest : toHighest,
      needed: driving?.route === 'stands up by' ? [] : (driving?.needed.terms ?? []),
      stackHeight: lowerStackOf(setting, waiting) ?? 0,
      plugDiameter: 2 * (assembly.lines[0]?.radius ?? 0),
    },
  ];
}
