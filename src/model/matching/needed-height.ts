/**
 * The lower stack that a key calls for in each chamber, for whatever stands lowest: the same height as an evaluation of the
 * finished plan finds, by the same routes, bench tests and all (held against it in the tests). Where one route is open and
 * nothing was felt or tried, only the contact height has to be found; that is the usual case, and quick. Heights mm.
 */
import { combine, type Estimate } from '../estimate/estimate.ts';
import { boundsOnNeeded } from '../evaluate/bounds.ts';
import {
  type ContactEstimate,
  estimateContact,
  isCutKnown,
  type KeyReading,
  measuredBy,
  readKey,
} from '../evaluate/contact-estimate.ts';
import {
  bySubtraction,
  byStandingUp,
  drivingRoute,
  effectiveDiameter,
  type KnownStack,
  type RouteEstimate,
} from '../evaluate/routes.ts';
import { keyTrouble } from '../evaluate/size-trouble.ts';
import { tighten } from '../evaluate/tighten.ts';
import { contactHeightAt } from '../contact/contact-at.ts';
import { nearestCut } from '../contact/flank-lift.ts';
import { buildFoot, type Foot } from '../contact/foot.ts';
import { measureKey } from '../measured/measured-key.ts';
import { type MeasuredPair, measurePair } from '../measured/measured-pair.ts';
import { lowerStackEnd, type MeasuredPart } from '../measured/measured-stack.ts';
import { lengthOf } from '../measured/part-ends.ts';
import type { Bench } from '../measured/selection.ts';
import { measureItems } from '../assembly/build-stack.ts';
import type { Key, Seating } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { ChamberPlace, Fit, StandingFoot } from './fits.ts';
import type { Site } from './site.ts';

export type KeyInSite = {
  readonly site: Site;
  readonly bench: Bench;
  readonly readings: readonly KeyReading[];
  /** The lower stack that would stand level with the line's radius; null where something needed is not measured. */
  readonly levelOf: (place: ChamberPlace, fit: Fit) => number | null;
};

/** Puts a key into a site. */
export function putKeyIn(site: Site, key: Key): KeyInSite {
  const { job, cylinder } = site.bench;
  const seating = job.seatings.find((each) => each.cylinder === cylinder.id && each.key === key.id) ?? null;
  const bench: Bench = { ...site.bench, key, seating };
  const readings = readingsOf(site, key, seating);
  const pair = measurePair(seating, key.id, site.measured.plugDiameter, bench.measuring);
  const setting: Setting = { site, bench, readings, pair, effective: effectiveOf(site, bench, readings[0]) };
  const feet = new Map<number, Foot>();
  const tried = new Set(site.places.filter((place) => hasBeenTried(bench, place)));
  const found = new Map<ChamberPlace, Map<string | number, number | null>>();
  const levelOf = (place: ChamberPlace, fit: Fit): number | null => {
    const hasNews = tried.has(place);
    // what was felt and tried bounds the height by way of the window
    const name = hasNews ? `${fit.foot.number} ${fit.lowest} ${fit.highest}` : fit.foot.number;
    const inPlace = found.get(place) ?? new Map<string | number, number | null>();
    found.set(place, inPlace);
    const before = inPlace.get(name);
    if (before !== undefined) return before;
    const needed =
      hasNews || !hasOneRoute(setting, place)
        ? byRoutes(setting, place, fit, hasNews)
        : bySubtractionOnly(setting, place, fit.foot, feet);
    const level = needed === null ? null : needed + crestDropOf(place);
    inPlace.set(name, level);
    return level;
  };
  return { site, bench, readings, levelOf };
}

type Setting = {
  readonly site: Site;
  readonly bench: Bench;
  readonly readings: readonly KeyReading[];
  readonly pair: MeasuredPair;
  readonly effective: Estimate | null;
};

function crestDropOf({ assembled }: ChamberPlace): number {
  return assembled.crestDrops[0] ?? 0;
}

function lineRadius({ assembly }: Site): number {
  return assembly.lines[0]?.radius ?? 1;
}

function readingsOf(site: Site, key: Key, seating: Seating | null): KeyReading[] {
  const radius = lineRadius(site);
  const last = site.assembly.chambers.at(-1)?.z ?? 2 * radius;
  const measured = measureKey(key, seating, 2 * radius, last, site.bench.measuring);
  const readings: KeyReading[] = [];
  if (measured.cuts.some((cut) => cut.rootDepth !== null)) readings.push(readKey(measured, 'rootDepth'));
  if (measured.cuts.some((cut) => cut.overBall !== null)) readings.push(readKey(measured, 'overBall'));
  return readings;
}

function hasBeenTried({ job, seating }: Bench, { chamber }: ChamberPlace): boolean {
  return job.benchResults.length > 0 || (seating?.felt.some((felt) => felt.chamber === chamber) ?? false);
}

function hasOneRoute({ bench, readings, pair, effective }: Setting, { chamber }: ChamberPlace): boolean {
  return (
    readings.length === 1 &&
    pair.plugMinusFloor !== null &&
    effective === null &&
    !(bench.seating?.standsUpBy ?? []).some((entry) => entry.chamber === chamber)
  );
}

