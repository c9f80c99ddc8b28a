/**
 * With no key in: what stands across each line, which drivers fit, what the springs do. Worked out when it is asked for,
 * not with every evaluation. mm, N, radians.
 */
import type { Assembly } from '../assembly/assembly.ts';
import { type WindowOf, windowMemo } from '../evaluate/window-memo.ts';
import type { Bench } from '../measured/selection.ts';
import { measureRoom } from './driver-room.ts';
import { restAtLine } from './rest-at-line.ts';
import type { RestResult, RestResults } from './rest-result.ts';
import { type RestSite, restSites } from './rest-site.ts';
import { type ThresholdsMm, thresholdsOf } from './thresholds.ts';
import { waistAtRest } from './waist.ts';

/** Looks at every open chamber with no key in. */
export function restResults(bench: Bench, assembly: Assembly): RestResults {
  const thresholds = thresholdsOf(bench.job);
  const windowOf = windowMemo();
  const chambers = restSites(bench, assembly).map((site) => restResult(site, thresholds, windowOf));
  return { chambers, commonDriver: commonDriver(chambers) };
}

function restResult(site: RestSite, thresholds: ThresholdsMm, windowOf: WindowOf): RestResult {
  const atLines = site.lines.map((line) => restAtLine(site, line, windowOf));
  const { driver, spring, missing } = measureRoom(site, atLines.at(-1), thresholds);
  const floor = site.assembly.key?.bottomY;
  return {
    chamber: site.chamber.id,
    number: site.chamber.number,
    restHeight: site.footY === null || floor === undefined ? null : site.footY - floor,
    atLines,
    driver,
    spring,
    waist: waistAtRest(site, atLines[0]),
    missing,
  };
}

/** Lengths that fit every chamber. */
function commonDriver(chambers: readonly RestResult[]): RestResults['commonDriver'] {
  let shortest = 0;
  let longest = Infinity;
  for (const { driver } of chambers) {
    if (driver.shortest === null || driver.longest === null) return null;
    shortest = Math.max(shortest, driver.shortest);
    longest = Math.min(longest, driver.longest);
  }
  return chambers.length > 0 && shortest <= longest ? { shortest, longest } : null;
}
