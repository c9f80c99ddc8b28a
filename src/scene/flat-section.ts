/**
 * The cut faces alone, each part in one flat colour, no light, no hatching, no smoothing of edges, framed to a rectangle in
 * millimetres: what a test lays over the drawing of the same section. Goes through the same worker and the same solids as
 * the view. Needs no React.
 *
 * Frame: looked at along +x: z to the right, y up; the plane stands at `planeX`. mm.
 */
import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  Group,
  Mesh,
  OrthographicCamera,
  Scene,
  ShaderMaterial,
  Vector3,
  WebGLRenderer,
} from 'three';
import type { Assembly } from '../model/assembly/assembly.ts';
import type { Pose } from '../model/assembly/pose.ts';
import type { MeshBuffers } from '../solids/mesh-buffers.ts';
import { axisPlane, planeForPart } from '../solids/section-plane.ts';
import { buildPartSet, type PartPlace, placeParts, type SolidPart } from '../solids/solid-parts.ts';
import { type ReadyMesh, SolidsClient } from '../solids/solids-client.ts';
import { solidsWorkerUrl } from '../solids/solids-worker-url.ts';
import { setPlace } from './part-objects.ts';

export type FlatFrame = {
  readonly planeX: number;
  /** Middle of the picture. */
  readonly middleZ: number;
  readonly middleY: number;
  readonly pixelsPerMm: number;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
};

export type FlatSectionOptions = { readonly createWorker: (url: string) => Worker };

/** Three bytes; black is where nothing is cut. */
export type FlatColour = readonly [red: number, green: number, blue: number];

/** Gives every part of an assembly a colour of its own. Up to 255 parts. */
export function flatColours(assembly: Assembly): Map<string, FlatColour> {
  return new Map(
    buildPartSet(assembly).solids.map(({ key }, i) => [
      key,
      [(i * 67 + 90) % 256, (i * 131 + 120) % 256, i + 1] as const,
    ]),
  );
}

/** The cut face of one part, and where the part stands. */
export type CutFace = {
  readonly partKey: string;
  readonly place: PartPlace;
  readonly buffers: MeshBuffers;
};

/** Draws one section and gives its pixels, top row first. */
export async function renderFlatSection(
  assembly: Assembly,
  pose: Pose,
  frame: FlatFrame,
  options: FlatSectionOptions,
): Promise<ImageData> {
  const cutter = new SectionCutter(options);
  try {
    return drawFaces(await cutter.cut(assembly, pose, frame.planeX), flatColours(assembly), frame);
  } finally {
    cutter.dispose();
  }
}

/** Makes and cuts solids, one section after the other, with one worker. */
export class SectionCutter {
  readonly #client: SolidsClient;
  #resolve: (meshes: ReadonlyMap<string, ReadyMesh>) => void = () => undefined;
  #reject: (reason: Error) => void = () => undefined;

  constructor(options: FlatSectionOptions) {
    this.#client = new SolidsClient({
      createWorker: () => options.createWorker(solidsWorkerUrl),
      onMeshes: (meshes) => this.#resolve(meshes),
      onFailure: ({ sentence }) => this.#reject(new Error(sentence)),
    });
  }

  /** Gives the cut faces in the order in which the drawing paints them. Wait for one before asking for the next. */
  async cut(assembly: Assembly, pose: Pose, planeX: number): Promise<CutFace[]> {
    const plane = axisPlane('x', planeX);
    const places = placeParts(assembly, pose);
    const placed = inDrawingOrder(buildPartSet(assembly).solids).flatMap((part) => {
      const place = places.get(part.key);
      return place ? [{ part, place }] : [];
    });
    const meshes = await new Promise<ReadonlyMap<string, ReadyMesh>>((resolve, reject) => {
      this.#resolve = resolve;
      this.#reject = reject;
      this.#client.want(
        placed.map(({ part: { key, recipe, recipeKey }, place }) => ({
          partKey: key,
          recipe,
          recipeKey,
          plane: planeForPart(plane, place),
        })),
      );
    });
    return placed.flatMap(({ part, place }) => {
      const mesh = meshes.get(part.key);
      if (!mesh || mesh.buffers.capIndices.length === 0) return [];
      return [{ partKey: part.key, place, buffers: mesh.buffers }];
    });
  }

  dispose(): void {
    this.#client.dispose();
  }
}

