/** The force of all springs together while the key goes in. Travel mm, force N. */
import { type LiftCurve, liftAt, liftLine } from '../contact/lift-curve.ts';
import type { RestResults } from '../rest/rest-result.ts';
import { springForce } from '../rest/spring-formulas.ts';
import type { ForceAt } from './way-result.ts';

/** mm. The curve of a lift is drawn this closely. */
const CLOSELY_MM = 0.002;

/** Adds up the springs along the way, key out first; empty while one of them is not known. */
export function springForces(rest: RestResults, lifts: ReadonlyMap<string, LiftCurve>): ForceAt[] {
  const springs = rest.chambers.flatMap(({ chamber, spring, driver }) => {
    const lift = lifts.get(chamber);
    if (spring === null || lift === undefined) return [];
    const { atWorst, free, rate } = spring;
    if (atWorst === null || free === null || rate === null || driver.peak === null) return [null];
    const top = liftAt(lift, driver.peak.travel);
    return [{ lift, free, rate, shortest: atWorst, top }];
  });
  if (springs.length === 0 || springs.includes(null)) return [];
  const known = springs.filter((each) => each !== null);
  const stops = known.flatMap(({ lift }) => liftLine(lift, CLOSELY_MM).map(({ travel }) => travel));
  const travels = [...new Set(stops)].sort((one, other) => other - one);
  return travels.map((travel): ForceAt => {
    const force = known.reduce(
      (sum, { lift, free, rate, shortest, top }) =>
        sum + springForce(rate, free, shortest + top - liftAt(lift, travel)),
      0,
    );
    return { travel, force };
  });
}
