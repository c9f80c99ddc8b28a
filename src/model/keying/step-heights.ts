/**
 * Where the foot of each stack would rest on a cut of every step of a depth table, under its own chamber and with no
 * neighbour: contact heights above the key's bottom edge, mm. A ball that rides on the sides of the cut stands as high as it
 * does there, never at the root depth. What a neighbour's cutter takes off a flat is left to the largest step.
 */
import { buildFoot, type Foot } from '../contact/foot.ts';
import { contactHeightAt } from '../contact/contact-at.ts';
import { nearestCut } from '../contact/flank-lift.ts';
import { buildKeyProfile } from '../contact/key-profile.ts';
import type { Assembly, AssemblyChamber, AssemblyKey } from '../assembly/assembly.ts';
import { measureItems } from '../assembly/build-stack.ts';
import { fromDegrees } from '../radians.ts';
import { USUAL_CUT } from '../measured/measured-key.ts';
import type { Bench } from '../measured/selection.ts';
import { standInStack } from '../measured/stand-in.ts';

/** Contact heights of all steps in one chamber, in the order of the root depths; null where the key does not reach it. */
export function stepHeights(
  bench: Bench,
  assembly: Assembly,
  key: AssemblyKey,
  chamber: AssemblyChamber,
  rootDepths: readonly number[],
): readonly (number | null)[] {
  const foot = footIn(bench, assembly, chamber);
  if (foot === null) return rootDepths.map(() => null);
  const { shape, seatedTravel } = key;
  const at = chamber.z + seatedTravel;
  const own = nearestCut(shape.cuts, at);
  const rootFlat = own?.rootFlat ?? USUAL_CUT.rootFlatMm.value;
  const includedAngle = own?.includedAngle ?? fromDegrees(USUAL_CUT.includedAngleDeg.value);
  return rootDepths.map((rootDepth) => {
    const cut = { id: 'step', at, rootDepth, rootFlat, includedAngle };
    const profile = buildKeyProfile({ ...shape, cuts: [cut] });
    const height = contactHeightAt(profile, foot, chamber.z, seatedTravel);
    return Number.isFinite(height) ? height : null;
  });
}

function footIn(bench: Bench, assembly: Assembly, chamber: AssemblyChamber): Foot | null {
  const radius = assembly.lines[0]?.radius ?? 1;
  const hole = chamber.holes[0]?.radius ?? 1;
  const items = bench.plan.stacks.find((each) => each.chamber === chamber.id)?.items ?? [];
  const stack =
    items.length === 0 ? standInStack(bench, radius, hole) : measureItems(bench, items, radius, hole);
  const lowest = stack.parts[0];
  return lowest === undefined ? null : buildFoot(lowest.lower.shape, Math.max(0.02, lowest.radius.value));
}
