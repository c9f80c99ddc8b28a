/** Aims the camera before each frame, keeps the hatching's pitch, and moves the marks along. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useState } from 'react';
import { aimCamera, createCameras, pointInPicture } from './camera.ts';
import type { MarkPlacer } from './mark-placer.ts';
import type { SceneModel } from './scene-model.ts';
import type { ViewStore } from './view-store.ts';

export type CameraRigProps = {
  readonly view: ViewStore;
  readonly model: SceneModel;
  readonly projection: 'orthographic' | 'perspective';
  readonly marks: MarkPlacer;
};

export function CameraRig({ view, model, projection, marks }: CameraRigProps): null {
  const set = useThree((state) => state.set);
  const invalidate = useThree((state) => state.invalidate);
  const size = useThree((state) => state.size);
  const [cameras] = useState(createCameras);
  const camera = cameras[projection];

  useLayoutEffect(() => {
    // `manual`: the canvas leaves this camera's frame alone when it is resized.
    set({ camera: Object.assign(camera, { manual: true as const }) });
    invalidate();
  }, [camera, set, invalidate]);

  useEffect(() => view.subscribe(invalidate), [view, invalidate]);

  useLayoutEffect(() => {
    view.setSize({ width: size.width, height: size.height });
  }, [view, size]);

  useFrame(() => {
    model.setEye(view.state, view.size);
    aimCamera(camera, view.state, view.size, model.extent());
    marks.place((point) => pointInPicture(camera, view.size, point));
  });
  return null;
}
