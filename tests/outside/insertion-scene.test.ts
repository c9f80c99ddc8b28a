/**
 * The insertion as a scene, read back by programs that did not write it: the Khronos validator, @gltf-transform/core and the
 * loader of three; the way of the pins against solid geometry (manifold-3d): they neither sink into the key nor hang over it.
 */
import { type Accessor, type Document, type Node, NodeIO } from '@gltf-transform/core';
import { validateBytes } from 'gltf-validator';
import type { Manifold as Solid } from 'manifold-3d';
import { AnimationMixer, Box3, Mesh, type Object3D } from 'three';
import { GLTFLoader, type GLTF } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { beforeAll, describe, expect, test } from 'vitest';
import { regionArea } from '../../src/geometry/outline.ts';
import { bodySection } from '../../src/geometry/body-section.ts';
import { poseAt } from '../../src/model/assembly/pose-at.ts';
import { PAPER_THEME } from '../../src/scene/scene-theme.ts';
import { loadManifold } from '../../src/solids/load-manifold.ts';
import { insertionFile } from '../../src/solids/print/insertion-file.ts';
import { type InsertionOrder, insertionOrder, travelsOf } from '../../src/solids/print/insertion-order.ts';
import { meshFaults, meshVolume } from '../support/closed-mesh.ts';
import { boxAround } from '../support/read-three-mf.ts';
import { seededRandom } from '../support/random-job.ts';
import { sampleAssembly } from '../support/sample-assembly.ts';

const assembly = sampleAssembly({ chambers: 2 });
const colours = Object.fromEntries(
  Object.entries(PAPER_THEME.parts).map(([kind, { skin }]) => [kind, skin]),
) as InsertionOrder['colours'];
const fileOf = (of: typeof assembly) => insertionFile(library, insertionOrder(of, colours), 'Boathouse');

let library: Awaited<ReturnType<typeof loadManifold>>;
let bytes: Uint8Array;
let document: Document;
let scene: GLTF;
beforeAll(async () => {
  library = await loadManifold();
  bytes = fileOf(assembly);
  document = await new NodeIO().readBinary(bytes);
  scene = await new Promise<GLTF>((done, fail) =>
    new GLTFLoader().parse(bytes.slice().buffer, '', done, fail),
  );
});

const nodeNamed = (name: string): Node =>
  document
    .getRoot()
    .listNodes()
    .find((each) => each.getName() === name)!;

const numbersOf = (accessor: Accessor | null): number[] =>
  Array.from(accessor!.getArray() as ArrayLike<number>);

/** Both primitives of a node as one mesh, mm. */
function meshOf(name: string): { positions: number[]; triangles: number[] } {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (const primitive of nodeNamed(name).getMesh()!.listPrimitives()) {
    const first = positions.length / 3;
    positions.push(...numbersOf(primitive.getAttribute('POSITION')));
    triangles.push(...numbersOf(primitive.getIndices()).map((index) => first + index));
  }
  return { positions, triangles };
}

/** Translation keys of a node; null when it stands still. */
function waysOf(name: string): { times: ArrayLike<number>; shifts: ArrayLike<number> } | null {
  const [animation] = document.getRoot().listAnimations();
  const channel = animation!
    .listChannels()
    .find((each) => each.getTargetNode() === nodeNamed(name) && each.getTargetPath() === 'translation');
  const sampler = channel?.getSampler();
  return sampler == null
    ? null
    : { times: numbersOf(sampler.getInput()), shifts: numbersOf(sampler.getOutput()) };
}

describe('the scene', () => {
  test.each([
    ['two chambers', assembly],
    ['a sleeve', sampleAssembly({ chambers: 1, hasSleeve: true })],
    ['no key', sampleAssembly({ chambers: 1, hasKey: false })],
  ])('has no error and no warning for the validator of the form: %s', async (_, of) => {
    const { issues, info } = await validateBytes(fileOf(of));
    expect(issues.messages).toEqual([]);
    expect([issues.numErrors, issues.numWarnings]).toEqual([0, 0]);
    expect(info.animationCount).toBe(of.key === null ? 0 : 1);
    expect(info.totalTriangleCount).toBeGreaterThan(1000);
  });

  test('has every part by name, closed, facing outwards; bodies cut open', () => {
    const names = document
      .getRoot()
      .listNodes()
      .map((each) => each.getName());
    for (const name of [
      'shell',
      'plug',
      'retaining ring',
      'key',
      'chamber 1 ball',
      'chamber 2 driver',
      'chamber 1 spring',
    ])
      expect(names).toContain(name);
    for (const name of names.filter((each) => each !== 'Boathouse')) {
      const mesh = meshOf(name);
      expect(meshFaults(mesh), name).toEqual([]);
      expect(meshVolume(mesh), name).toBeGreaterThan(0);
    }
    expect(boxAround(meshOf('shell').positions).low[0]).toBeCloseTo(0, 6);
    // Half the shell: the areas of its sections summed up.
    const steps = 600;
    let exact = 0;
    for (let i = 0; i < steps; i++)
      exact += (regionArea(bodySection(assembly, 1, ((i + 0.5) / steps) * 14, 0)) * 14) / steps;
    expect(Math.abs(meshVolume(meshOf('shell')) / exact - 1)).toBeLessThan(4e-3);
  });

  test('the loader of three finds the same sizes, in metres', () => {
    const key = scene.scene.getObjectByName('key')!;
    scene.scene.updateMatrixWorld(true);
    const box = new Box3().setFromObject(key);
    const { size } = boxAround(meshOf('key').positions);
    for (const [i, value] of box.max.clone().sub(box.min).toArray().entries())
      expect(value * 1000).toBeCloseTo(size[i]!, 3);
    let count = 0;
    scene.scene.traverse((each: Object3D) => (count += each instanceof Mesh ? 1 : 0));
    expect(count).toBeGreaterThan(10);
  });

  test('holds no id, no length and no date, and has the same bytes every time', () => {
    const text = Buffer.from(bytes).toString('latin1');
    const json = text.slice(20, 20 + Buffer.from(bytes).readUInt32LE(12));
    const ids = assembly.stacks.flatMap(({ chamber, parts }) => [chamber, ...parts.map(({ part }) => part)]);
    expect([...ids, assembly.key!.id].filter((id) => id !== 'key' && json.includes(`"${id}"`))).toEqual([]);
    expect(/20\d\d-/u.test(json)).toBe(false);
    expect(Buffer.from(fileOf(assembly)).equals(Buffer.from(bytes))).toBe(true);
  });
});

