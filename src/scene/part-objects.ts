/**
 * The one translator from parts to three: keeps an object for every part, gives it geometry, material and place, and frees
 * what is no longer shown. Knows nothing of React; the view and the flat section both use it.
 *
 * Frame and units of assembly.ts: the scene's units are millimetres.
 */
import { Box3, type BufferGeometry, Group, LineSegments, type Matrix4, Mesh, type Object3D } from 'three';
import type { PartKind, PartPlace, PartSet, SpringPart } from '../solids/solid-parts.ts';
import type { ReadyMesh } from '../solids/solids-client.ts';
import type { Triple } from '../solids/section-plane.ts';
import { buildPartGeometry, buildSpringGeometry, GeometryShelf, type PartGeometry } from './part-geometry.ts';
import type { PartLook, PartLooks } from './part-looks.ts';
import type { PartAppearance, PartVisibility } from './scene-types.ts';
import type { Extent } from './view-state.ts';

type Node = {
  readonly kind: PartKind;
  /** In its stack, from the bottom; 0 for bodies. */
  readonly place: number;
  readonly group: Group;
  /** Surface, cut face, edges and outline, as far as there are any. */
  readonly skin: Mesh;
  readonly cap: Mesh;
  readonly edges: LineSegments;
  readonly outline: Mesh;
  readonly isSpring: boolean;
  geometryKey: string | null;
  isPlaced: boolean;
  appearance: PartAppearance;
  length: number | null;
};

/** Where parts of a kind go when they are pulled apart. */
export type Offsets = Readonly<Partial<Record<PartKind, Triple>>>;

export class PartObjects {
  readonly root = new Group();
  readonly #nodes = new Map<string, Node>();
  readonly #solids = new GeometryShelf<PartGeometry>();
  readonly #springs = new GeometryShelf<{ readonly coil: BufferGeometry }>();
  #places: ReadonlyMap<string, PartPlace> = new Map();
  #visibility: PartVisibility = {};
  #offsets: Offsets = {};

