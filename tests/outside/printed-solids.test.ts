/**
 * Solids to print, read back by programs that did not write them: the package by zip.js and fast-xml-parser, STL by the loader
 * of three; volumes against sections summed up (exact areas of the drawing, no mesh) and against discs summed up.
 */
import { Box3 } from 'three';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { beforeAll, describe, expect, test } from 'vitest';
import { bodySection, retainerSection } from '../../src/geometry/body-section.ts';
import { retainers } from '../../src/geometry/body-sizes.ts';
import { flattenPath } from '../../src/geometry/flatten.ts';
import { keySection } from '../../src/geometry/key-section.ts';
import { type Outline, regionArea } from '../../src/geometry/outline.ts';
import { namedParts } from '../../src/geometry/part-names.ts';
import { partProfile } from '../../src/geometry/part-profile.ts';
import type { StackPart } from '../../src/model/assembly/assembly.ts';
import { loadManifold } from '../../src/solids/load-manifold.ts';
import { SolidsKernel } from '../../src/solids/manifold-kernel.ts';
import { printFile } from '../../src/solids/print/print-file.ts';
import { type PrintChoice, type PrintOrder, printOrder } from '../../src/solids/print/print-order.ts';
import { withClearance } from '../../src/solids/print/turned-down.ts';
import { meshFaults, meshVolume } from '../support/closed-mesh.ts';
import { boxAround, type ReadPackage, readThreeMf } from '../support/read-three-mf.ts';
import { sampleAssembly } from '../support/sample-assembly.ts';

const FACTOR = 4;
const CLEARANCE = 0.2;
const TAKEN = CLEARANCE / FACTOR;
const assembly = sampleAssembly({ chambers: 3 });
const small = sampleAssembly({ chambers: 1 });
const sleeved = sampleAssembly({
  chambers: 2,
  hasSleeve: true,
  mouth: { kind: 'deburred along', size: 0.15 },
});
const scale = { factor: FACTOR, clearance: CLEARANCE };

let library: Awaited<ReturnType<typeof loadManifold>>;
let cutaway: ReadPackage;
beforeAll(async () => {
  library = await loadManifold();
  cutaway = await readThreeMf(bytesOf({ kind: 'cutaway' }, '3mf'));
});

function orderOf(choice: PrintChoice, of = assembly): PrintOrder {
  const ordered = printOrder(of, choice, scale);
  if (ordered.type === 'error') throw new Error(ordered.sentence);
  return ordered.order;
}

function bytesOf(choice: PrintChoice, form: '3mf' | 'stl', of = assembly): Uint8Array {
  return printFile(library, orderOf(choice, of), form, 'Boathouse <1> & "2"').bytes;
}

const object = (name: string) => cutaway.objects.find((each) => each.name === name)!;

/** Half a body: the areas of its sections, from the plane through the chambers outwards, times their distance. */
function halfVolume(section: (offset: number) => Outline[], reach: number, steps = 1500): number {
  const step = reach / steps;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += regionArea(section((i + 0.5) * step)) * step;
  return sum;
}

/** A turned part as discs: no more than `most` from its axis. */
function turnedVolume(part: StackPart, most: number): number {
  const points = flattenPath(partProfile(part), 1e-4);
  let sum = 0;
  for (let i = 1; i < points.length; i++) {
    const [from, to] = [points[i - 1]!, points[i]!];
    const discs = 400;
    for (let k = 0; k < discs; k++) {
      const r = Math.min(most, from.x + ((to.x - from.x) * (k + 0.5)) / discs);
      sum += (Math.PI * r ** 2 * (to.y - from.y)) / discs;
    }
  }
  return sum;
}

