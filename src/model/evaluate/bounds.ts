/**
 * What was felt and tried at the bench, as bounds on the lower stack a chamber calls for. mm.
 *
 *   felt above the plug   the right stack is shorter        turned without driver      not higher than the window's top
 *   felt below            the right stack is longer         stopped without driver     higher than the window's top
 *   felt level            within what a thumb feels         turned with driver         inside the window
 *                                                           stopped with driver,
 *                                                           turned without             lower than the window
 */
import { measureItems } from '../assembly/build-stack.ts';
import { lowerStackEnd } from '../measured/measured-stack.ts';
import type { Bench } from '../measured/selection.ts';
import type { Item } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import { type Bounds, UNBOUNDED, within } from './tighten.ts';

/** mm. A thumb across the crest feels a step of about this much (.001 in). Common practice, no source. */
const FELT_STEP_MM = 0.0254;

type Window = { readonly lowest: number; readonly highest: number };

/** Bounds on the needed lower stack of a chamber. */
export function boundsOnNeeded(
  bench: Bench,
  chamber: Id,
  window: Window,
  lineRadius: number,
  holeRadius: number,
): Bounds {
  const height = (items: readonly Item[]): number | null => {
    const stack = measureItems(bench, items, lineRadius, holeRadius);
    return stack.tops[lowerStackEnd(stack)]?.value ?? null;
  };
  return within(feltBounds(bench, chamber, height), testBounds(bench, chamber, window, height));
}

type HeightOf = (items: readonly Item[]) => number | null;

function feltBounds(bench: Bench, chamber: Id, height: HeightOf): Bounds {
  let bounds = UNBOUNDED;
  for (const felt of bench.seating?.felt ?? []) {
    const stack = felt.chamber === chamber ? height(felt.items) : null;
    if (stack === null) continue;
    const least = felt.is === 'above' ? -Infinity : stack - FELT_STEP_MM;
    const most = felt.is === 'below' ? Infinity : stack + FELT_STEP_MM;
    bounds = within(bounds, { least, most });
  }
  return bounds;
}

function testBounds(bench: Bench, chamber: Id, window: Window, height: HeightOf): Bounds {
  const tests = testsOf(bench, chamber).flatMap(({ items, turned }) => {
    const stack = height(items);
    if (stack === null) return [];
    const kinds = items.map((item) => bench.parts.get(item.part)?.kind);
    const pins = kinds.filter((kind) => kind === 'pin').length;
    // With several splits or lines it may have been another one that let it turn: that bounds nothing here.
    if (pins > 2 || (pins > 1 && bench.cylinder.lines.length > 1)) return [];
    return [{ stack, turned, hasDriver: pins > 1 }];
  });
  let bounds = UNBOUNDED;
  for (const { stack, turned, hasDriver } of tests) {
    const highEnd = stack - window.highest;
    const lowEnd = stack - window.lowest;
    if (turned) {
      bounds = within(bounds, { least: highEnd, most: hasDriver ? lowEnd : Infinity });
    } else if (!hasDriver) {
      bounds = within(bounds, { least: -Infinity, most: highEnd });
    } else if (
      tests.some((other) => !other.hasDriver && other.turned && Math.abs(other.stack - stack) < 1e-6)
    ) {
      bounds = within(bounds, { least: lowEnd, most: Infinity });
    }
  }
  return bounds;
}

function testsOf(bench: Bench, chamber: Id): { items: readonly Item[]; turned: boolean }[] {
  return bench.job.benchResults.flatMap((result) => {
    if (result.key !== bench.key?.id) return [];
    const plan = bench.job.plans.find((each) => each.id === result.plan);
    if (plan?.cylinder !== bench.cylinder.id) return [];
    if (result.chamber === chamber) return [{ items: result.items, turned: result.turned }];
    if (result.chamber !== 'all' || !result.turned) return [];
    const items = plan.stacks.find((each) => each.chamber === chamber)?.items;
    return items === undefined ? [] : [{ items, turned: true }];
  });
}
