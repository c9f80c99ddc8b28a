/** What the app can ask of a view that is ready: commands, pictures, numbers. */
import type { RootState } from '@react-three/fiber';
import { aimCamera, createCameras } from './camera.ts';
import { capturePixels, isBlank, pngOf } from './capture.ts';
import type { SceneModel } from './scene-model.ts';
import type { SceneHandle } from './scene-types.ts';
import type { ViewStore } from './view-store.ts';

export function createSceneHandle(
  state: RootState,
  model: SceneModel,
  view: ViewStore,
  isSlowRenderer: boolean,
): SceneHandle {
  const cameras = createCameras();
  return {
    run: (command) => view.run(command),
    capture: async (options) => {
      const pixels = capturePixels(
        state.gl,
        state.scene,
        (size) => {
          const isOrthographic = 'isOrthographicCamera' in state.get().camera;
          const camera = isOrthographic ? cameras.orthographic : cameras.perspective;
          // Lines keep their thickness and pitch on paper: as many of them as on screen, not as many pixels each.
          const ratio = view.size.height / size.height;
          model.setEye(view.state, { width: size.width * ratio, height: view.size.height });
          aimCamera(camera, view.state, size, model.extent());
          return camera;
        },
        options,
      );
      state.invalidate();
      if (isBlank(pixels)) throw new Error('The picture came out blank; look at the view and try again.');
      return pngOf(pixels);
    },
    statistics: () => {
      const { memory, render, programs } = state.gl.info;
      return {
        frames: render.frame,
        geometries: memory.geometries,
        textures: memory.textures,
        programs: programs?.length ?? 0,
        triangles: render.triangles,
        solidsMade: model.solidsMade,
        isSlowRenderer,
      };
    },
  };
}