  /** Makes objects for new parts and drops those that are gone. */
  setParts(parts: PartSet): void {
    const wanted = new Map([...parts.solids, ...parts.springs].map((part) => [part.key, part]));
    for (const [key, node] of this.#nodes) {
      if (wanted.get(key)?.kind === node.kind) continue;
      this.#clear(node);
      this.root.remove(node.group);
      this.#nodes.delete(key);
    }
    for (const [key, { kind, place }] of wanted) {
      if (!this.#nodes.has(key)) this.#nodes.set(key, this.#add(key, kind, place));
    }
    for (const spring of parts.springs) this.#setSpring(spring);
  }

  /** Shows the meshes of the solids; parts without one keep what they had. */
  setMeshes(meshes: ReadonlyMap<string, ReadyMesh>): void {
    for (const [key, { meshKey, buffers }] of meshes) {
      const node = this.#nodes.get(key);
      if (!node || node.geometryKey === meshKey) continue;
      const geometry = this.#solids.take(meshKey, () => buildPartGeometry(buffers));
      this.#clear(node);
      node.geometryKey = meshKey;
      node.skin.geometry = geometry.skin;
      attach(node.group, node.cap, geometry.cap);
      attach(node.group, node.edges, geometry.edges);
      attach(node.group, node.outline, geometry.outline);
    }
    this.#showAll();
  }

  setLooks(looks: PartLooks): void {
    for (const node of this.#nodes.values()) {
      const look: PartLook = looks.look(node.kind, node.place, node.appearance === 'see-through');
      node.skin.material = look.skin;
      node.cap.material = look.cap;
      node.edges.material = look.edges;
      node.outline.material = look.outline;
    }
  }

  /** Says how each kind is shown; call `setLooks` after it. */
  setVisibility(visibility: PartVisibility, offsets: Offsets): void {
    this.#visibility = visibility;
    this.#offsets = offsets;
    this.place(this.#places);
  }

  /** Moves, turns and lengthens parts. Cheap: called for every frame of a motion. */
  place(places: ReadonlyMap<string, PartPlace>): void {
    this.#places = places;
    for (const [key, node] of this.#nodes) {
      const place = places.get(key);
      node.isPlaced = place !== undefined;
      node.appearance = this.#visibility[node.kind] ?? 'shown';
      if (!place) continue;
      const offset = node.appearance === 'pulled apart' ? this.#offsets[node.kind] : undefined;
      setPlace(node.group.matrix, place, offset ?? [0, 0, 0]);
      node.group.matrixWorldNeedsUpdate = true;
      if (node.isSpring && place.length !== null && node.skin.morphTargetInfluences) {
        node.skin.morphTargetInfluences[0] = place.length;
        node.length = place.length;
      }
    }
    this.#showAll();
  }

  /** The box around what is shown; null when there is nothing. */
  extent(): Extent | null {
    this.root.updateMatrixWorld(true);
    const all = new Box3();
    for (const node of this.#nodes.values()) {
      if (node.group.visible) all.union(boxOf(node));
    }
    if (all.isEmpty()) return null;
    return { low: all.min.toArray(), high: all.max.toArray() };
  }

  get isEmpty(): boolean {
    return ![...this.#nodes.values()].some((node) => node.geometryKey !== null && !node.isSpring);
  }

  dispose(): void {
    for (const node of this.#nodes.values()) this.#clear(node);
    this.#nodes.clear();
    this.root.clear();
  }

  #add(key: string, kind: PartKind, place: number): Node {
    const group = new Group();
    group.name = key;
    group.matrixAutoUpdate = false;
    const node: Node = {
      kind,
      place,
      group,
      skin: new Mesh(),
      cap: new Mesh(),
      edges: new LineSegments(),
      outline: new Mesh(),
      isSpring: kind === 'spring',
      geometryKey: null,
      isPlaced: false,
      appearance: 'shown',
      length: null,
    };
    // Its corners are made in the graphics card, out of sight of the usual box test.
    node.outline.frustumCulled = false;
    group.add(node.skin);
    group.visible = false;
    this.root.add(group);
    return node;
  }

  #setSpring(spring: SpringPart): void {
    const node = this.#nodes.get(spring.key);
    if (!node || node.geometryKey === spring.shapeKey) return;
    const { coil } = this.#springs.take(spring.shapeKey, () => buildSpringGeometry(spring.shape));
    this.#clear(node);
    node.geometryKey = spring.shapeKey;
    node.skin.geometry = coil;
    node.skin.updateMorphTargets();
    // Its corners move in the graphics card, out of sight of the usual box test.
    node.skin.frustumCulled = false;
  }

  #clear(node: Node): void {
    if (node.geometryKey === null) return;
    (node.isSpring ? this.#springs : this.#solids).release(node.geometryKey);
    node.geometryKey = null;
  }

  #showAll(): void {
    for (const node of this.#nodes.values()) {
      node.group.visible = node.isPlaced && node.geometryKey !== null && node.appearance !== 'hidden';
    }
  }
}

function attach(
  group: Group,
  object: Object3D & { geometry: BufferGeometry },
  geometry: BufferGeometry | null,
): void {
  if (geometry === null) {
    group.remove(object);
    return;
  }
  object.geometry = geometry;
  if (object.parent === null) group.add(object);
}

function boxOf(node: Node): Box3 {
  const { geometry } = node.skin;
  if (geometry.boundingBox === null) geometry.computeBoundingBox();
  const box = (geometry.boundingBox ?? new Box3()).clone();
  if (node.isSpring) {
    box.min.y = 0;
    box.max.y = node.length ?? 0;
  }
  return box.applyMatrix4(node.group.matrix);
}

/** Puts a place into a matrix. */
export function setPlace(matrix: Matrix4, place: PartPlace, offset: Triple): void {
  const { shift, turn, axisY } = place;
  const cosine = Math.cos(turn);
  const sine = Math.sin(turn);
  const x = shift[0];
  const y = shift[1] - axisY;
  matrix.set(
    cosine,
    -sine,
    0,
    offset[0] + cosine * x - sine * y,
    sine,
    cosine,
    0,
    offset[1] + axisY + sine * x + cosine * y,
    0,
    0,
    1,
    offset[2] + shift[2],
    0,
    0,
    0,
    1,
  );
}
