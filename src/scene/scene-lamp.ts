/** Light that comes with the viewer, so that no side of the cylinder is ever dark: an even wash and one lamp over the shoulder. */
import { AmbientLight, DirectionalLight, Group } from 'three';
import type { SceneTheme } from './scene-theme.ts';
import { viewBasis, type ViewState } from './view-state.ts';

/** Where the lamp is held, in the picture's own directions. */
const HELD = { right: -0.45, up: 0.75, back: 1 } as const;

/** three's lights give a surface its full colour at this strength. */
const FULL = Math.PI;

/** The lamp is brighter than the wash leaves room for: surfaces turned to it come out a little lighter than their colour. */
const LAMP_GAIN = 1.35;

export class SceneLamp {
  readonly root = new Group();
  readonly #wash = new AmbientLight();
  readonly #lamp = new DirectionalLight();

  constructor() {
    this.root.add(this.#wash, this.#lamp, this.#lamp.target);
  }

  setTheme({ shade }: SceneTheme): void {
    this.#wash.intensity = shade * FULL;
    this.#lamp.intensity = (1 - shade) * LAMP_GAIN * FULL;
  }

  /** Moves the lamp along with the eye. */
  aim(view: ViewState): void {
    const { forward, right, up } = viewBasis(view);
    this.#lamp.target.position.set(...view.target);
    this.#lamp.position.set(...view.target).add({
      x: right[0] * HELD.right + up[0] * HELD.up - forward[0] * HELD.back,
      y: right[1] * HELD.right + up[1] * HELD.up - forward[1] * HELD.back,
      z: right[2] * HELD.right + up[2] * HELD.up - forward[2] * HELD.back,
    });
    this.root.updateMatrixWorld(true);
  }
}
