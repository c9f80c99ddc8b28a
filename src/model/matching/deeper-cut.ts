/**
 * The other repair: leave the stack that stands too high where it is, and take something off the cut under it. How much is
 * found on the whole profile of the key, so that a neighbouring cut that starts to hold the foot counts; what the wider cut
 * does to its neighbours is told. A cut can only be made deeper, so nothing helps a stack that is too low. Offsets + high,
 * - low; mm.
 */
import { contactHeightAt } from '../contact/contact-at.ts';
import { type EatenFlat, eatenFlats, largestStep } from '../contact/eaten-flats.ts';
import { nearestCut } from '../contact/flank-lift.ts';
import { buildFoot, type Foot } from '../contact/foot.ts';
import { buildKeyProfile, type KeyCut, type KeyProfile, type KeyShape } from '../contact/key-profile.ts';
import { type KeyReading, measuredBy } from '../evaluate/contact-estimate.ts';
import { sayAmount, sayLength } from '../evaluate/say.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import { WINDOW_MM } from '../tolerances.ts';
import { findRoot } from '../window/find-root.ts';
import { bestOffset } from './candidate-heights.ts';
import { type MatchSelection, prepareMatch } from './match.ts';
import type { KeyInSite } from './needed-height.ts';
import { resolutionOf } from './resolution.ts';
import type { ChamberPlace } from './fits.ts';
import { presentIn, type Standing } from './standing.ts';

export type NeighbourStep = {
  readonly cut: Id;
  readonly towards: 'bow' | 'tip';
  /** Difference of root depths once deepened, and the largest that leaves both flats whole. */
  readonly step: number;
  readonly largest: number;
};

/** A chamber whose stack comes down with the neighbouring cut. */
export type AlsoLowered = {
  readonly chamber: Id;
  readonly number: number;
  readonly by: number;
  readonly offset: number;
  readonly turns: boolean;
};

export type DeeperCut = {
  readonly chamber: Id;
  readonly cut: Id;
  /** To take off for the best height, and the least and most that let it turn. */
  readonly takeOff: number;
  readonly least: number;
  readonly most: number;
  /** Metal left under the cut. */
  readonly rootDepth: number;
  /** The cuts next to it; a step beyond the largest eats a flat. */
  readonly steps: readonly NeighbourStep[];
  /** What the deeper cut newly takes of other cuts' flats. */
  readonly eaten: readonly EatenFlat[];
  readonly alsoLowered: readonly AlsoLowered[];
  /** No other chamber suffers, and no step is too large. */
  readonly isClean: boolean;
  readonly message: string;
};

/** No depth helps, or none is needed: one sentence. */
export type NoCut = { readonly chamber: Id; readonly message: string };

/** Finds how much to take off the cut under a chamber so that the stack in the plan stands right. */
export function deeperCut(job: Job, selection: MatchSelection, chamber: Id): DeeperCut | NoCut {
  const { pair } = prepareMatch(job, selection);
  const { site } = pair.keyIn;
  const place = site.places.find((each) => each.chamber === chamber);
  if (place === undefined) return { chamber, message: 'This chamber is closed.' };
  const step = resolutionOf(job.settings.unit);
  const standing = presentIn(pair.keyIn, place, step);
  const under = cutUnder(pair.keyIn, place);
  if (typeof standing === 'string' || under === null) {
    return { chamber, message: `Measure the stack and the cut of chamber ${place.number} first.` };
  }
  const unit = job.settings.unit;
  if (standing.offset < standing.lowest - WINDOW_MM) {
    return {
      chamber,
      message: `Chamber ${place.number} is too low: a cut cannot be made higher, take a longer pin.`,
    };
  }
  const down = standing.offset - bestOffset(standing);
  if (down < step / 2) {
    return { chamber, message: `Chamber ${place.number} stands as it should: leave its cut as it is.` };
  }
  const least = depthFor(under, Math.max(0, standing.offset - standing.highest));
  const takeOff = depthFor(under, down);
  if (least === null || takeOff === null) {
    return {
      chamber,
      message: `No depth of its cut helps chamber ${place.number}: its stack stands ${sayAmount(down, unit)} too high, and there is not so much metal to take off.`,
    };
  }
  const most = depthFor(under, standing.offset - standing.lowest) ?? deepest(under);
  return describe(pair.keyIn, place, standing, under, { least, takeOff, most });
}

type Under = {
  readonly reading: KeyReading;
  readonly cut: KeyCut;
  readonly foot: Foot;
  readonly z: number;
  readonly travel: number;
};

function cutUnder({ readings }: KeyInSite, place: ChamberPlace): Under | null {
  const lowest = place.presentStack.parts[0];
  if (lowest === undefined) return null;
  const foot = buildFoot(lowest.lower.shape, Math.max(0.02, lowest.radius.value));
  const z = place.measured.position.value;
  for (const reading of readings) {
    const travel = reading.key.stopShort.value;
    const cut = nearestCut(reading.shape.cuts, z + travel);
    if (cut === undefined || !measuredBy(reading, cut.id)) continue;
    // a cut that is there but was not measured leaves no trace in the profile
    const away = Math.abs(cut.at - z - travel);
    const isNearest = reading.key.cuts.every((each) => Math.abs(each.at.value - z - travel) >= away);
    if (isNearest) return { reading, cut, foot, z, travel };
  }
  return null;
}

