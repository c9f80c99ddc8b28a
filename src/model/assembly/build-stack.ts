/** One stack of the assembly: parts bottom to top with their nominal sizes. Frame and units as in assembly.ts. */
import {
  lowerStackEnd,
  type MeasuredPart,
  type MeasuredStack,
  measureStack,
} from '../measured/measured-stack.ts';
import { lengthOf } from '../measured/part-ends.ts';
import type { Bench } from '../measured/selection.ts';
import type { Item } from '../schema/key-schema.ts';
import type { AssemblyChamber, StackPart } from './assembly.ts';

/** Springs nobody measured are drawn with these shares of the part's diameter. */
const USUAL_WIRE_SHARE = 0.09;
const USUAL_COILS = 10;

/** Builds the parts of a chamber's stack, up to the first one whose height is not known. */
export function buildStack(bench: Bench, chamber: AssemblyChamber, lineRadius: number): StackPart[] {
  const items = bench.plan.stacks.find((each) => each.chamber === chamber.id)?.items ?? [];
  const holeRadius = chamber.holes[0]?.radius ?? lineRadius / 5;
  const stack = measureItems(bench, items, lineRadius, holeRadius);
  const built: StackPart[] = [];
  let below = 0;
  for (let i = 0; i < stack.parts.length; i++) {
    const part = stack.parts[i];
    if (part === undefined) break;
    if (part.role === 'spring') {
      built.push(springPart(part));
      continue;
    }
    const top = stack.tops[i];
    if (top === null || top === undefined) break;
    const added = top.value - below;
    below = top.value;
    built.push(solidPart(part, added));
  }
  return built;
}

/** Measures items as they would stand in a chamber. */
export function measureItems(
  bench: Bench,
  items: readonly Item[],
  lineRadius: number,
  holeRadius: number,
): MeasuredStack {
  const before = bench.stacks.get(items);
  if (before?.holeRadius === holeRadius) return before.stack;
  const stack = measureStack(items, bench.parts, bench.groups, lineRadius, holeRadius, bench.measuring);
  bench.stacks.set(items, { holeRadius, stack });
  return stack;
}

/** Height of the foot's lowest point with no key in, where it was seen to rest; null when it was not. */
export function restHeight(bench: Bench, chamber: AssemblyChamber, lineRadius: number): number | null {
  const rest = bench.plan.stacks.find((each) => each.chamber === chamber.id)?.rest;
  if (rest === undefined) return null;
  const stack = measureItems(bench, rest.items, lineRadius, chamber.holes[0]?.radius ?? lineRadius / 5);
  const height = stack.tops[lowerStackEnd(stack)];
  if (height === null || height === undefined) return null;
  return lineRadius - lengthOf(rest.belowLine, 0) - height.value;
}

/**
 * A part that adds less to the stack than its length has what is under it reach into its dimple. One that adds more, because
 * it was measured together with others and found longer, is taken to be as long as it adds.
 */
function solidPart(part: MeasuredPart, added: number): StackPart {
  const own = Math.max(added, part.length?.value ?? added);
  return {
    ...common(part),
    length: Math.max(0.001, own),
    seat: Math.max(0, own - added),
    solid: 0,
    wire: 0,
    coils: 0,
  };
}

function springPart(part: MeasuredPart): StackPart {
  const { free, solid, wire, coils } = part.part;
  const radius = part.radius.value;
  const thickness = lengthOf(wire, radius * 2 * USUAL_WIRE_SHARE);
  const turns = coils ?? USUAL_COILS;
  const squeezed = lengthOf(solid, thickness * turns);
  return {
    ...common(part),
    length: lengthOf(free, squeezed * 2.6),
    seat: 0,
    solid: squeezed,
    wire: thickness,
    coils: turns,
  };
}

function common(
  part: MeasuredPart,
): Pick<StackPart, 'part' | 'label' | 'role' | 'radius' | 'lower' | 'upper' | 'waist'> {
  const radius = Math.max(0.02, part.radius.value);
  const { waist, length } = part.part;
  const waistLength = lengthOf(waist?.length, 0);
  const from = lengthOf(waist?.from, 0);
  return {
    part: part.part.id,
    label: part.part.label,
    role: part.role,
    radius,
    lower: part.lower.shape,
    upper: part.upper.shape,
    waist:
      waist === undefined
        ? null
        : {
            kind: waist.kind,
            from: part.flipped ? lengthOf(length, 0) - from - waistLength : from,
            length: waistLength,
            radius: lengthOf(waist.diameter, 2 * radius) / 2,
          },
  };
}
