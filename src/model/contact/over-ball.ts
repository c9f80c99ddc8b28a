/**
 * A ball laid in the cut, one jaw on the ball, the other on the key's bottom edge: the reading less the ball's diameter
 * is where that ball rests, whatever root, flat, angle and jaw are. mm, radians.
 *
 *      ___ jaw ________
 *         (    )             reading = contact height + ball diameter
 *      \__'----'__/
 *      ___________________
 *          jaw
 *
 * That holds for the chamber when the same size of ball stands over the middle of the cut. For a cut off its chamber,
 * or another foot, the root depth is inferred and the profile asked.
 */
import { known } from '../assert.ts';
import { SAME_CONTACT_MM, SAME_LENGTH_MM } from '../tolerances.ts';
import { bridgingLift, heightOfSides } from './bridging.ts';
import { contactHeightAt } from './contact-at.ts';
import { buildContactCurve, settledHeight } from './contact-curve.ts';
import { buildBallFoot, type Foot } from './foot.ts';
import { buildKeyProfile, flankRise, type KeyCut, type KeyShape } from './key-profile.ts';

/** Gives the contact height of the measuring ball in its cut. */
export function contactOverBall(reading: number, ballDiameter: number): number {
  return reading - ballDiameter;
}

export type OverBallReading = {
  readonly reading: number;
  readonly ballDiameter: number;
  /** Of the measured cut. */
  readonly cut: Pick<KeyCut, 'rootFlat' | 'includedAngle'>;
  readonly bladeHeight: number;
};

/**
 * Infers the root depth from a reading over a ball centred in one cut. A deep cut holds the ball by its sides, a shallow
 * one by the edges of the blade beside it, a wide or very shallow one by its root; the reading tells which.
 */
export function rootDepthFromOverBall({ reading, ballDiameter, cut, bladeHeight }: OverBallReading): number {
  const radius = ballDiameter / 2;
  const contact = contactOverBall(reading, ballDiameter);
  const sunk = bladeHeight - contact;
  const onSides = contact - bridgingLift(radius, cut);
  const mouth = cut.rootFlat / 2 + sunk / flankRise(cut);
  const isBetweenEdges = mouth <= radius * Math.cos(cut.includedAngle / 2); // too shallow for its sides to hold the ball
  const touchesRoot = onSides === contact || (isBetweenEdges && sunk <= sagitta(radius, mouth));
  if (touchesRoot) return contact;
  if (onSides + heightOfSides(radius, cut) <= bladeHeight) return onSides;
  const halfMouth = Math.sqrt(Math.max(0, radius ** 2 - (radius - sunk) ** 2));
  return bladeHeight - (halfMouth - cut.rootFlat / 2) * flankRise(cut);
}

/** A reading over a ball in one cut of a key. */
export type MeasuredCut = { readonly cut: string; readonly reading: number; readonly ballDiameter: number };

/**
 * Gives the key the root depths at which every measured ball settles where it was read. Where a neighbour's cutter ends
 * the side of a cut early the ball rolls that way and settles lower than in one cut alone, so the cuts are found
 * together. Where neighbours hold a ball so that its own root no longer counts, or let it roll off the tip, the root is
 * that of one cut alone.
 */
export function withRootsFromBalls(shape: KeyShape, measured: readonly MeasuredCut[]): KeyShape {
  const alone = withRoots(shape, new Map(measured.map((one) => [one.cut, rootOfOne(shape, one)])));
  const first = settle(alone, measured);
  const held = measured.filter((_, i) => Math.abs(first.gaps[i] ?? 0) < SAME_LENGTH_MM);
  return held.length === measured.length ? first.shape : settle(alone, held).shape;
}

/** Enough for any key whose readings hold together; three are the rule. */
const ROUNDS = 40;
/** mm per mm. What a ball answers to its root at least, once the search steps; smaller steps of the ball are doubted. */
const LEAST_ANSWER = 0.25;

