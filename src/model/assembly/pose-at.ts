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
  /** Where each stack parts while something turns; without it a part belongs to the body its middle is in. */
  readonly parting?: Parting;
  /** For each chamber, the height that what stands above the turning body has been lifted to: by default its driver. */
  readonly driverFloors?: ReadonlyMap<Id, number>;
};

export type Parting = {
  /** The line that turns, inside to outside. */
  readonly lineIndex: number;
  /** For each chamber, the part under the split there: it and what is under it goes along, the rest stays. */
  readonly below: ReadonlyMap<Id, Id>;
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
  const below = input.parting?.below.get(chamber.id);
  const parted = stack.parts.findIndex(({ part }) => part === below);
  let top = footY;
  let crushedBy = 0;
  for (const [i, part] of stack.parts.entries()) {
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
    const isLifted = parted < 0 ? part.role === 'driver' : i === parted + 1;
    const floor = isLifted ? (input.driverFloors?.get(chamber.id) ?? -Infinity) : -Infinity;
    const y = Math.max(top - part.seat, floor);
    const topY = y + part.length;
    const around = bodyAround(assembly, (y + topY) / 2, part.role === 'driver');
    const side = parted < 0 || input.parting === undefined ? null : i <= parted ? 'below' : 'above';
    parts.push({
      part,
      y,
      topY,
      turnsWith: onItsSide(assembly, around, side, input.parting?.lineIndex ?? 0),
    });
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

/** Below the split a part is in the line's inner body or further in, above it in the outer one or further out. */
function onItsSide(assembly: Assembly, around: Id, side: 'below' | 'above' | null, lineIndex: number): Id {
  if (side === null) return around;
  const at = assembly.bodies.findIndex(({ id }) => id === around);
  const index = side === 'below' ? Math.min(at, lineIndex) : Math.max(at, lineIndex + 1);
  return assembly.bodies[index]?.id ?? around;
}

function outermost(assembly: Assembly): Id {
  return assembly.bodies.at(-1)?.id ?? '';
}