describe('the insertion', () => {
  const names = ['chamber 1 ball', 'chamber 2 ball'];

  test('ends where the key is home, starts where it is out, and bodies stand still', () => {
    const { shifts } = waysOf('key')!;
    expect(shifts[2]).toBeCloseTo(-assembly.key!.outTravel, 5);
    expect(shifts[shifts.length - 1]).toBeCloseTo(-assembly.key!.seatedTravel, 5);
    for (const name of ['shell', 'plug', 'retaining ring']) expect(waysOf(name)).toBeNull();
  });

  test('every part is where the model has it, between the keys too, as three plays it', () => {
    const travels = travelsOf(assembly) as number[];
    const [clip] = scene.animations;
    const mixer = new AnimationMixer(scene.scene);
    mixer.clipAction(clip!).play();
    const random = seededRandom(5);
    let worst = 0;
    for (let i = 0; i < 60; i++) {
      const share = random() * 0.999;
      mixer.setTime(share * clip!.duration);
      const travel = travels[0]! + share * (travels.at(-1)! - travels[0]!);
      const pose = poseAt(assembly, { travel });
      for (const stack of pose.stacks) {
        const { number } = assembly.chambers.find(({ id }) => id === stack.chamber)!;
        for (const { part, y } of stack.parts.filter((each) => each.part.role !== 'spring')) {
          const name = `chamber ${number} ${part.role === 'bottomPin' ? 'bottom pin' : part.role}`;
          // The loader writes names for its own paths: blanks become lines.
          const node = scene.scene.getObjectByName(name.replaceAll(' ', '_'));
          worst = Math.max(worst, Math.abs(node!.position.y - y));
        }
      }
    }
    expect(worst).toBeLessThan(0.03);
    expect(worst).toBeGreaterThan(0);
  });

  test('balls ride on the key: solid bodies neither meet nor part by more than three hundredths', () => {
    const solidOf = (name: string): Solid => {
      const { positions, triangles } = meshOf(name);
      const mesh = new library.Mesh({
        numProp: 3,
        vertProperties: Float32Array.from(positions),
        triVerts: Uint32Array.from(triangles),
      });
      mesh.merge();
      return library.Manifold.ofMesh(mesh);
    };
    const key = solidOf('key');
    const keyWay = waysOf('key')!;
    const random = seededRandom(8);
    let ridden = 0;
    for (const name of names) {
      const ball = solidOf(name);
      const way = waysOf(name)!;
      for (let k = 0; k < 12; k++) {
        const at = Math.floor((0.4 + 0.6 * random()) * way.times.length);
        const shiftOf = ({ shifts }: typeof way, up: number): [number, number, number] => [
          shifts[3 * at]!,
          shifts[3 * at + 1]! + up,
          shifts[3 * at + 2]!,
        ];
        const there = key.translate(shiftOf(keyWay, 0));
        const meets = (up: number) => ball.translate(shiftOf(way, up)).intersect(there).volume() > 1e-9;
        const isResting =
          way.shifts[3 * at + 1] === Math.min(...Array.from(way.times, (_, i) => way.shifts[3 * i + 1]!));
        expect(meets(0.01), `${name} ${at}`).toBe(false);
        if (isResting) continue;
        ridden += 1;
        expect(meets(-0.03), `${name} ${at}`).toBe(true);
      }
    }
    expect(ridden).toBeGreaterThan(8);
  });

  test('springs are squeezed between driver and cap, in the file as in the model', () => {
    const spring = nodeNamed('chamber 1 spring');
    const [primitive] = spring.getMesh()!.listPrimitives();
    const base = numbersOf(primitive!.getAttribute('POSITION'));
    const target = numbersOf(primitive!.listTargets()[0]!.getAttribute('POSITION'));
    const [animation] = document.getRoot().listAnimations();
    const weights = numbersOf(
      animation!
        .listChannels()
        .find((each) => each.getTargetNode() === spring && each.getTargetPath() === 'weights')!
        .getSampler()!
        .getOutput(),
    );
    const way = waysOf('chamber 1 spring')!;
    const cap = assembly.chambers[0]!.capY;
    const free = assembly.stacks[0]!.parts.find(({ role }) => role === 'spring')!.length;
    for (const at of [0, Math.floor(weights.length / 2), weights.length - 1]) {
      const squeezed = Array.from(base, (value, i) => value + weights[at]! * target[i]!);
      const foot = way.shifts[3 * at + 1]!;
      const box = boxAround(squeezed);
      expect(foot + box.low[1]!).toBeCloseTo(foot, 3);
      // As long as it is free it may end below the cap.
      expect(foot + box.high[1]!).toBeCloseTo(Math.min(cap, foot + free), 3);
    }
    expect(Math.max(...weights)).toBeCloseTo(1, 5);
  });
});