/** Contact height without its doubt, which decides nothing when there is no other route to choose. */
function bySubtractionOnly(
  setting: Setting,
  place: ChamberPlace,
  { number, part }: StandingFoot,
  feet: Map<number, Foot>,
): number | null {
  const { readings, pair } = setting;
  const reading = readings[0];
  if (reading === undefined || pair.plugMinusFloor === null) return null;
  const foot = feet.get(number) ?? footOf(part);
  feet.set(number, foot);
  const z = place.measured.position.value;
  const travel = reading.key.stopShort.value;
  if (!isCutKnown(reading, z + travel)) return null;
  const cut = nearestCut(reading.shape.cuts, z + travel);
  if (cut === undefined || !measuredBy(reading, cut.id) || isTrouble(setting, cut.id)) return null;
  const contact = contactHeightAt(reading.profile, foot, z, travel);
  return Number.isFinite(contact) ? pair.plugMinusFloor.value - contact - crestDropOf(place) : null;
}

function footOf(part: MeasuredPart): Foot {
  return buildFoot(part.lower.shape, Math.max(0.02, part.radius.value));
}

function byRoutes(setting: Setting, place: ChamberPlace, fit: Fit, hasNews: boolean): number | null {
  const { site, bench } = setting;
  const contacts = contactsOf(setting, place, fit.foot.part);
  const first = contacts[0];
  if (first !== undefined && isTrouble(setting, first.contact.cut)) return null;
  const routes = routesOf(setting, place, contacts);
  const driving = drivingRoute(routes, bench.seating?.pinnedRoutes[place.chamber]);
  if (driving === null || !hasNews) return driving?.needed.value ?? null;
  const hole = place.assembled.holes[0]?.radius ?? 1;
  const bounds = boundsOnNeeded(bench, place.chamber, fit, lineRadius(site), hole);
  return tighten(driving.needed, bounds).estimate.value;
}

/** A size of the key or of this cut that cannot be. */
function isTrouble({ readings, bench }: Setting, cut: Id): boolean {
  const first = readings[0];
  return first !== undefined && keyTrouble(first.key, cut, bench.job.settings.unit) !== null;
}

type Routed = { readonly reading: KeyReading; readonly contact: ContactEstimate };

function contactsOf({ readings }: Setting, place: ChamberPlace, lowest: MeasuredPart): Routed[] {
  return readings.flatMap((reading): Routed[] => {
    const contact = estimateContact(reading, place.measured.position, lowest);
    return contact !== null && measuredBy(reading, contact.cut) ? [{ reading, contact }] : [];
  });
}

function routesOf(
  { site, bench, pair, effective }: Setting,
  place: ChamberPlace,
  contacts: readonly Routed[],
): RouteEstimate[] {
  const { plugMinusFloor } = pair;
  const subtracted = contacts.flatMap(({ reading, contact }): RouteEstimate[] => {
    if (plugMinusFloor === null) return [];
    const route = reading.route === 'rootDepth' ? 'subtraction' : 'over the ball';
    return [{ route, needed: bySubtraction(plugMinusFloor, contact.height, crestDropOf(place)) }];
  });
  const stoodUp = (bench.seating?.standsUpBy ?? []).flatMap((entry): RouteEstimate[] =>
    entry.chamber === place.chamber
      ? [
          {
            route: 'stands up by',
            needed: byStandingUp(entry, 2 * lineRadius(site), bench.measuring),
          },
        ]
      : [],
  );
  const first = contacts[0];
  if (effective === null || first === undefined) return [...subtracted, ...stoodUp];
  const worked = combine([
    [1, effective],
    [-1, first.contact.height],
  ]);
  return [...subtracted, ...stoodUp, { route: 'known set', needed: worked }];
}

/** The effective diameter from the sets that are known to have worked with this key in this cylinder. */
function effectiveOf(site: Site, bench: Bench, reading: KeyReading | undefined): Estimate | null {
  const sets = bench.seating?.knownSets ?? [];
  if (reading === undefined || sets.length === 0) return null;
  const worked = sets.flatMap((id): KnownStack[] => {
    const plan = bench.job.plans.find((each) => each.id === id && each.cylinder === bench.cylinder.id);
    return (plan?.stacks ?? []).flatMap(({ chamber, items }): KnownStack[] => {
      const at = site.assembly.chambers.findIndex((each) => each.id === chamber);
      const measured = site.measured.chambers[at];
      if (measured === undefined || items.length === 0) return [];
      const hole = site.assembly.chambers[at]?.holes[0]?.radius ?? 1;
      const stack = measureItems(bench, items, lineRadius(site), hole);
      const foot = stack.parts[0];
      const height = stack.tops[lowerStackEnd(stack)];
      const contact = foot === undefined ? null : estimateContact(reading, measured.position, foot);
      return contact === null || height == null ? [] : [{ contact: contact.height, stack: height }];
    });
  });
  return effectiveDiameter(worked, lengthOf(bench.job.settings.shopRule, 0.0254), bench.key?.id ?? '');
}
