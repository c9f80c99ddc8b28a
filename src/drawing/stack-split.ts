/**
 * One split of one stack at one line, as a picture needs it: where it lies, what was evaluated about it, and the pose
 * with the stack moved to the evaluated height. Frame of the end view: heights above the plug's axis. mm.
 *
 * A pose follows the key's shape; the evaluation may know the height better (a stack that was read standing up in the
 * plug). With the key home the pictures of the line show the evaluated height, so that picture and number are the same.
 */
import { known } from '../model/assert.ts';
import type { Assembly, AssemblyChamber, AssemblyLine } from '../model/assembly/assembly.ts';
import type { Pose, PosedPart, PosedStack } from '../model/assembly/pose.ts';
import type { Evaluation, SplitResult, Verdict } from '../model/evaluate/evaluation.ts';
import { turnOf } from '../geometry/cut-parts.ts';
import { resultOf, splitAt } from './split-words.ts';

export type StackSplit = {
  readonly chamber: AssemblyChamber;
  readonly line: AssemblyLine;
  readonly lineIndex: number;
  /** The parts the split lies between; null where there is none. */
  readonly below: PosedPart | null;
  readonly above: PosedPart | null;
  /** Of the split above the plug's axis, and above (+) or below (-) the line. */
  readonly height: number;
  readonly offset: number;
  /** Null while the key is not home, the plug is turned, or nothing was evaluated. */
  readonly result: SplitResult | null;
  readonly verdict: Verdict;
  /** The pose that the picture shows. */
  readonly pose: Pose;
};

/** Finds the split of a chamber that matters at a line. */
export function stackSplit(
  assembly: Assembly,
  pose: Pose,
  evaluation: Evaluation | null,
  chamberId: string,
  lineId?: string,
): StackSplit {
  const chamber = known(
    assembly.chambers.find(({ id }) => id === chamberId),
    `chamber ${chamberId}`,
  );
  const lineIndex = Math.max(
    0,
    assembly.lines.findIndex(({ id }) => id === lineId),
  );
  const line = known(assembly.lines[lineIndex], `line ${lineIndex}`);
  const stack = pose.stacks.find((each) => each.chamber === chamberId);
  const level = line.innerAxisY + line.radius;
  const result = resultOf(evaluation, chamberId);
  const found = result === null || !isHomeAndUpright(assembly, pose) ? null : splitAt(result, line.id);
  const at = splitPlace(stack, found?.split ?? null, level);
  const posedTop = stack?.parts[at]?.topY ?? level;
  const lift = found === null ? 0 : found.split.height - posedTop;
  const shown = lift === 0 ? pose : liftedStack(pose, chamberId, lift);
  const parts = shown.stacks.find((each) => each.chamber === chamberId)?.parts ?? [];
  const height = found?.split.height ?? posedTop;
  const above = parts[at + 1];
  return {
    chamber,
    line,
    lineIndex,
    below: parts[at] ?? null,
    above: above === undefined || above.part.role === 'spring' ? null : above,
    height,
    offset: found?.split.offset ?? height - level,
    result: found?.split ?? null,
    verdict: found?.verdict ?? 'unknown',
    pose: shown,
  };
}

/** The key where it stops, and nothing turned: the state an evaluation speaks of. */
export function isHomeAndUpright(assembly: Assembly, pose: Pose): boolean {
  const { key } = assembly;
  const isHome = key !== null && Math.abs(pose.travel - key.seatedTravel) < 1e-9;
  return isHome && assembly.bodies.every((body) => turnOf(pose, body.id) === 0);
}

/** Place in the stack of the part under the split: the evaluated one, else the top nearest to the line. */
function splitPlace(stack: PosedStack | undefined, split: SplitResult | null, level: number): number {
  const parts = stack?.parts ?? [];
  const named = parts.findIndex(({ part }) => part.part === split?.below);
  if (named >= 0) return named;
  let best = -1;
  parts.forEach(({ part, topY }, i) => {
    const isLower = part.role !== 'driver' && part.role !== 'spring';
    const next = parts[i + 1];
    const isUnderBall = part.role === 'ball' && next?.part.role === 'bottomPin';
    if (!isLower || isUnderBall) return;
    if (best < 0 || Math.abs(topY - level) < Math.abs((parts[best]?.topY ?? Infinity) - level)) best = i;
  });
  return best;
}

/** Moves a stack up by `lift`; its spring stays under the cap. */
function liftedStack(pose: Pose, chamber: string, lift: number): Pose {
  const stacks = pose.stacks.map((stack) => {
    if (stack.chamber !== chamber) return stack;
    const parts = stack.parts.map((posed) =>
      posed.part.role === 'spring'
        ? { ...posed, y: posed.y + lift }
        : { ...posed, y: posed.y + lift, topY: posed.topY + lift },
    );
    return { ...stack, footY: stack.footY + lift, parts };
  });
  return { ...pose, stacks };
}
