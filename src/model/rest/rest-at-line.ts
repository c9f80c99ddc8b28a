/** What stands across a line with no key in. Heights mm above the plug's axis; a recess is + below the line. */
import { windowTrouble } from '../evaluate/size-trouble.ts';
import { type LinePlace, splitPlaces } from '../evaluate/split-place.ts';
import { windowInputFor } from '../evaluate/window-input-for.ts';
import type { WindowOf } from '../evaluate/window-memo.ts';
import type { RestAtLine, RestState } from './rest-result.ts';
import { lineY, restTop, type RestSite } from './rest-site.ts';

/** Tells what a chamber does at a line with the key out. */
export function restAtLine(site: RestSite, line: LinePlace, windowOf: WindowOf): RestAtLine {
  const { stack, driver, under } = site;
  const at = lineY(site, line);
  const below = restTop(site, under);
  const recess = below === null ? null : at - below;
  const state = stateAt(site, line, at, windowOf);
  const top = driver < 0 ? null : restTop(site, driver);
  const isAcross = state === 'driver across' && recess !== null && top !== null;
  const isSprung = stack.parts.some((part) => part.role === 'spring');
  return {
    line: line.measured.id,
    state,
    recess,
    engaged: isAcross ? Math.min(recess, top - at) : null,
    locks: locks(state, isSprung),
  };
}

function locks(state: RestState, isSprung: boolean): boolean | null {
  switch (state) {
    case 'driver across':
      return isSprung;
    case 'bottom pin across':
    case 'master pin across':
      return true;
    case 'split at the line':
    case 'driver below':
    case 'no driver':
    case 'nothing in it':
      return false;
    case 'unknown':
      return null;
  }
}

function stateAt(site: RestSite, line: LinePlace, at: number, windowOf: WindowOf): RestState {
  const { stack, driver, footY } = site;
  if (stack.parts.length === 0) return 'nothing in it';
  if (footY === null) return 'unknown';
  for (const place of splitPlaces(stack)) {
    const input = windowInputFor({ place, line, ...site });
    if (windowTrouble(input, site.bench.job.settings.unit) !== null) return 'unknown';
    const window = windowOf(input);
    const offset = footY + place.top.value - at;
    if (offset >= window.lowest && offset <= window.highest) return 'split at the line';
  }
  for (const [i, part] of stack.parts.entries()) {
    if (part.role === 'spring') break;
    const top = restTop(site, i);
    if (top === null) return 'unknown';
    if (top <= at) continue;
    if (part.role === 'driver') return 'driver across';
    return part.role === 'masterPin' ? 'master pin across' : 'bottom pin across';
  }
  return driver < 0 ? 'no driver' : 'driver below';
}