describe('the cutaway set as 3MF', () => {
  test('says its unit, has every part, each by name and where it lies, and no date', () => {
    expect(cutaway.names).toEqual(['[Content_Types].xml', '_rels/.rels', '3D/3dmodel.model']);
    expect(cutaway.unit).toBe('millimeter');
    expect(cutaway.title).toBe('Boathouse <1> & "2"');
    expect(cutaway.contentTypes).toContain('application/vnd.ms-package.3dmanufacturing-3dmodel+xml');
    expect(cutaway.relationships).toContain('/3D/3dmodel.model');
    for (const date of cutaway.dates) expect(date.getFullYear()).toBe(1980);
    const names = cutaway.objects.map(({ name }) => name);
    expect(names.slice(0, 4)).toEqual(['shell half', 'plug half', 'retaining ring half', 'key']);
    for (const chamber of [1, 2, 3])
      for (const part of ['ball, lower half', 'ball, upper half', 'bottom pin', 'driver'])
        expect(names.some((each) => each.startsWith(`chamber ${chamber} ${part}`))).toBe(true);
    expect(names.join(' ')).not.toContain('spring');
    // Corners where they lie: nothing for a reader to forget.
    expect(cutaway.items.map((item) => Object.keys(item))).toEqual(names.map(() => ['@objectid']));
  });

  test('every piece is closed, faces outwards, is one piece, and lies flat on the bed', () => {
    for (const { name, positions, triangles } of cutaway.objects) {
      expect(meshFaults({ positions, triangles }), name).toEqual([]);
      expect(meshVolume({ positions, triangles }), name).toBeGreaterThan(0);
      expect(boxAround(positions).low[2], name).toBeCloseTo(0, 4);
      expect(footing({ positions, triangles }), name).toBeGreaterThan(1);
    }
    const kernel = new SolidsKernel(library);
    for (const { name, recipe, cut } of orderOf({ kind: 'cutaway' }).pieces) {
      const { solid } = kernel.make(recipe);
      const own = cut === null ? solid : solid.trimByPlane([...cut.normal], cut.offset);
      expect(own.decompose(), name).toHaveLength(1);
    }
  });

  test('no two pieces lie on each other', () => {
    const boxes = cutaway.objects.map(({ positions }) => boxAround(positions));
    for (const [i, one] of boxes.entries())
      for (const other of boxes.slice(i + 1)) {
        const apart = [0, 1].map((axis) =>
          Math.max(one.low[axis]! - other.high[axis]!, other.low[axis]! - one.high[axis]!),
        );
        expect(Math.max(...apart)).toBeGreaterThan(3.99);
      }
  });

  test('half bodies have the volume of their sections summed up', () => {
    const loose = withClearance(assembly, TAKEN);
    const [ring] = retainers(loose);
    const enlarged = FACTOR ** 3;
    const near = (name: string, exact: number, within: number) =>
      expect(Math.abs(meshVolume(object(name)) / (exact * enlarged) - 1), name).toBeLessThan(within);
    near(
      'shell half',
      halfVolume((x) => bodySection(loose, 1, x, 0), 30),
      2e-3,
    );
    near(
      'plug half',
      halfVolume((x) => bodySection(loose, 0, x, 0), 14),
      2e-3,
    );
    near('key', 2 * halfVolume((offset) => keySection(loose.key!, { travel: 0, offset, turn: 0 }), 3), 3e-3);
    // The ring is thinner by the clearance on both faces and wider inside: two cylinders, halved.
    const thick = ring!.span.back - ring!.span.front - 2 * TAKEN;
    const area = (Math.PI * (ring!.outerRadius ** 2 - (ring!.innerRadius + TAKEN) ** 2)) / 2;
    near('retaining ring half', area * thick, 2e-3);
    expect(regionArea(retainerSection(loose, 0, 0))).toBeGreaterThan(0);
  });

  test('pins have the volume of their discs, as long as before and thinner by the clearance', () => {
    for (const stack of assembly.stacks)
      for (const part of stack.parts.filter(({ role }) => role !== 'spring')) {
        const number = assembly.chambers.find(({ id }) => id === stack.chamber)!.number;
        const name = `chamber ${number} ${part.role === 'bottomPin' ? 'bottom pin' : part.role}`;
        const pieces = cutaway.objects.filter((each) => each.name.startsWith(name));
        const volume = pieces.reduce((sum, each) => sum + meshVolume(each), 0);
        const exact = turnedVolume(part, part.radius - TAKEN) * FACTOR ** 3;
        expect(Math.abs(volume / exact - 1), name).toBeLessThan(3e-3);
        const sizes = pieces.map(({ positions }) => boxAround(positions).size);
        const high = sizes.reduce((sum, size) => sum + size[2]!, 0);
        expect(high, name).toBeCloseTo(part.length * FACTOR, 3);
        const across = 2 * (part.radius * FACTOR - CLEARANCE);
        // Facets stand half outside the round: r / cos(pi / 72) at most.
        expect(Math.abs(Math.max(...sizes.map(([wide]) => wide!)) - across), name).toBeLessThan(0.03);
      }
  });

  test('a printed pin has at least the clearance all around in its printed chamber', () => {
    const kernel = new SolidsKernel(library);
    const { pieces } = orderOf({ kind: 'all' });
    const shell = kernel.make(pieces.find(({ name }) => name === 'shell')!.recipe).solid;
    const chamber = assembly.chambers[1]!;
    const driver = kernel
      .make(pieces.find(({ name }) => name === `chamber ${chamber.number} driver`)!.recipe)
      .solid.translate([0, chamber.capY - 9, chamber.z]);
    const gap = driver.minGap(shell, 1);
    const hole = chamber.holes.at(-1)!;
    const part = assembly.stacks[1]!.parts.find(({ role }) => role === 'driver')!;
    expect(gap).toBeGreaterThan(hole.radius - part.radius + TAKEN - 0.004);
    expect(gap).toBeLessThan(hole.radius - part.radius + TAKEN + 0.004);
  });
});

