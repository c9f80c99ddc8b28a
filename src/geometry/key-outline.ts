/**
 * The key seen from the side: blade with its cuts, shoulder, and a bow to hold it by. mm.
 *
 * Frame: x along the key from its stop (s of the profile, which is z with the key home), y above the bottom edge of the
 * blade. The blade is what was measured; the bow is only there to be held and has the same size on every key of this
 * blade height.
 *
 *        .--------.
 *       /          |___ shoulder ________
 *      |   bow         |                 \____/\___      blade, upper edge: the profile
 *      |   (o)         |                           \
 *       \          .___|____________________________\    bottom edge
 *        '--------'    x = 0                        tip
 */
import type { AssemblyKey } from '../model/assembly/assembly.ts';
import { arcTo, circle, type Edge, lineTo, moved, type Outline, type Point } from './outline.ts';

/** Shares of the blade's height. Looks only. */
const BOW = {
  neck: 0.22,
  shoulderRise: 0.13,
  length: 1.75,
  halfHeight: 0.84,
  corner: 0.55,
  hole: 0.26,
} as const;

/** Draws the key: its outside, then the hole in the bow. */
export function keyOutline(key: AssemblyKey): Outline[] {
  const blade = key.shape.bladeHeight;
  const rise = key.shape.stop === 'shoulder' ? BOW.shoulderRise * blade : 0;
  const bowStart = -BOW.neck * blade;
  const upper = upperEdge(key);
  const tip = upper.at(-1) ?? { x: 0, y: 0 };
  const middle = blade / 2;
  const outside: Outline = {
    start: { x: tip.x, y: 0 },
    edges: [
      lineTo(bowStart, 0),
      ...bowEdges(bowStart, middle, blade),
      lineTo(bowStart, blade + rise),
      ...(rise > 0 ? [lineTo(0, blade + rise), lineTo(0, upper[0]?.y ?? blade)] : []),
      ...upper.map((point) => lineTo(point.x, point.y)),
      ...(tip.y > 0 ? [lineTo(tip.x, 0)] : []),
    ],
  };
  const hole = { x: bowStart - (BOW.length - 0.5) * blade, y: middle };
  return [outside, circle(hole, BOW.hole * blade)];
}

/** The key as it lies in the cylinder, still `travel` out: x along the plug, y up from the plug's axis. */
export function placedKey(key: AssemblyKey, travel: number): Outline[] {
  return keyOutline(key).map((outline) => moved(outline, -travel, key.bottomY));
}

/** Corners of the upper edge from the stop to the tip, the tip's end face left out. */
function upperEdge(key: AssemblyKey): Point[] {
  const points = key.profile.points.map(({ s, height }) => ({ x: s, y: height }));
  const isShouldered = key.shape.stop === 'shoulder';
  const behind = isShouldered ? 0 : -BOW.neck * key.shape.bladeHeight;
  const kept = points.filter((point) => point.x > behind);
  const height = heightAt(points, behind);
  return [{ x: behind, y: height }, ...kept];
}

function heightAt(points: readonly Point[], x: number): number {
  const i = points.findIndex((point) => point.x > x);
  const [before, after] = [points[i - 1], points[i]];
  if (before === undefined || after === undefined) return points[0]?.y ?? 0;
  return before.y + ((after.y - before.y) * (x - before.x)) / (after.x - before.x);
}

/** From the lower corner of the neck around the bow, up to its upper corner. */
function bowEdges(start: number, middle: number, blade: number): Edge[] {
  const half = BOW.halfHeight * blade;
  const corner = BOW.corner * blade;
  const small = 0.16 * blade;
  const back = start - BOW.length * blade;
  const low = middle - half;
  const high = middle + half;
  return [
    lineTo(start, low + small),
    arcTo({ x: start - small, y: low }, { x: start - small, y: low + small }, true),
    lineTo(back + corner, low),
    arcTo({ x: back, y: low + corner }, { x: back + corner, y: low + corner }, true),
    lineTo(back, high - corner),
    arcTo({ x: back + corner, y: high }, { x: back + corner, y: high - corner }, true),
    lineTo(start - small, high),
    arcTo({ x: start, y: high - small }, { x: start - small, y: high - small }, true),
  ];
}
