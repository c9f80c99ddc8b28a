/** Holds what lives as long as the view and is no business of React: model, eye, marks, and the ties to the canvas. */
import type { RootState } from '@react-three/fiber';
import { watchContext } from './context-watch.ts';
import { MarkPlacer } from './mark-placer.ts';
import { createSceneHandle } from './scene-handle.ts';
import { SceneModel } from './scene-model.ts';
import type { SceneFailure, SceneViewProps } from './scene-types.ts';
import type { PointerSettings } from './view-pointer.ts';
import { ViewStore } from './view-store.ts';

type Callbacks = Pick<SceneViewProps, 'createWorker' | 'onReady' | 'onFailure' | 'pointer' | 'wheel'>;

const CONTEXT_LOST: SceneFailure = {
  code: 'context-lost',
  sentence:
    'The graphics card took the solid view away and did not give it back. The drawing shows the same section; nothing you entered is lost.',
};

export class SceneController {
  readonly model: SceneModel;
  readonly view: ViewStore;
  readonly placer = new MarkPlacer();
  #callbacks: Callbacks;
  #invalidate: () => void = () => undefined;
  #stopWatching: () => void = () => undefined;

  constructor(callbacks: Callbacks) {
    this.#callbacks = callbacks;
    this.model = new SceneModel({
      createWorker: (url) => this.#callbacks.createWorker(url),
      onChange: this.redraw,
      onFailure: ({ sentence }) => this.#callbacks.onFailure?.({ code: 'worker', sentence }),
      onFilled: () => this.view.frameFirst(),
    });
    this.view = new ViewStore(() => this.model.extent());
  }

  /** Takes the newest callbacks and settings; nothing is made anew for them. */
  setCallbacks(callbacks: Callbacks): void {
    this.#callbacks = callbacks;
  }

  /** Asks for one frame. */
  readonly redraw = (): void => this.#invalidate();

  readonly pointerSettings = (): PointerSettings => ({
    pointer: this.#callbacks.pointer ?? 'orbit first',
    wheel: this.#callbacks.wheel ?? 'auto',
  });

  /** Ties the view to its canvas, once it is there. */
  attach(state: RootState, isSlow: boolean, onRestoring: (isRestoring: boolean) => void): void {
    this.#invalidate = () => state.invalidate();
    this.#stopWatching();
    this.#stopWatching = watchContext(state.gl.domElement, {
      onLost: () => onRestoring(true),
      onRestored: () => {
        onRestoring(false);
        state.invalidate();
      },
      onGivenUp: () => this.#callbacks.onFailure?.(CONTEXT_LOST),
    });
    this.#callbacks.onReady?.(createSceneHandle(state, this.model, this.view, isSlow));
  }

  start(): void {
    this.model.start();
  }

  stop(): void {
    this.#stopWatching();
    this.#stopWatching = () => undefined;
    this.model.stop();
  }
}
