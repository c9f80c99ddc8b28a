/**
 * The heights of one stack as a chain of dimensions from the plug's lowest point up to the cap: metal under the key, key
 * to the foot, the parts, the spring. mm, heights above the plug's axis.
 */
import type { Assembly } from '../model/assembly/assembly.ts';
import type { PosedPart } from '../model/assembly/pose.ts';
import { formatLength } from '../model/units/format-length.ts';
import type { JobUnit } from '../model/units/length-unit.ts';
import type { StackSplit } from './stack-split.ts';

export type Dimension = { readonly from: number; readonly to: number; readonly text: string };

const NAMES = {
  ball: 'ball',
  bottomPin: 'bottom pin',
  masterPin: 'master pin',
  driver: 'driver',
  spring: 'spring',
} as const;

/** Lists the chain, lowest first. Ball and bottom pin are one length: they are measured together. */
export function stackDimensions(assembly: Assembly, split: StackSplit, unit: JobUnit): Dimension[] {
  const stack = split.pose.stacks.find((each) => each.chamber === split.chamber.id);
  const { key } = assembly;
  const text = (name: string, length: number): string =>
    `${name} ${formatLength(length, { unit, form: 'bench', keepsPlaces: true })}`;
  const dimension = (name: string, from: number, to: number): Dimension[] =>
    to - from > 1e-6 ? [{ from, to, text: text(name, to - from) }] : [];
  const radius = assembly.bodies[0]?.outerRadius ?? 0;
  const parts = stack?.parts ?? [];
  const foot = parts[0];
  const underKey = key === null ? [] : dimension('metal under the key', -radius, key.bottomY);
  const isHeld = stack?.heldBy === 'key' && foot !== undefined && key !== null;
  const toFoot = isHeld ? dimension(`key, to the ${NAMES[foot.part.role]}`, key.bottomY, foot.y) : [];
  return [...underKey, ...toFoot, ...partDimensions(parts, dimension)];
}

function partDimensions(
  parts: readonly PosedPart[],
  dimension: (name: string, from: number, to: number) => Dimension[],
): Dimension[] {
  return parts.flatMap((posed, i) => {
    const before = parts[i - 1];
    const next = parts[i + 1];
    const isBallUnderPin = posed.part.role === 'ball' && next?.part.role === 'bottomPin';
    if (isBallUnderPin) return [];
    const onBall = posed.part.role === 'bottomPin' && before?.part.role === 'ball';
    const from = onBall ? before.y : posed.y;
    const name = onBall ? 'ball + bottom pin' : NAMES[posed.part.role];
    return dimension(name, from, posed.topY);
  });
}
