/** One chamber as it stands with no key in: heights of all parts above the plug's axis, as far as they are known. mm. */
import type { Assembly, AssemblyChamber } from '../assembly/assembly.ts';
import { measureItems, restHeight } from '../assembly/build-stack.ts';
import { type LinePlace, linePlaces } from '../evaluate/split-place.ts';
import { measureCylinder } from '../measured/measured-cylinder.ts';
import type { MeasuredStack } from '../measured/measured-stack.ts';
import type { Bench } from '../measured/selection.ts';

export type RestSite = {
  readonly bench: Bench;
  readonly assembly: Assembly;
  readonly chamber: AssemblyChamber;
  readonly stack: MeasuredStack;
  readonly lines: readonly LinePlace[];
  /** Of the foot; null when nobody saw how far the stack sinks. */
  readonly footY: number | null;
  /** Index of the driver in the stack, -1 without one. */
  readonly driver: number;
  /** Index of the topmost part under the driver, -1 for an empty hole. */
  readonly under: number;
};

/** Lays out every open chamber, front to back. */
export function restSites(bench: Bench, assembly: Assembly): RestSite[] {
  const radius = assembly.lines[0]?.radius ?? 1;
  const measured = measureCylinder(bench.cylinder, bench.job.settings.numbering, bench.measuring);
  const lines = linePlaces(measured.lines);
  return assembly.chambers
    .filter((chamber) => !chamber.closed)
    .map((chamber): RestSite => {
      const items = bench.plan.stacks.find((each) => each.chamber === chamber.id)?.items ?? [];
      const stack = measureItems(bench, items, radius, chamber.holes[0]?.radius ?? radius / 5);
      const driver = stack.parts.findIndex((part) => part.role === 'driver');
      const solids = stack.parts.filter((part) => part.role !== 'spring').length;
      return {
        bench,
        assembly,
        chamber,
        stack,
        lines,
        footY: restHeight(bench, chamber, radius),
        driver,
        under: driver < 0 ? solids - 1 : driver - 1,
      };
    });
}

/** Height of a line's crest above the plug's axis. */
export function lineY({ assembly }: Pick<RestSite, 'assembly'>, line: LinePlace): number {
  return (assembly.lines[0]?.radius ?? 1) + line.above.value;
}

/** Height of a part's top above the foot; null when it is not known. */
export function topAboveFoot({ stack }: Pick<RestSite, 'stack'>, part: number): number | null {
  return part < 0 ? 0 : (stack.tops[part]?.value ?? null);
}

/** Height of a part's top with no key in; null when it is not known. */
export function restTop(site: RestSite, part: number): number | null {
  const top = topAboveFoot(site, part);
  return site.footY === null || top === null ? null : site.footY + top;
}