describe('STL', () => {
  test('has the same solids, read by the loader of three', () => {
    const geometry = new STLLoader().parse(bytesOf({ kind: 'cutaway' }, 'stl').slice().buffer);
    const positions = geometry.getAttribute('position').array;
    const triangles = Array.from({ length: positions.length / 3 }, (_, i) => i);
    const all = cutaway.objects.reduce((sum, each) => sum + meshVolume(each), 0);
    expect(meshVolume({ positions, triangles }) / all).toBeCloseTo(1, 5);
    geometry.computeBoundingBox();
    const box = geometry.boundingBox ?? new Box3();
    const read = boxAround(cutaway.objects.flatMap((each) => each.positions));
    for (const [i, value] of [...box.min.toArray(), ...box.max.toArray()].entries())
      expect(value).toBeCloseTo([...read.low, ...read.high][i]!, 3);
    expect(meshFaults({ positions, triangles })).toEqual([]);
    const normals = geometry.getAttribute('normal').array;
    let worst = 0;
    for (let i = 0; i < normals.length; i += 9)
      worst = Math.max(worst, Math.abs(Math.hypot(normals[i]!, normals[i + 1]!, normals[i + 2]!) - 1));
    expect(worst).toBeLessThan(1e-3);
  });
});

describe('every part by itself', () => {
  test.each([
    ['plain', small],
    ['with a sleeve and deburred mouths', sleeved],
  ] as const)('%s: can be printed alone, whole, closed', async (_, of) => {
    for (const { partKey, role, name } of namedParts(of)) {
      if (role === 'spring') {
        expect(printOrder(of, { kind: 'part', part: partKey }, scale)).toMatchObject({ type: 'error' });
        continue;
      }
      const { objects } = await readThreeMf(bytesOf({ kind: 'part', part: partKey }, '3mf', of));
      expect(objects.every((each) => each.name.startsWith(name))).toBe(true);
      for (const each of objects) expect(meshFaults(each), each.name).toEqual([]);
      expect(objects.length, name).toBe(role === 'ball' ? 2 : objects.length);
    }
  });
});

describe('a print', () => {
  test('has the same bytes every time, in every time zone', () => {
    const before = process.env['TZ'];
    const [here, there] = ['UTC', 'Pacific/Auckland'].map((zone) => {
      process.env['TZ'] = zone;
      return [bytesOf({ kind: 'cutaway' }, '3mf', small), bytesOf({ kind: 'cutaway' }, 'stl', small)];
    });
    if (before === undefined) delete process.env['TZ'];
    else process.env['TZ'] = before;
    expect(Buffer.from(here![0]!).equals(there![0]!)).toBe(true);
    expect(Buffer.from(here![1]!).equals(there![1]!)).toBe(true);
  });

  test('is refused with a sentence when the clearance would leave too little, or the part is gone', () => {
    const sentence = (choice: PrintChoice, factor: number, clearance: number) => {
      const ordered = printOrder(assembly, choice, { factor, clearance });
      return ordered.type === 'error' ? ordered.sentence : '';
    };
    expect(sentence({ kind: 'cutaway' }, 2, 1)).toMatch(
      /^At 2:1 the thinnest part is [\d.]+ mm; a clearance of 1 mm/u,
    );
    expect(sentence({ kind: 'part', part: 'part nowhere 3' }, 4, 0.2)).toBe(
      'That part is no longer in the cylinder. Choose another one.',
    );
    expect(sentence({ kind: 'cutaway' }, 20, 0)).toBe('');
  });
});

/** mm². Area of the triangles that lie on the bed. */
function footing({ positions, triangles }: { positions: number[]; triangles: number[] }): number {
  let area = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const corners = [0, 1, 2].map((k) => positions.slice(3 * triangles[i + k]!, 3 * triangles[i + k]! + 3));
    if (corners.some(([, , z]) => Math.abs(z!) > 1e-4)) continue;
    const [a, b, c] = corners as [number[], number[], number[]];
    area += Math.abs((b[0]! - a[0]!) * (c[1]! - a[1]!) - (c[0]! - a[0]!) * (b[1]! - a[1]!)) / 2;
  }
  return area;
}