/** Moves each root by secants until its ball settles where it was read, or for so many rounds. */
function settle(start: KeyShape, measured: readonly MeasuredCut[]): { shape: KeyShape; gaps: number[] } {
  let shape = start;
  let gaps = gapsOf(shape, measured);
  let answers = gaps.map(() => 1);
  for (let round = 0; round < ROUNDS && gaps.some((gap) => Math.abs(gap) >= SAME_CONTACT_MM); round++) {
    const steps = gaps.map((gap, i) => (Number.isFinite(gap) ? gap / (answers[i] ?? 1) : 0));
    const roots = measured.map(({ cut }, i) => [cut, cutOf(shape, cut).rootDepth + (steps[i] ?? 0)] as const);
    shape = withRoots(shape, new Map(roots));
    const next = gapsOf(shape, measured);
    answers = next.map((gap, i) => {
      const step = steps[i] ?? 0;
      const answer = ((gaps[i] ?? 0) - gap) / step;
      return Math.abs(step) < SAME_CONTACT_MM ? 1 : Math.min(1, Math.max(LEAST_ANSWER, answer));
    });
    gaps = next;
  }
  return { shape, gaps };
}

/** How much higher each ball was read than it settles on this key. One curve serves every ball of a size. */
function gapsOf(shape: KeyShape, measured: readonly MeasuredCut[]): number[] {
  const profile = buildKeyProfile(shape);
  const sizes = [...new Set(measured.map(({ ballDiameter }) => ballDiameter))];
  const curves = new Map(sizes.map((size) => [size, buildContactCurve(profile, buildBallFoot(size))]));
  return measured.map(({ cut, reading, ballDiameter }) => {
    const curve = known(curves.get(ballDiameter), `ball ${ballDiameter} mm`);
    return contactOverBall(reading, ballDiameter) - settledHeight(curve, cutOf(shape, cut).at);
  });
}

export type OverBallContact = {
  /** Where the foot rests in the chamber. */
  readonly contact: number;
  /** Reading less ball diameter: where the measuring ball settled in the cut. */
  readonly seated: number;
  /** Contact less seated: what the reading lacks because the cut is off its chamber, or the foot is another. */
  readonly lacks: number;
  readonly rootDepth: number;
};

/**
 * Gives the contact height in a chamber at z from the reading over the ball in one cut. The rest of the key is taken
 * from `shape`; the root depth of the measured cut is inferred.
 */
export function overBallContact(
  shape: KeyShape,
  measured: MeasuredCut,
  foot: Foot,
  z: number,
): OverBallContact {
  const found = withRootsFromBalls(shape, [measured]);
  const cut = cutOf(found, measured.cut);
  const profile = buildKeyProfile(found);
  const inCut = settledHeight(buildContactCurve(profile, buildBallFoot(measured.ballDiameter)), cut.at);
  const seated = contactOverBall(measured.reading, measured.ballDiameter);
  const lacks = contactHeightAt(profile, foot, z, 0) - (inCut === -Infinity ? seated : inCut);
  return { contact: seated + lacks, seated, lacks, rootDepth: cut.rootDepth };
}

function rootOfOne(shape: KeyShape, { cut, reading, ballDiameter }: MeasuredCut): number {
  const { bladeHeight } = shape;
  return rootDepthFromOverBall({ reading, ballDiameter, cut: cutOf(shape, cut), bladeHeight });
}

function withRoots(shape: KeyShape, roots: ReadonlyMap<string, number>): KeyShape {
  const cuts = shape.cuts.map((cut) => ({ ...cut, rootDepth: roots.get(cut.id) ?? cut.rootDepth }));
  return { ...shape, cuts };
}

function cutOf(shape: KeyShape, id: string): KeyCut {
  return known(
    shape.cuts.find((cut) => cut.id === id),
    `cut ${id}`,
  );
}

/** How deep a ball sinks between two edges this far from its middle. */
function sagitta(radius: number, halfWidth: number): number {
  return radius - Math.sqrt(Math.max(0, radius ** 2 - halfWidth ** 2));
}
