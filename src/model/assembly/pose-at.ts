/** Where everything is with the key `travel` out and the bodies turned. Pure: the same input gives the same pose. */
import { contactAt } from '../contact/contact-at.ts';
import { buildFoot } from '../contact/foot.ts';
import type { Radians } from '../radians.ts';
import type { Id } from '../schema/leaf.ts';
import type { Assembly, AssemblyChamber, AssemblyStack } from './assembly.ts';
import type { Pose, PosedPart, PosedStack } from './pose.ts';

export type PoseInput = {
  /** How far the key still is out, mm; null: no key in the plug. */
  readonly travel: number | null;
  readonly turns?: ReadonlyMap<Id, Radians>;
  /** Key lifted off its floor, mm. */
  readonly lift?: number;
  /** For each chamber, the height its driver has been lifted to by the turning plug. */
  readonly driverFloors?: ReadonlyMap<Id, number>;
};

const STILL: ReadonlyMap<Id, Radians> = new Map();

/** Poses an assembly. */
export function poseAt(assembly: Assembly, input: PoseInput): Pose {
  const stacks = assembly.stacks.flatMap((stack) => {
    const chamber = assembly.chambers.find((each) => each.id === stack.chamber);
    return chamber === undefined ? [] : [poseStack(assembly, chamber, stack, input)];
  });
  return { travel: input.travel ?? Infinity, turns: input.turns ?? STILL, stacks };
}

function poseStack(
  assembly: Assembly,
  chamber: AssemblyChamber,
  stack: AssemblyStack,
  input: PoseInput,
): PosedStack {
  const { footY, heldBy } = footOf(assembly, chamber, stack, input);
  const parts: PosedPart[] = [];
  let top = footY;
  let crushedBy = 0;
  for (const part of stack.parts) {
    if (part.role === 'spring') {
      const room = chamber.capY - top;
      crushedBy = Math.max(crushedBy, part.solid - room);
      parts.push({
        part,
        y: top,
        topY: Math.max(top, Math.min(chamber.capY, top + part.length)),
        turnsWith: outermost(assembly),
      });
      continue;
    }
    const floor = part.role === 'driver' ? (input.driverFloors?.get(chamber.id) ?? -Infinity) : -Infinity;
    const y = Math.max(top - part.seat, floor);
    const topY = y + part.length;
    parts.push({ part, y, topY, turnsWith: bodyAround(assembly, (y + topY) / 2, part.role === 'driver') });
    top = topY;
  }
  return { chamber: chamber.id, footY, heldBy, crushedBy, parts };
}

function footOf(
  assembly: Assembly,
  chamber: AssemblyChamber,
  stack: AssemblyStack,
  input: PoseInput,
): Pick<PosedStack, 'footY' | 'heldBy'> {
  const rest = stack.restY ?? -Infinity;
  const { key } = assembly;
  const first = stack.parts[0];
  if (key === null || first === undefined || input.travel === null)
    return { footY: stack.restY ?? 0, heldBy: 'rest' };
  const contact = contactAt(
    key.profile,
    buildFoot(first.lower, first.radius),
    chamber.z,
    input.travel,
  ).height;
  const onKey = key.bottomY + contact + (input.lift ?? 0);
  return onKey >= rest ? { footY: onKey, heldBy: 'key' } : { footY: rest, heldBy: 'rest' };
}

/** The body whose hole a part's middle is in; a driver belongs to the shell unless it hangs wholly inside. */
function bodyAround(assembly: Assembly, middleY: number, isDriver: boolean): Id {
  for (const line of assembly.lines) {
    if (middleY <= line.innerAxisY + line.radius && !isDriver) return line.inner;
  }
  return outermost(assembly);
}

function outermost(assembly: Assembly): Id {
  return assembly.bodies.at(-1)?.id ?? '';
}
