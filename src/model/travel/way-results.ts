/**
 * The key going in and coming out, for every chamber: the steepest sides, the nose, the peaks that hold the key while it is
 * turned, the springs. Worked out when it is asked for. Frame and signs as in assembly.ts; mm, N, radians.
 */
import type { Assembly, AssemblyKey, AssemblyStack } from '../assembly/assembly.ts';
import { contactAt } from '../contact/contact-at.ts';
import { buildFoot, footDrop } from '../contact/foot.ts';
import { highestOn, type LiftCurve, type Steepest, steepestOn } from '../contact/lift-curve.ts';
import { chamberLift } from '../evaluate/insertion.ts';
import { lowerStackEnd } from '../measured/measured-stack.ts';
import type { Bench } from '../measured/selection.ts';
import type { RestResults } from '../rest/rest-result.ts';
import { type RestSite, restSites, topAboveFoot } from '../rest/rest-site.ts';
import type { Radians } from '../radians.ts';
import { steepestClimbable } from './climbable.ts';
import { springForces } from './spring-forces.ts';
import type { ChamberWay, Climb, WayResults } from './way-result.ts';

/** Looks at the whole way; no chambers without a key. */
export function wayResults(bench: Bench, assembly: Assembly, rest: RestResults): WayResults {
  const { key } = assembly;
  if (key === null) return { chambers: [], keyIsHeld: null, springs: [], mostForce: null };
  const lifts = new Map<string, LiftCurve>();
  const chambers = restSites(bench, assembly).flatMap((site): ChamberWay[] => {
    const stack = assembly.stacks.find((each) => each.chamber === site.chamber.id);
    const lift = chamberLift(assembly, site.chamber);
    if (lift === null || stack === undefined) return [];
    lifts.set(site.chamber.id, lift);
    return [chamberWay({ site, key, stack, lift })];
  });
  const known = chambers.flatMap((each) => (each.holdsKey === null ? [] : [each.holdsKey]));
  const springs = springForces(rest, lifts);
  return {
    chambers,
    keyIsHeld: known.length === 0 ? null : known.some((each) => each > 0),
    springs,
    mostForce: springs.reduce<WayResults['mostForce']>(
      (most, each) => (most === null || each.force > most.force ? each : most),
      null,
    ),
  };
}

type Passing = {
  readonly site: RestSite;
  readonly key: AssemblyKey;
  readonly stack: AssemblyStack;
  readonly lift: LiftCurve;
};

function chamberWay(passing: Passing): ChamberWay {
  const { site, key, stack, lift } = passing;
  const { bench, chamber, footY } = site;
  const steepest = climbableBy(bench, stack);
  const { goingIn, comingOut } = steepestOn(lift);
  const highest = highestOn(lift);
  const isRestKnown = footY !== null;
  const seated = seatedContact(passing);
  return {
    chamber: chamber.id,
    number: chamber.number,
    goingIn: climb(goingIn, steepest),
    comingOut: climb(comingOut, steepest),
    steepest,
    noseAboveFoot: isRestKnown && noseIsKnown(bench) ? key.shape.tipHeight - lift.rest : null,
    highest: highest.height,
    highestAt: highest.travel,
    hangsBy: isRestKnown && Number.isFinite(seated) ? above(lift.rest - seated) : 0,
    isReached: seated > -Infinity,
    holdsKey: holdsKey(passing, highest.height),
  };
}

/** mm. A contact this close to the rest is the rest. */
const SAME_MM = 1e-6;

function above(by: number): number {
  return by > SAME_MM ? by : 0;
}

function noseIsKnown({ key }: Bench): boolean {
  return key?.tip?.noseHeight !== undefined;
}

function climb(found: Steepest | undefined, steepest: Radians): Climb | null {
  if (found === undefined) return null;
  const { kind } = found.from;
  const from = kind === 'flank' ? 'side' : kind;
  return { angle: found.angle, travel: found.travel, from, canClimb: found.angle < steepest };
}

/** A ball is held at its middle: nothing hangs over. A pin leans on what its straight sides hold. */
function climbableBy(bench: Bench, { parts }: AssemblyStack): Radians {
  const { friction } = bench.job.settings;
  const foot = parts[0];
  if (foot === undefined || foot.role === 'ball')
    return steepestClimbable({ friction, overhang: 0, guided: 1 });
  const overhang = footDrop(buildFoot(foot.lower, foot.radius), foot.radius);
  return steepestClimbable({ friction, overhang, guided: Math.max(0, foot.length - overhang) });
}

/** With the key fully in; -Infinity where there is no key under the foot. */
function seatedContact({ key, stack, site }: Passing): number {
  const foot = stack.parts[0];
  if (foot === undefined) return Infinity;
  return contactAt(key.profile, buildFoot(foot.lower, foot.radius), site.chamber.z, key.seatedTravel).height;
}

/** With the plug turned, the bore closes the chamber: a peak that would lift the lower stack above it holds the key. */
function holdsKey({ site, key }: Passing, highest: number): number | null {
  const line = site.assembly.lines[0];
  const end = lowerStackEnd(site.stack);
  const top = end < 0 ? null : topAboveFoot(site, end);
  if (line === undefined || top === null) return null;
  return key.bottomY + highest + top - (line.radius + line.clearance);
}
