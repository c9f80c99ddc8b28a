/**
 * The narrowed middle of a spool (or serrated, mushroom) driver at rest: where it stands against the line, and how far the
 * plug can be turned to and fro. The flanges limit a spool's tilt, so the real slack is less. mm, radians.
 */
import { lengthOf } from '../measured/part-ends.ts';
import { asRadians } from '../radians.ts';
import type { RestAtLine, WaistState } from './rest-result.ts';
import type { RestSite } from './rest-site.ts';

/** Measures the waist of a chamber's driver; null for a plain one, or when nobody saw how far the stack sinks. */
export function waistAtRest(site: RestSite, inner: RestAtLine | undefined): WaistState | null {
  const driver = site.stack.parts[site.driver];
  const waist = driver?.part.waist;
  const recess = inner?.recess;
  if (driver === undefined || waist === undefined || recess == null) return null;
  const length = driver.length?.value;
  const below = lengthOf(waist.from, 0);
  const along = lengthOf(waist.length, 0);
  if (driver.flipped && length === undefined) return null;
  const from = driver.flipped ? (length ?? 0) - below - along : below;
  const across = lengthOf(waist.diameter, 2 * driver.radius.value);
  return {
    kind: waist.kind,
    from: from - recess,
    to: from + along - recess,
    isAtLine: from < recess && recess < from + along,
    slack: slackOf(site, across),
    plainSlack: slackOf(site, 2 * driver.radius.value),
  };
}

/** How far the plug can turn before its hole and the next body's both hold what is so far across. */
function slackOf({ chamber, assembly }: RestSite, across: number) {
  const [plug, next] = chamber.holes;
  const inPlug = 2 * (plug?.radius ?? 0) - across;
  const inNext = 2 * (next?.radius ?? plug?.radius ?? 0) - across;
  const radius = assembly.lines[0]?.radius ?? 1;
  return asRadians(Math.max(0, inPlug + inNext) / 2 / radius);
}
