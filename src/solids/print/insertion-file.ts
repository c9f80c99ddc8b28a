/**
 * The insertion as a scene file in the glTF form: bodies cut open, key and pins whole, springs that are squeezed. Node
 * translations and the springs' weights are keyed moment by moment, straight from one to the next. The file's unit is the
 * metre: one node over all makes metres of millimetres.
 */
import type { ManifoldToplevel } from 'manifold-3d';
import { buildSpringMesh, springPositions } from '../helix-mesh.ts';
import { SolidsKernel } from '../manifold-kernel.ts';
import type { MeshBuffers } from '../mesh-buffers.ts';
import { recipeKey } from '../recipe.ts';
import { planeKey, type SectionPlane } from '../section-plane.ts';
import type { PartKind } from '../solid-parts.ts';
import { GlbLists } from './glb-writer.ts';
import type { InsertionOrder, MovingPart } from './insertion-order.ts';

type Node = Readonly<Record<string, unknown>>;
type Channel = { readonly node: number; readonly path: 'translation' | 'weights'; readonly output: number };

/** Writes the file. */
export function insertionFile(library: ManifoldToplevel, order: InsertionOrder, title: string): Uint8Array {
  const kernel = new SolidsKernel(library);
  try {
    return new InsertionWriter(kernel, order).write(title);
  } finally {
    kernel.keepOnly(new Set());
  }
}

class InsertionWriter {
  readonly #kernel: SolidsKernel;
  readonly #order: InsertionOrder;
  readonly #lists = new GlbLists();
  readonly #nodes: Node[] = [];
  readonly #meshes: object[] = [];
  readonly #materials: object[] = [];
  readonly #channels: Channel[] = [];
  readonly #meshOf = new Map<string, number>();
  readonly #materialOf = new Map<PartKind, number>();

  constructor(kernel: SolidsKernel, order: InsertionOrder) {
    this.#kernel = kernel;
    this.#order = order;
  }

