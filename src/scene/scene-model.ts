/**
 * The scene without React: what is shown, where it stands, how it is cut. Props come in by setters, each of which does only
 * what its own change needs; `onChange` asks for a frame.
 */
import { Group, Vector2 } from 'three';
import type { Assembly } from '../model/assembly/assembly.ts';
import type { Pose } from '../model/assembly/pose.ts';
import { planeForPart, type SectionPlane } from '../solids/section-plane.ts';
import { buildPartSet, type PartPlace, type PartSet, placeParts } from '../solids/solid-parts.ts';
import { SolidsClient, type SolidsFailure } from '../solids/solids-client.ts';
import { solidsWorkerUrl } from '../solids/solids-worker-url.ts';
import { type EyeUniforms, PartLooks } from './part-looks.ts';
import { type Offsets, PartObjects } from './part-objects.ts';
import { pulledApart } from './pulled-apart.ts';
import type { SceneTheme } from './scene-theme.ts';
import { SceneLamp } from './scene-lamp.ts';
import type { PartVisibility } from './scene-types.ts';
import type { Extent, PictureSize, ViewState } from './view-state.ts';

export type SceneModelOptions = {
  readonly createWorker: (url: string) => Worker;
  readonly onChange: () => void;
  readonly onFailure: (failure: SolidsFailure) => void;
  /** All parts of the first assembly are there. */
  readonly onFilled: () => void;
};

export class SceneModel {
  readonly root = new Group();
  readonly #eye = { scale: { value: 1 }, picture: { value: new Vector2(1, 1) } } satisfies EyeUniforms;
  readonly #lamp = new SceneLamp();
  readonly #objects = new PartObjects();
  readonly #options: SceneModelOptions;
  #client: SolidsClient | null = null;
  #looks: PartLooks | null = null;
  #assembly: Assembly | null = null;
  #parts: PartSet = { solids: [], springs: [] };
  #places: ReadonlyMap<string, PartPlace> = new Map();
  #plane: SectionPlane | null = null;
  #visibility: PartVisibility = {};
  #offsets: Offsets = {};

  constructor(options: SceneModelOptions) {
    this.#options = options;
    this.root.add(this.#objects.root, this.#lamp.root);
  }

  /** Solids made anew so far. */
  get solidsMade(): number {
    return this.#client?.madeCount ?? 0;
  }

  /** Starts the worker; a stopped model can be started again. */
  start(): void {
    this.#client = new SolidsClient({
      createWorker: () => this.#options.createWorker(solidsWorkerUrl),
      onMeshes: (meshes) => {
        const wasEmpty = this.#objects.isEmpty;
        this.#objects.setMeshes(meshes);
        this.#applyLooks();
        this.#options.onChange();
        if (wasEmpty) this.#options.onFilled();
      },
      onFailure: this.#options.onFailure,
    });
    this.#wantMeshes();
  }

  /** Stops the worker and frees everything. */
  stop(): void {
    this.#client?.dispose();
    this.#client = null;
    this.#objects.dispose();
    this.#looks?.dispose();
    this.#looks = null;
    this.#assembly = null;
  }

  setAssembly(assembly: Assembly, pose: Pose): void {
    this.#assembly = assembly;
    this.#parts = buildPartSet(assembly);
    this.#objects.setParts(this.#parts);
    this.#setVisibility();
    this.setPose(pose);
    this.#applyLooks();
  }

  setPose(pose: Pose): void {
    if (this.#assembly === null) return;
    this.#places = placeParts(this.#assembly, pose);
    this.#objects.place(this.#places);
    this.#wantMeshes();
    this.#options.onChange();
  }

  setPlane(plane: SectionPlane | null): void {
    this.#plane = plane;
    this.#wantMeshes();
  }

  setTheme(theme: SceneTheme, hatching: 'bodies' | 'all'): void {
    const before = this.#looks;
    this.#looks = new PartLooks(theme, hatching, this.#eye);
    this.#applyLooks();
    this.#lamp.setTheme(theme);
    before?.dispose();
    this.#options.onChange();
  }

  setVisibility(visibility: PartVisibility): void {
    this.#visibility = visibility;
    this.#setVisibility();
    this.#applyLooks();
    this.#options.onChange();
  }

  /** Sets what depends on the eye: the lamp, the scale of the hatching, the thickness of lines. CSS pixels. */
  setEye(view: ViewState, picture: PictureSize): void {
    this.#lamp.aim(view);
    this.#eye.scale.value = view.height / Math.max(1, picture.height);
    this.#eye.picture.value.set(picture.width, picture.height);
  }

  extent(): Extent | null {
    return this.#objects.extent();
  }

  #setVisibility(): void {
    if (this.#assembly === null) return;
    this.#offsets = pulledApart(this.#assembly, this.#visibility);
    this.#objects.setVisibility(this.#visibility, this.#offsets);
  }

  #applyLooks(): void {
    if (this.#looks) this.#objects.setLooks(this.#looks);
  }

  #wantMeshes(): void {
    if (this.#client === null || this.#parts.solids.length === 0) return;
    const plane = this.#plane;
    this.#client.want(
      this.#parts.solids.flatMap(({ key, recipe, recipeKey }) => {
        const place = this.#places.get(key);
        if (!place) return [];
        return [{ partKey: key, recipe, recipeKey, plane: plane && planeForPart(plane, place) }];
      }),
    );
  }
}
