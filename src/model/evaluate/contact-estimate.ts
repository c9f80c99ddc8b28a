/**
 * Where the foot rests on the seated key, with its doubt. The contact height answers to the touched cut's root depth,
 * root flat, angle and place, to the chamber's place and to how far home the key is; each with its exact slope at the
 * touch. Heights above the key's bottom edge, mm.
 *
 * A ball held by both sides of a cut at once does not care, to first order, where the cut stands along the key: it climbs
 * whichever way the cut is off. Such a doubt counts with the spread of its absolute value, 0.603 of its own (that of a
 * half-normal distribution); the small mean rise is left out.
 */
import { contactAt, type Touch } from '../contact/contact-at.ts';
import { flankLift } from '../contact/flank-lift.ts';
import { buildFoot, type Foot } from '../contact/foot.ts';
import { buildKeyProfile, type KeyProfile, type KeyShape } from '../contact/key-profile.ts';
import { ballRadiusPartial, touchPartials } from '../contact/touch-partials.ts';
import { combine, type Estimate } from '../estimate/estimate.ts';
import { type MeasuredKey, nominalKeyShape } from '../measured/measured-key.ts';
import type { MeasuredPart } from '../measured/measured-stack.ts';
import { rootOf, type RootRoute } from '../measured/cut-roots.ts';
import type { Id } from '../schema/leaf.ts';

/** One key by one way of measuring its cuts. */
export type KeyReading = {
  readonly route: RootRoute;
  readonly key: MeasuredKey;
  readonly roots: ReadonlyMap<Id, Estimate>;
  readonly shape: KeyShape;
  readonly profile: KeyProfile;
};

export type ContactEstimate = {
  readonly height: Estimate;
  /** The cut under the chamber. */
  readonly cut: Id;
  readonly rootDepth: Estimate;
  readonly lift: number;
  readonly bridging: number;
  readonly outOfLine: number;
  readonly outOfLineLift: number;
  readonly foot: Foot;
};

/** Share of a two-sided doubt that counts when either side lifts: √(1 − 2/π). */
const HALF_NORMAL = Math.sqrt(1 - 2 / Math.PI);

/** Reads a key's cuts by one route, the other route filling in where this one was not used. */
export function readKey(key: MeasuredKey, route: RootRoute): KeyReading {
  const roots = new Map<Id, Estimate>();
  for (const cut of key.cuts) {
    const bladeHeight = key.bladeHeight.value;
    const root =
      rootOf(cut, route, bladeHeight) ??
      rootOf(cut, route === 'rootDepth' ? 'overBall' : 'rootDepth', bladeHeight);
    if (root !== null) roots.set(cut.id, root);
  }
  const shape = nominalKeyShape(key, new Map([...roots].map(([id, root]) => [id, root.value])));
  return { route, key, roots, shape, profile: buildKeyProfile(shape) };
}

/** Was the cut under this chamber measured by the reading's own route? */
export function measuredBy(reading: KeyReading, cut: Id): boolean {
  const found = reading.key.cuts.find((each) => each.id === cut);
  return reading.route === 'rootDepth' ? found?.rootDepth != null : found?.overBall != null;
}

/** Finds where a stack's lowest part rests on the seated key; null where no measured cut lies near the chamber. */
export function estimateContact(
  reading: KeyReading,
  position: Estimate,
  lowest: MeasuredPart,
): ContactEstimate | null {
  const { key, shape, profile } = reading;
  const foot = buildFoot(lowest.lower.shape, Math.max(0.02, lowest.radius.value));
  const z = position.value;
  const travel = key.stopShort.value;
  if (!isCutKnown(reading, z + travel)) return null;
  const contact = contactAt(profile, foot, z, travel);
  const lifted = flankLift(shape, profile, foot, z, travel);
  const root = lifted && reading.roots.get(lifted.cut);
  if (!Number.isFinite(contact.height) || lifted === undefined || root === undefined) return null;
  const terms = contactTerms(reading, contact.touches, position, lowest);
  return {
    height: { value: contact.height, terms: terms.terms },
    cut: lifted.cut,
    rootDepth: root,
    lift: lifted.lift,
    bridging: lifted.bridging,
    outOfLine: lifted.outOfLine,
    outOfLineLift: lifted.outOfLineLift,
    foot,
  };
}

/** A cut that nobody measured yet leaves no trace in the profile: what lies under its chamber is not known, not uncut. */
export function isCutKnown({ key, roots }: KeyReading, at: number): boolean {
  let nearest: { readonly id: Id; readonly apart: number } | null = null;
  for (const cut of key.cuts) {
    const apart = Math.abs(cut.at.value - at);
    if (nearest === null || apart < nearest.apart) nearest = { id: cut.id, apart };
  }
  return nearest === null || roots.has(nearest.id);
}

function contactTerms(
  reading: KeyReading,
  touches: readonly Touch[],
  position: Estimate,
  lowest: MeasuredPart,
): Estimate {
  const { key, shape, roots } = reading;
  const share = 1 / touches.length;
  const partials = touches.map((touch) => touchPartials(touch, shape));
  const parts: [number, Estimate][] = [];
  const along = sideways(partials.map((each) => each.chamber));
  parts.push([along, position], [along, key.stopShort]);
  for (const cut of key.cuts) {
    const own = partials.flatMap((each) => each.cuts.filter((part) => part.cut === cut.id));
    if (own.length === 0) continue;
    const root = roots.get(cut.id);
    const total = (pick: (part: (typeof own)[number]) => number) =>
      own.reduce((sum, part) => sum + pick(part), 0) * share;
    if (root !== undefined) parts.push([total((part) => part.rootDepth), root]);
    parts.push(
      [total((part) => part.rootFlat), cut.rootFlat],
      [total((part) => part.includedAngle), cut.includedAngle],
      [sideways(own.map((part) => part.at)), cut.at],
    );
  }
  const mean = (pick: (part: (typeof partials)[number]) => number) =>
    partials.reduce((sum, part) => sum + pick(part), 0) * share;
  parts.push(
    [mean((part) => part.bladeHeight), key.bladeHeight],
    [mean((part) => part.tipAt), key.tipAt],
    [mean((part) => part.tipHeight), key.tipHeight],
    [mean((part) => part.tipRamp), key.tipRamp],
  );
  if (lowest.lower.shape.kind === 'sphere') {
    const perRadius = touches.reduce((sum, touch) => sum + ballRadiusPartial(touch), 0) * share;
    parts.push([perRadius, lowest.radius]);
  }
  return combine(parts.filter(([factor, estimate]) => factor !== 0 && estimate.terms.length > 0));
}

/** The slope against a shift along the key: the common slope of all touches, or the half-normal share where they differ. */
function sideways(slopes: readonly number[]): number {
  const least = Math.min(...slopes);
  const most = Math.max(...slopes);
  if (least < 0 && most > 0) return HALF_NORMAL * Math.max(-least, most);
  return slopes.reduce((sum, slope) => sum + slope, 0) / slopes.length;
}
