/**
 * Which drivers a chamber can take: long enough to stand across the line with no key in, short enough to leave its spring
 * room when the highest peak of the key passes. mm; heights above the plug's axis.
 *
 *    cap ---------------   capY
 *         | spring solid + margin |
 *         | longest driver        |
 *         |  peak: highest that the top under the driver gets on the key's way
 *    line -------------------------- engagement above and below it at rest
 *         |  recess: how far that top lies below the line with no key in
 */
import { highestOn } from '../contact/lift-curve.ts';
import { chamberLift } from '../evaluate/insertion.ts';
import { measureSpring } from './measured-spring.ts';
import type { DriverRoom, RestAtLine, SpringState } from './rest-result.ts';
import { restTop, type RestSite, topAboveFoot } from './rest-site.ts';
import { springForce } from './spring-formulas.ts';
import type { ThresholdsMm } from './thresholds.ts';

export type Room = {
  readonly driver: DriverRoom;
  readonly spring: SpringState | null;
  readonly missing: readonly string[];
};

/** Measures the room of one chamber. */
export function measureRoom(site: RestSite, outer: RestAtLine | undefined, thresholds: ThresholdsMm): Room {
  const { stack, driver } = site;
  const missing: string[] = [];
  const spring = springOf(site);
  const peak = peakOf(site, missing);
  const cap = capOf(site, missing);
  const length = driver < 0 ? null : (stack.parts[driver]?.length?.value ?? null);
  if (driver >= 0 && length === null) missing.push('the length of the driver');
  if (site.footY === null && stack.parts.length > 0) missing.push('how far the stack sinks with the key out');
  missing.push(...(spring === null ? [] : measureSpring(spring).missing));
  const solid = spring === null ? null : measureSpring(spring).solid;
  const shortest = outer?.recess == null ? null : outer.recess + thresholds.driverEngagement;
  const over = peak === null || cap === null ? null : cap - peak.height;
  const longest = over === null || solid === null ? null : over - solid - thresholds.springMargin;
  return {
    driver: {
      length,
      shortest,
      longest,
      verdict: verdictOf(driver, length, shortest, longest),
      peak,
      roomLeft: over === null || length === null ? null : over - length,
    },
    spring: spring === null ? null : springState(site, spring, { cap, peak, length }),
    missing,
  };
}

function verdictOf(
  driver: number,
  length: number | null,
  shortest: number | null,
  longest: number | null,
): DriverRoom['verdict'] {
  if (shortest !== null && longest !== null && shortest > longest) return 'none fits';
  if (driver < 0) return 'no driver';
  if (length === null) return 'unknown';
  if (shortest !== null && length < shortest - SAME_MM) return 'too short';
  if (longest !== null && length > longest + SAME_MM) return 'too long';
  return shortest === null || longest === null ? 'unknown' : 'fits';
}

/** mm. Lengths closer than this are the same: rounding must not decide. */
const SAME_MM = 1e-9;

function springOf({ stack }: RestSite) {
  return stack.parts.find((part) => part.role === 'spring')?.part ?? null;
}

/** The highest that the top under the driver gets between key out and key home. */
function peakOf(site: RestSite, missing: string[]): DriverRoom['peak'] {
  const { assembly, bench, chamber, under } = site;
  const top = topAboveFoot(site, under);
  if (assembly.key === null || bench.key === null) {
    missing.push('a key');
    return null;
  }
  if (bench.key.bladeHeight === undefined) {
    missing.push('the height of the blade');
    return null;
  }
  const lift = chamberLift(assembly, chamber);
  if (lift === null || top === null) return null;
  const highest = highestOn(lift);
  return { height: assembly.key.bottomY + highest.height + top, travel: highest.travel };
}

function capOf({ bench, chamber }: RestSite, missing: string[]): number | null {
  const entered = bench.cylinder.chambers.find((each) => each.id === chamber.id)?.capDepth;
  if (entered !== undefined) return chamber.capY;
  missing.push('the depth from the bore to the underside of the cap');
  return null;
}

function springState(
  site: RestSite,
  part: NonNullable<ReturnType<typeof springOf>>,
  { cap, peak, length }: { cap: number | null; peak: DriverRoom['peak']; length: number | null },
): SpringState {
  const { solid, free, rate } = measureSpring(part);
  const under = restTop(site, site.under);
  const stands = site.driver < 0 ? 0 : length;
  const atRest = cap === null || under === null || stands === null ? null : cap - under - stands;
  const atWorst = cap === null || peak === null || stands === null ? null : cap - peak.height - stands;
  const force = (at: number | null) =>
    at === null || rate === null || free === null ? null : springForce(rate, free, at);
  return {
    solid,
    free,
    rate,
    atRest,
    atWorst,
    worstTravel: peak?.travel ?? null,
    forceAtRest: force(atRest),
    forceAtWorst: force(atWorst),
    toSpare: atWorst === null || solid === null ? null : atWorst - solid,
    isLooseAtRest: atRest === null || free === null ? null : free < atRest,
  };
}
