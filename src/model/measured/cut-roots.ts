/**
 * Root depths of a key's cuts, whichever way they were measured: metal left under the cut, or the height over a ball laid
 * in it, from which the root follows with the root flat and the cut's angle. mm.
 */
import { rootDepthFromOverBall } from '../contact/over-ball.ts';
import { applyTo } from '../estimate/apply-to.ts';
import type { Estimate } from '../estimate/estimate.ts';
import { asRadians } from '../radians.ts';
import type { Id } from '../schema/leaf.ts';
import type { MeasuredCut, MeasuredKey } from './measured-key.ts';

export type RootRoute = 'rootDepth' | 'overBall';

/** The root depth of a cut by one way of measuring it; null when it was not measured that way. */
export function rootOf(cut: MeasuredCut, route: RootRoute, bladeHeight: number): Estimate | null {
  if (route === 'rootDepth') return cut.rootDepth;
  if (cut.overBall === null) return null;
  const { reading, ball } = cut.overBall;
  return applyTo(
    [reading, ball, cut.rootFlat, cut.includedAngle],
    ([over = 0, across = 0, flat = 0, angle = 0]) =>
      rootDepthFromOverBall({
        reading: over,
        ballDiameter: Math.max(0.01, across),
        cut: { rootFlat: Math.max(0, flat), includedAngle: asRadians(Math.min(3, Math.max(0.1, angle))) },
        bladeHeight,
      }),
  );
}

/** Root depths by id, by either way; a cut that was not measured at all is left out. */
export function nominalRoots(key: MeasuredKey): Map<Id, number> {
  const roots = new Map<Id, number>();
  for (const cut of key.cuts) {
    const root = cut.rootDepth ?? rootOf(cut, 'overBall', key.bladeHeight.value);
    if (root !== null) roots.set(cut.id, root.value);
  }
  return roots;
}
