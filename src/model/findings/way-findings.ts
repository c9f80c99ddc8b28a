/** What stops the key on its way, holds it where it should not, or lets it go where it should be held. mm, radians. */
import type { Finding } from '../evaluate/evaluation.ts';
import { sayAmount, sayLength } from '../evaluate/say.ts';
import { toDegrees } from '../radians.ts';
import type { ChamberWay, Climb } from '../travel/way-result.ts';
import { type Facts, found, inChamber } from './facts.ts';

/** Lists what is in the key's way. */
export function wayFindings(facts: Facts): Finding[] {
  return [
    ...facts.way.chambers.flatMap((way) => [
      ...steep(facts, way, 'goingIn'),
      ...steep(facts, way, 'comingOut'),
    ]),
    ...pullsOut(facts),
    ...catches(facts),
    ...looseCylinder(facts),
  ];
}

function steep(facts: Facts, way: ChamberWay, which: 'goingIn' | 'comingOut'): Finding[] {
  const climb = way[which];
  if (climb === null || climb.canClimb) return [];
  const isNose = which === 'goingIn' && climb.from === 'tip';
  const text = isNose ? noseText(facts, way, climb) : sideText(way, climb, which);
  return [
    found(
      facts,
      isNose ? 'nose-too-high' : which === 'goingIn' ? 'too-steep-going-in' : 'too-steep-coming-out',
      'warns',
      {
        chambers: [way.chamber],
        fields: isNose ? ['nose height', 'rest depth'] : ['cut angle', 'friction'],
        message: inChamber(facts, way.chamber, text),
        travel: climb.travel,
        view: 'section',
      },
    ),
  ];
}

function noseText({ unit }: Facts, way: ChamberWay, climb: Climb): string {
  const by = way.noseAboveFoot;
  const where =
    by !== null && by > 0
      ? `${sayAmount(by, unit)} above the lowest point of the resting stack`
      : 'at the resting stack';
  return `the key's nose strikes ${where}, at ${degrees(climb.angle)}: it climbs at most ${degrees(way.steepest)}, and the key does not get under it.`;
}

function sideText(way: ChamberWay, climb: Climb, which: 'goingIn' | 'comingOut'): string {
  const what =
    climb.from === 'tip'
      ? "the tip's end"
      : climb.from === 'blade'
        ? 'a step in the blade'
        : 'a side of a cut';
  const when = which === 'goingIn' ? 'going in' : 'coming out';
  return `${when}, ${what} meets the stack at ${degrees(climb.angle)}; with this friction it climbs at most ${degrees(way.steepest)}. The key jams there when it is dry or dirty.`;
}

function degrees(angle: Climb['angle']): string {
  return `${Math.round(toDegrees(angle))}°`;
}

function pullsOut(facts: Facts): Finding[] {
  if (facts.way.keyIsHeld !== false) return [];
  const most = Math.max(
    ...facts.way.chambers.flatMap((each) => (each.holdsKey === null ? [] : [each.holdsKey])),
  );
  return [
    found(facts, 'pulls-out-turned', 'warns', {
      chambers: [],
      fields: ['root depth', 'blade height'],
      message: `No peak of the key would have to push a pin into the shell (the highest stays ${sayAmount(most, facts.unit)} below): the key can be pulled out while it is turned.`,
      view: 'section',
    }),
  ];
}

function catches(facts: Facts): Finding[] {
  const { play, unit } = facts;
  if (play.catches !== true || play.play === null || play.room === null) return [];
  return [
    found(facts, 'end-play-catches', 'warns', {
      chambers: play.tightest === null ? [] : [play.tightest],
      fields: ['end play', 'chamber diameter'],
      message: `The plug comes forward ${sayAmount(play.play, unit)}, and the pins only pass up to ${sayAmount(play.room, unit)}: pulling the key drags the plug along, the pins catch and the key is held. Look at the retainer.`,
      view: 'section',
    }),
  ];
}

/** A worn bore or a filed crest lets neighbouring depths work, and shows by itself too. */
function looseCylinder(facts: Facts): Finding[] {
  const { assembly, thresholds, unit } = facts;
  const { depthStep, crestLow } = thresholds;
  const told: Finding[] = [];
  const dropped = assembly.chambers
    .map((chamber) => ({ chamber: chamber.id, drop: chamber.crestDrops[0] ?? 0 }))
    .filter(({ drop }) => drop > crestLow);
  const most = Math.max(...dropped.map(({ drop }) => drop));
  if (dropped.length > 0) {
    told.push(
      found(facts, 'crest-low', 'warns', {
        chambers: dropped.map(({ chamber }) => chamber),
        fields: ['crest'],
        message: `The plug's crest lies up to ${sayAmount(most, unit)} lower than half its diameter: filed, milled or worn. Stacks must be as much shorter.`,
        view: 'close-up',
      }),
    );
  }
  const clearance = assembly.lines[0]?.clearance ?? 0;
  const drop = Math.max(0, ...assembly.chambers.map((chamber) => chamber.crestDrops[0] ?? 0));
  const band = clearance + drop;
  if (depthStep !== null && depthStep > 0 && band > depthStep / 2) {
    told.push(
      found(facts, 'loose-for-neighbour', 'warns', {
        chambers: [],
        fields: ['play', 'crest'],
        message: `Play and lowered crest together are ${sayAmount(band, unit)}, more than half a step of ${sayLength(depthStep, unit)}: keys with a neighbouring cut may work as well.`,
        view: 'close-up',
      }),
    );
  }
  return told;
}
