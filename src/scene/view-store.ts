/**
 * The view's state between the frames: where it is looked at from, and how large the picture is. Changing it asks for one
 * new frame and nothing else: nothing of React runs while the view is turned.
 */
import type { SectionPlane, Triple } from '../solids/section-plane.ts';
import type { ViewCommand } from './scene-types.ts';
import {
  type Extent,
  fit,
  lookFrom,
  orbit,
  pan,
  type PictureSize,
  type ViewState,
  zoom,
} from './view-state.ts';

const START: ViewState = { target: [0, 0, 0], azimuth: 0, elevation: 0, height: 50 };

export class ViewStore {
  #state = START;
  #size: PictureSize = { width: 1, height: 1 };
  #planeNormal: Triple | null = null;
  #isFramed = false;
  readonly #extentOf: () => Extent | null;
  readonly #listeners = new Set<() => void>();

  constructor(extentOf: () => Extent | null) {
    this.#extentOf = extentOf;
  }

  get state(): ViewState {
    return this.#state;
  }

  get size(): PictureSize {
    return this.#size;
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  setSize(size: PictureSize): void {
    if (size.width === this.#size.width && size.height === this.#size.height) return;
    this.#size = size;
    this.#tell();
  }

  setPlane(plane: SectionPlane | null): void {
    this.#planeNormal = plane?.normal ?? null;
  }

  /** Looks at the section and fits it in, once, when there is something to see. */
  frameFirst(): void {
    if (this.#isFramed || this.#extentOf() === null) return;
    this.#isFramed = true;
    this.run({ kind: 'look from', view: 'section' });
  }

  run(command: ViewCommand): void {
    this.#state = this.#after(command);
    this.#tell();
  }

  /** Enlarges about a place in the picture, in shares of its height from its middle. */
  zoomAt(factor: number, place: { readonly right: number; readonly up: number }): void {
    this.#state = zoom(this.#state, factor, place);
    this.#tell();
  }

  #after(command: ViewCommand): ViewState {
    switch (command.kind) {
      case 'look from':
        return this.#fitted(lookFrom(this.#state, command.view, this.#planeNormal));
      case 'fit':
        return this.#fitted(this.#state);
      case 'orbit':
        return orbit(this.#state, command.byAzimuth, command.byElevation);
      case 'pan':
        return pan(this.#state, command.byRight, command.byUp);
      case 'zoom':
        return zoom(this.#state, command.factor, { right: 0, up: 0 });
    }
  }

  #fitted(view: ViewState): ViewState {
    const extent = this.#extentOf();
    return extent === null ? view : fit(view, extent, this.#size);
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}
