/**
 * The whole curve that a foot's lowest point follows along the key: `contactHeightAt` for every place at once, exact, in
 * straight pieces and arcs. It does not depend on the chamber, so one curve serves all chambers with the same foot.
 *
 * Frame: distance = s of the key under the part's axis; heights above the key's bottom edge. mm.
 *
 *        key                      curve of a ball's lowest point
 *      ____      ____            _.--._      _.--._
 *          \    /                      \    /          arcs around the peaks, straight beside the sides,
 *           \__/                        \__/           a sharp valley where the ball bridges
 *
 * Between two valleys the profile bends one way only, and the curve over such a run is one chain: a stretch beside each
 * side of the key, a stretch of the foot's own outline turned over around each peak. The curve is the highest chain.
 */
import { type Foot, footDrop, type FootPiece, footSupport } from './foot.ts';
import type { KeyFeature, KeyProfile, ProfilePoint } from './key-profile.ts';
import { type Curve, envelopeOfAll, heightOn, type Piece, heightOfPieces, slopeOn } from './pieces.ts';

/** The sides of the key that hold the foot: on a peak the one towards the bow and the one towards the tip. */
export type CurveMark = { readonly bow: KeyFeature; readonly tip: KeyFeature };
export type CurvePiece = Piece<CurveMark>;

/** Pieces from the bow (from -Infinity) to where the foot has just left the tip. */
export type ContactCurve = { readonly pieces: readonly CurvePiece[] };

/** Builds the contact curve of a foot on a key. */
export function buildContactCurve(profile: KeyProfile, foot: Foot): ContactCurve {
  const chains: CurvePiece[][] = [];
  let chain: CurvePiece[] = [];
  profile.points.forEach((start, i) => {
    const end = profile.points[i + 1];
    const before = profile.points[i - 1];
    if (!end) return;
    if (before && start.slope > before.slope) {
      chains.push(chain);
      chain = [];
    }
    chain.push(...besideSegment(start, end, foot, i === 0));
    if (end.slope < start.slope) chain.push(...aroundPeak(start, end, foot));
  });
  chains.push(chain);
  return { pieces: envelopeOfAll(chains, 'higher') };
}

/** Measures the contact height; -Infinity beyond the tip. The same as `contactHeightAt`, by another way. */
export function curveHeightAt(curve: ContactCurve, axis: number): number {
  return heightOfPieces(curve.pieces, axis);
}

/** The s beyond which the foot no longer reaches the key. */
export function curveEnd(curve: ContactCurve): number {
  return curve.pieces.at(-1)?.to ?? -Infinity;
}

/**
 * Finds how low a foot that is free to move along the key settles when it is laid on at `near`: downhill to the next
 * valley. It stays where the key is level; a foot that rolls off the tip settles nowhere, -Infinity.
 */
export function settledHeight(curve: ContactCurve, near: number): number {
  const { pieces } = curve;
  let i = pieces.findIndex(({ from, to }) => from <= near && near <= to);
  const start = pieces[i];
  if (!start) return -Infinity;
  const direction = -Math.sign(slopeOn(start.curve, near));
  let height = heightOn(start.curve, near);
  while (direction !== 0) {
    const piece = pieces[i];
    if (!piece) return -Infinity;
    const [entry, exit] = direction > 0 ? [piece.from, piece.to] : [piece.to, piece.from];
    const entrySlope = slopeOn(piece.curve, piece === start ? near : entry) * direction;
    if (entrySlope > 0) break;
    height = Math.min(height, heightOn(piece.curve, exit));
    i += direction;
  }
  return height;
}

function besideSegment(start: ProfilePoint, end: ProfilePoint, foot: Foot, isFirst: boolean): CurvePiece[] {
  const support = footSupport(foot, start.slope);
  const from = start.s - support.to;
  const height = start.height - footDrop(foot, support.to);
  const curve: Curve = { kind: 'straight', at: from, height, slope: start.slope };
  const mark = { bow: start.from, tip: start.from };
  return [{ from: isFirst ? -Infinity : from, to: end.s - support.from, curve, mark }];
}

/** The foot's outline between the two tangents, turned over around the peak. */
function aroundPeak(before: ProfilePoint, peak: ProfilePoint, foot: Foot): CurvePiece[] {
  const highest = footSupport(foot, before.slope).from;
  const lowest = peak.slope === -Infinity ? -foot.radius : footSupport(foot, peak.slope).to;
  const mark = { bow: before.from, tip: peak.from };
  return [...foot.pieces]
    .reverse()
    .map((piece) => ({
      from: peak.s - Math.min(piece.to, highest),
      to: peak.s - Math.max(piece.from, lowest),
      curve: turnedOver(piece, peak),
      mark,
    }))
    .filter(({ from, to }) => from < to);
}

function turnedOver(piece: FootPiece, peak: ProfilePoint): Curve {
  if (piece.kind === 'arc') {
    return { kind: 'crest', at: peak.s - piece.centre, height: peak.height, radius: piece.radius };
  }
  return { kind: 'straight', at: peak.s - piece.from, height: peak.height - piece.drop, slope: piece.slope };
}
