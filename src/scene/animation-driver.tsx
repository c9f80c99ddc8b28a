/**
 * The one place where the scene meets time. Reads the pose when it has changed, moves the parts, and asks for another frame
 * only while something still moves: at rest nothing is drawn.
 */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import type { Pose } from '../model/assembly/pose.ts';
import type { SceneModel } from './scene-model.ts';
import type { PoseSource } from './scene-types.ts';

export type AnimationDriverProps = {
  readonly model: SceneModel;
  readonly pose: Pose | PoseSource;
};

export function AnimationDriver({ model, pose }: AnimationDriverProps): null {
  const invalidate = useThree((state) => state.invalidate);
  const isChanged = useRef(true);

  useEffect(() => {
    const change = (): void => {
      isChanged.current = true;
      invalidate();
    };
    change();
    return isPoseSource(pose) ? pose.subscribe(change) : undefined;
  }, [pose, invalidate]);

  useFrame(({ clock }) => {
    if (!isPoseSource(pose)) {
      if (isChanged.current) model.setPose(pose);
      isChanged.current = false;
      return;
    }
    const isRunning = pose.isRunning();
    if (isChanged.current || isRunning) model.setPose(pose.poseAt(clock.elapsedTime));
    isChanged.current = false;
    if (isRunning) invalidate();
  });
  return null;
}

export function isPoseSource(pose: Pose | PoseSource): pose is PoseSource {
  return 'poseAt' in pose;
}

/** The pose at this moment, outside of any frame. */
export function currentPose(pose: Pose | PoseSource): Pose {
  return isPoseSource(pose) ? pose.poseAt(0) : pose;
}
