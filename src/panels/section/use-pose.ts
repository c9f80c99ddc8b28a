/** The assembly as it stands now: key part of the way in, plug turned or not. */
import { poseAt } from '../../model/assembly/pose-at.ts';
import type { Pose } from '../../model/assembly/pose.ts';
import type { Look } from '../shared/look.ts';
import { useView } from '../shared/services.tsx';

export function usePose({ assembly }: Look): Pose {
  const travel = useView((view) => view.travel);
  const { key } = assembly;
  return poseAt(assembly, { travel: key === null ? null : Math.max(key.seatedTravel, travel) });
}

/** The same with the key fully in and the plug upright: what the readings are about. */
export function homePose({ assembly }: Look): Pose {
  return poseAt(assembly, { travel: assembly.key === null ? null : assembly.key.seatedTravel });
}