  write(title: string): Uint8Array {
    for (const part of this.#order.parts) this.#part(part);
    const children = this.#nodes.map((_, i) => i);
    const root = this.#nodes.push({ name: title, scale: [0.001, 0.001, 0.001], children }) - 1;
    return this.#lists.finish({
      asset: { version: '2.0', generator: 'Shearsight' },
      scene: 0,
      scenes: [{ nodes: [root] }],
      nodes: this.#nodes,
      meshes: this.#meshes,
      materials: this.#materials,
      ...this.#animations(),
    });
  }

  #part(part: MovingPart): void {
    const node = this.#nodes.length;
    const { made, shifts, name } = part;
    const mesh = made.kind === 'solid' ? this.#solidMesh(part.kind, made) : this.#springMesh(part, made);
    this.#nodes.push({ name, mesh: mesh.index, translation: [...shifts.subarray(0, 3)] });
    if (shifts.length > 3)
      this.#channels.push({ node, path: 'translation', output: this.#lists.floats(shifts, 'VEC3') });
    if (mesh.weights !== null)
      this.#channels.push({ node, path: 'weights', output: this.#lists.floats(mesh.weights, 'SCALAR') });
  }

  /** Parts of equal numbers share their mesh. */
  #solidMesh(
    kind: PartKind,
    made: Extract<MovingPart['made'], { kind: 'solid' }>,
  ): { readonly index: number; readonly weights: null } {
    const key = `${kind} ${recipeKey(made.recipe)} ${planeKey(made.cut)}`;
    const before = this.#meshOf.get(key);
    if (before !== undefined) return { index: before, weights: null };
    const buffers = this.#kernel.buffers(this.#kernel.make(made.recipe), made.cut);
    const primitives = [this.#skin(kind, buffers), ...this.#cutFace(kind, buffers, made.cut)];
    const index = this.#meshes.push({ primitives }) - 1;
    this.#meshOf.set(key, index);
    return { index, weights: null };
  }

  #skin(kind: PartKind, { positions, normals, indices }: MeshBuffers): object {
    return this.#primitive(kind, positions, unitNormals(normals), indices);
  }

  #cutFace(kind: PartKind, { capPositions, capIndices }: MeshBuffers, cut: SectionPlane | null): object[] {
    if (cut === null || capIndices.length === 0) return [];
    const normals = Float32Array.from(capPositions, (_, i) => -(cut.normal[i % 3] ?? 0) + 0);
    return [this.#primitive(kind, capPositions, normals, capIndices)];
  }

  /** A spring as long as at the first moment, with its way to the shortest it gets as a target. */
  #springMesh(
    { kind }: MovingPart,
    { shape, lengths }: Extract<MovingPart['made'], { kind: 'spring' }>,
  ): { readonly index: number; readonly weights: Float32Array | null } {
    const mesh = buildSpringMesh(shape);
    const first = lengths[0] ?? 0;
    const shortest = lengths.reduce((least, each) => Math.min(least, each), first);
    const positions = springPositions(mesh, first);
    const primitive = this.#primitive(kind, positions, unitNormals(mesh.normals), mesh.indices);
    if (shortest === first && lengths.every((each) => each === first))
      return { index: this.#meshes.push({ primitives: [primitive] }) - 1, weights: null };
    const reach = shortest === first ? -1 : shortest - first;
    const towards = new Float32Array(positions.length);
    mesh.perLength.forEach((per, i) => (towards[3 * i + 1] = per * reach));
    const targets = [{ POSITION: this.#lists.floats(towards, 'VEC3', 'corners') }];
    const index = this.#meshes.push({ primitives: [{ ...primitive, targets }], weights: [0] }) - 1;
    return { index, weights: lengths.map((each) => (each - first) / reach + 0) };
  }

  #primitive(kind: PartKind, positions: Float32Array, normals: Float32Array, indices: Uint32Array): object {
    return {
      attributes: {
        POSITION: this.#lists.floats(positions, 'VEC3', 'corners'),
        NORMAL: this.#lists.floats(normals, 'VEC3', 'corners'),
      },
      indices: this.#lists.indices(indices),
      material: this.#material(kind),
    };
  }

  #material(kind: PartKind): number {
    const before = this.#materialOf.get(kind);
    if (before !== undefined) return before;
    const pbrMetallicRoughness = {
      baseColorFactor: [...linearColour(this.#order.colours[kind]), 1],
      metallicFactor: 0.35,
      roughnessFactor: 0.55,
    };
    const index = this.#materials.push({ pbrMetallicRoughness }) - 1;
    this.#materialOf.set(kind, index);
    return index;
  }

  #animations(): object {
    if (this.#channels.length === 0) return {};
    const input = this.#lists.floats(this.#order.seconds, 'SCALAR');
    return {
      animations: [
        {
          name: 'Insertion',
          samplers: this.#channels.map(({ output }) => ({ input, output, interpolation: 'LINEAR' })),
          channels: this.#channels.map(({ node, path }, sampler) => ({ sampler, target: { node, path } })),
        },
      ],
    };
  }
}

/** Of length one to the last place: what sums leave beside it counts as a fault to strict readers. */
function unitNormals(normals: Float32Array): Float32Array {
  const out = new Float32Array(normals.length);
  for (let i = 0; i < normals.length; i += 3) {
    const [x = 0, y = 0, z = 0] = normals.subarray(i, i + 3);
    const length = Math.hypot(x, y, z);
    out.set(length > 0 ? [x / length, y / length, z / length] : [0, 1, 0], i);
  }
  return out;
}

/** The form has colours by their light, not by their look: IEC 61966-2-1. */
function linearColour(colour: string): number[] {
  return [1, 3, 5].map((at) => {
    const look = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    const light = look <= 0.04045 ? look / 12.92 : ((look + 0.055) / 1.055) ** 2.4;
    return Math.round(light * 1e6) / 1e6;
  });
}