/** Measures a cut face, mm². */
export function faceArea({ buffers: { capPositions, capIndices } }: Pick<CutFace, 'buffers'>): number {
  const corner = new Vector3();
  const [one, two] = [new Vector3(), new Vector3()];
  let doubled = 0;
  for (let i = 0; i < capIndices.length; i += 3) {
    corner.fromArray(capPositions, 3 * (capIndices[i] ?? 0));
    one.fromArray(capPositions, 3 * (capIndices[i + 1] ?? 0)).sub(corner);
    two.fromArray(capPositions, 3 * (capIndices[i + 2] ?? 0)).sub(corner);
    doubled += one.cross(two).length();
  }
  return doubled / 2;
}

/** Draws cut faces, later ones over earlier ones. */
export function drawFaces(
  faces: readonly CutFace[],
  colours: ReadonlyMap<string, FlatColour>,
  frame: FlatFrame,
): ImageData {
  const scene = new Scene();
  const meshes = faces.map(({ partKey, place, buffers }, i) => {
    const face = flatFace(buffers, colours.get(partKey) ?? [0, 0, 0]);
    face.renderOrder = i;
    const group = new Group();
    group.matrixAutoUpdate = false;
    setPlace(group.matrix, place, [0, 0, 0]);
    group.add(face);
    scene.add(group);
    return face;
  });
  const pixels = drawFlat(scene, frame);
  for (const { geometry, material } of meshes) {
    geometry.dispose();
    material.dispose();
  }
  return pixels;
}

/** As the drawing paints: the shell first, then what is inside it, then key and stacks. */
function inDrawingOrder(parts: readonly SolidPart[]): SolidPart[] {
  const isBody = ({ kind }: SolidPart): boolean => kind === 'plug' || kind === 'sleeve' || kind === 'shell';
  return [...parts.filter(isBody).reverse(), ...parts.filter((part) => !isBody(part))];
}

function flatFace(buffers: MeshBuffers, colour: FlatColour): Mesh<BufferGeometry, ShaderMaterial> {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(buffers.capPositions, 3));
  geometry.setIndex(new BufferAttribute(buffers.capIndices, 1));
  const material = new ShaderMaterial({
    vertexShader: 'void main() { gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
    // Written as it is, without the usual change from light to screen values.
    fragmentShader: 'uniform vec3 flatColour; void main() { gl_FragColor = vec4(flatColour, 1.0); }',
    uniforms: { flatColour: { value: new Vector3(...colour).divideScalar(255) } },
    depthTest: false,
    depthWrite: false,
    side: DoubleSide,
  });
  const face = new Mesh(geometry, material);
  face.frustumCulled = false;
  return face;
}

function drawFlat(scene: Scene, frame: FlatFrame): ImageData {
  const { width, height, pixelsPerMm } = frame;
  const renderer = new WebGLRenderer({ antialias: false, alpha: false });
  renderer.setPixelRatio(1);
  renderer.setSize(width, height, false);
  renderer.setClearColor(0x000000, 1);
  const halfWidth = width / 2 / pixelsPerMm;
  const halfHeight = height / 2 / pixelsPerMm;
  const camera = new OrthographicCamera(-halfWidth, halfWidth, halfHeight, -halfHeight, 0, 2);
  camera.position.set(frame.planeX - 1, frame.middleY, frame.middleZ);
  camera.lookAt(frame.planeX, frame.middleY, frame.middleZ);
  renderer.render(scene, camera);
  const context = renderer.getContext();
  const upwards = new Uint8ClampedArray(width * height * 4);
  context.readPixels(0, 0, width, height, context.RGBA, context.UNSIGNED_BYTE, upwards);
  renderer.dispose();
  renderer.forceContextLoss();
  return topDown(upwards, width, height);
}

function topDown(upwards: Uint8ClampedArray, width: number, height: number): ImageData {
  const pixels = new ImageData(width, height);
  const row = width * 4;
  for (let y = 0; y < height; y++) {
    pixels.data.set(upwards.subarray((height - 1 - y) * row, (height - y) * row), y * row);
  }
  return pixels;
}
