/** How high the key lifts each stack on its way in. Heights above the key's bottom edge, mm. */
import type { Assembly, AssemblyChamber, AssemblyKey, AssemblyStack } from '../assembly/assembly.ts';
import { buildContactCurve } from '../contact/contact-curve.ts';
import { buildFoot } from '../contact/foot.ts';
import { highestOn, type LiftCurve, liftCurve } from '../contact/lift-curve.ts';
import type { InsertionResult } from './evaluation.ts';

/** The lift of one chamber over the key's whole way, from wholly out to seated; null without a key or a stack. */
export function chamberLift(assembly: Assembly, chamber: AssemblyChamber): LiftCurve | null {
  const stack = assembly.stacks.find((each) => each.chamber === chamber.id);
  const { key } = assembly;
  return key === null || stack === undefined ? null : liftOf(key, chamber, stack);
}

function liftOf(key: AssemblyKey, chamber: AssemblyChamber, stack: AssemblyStack): LiftCurve | null {
  const first = stack.parts[0];
  if (first === undefined || stack.restY === null || key.outTravel <= key.seatedTravel) return null;
  const contact = buildContactCurve(key.profile, buildFoot(first.lower, first.radius));
  const rest = stack.restY - key.bottomY;
  return liftCurve(contact, chamber.z, { rest, fromTravel: key.outTravel, toTravel: key.seatedTravel });
}

/** The highest lift of every chamber. */
export function insertionResults(assembly: Assembly): InsertionResult[] {
  return assembly.chambers.flatMap((chamber): InsertionResult[] => {
    const curve = chamberLift(assembly, chamber);
    if (curve === null) return [];
    const { height, travel } = highestOn(curve);
    return [{ chamber: chamber.id, highest: height, highestAt: travel, rest: curve.rest }];
  });
}
