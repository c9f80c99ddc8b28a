/** The assembly as it stands now: key part of the way in, or fully in and the plug turned as far as it goes. */
import type { Assembly } from '../../model/assembly/assembly.ts';
import { type PoseInput, poseAt } from '../../model/assembly/pose-at.ts';
import type { Pose } from '../../model/assembly/pose.ts';
import type { Radians } from '../../model/radians.ts';
import type { Id } from '../../model/schema/leaf.ts';
import type { Look } from '../shared/look.ts';
import { useView } from '../shared/services.tsx';
import { turnAttempt } from './turn-words.ts';

export function usePose(look: Look): Pose {
  const travel = useView((view) => view.travel);
  const turn = useView((view) => view.turn);
  const line = useView((view) => view.pickedLine);
  return poseOf(look, travel, turn, line);
}

/** Poses what is looked at with the key so far out; turned, the bodies that turn carry their pins and lift what stays. */
export function poseOf(look: Look, travel: number, turn: Radians, line: Id | null): Pose {
  const { assembly } = look;
  const input: PoseInput = { travel: keyTravel(assembly, travel) };
  const attempt = turn === 0 ? null : turnAttempt(look, line);
  if (attempt === null) return poseAt(assembly, input);
  const turns = new Map(attempt.turning.map((body) => [body, turn]));
  const { parting, driverFloors } = attempt;
  return poseAt(assembly, { ...input, turns, parting, driverFloors: driverFloors(turn) });
}

/** The same with the key fully in and the plug upright: what the readings are about. */
export function homePose({ assembly }: Look): Pose {
  return poseAt(assembly, { travel: assembly.key === null ? null : assembly.key.seatedTravel });
}

function keyTravel({ key }: Assembly, travel: number): number | null {
  return key === null ? null : Math.max(key.seatedTravel, travel);
}