/** The least depth that lets the foot down so far; null when no depth does. */
function depthFor(under: Under, down: number): number | null {
  const { reading, foot, z, travel } = under;
  if (down <= 0) return 0;
  const before = contactHeightAt(reading.profile, foot, z, travel);
  const short = (depth: number): number => {
    const { profile } = deepened(under, depth);
    return before - contactHeightAt(profile, foot, z, travel) - down;
  };
  const most = deepest(under);
  if (short(most) < -WINDOW_MM) return null;
  return findRoot(short, 0, most, WINDOW_MM);
}

/** mm. Less metal than this is no key. */
const LEAST_METAL_MM = 0.1;

function deepest({ cut }: Under): number {
  return Math.max(0, cut.rootDepth - LEAST_METAL_MM);
}

function deepened({ reading, cut }: Under, depth: number): { shape: KeyShape; profile: KeyProfile } {
  const cuts = reading.shape.cuts.map((each) =>
    each.id === cut.id ? { ...each, rootDepth: Math.max(0, each.rootDepth - depth) } : each,
  );
  const shape = { ...reading.shape, cuts };
  return { shape, profile: buildKeyProfile(shape) };
}

function describe(
  keyIn: KeyInSite,
  place: ChamberPlace,
  standing: Standing,
  under: Under,
  { least, takeOff, most }: { readonly least: number; readonly takeOff: number; readonly most: number },
): DeeperCut {
  const { shape, profile } = deepened(under, takeOff);
  const rootDepth = under.cut.rootDepth - takeOff;
  const steps = stepsTo(shape, under.cut, rootDepth);
  const eaten = newlyEaten(under, shape);
  const alsoLowered = loweredBy(keyIn, place, under, profile);
  const tooLarge = steps.some(({ step, largest }) => step > largest + WINDOW_MM);
  const isClean = !tooLarge && alsoLowered.every((each) => each.turns);
  const unit = keyIn.bench.job.settings.unit;
  const sentences = [
    `Take ${sayAmount(takeOff, unit)} off the cut under chamber ${place.number}: ${sayLength(rootDepth, unit)} of metal is left under it, and its stack comes down from ${sayAmount(standing.offset, unit)} ${standing.offset >= 0 ? 'high' : 'low'}.`,
    ...steps
      .filter(({ step, largest }) => step > largest + WINDOW_MM)
      .map(
        ({ step, largest, towards }) =>
          `The step to the cut towards the ${towards} is then ${sayAmount(step, unit)}, more than the ${sayAmount(largest, unit)} that leaves both flats whole.`,
      ),
    ...alsoLowered.map(({ number, by, offset, turns }) =>
      turns
        ? `Chamber ${number} comes down ${sayAmount(by, unit)} with it, and turns.`
        : `Chamber ${number} comes down ${sayAmount(by, unit)} with it, and is too ${offset > 0 ? 'high' : 'low'} then.`,
    ),
  ];
  return {
    chamber: place.chamber,
    cut: under.cut.id,
    takeOff,
    least,
    most,
    rootDepth,
    steps,
    eaten,
    alsoLowered,
    isClean,
    message: sentences.join(' '),
  };
}

function stepsTo(
  { cuts }: KeyShape,
  { id, at, rootFlat, includedAngle }: KeyCut,
  rootDepth: number,
): NeighbourStep[] {
  const inOrder = cuts.filter((cut) => cut.id !== id).sort((one, other) => one.at - other.at);
  const before = inOrder.filter((cut) => cut.at < at).at(-1);
  const after = inOrder.find((cut) => cut.at >= at);
  const stepTo = (cut: KeyCut, towards: NeighbourStep['towards']): NeighbourStep => ({
    cut: cut.id,
    towards,
    step: Math.abs(cut.rootDepth - rootDepth),
    // the deeper one's sides reach out, from half its own flat to half the other's
    largest: largestStep(
      Math.abs(cut.at - at),
      (cut.rootFlat + rootFlat) / 2,
      cut.rootDepth < rootDepth ? cut.includedAngle : includedAngle,
    ),
  });
  return [
    ...(before === undefined ? [] : [stepTo(before, 'bow')]),
    ...(after === undefined ? [] : [stepTo(after, 'tip')]),
  ];
}

function newlyEaten({ reading, cut }: Under, shape: KeyShape): EatenFlat[] {
  const before = eatenFlats(reading.shape);
  return eatenFlats(shape).filter(
    (now) =>
      now.by.kind === 'cut' &&
      now.by.cut === cut.id &&
      !before.some(
        (each) =>
          each.cut === now.cut && each.by.kind === 'cut' && each.by.cut === cut.id && each.eaten >= now.eaten,
      ),
  );
}

function loweredBy(
  keyIn: KeyInSite,
  deep: ChamberPlace,
  { reading, travel }: Under,
  profile: KeyProfile,
): AlsoLowered[] {
  const step = resolutionOf(keyIn.bench.job.settings.unit);
  return keyIn.site.places.flatMap((place): AlsoLowered[] => {
    const lowest = place.presentStack.parts[0];
    if (place === deep || lowest === undefined) return [];
    const foot = buildFoot(lowest.lower.shape, Math.max(0.02, lowest.radius.value));
    const z = place.measured.position.value;
    const by = contactHeightAt(reading.profile, foot, z, travel) - contactHeightAt(profile, foot, z, travel);
    const standing = presentIn(keyIn, place, step);
    if (!(by > WINDOW_MM) || typeof standing === 'string') return [];
    const offset = standing.offset - by;
    return [
      {
        chamber: place.chamber,
        number: place.number,
        by,
        offset,
        turns: Math.min(offset - standing.lowest, standing.highest - offset) >= -WINDOW_MM,
      },
    ];
  });
}
