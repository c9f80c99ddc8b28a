/**
 * Bodies and parts against solid geometry: closed, facing outwards, volumes as computed without any mesh, and the two halves
 * of a cut adding up to the whole.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { bodySpans, chamberFloorY, shellShape } from '../../src/geometry/body-sizes.ts';
import type { StackPart } from '../../src/model/assembly/assembly.ts';
import { poseAt } from '../../src/model/assembly/pose-at.ts';
import { fromDegrees } from '../../src/model/radians.ts';
import { loadManifold } from '../../src/solids/load-manifold.ts';
import { SolidsKernel } from '../../src/solids/manifold-kernel.ts';
import type { MeshBuffers } from '../../src/solids/mesh-buffers.ts';
import { axisPlane, planeForPart, type SectionPlane, UNMOVED } from '../../src/solids/section-plane.ts';
import { buildPartSet, placeParts, turnedRecipe } from '../../src/solids/solid-parts.ts';
import { meshFaults, meshVolume } from '../support/closed-mesh.ts';
import { sampleAssembly } from '../support/sample-assembly.ts';

let kernel: SolidsKernel;

beforeAll(async () => {
  kernel = new SolidsKernel(await loadManifold());
});

/** Skin and cut face as one mesh. */
function wholeMesh(buffers: MeshBuffers): { positions: number[]; triangles: number[] } {
  const skinCount = buffers.positions.length / 3;
  return {
    positions: [...buffers.positions, ...buffers.capPositions],
    triangles: [...buffers.indices, ...[...buffers.capIndices].map((index) => index + skinCount)],
  };
}

function capArea({ capUv, capIndices }: MeshBuffers): number {
  let sum = 0;
  for (let i = 0; i < capIndices.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => {
      const place = capIndices[i + k]!;
      return [capUv[2 * place]!, capUv[2 * place + 1]!] as const;
    }) as [readonly [number, number], readonly [number, number], readonly [number, number]];
    sum += ((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / 2;
  }
  return sum;
}

const assemblies = [
  ['plain', sampleAssembly()],
  [
    'with a sleeve and deburred mouths',
    sampleAssembly({ hasSleeve: true, mouth: { kind: 'deburred along', size: 0.15 } }),
  ],
  [
    'countersunk, worn and out of line',
    sampleAssembly({ mouth: { kind: 'countersunk', size: 0.3 }, crestDrop: 0.1, sideways: 0.1 }),
  ],
] as const;

describe.each(assemblies)('a cylinder %s', (_, assembly) => {
  const places = placeParts(assembly, poseAt(assembly, { travel: 0 }));
  const parts = buildPartSet(assembly).solids;

  test('has a solid for every part, each closed and facing outwards, whole and cut', () => {
    expect(parts.length).toBe(
      assembly.bodies.length +
        assembly.lines.length +
        1 +
        parts.filter((p) => p.key.startsWith('part ')).length,
    );
    for (const part of parts) {
      const made = kernel.make(part.recipe, part.recipeKey);
      for (const plane of [null, planeForPart(axisPlane('x', 0.3), places.get(part.key)!)]) {
        const mesh = wholeMesh(kernel.buffers(made, plane));
        expect(meshFaults(mesh), `${part.key} ${plane ? 'cut' : 'whole'}`).toEqual([]);
        expect(meshVolume(mesh), part.key).toBeGreaterThan(0);
      }
    }
  });

  test('cut in two, its halves add up to the whole and share a face', () => {
    const planes: SectionPlane[] = [
      axisPlane('x', 0),
      axisPlane('x', 0.7),
      axisPlane('z', 15.2),
      axisPlane('y', 0.4),
    ];
    for (const part of parts) {
      const made = kernel.make(part.recipe, part.recipeKey);
      const whole = meshVolume(wholeMesh(kernel.buffers(made, null)));
      expect(whole).toBeCloseTo(made.solid.volume(), 2);
      for (const plane of planes) {
        const own = planeForPart(plane, places.get(part.key)!);
        const one = kernel.buffers(made, own);
        const other = kernel.buffers(made, {
          normal: [-own.normal[0], -own.normal[1], -own.normal[2]],
          offset: -own.offset,
        });
        const sum = meshVolume(wholeMesh(one)) + meshVolume(wholeMesh(other));
        expect(Math.abs(sum / whole - 1), part.key).toBeLessThan(1e-5);
        expect(capArea(one), part.key).toBeCloseTo(capArea(other), 3);
      }
    }
  });
});

describe('the volume of', () => {
  const plain: StackPart = {
    part: 'p',
    label: 'p',
    role: 'driver',
    radius: 1.98,
    length: 7,
    lower: { kind: 'flat' },
    upper: { kind: 'flat' },
    seat: 0,
    waist: null,
    solid: 0,
    wire: 0,
    coils: 0,
  };
  const volumeOf = (part: Partial<StackPart>) =>
    kernel.make(turnedRecipe({ ...plain, ...part })).solid.volume();
  const { radius: r, length } = plain;
  const frustum = (top: number, bottom: number, height: number) =>
    (Math.PI * height * (top ** 2 + top * bottom + bottom ** 2)) / 3;
  const cap = (sphere: number, height: number) => (Math.PI * height ** 2 * (3 * sphere - height)) / 3;

  test('a plain pin is that of a cylinder', () => {
    expect(volumeOf({})).toBeCloseTo(Math.PI * r ** 2 * length, 3);
  });

  test('a ball comes within two thousandths of 4/3 pi r^3', () => {
    const ball = {
      role: 'ball',
      length: 2 * r,
      lower: { kind: 'sphere' },
      upper: { kind: 'sphere' },
    } as const;
    expect(Math.abs(volumeOf(ball) / ((4 / 3) * Math.PI * r ** 3) - 1)).toBeLessThan(2e-3);
  });

  test('a pin with bevels is a cylinder between two frustums', () => {
    const bevel = { kind: 'bevel', width: 0.3, angle: fromDegrees(45) } as const;
    const exact = Math.PI * r ** 2 * (length - 0.6) + 2 * frustum(r - 0.3, r, 0.3);
    expect(volumeOf({ lower: bevel, upper: bevel })).toBeCloseTo(exact, 3);
  });

  test('a crowned pin is a cylinder under a spherical segment', () => {
    const crown = 9.4;
    const drop = crown - Math.sqrt(crown ** 2 - r ** 2);
    const exact = Math.PI * r ** 2 * (length - drop) + cap(crown, drop);
    expect(Math.abs(volumeOf({ upper: { kind: 'dome', radius: crown } }) / exact - 1)).toBeLessThan(2e-4);
  });

  test('a cupped pin lacks the cone of its dimple', () => {
    const cup = { kind: 'cup', mouthDiameter: 2.6, includedAngle: fromDegrees(90) } as const;
    const exact = Math.PI * r ** 2 * length - (Math.PI * 1.3 ** 2 * 1.3) / 3;
    expect(volumeOf({ lower: cup })).toBeCloseTo(exact, 2);
  });

  test('a spool lacks a ring, less what its rounded corners keep', () => {
    const waist = { kind: 'spool', from: 2, length: 3, radius: 1.2 } as const;
    const ring = Math.PI * (r ** 2 - 1.2 ** 2) * 3;
    const lack = Math.PI * r ** 2 * length - volumeOf({ waist });
    expect(lack).toBeLessThan(ring);
    expect(lack).toBeGreaterThan(ring * 0.93);
  });

  test('a bored and drilled shell is its barrel and tower less bore and chambers', () => {
    const assembly = sampleAssembly();
    const { barrelRadius, axisY, towerHalfWidth, topY } = shellShape(assembly);
    const { front, back } = bodySpans(assembly).at(-1)!;
    const shell = assembly.bodies.at(-1)!;
    const hole = assembly.chambers[0]!.holes.at(-1)!;
    // Over the barrel the tower is a block less the round under it; a chamber is a cylinder less the bore under it.
    const over = (half: number, top: number, round: number) => {
      const segment = half * Math.sqrt(round ** 2 - half ** 2) + round ** 2 * Math.asin(half / round);
      return 2 * half * (top - axisY) - segment;
    };
    const steps = 4000;
    let drilled = 0;
    for (let i = 0; i < steps; i++) {
      const x = ((i + 0.5) / steps - 0.5) * 2 * hole.radius;
      const chord = 2 * Math.sqrt(hole.radius ** 2 - x ** 2);
      drilled +=
        (chord *
          (assembly.chambers[0]!.capY - axisY - Math.sqrt(shell.boreRadius ** 2 - x ** 2)) *
          2 *
          hole.radius) /
        steps;
    }
    const section =
      Math.PI * (barrelRadius ** 2 - shell.boreRadius ** 2) + over(towerHalfWidth, topY, barrelRadius);
    const exact = section * (back - front) - assembly.chambers.length * drilled;
    const part = buildPartSet(assembly).solids.find(({ kind }) => kind === 'shell')!;
    expect(Math.abs(kernel.make(part.recipe).solid.volume() / exact - 1)).toBeLessThan(1e-3);
  });
});

describe('a chamber in the plug', () => {
  test('ends on its ledges beside the keyway', () => {
    const assembly = sampleAssembly();
    const plug = buildPartSet(assembly).solids.find(({ kind }) => kind === 'plug')!;
    const floor = chamberFloorY(assembly, assembly.chambers[0]!);
    const { solid } = kernel.make(plug.recipe, plug.recipeKey);
    const { z } = assembly.chambers[0]!;
    const metalAt = (x: number, y: number) => solid.rayCast([x, y, z], [x, y + 1e-3, z]).length;
    // A ray from just above a ledge to just below it meets the ledge once.
    expect(solid.rayCast([1.6, floor + 0.05, z], [1.6, floor - 0.05, z])).toHaveLength(1);
    expect(metalAt(1.6, floor + 0.02)).toBe(0);
  });
});

describe('making solids', () => {
  test('gives the same bytes every time', async () => {
    const again = new SolidsKernel(await loadManifold());
    const assembly = sampleAssembly({ hasSleeve: true });
    for (const part of buildPartSet(assembly).solids) {
      const plane = axisPlane('x', 0.2);
      const [one, two] = [kernel, again].map((each) => each.buffers(each.make(part.recipe), plane));
      expect(one, part.key).toEqual(two);
    }
  });

  test('makes equal parts once, and after an edit only what the edit changed', async () => {
    const own = new SolidsKernel(await loadManifold());
    const before = sampleAssembly();
    const makeAll = (assembly: typeof before) => {
      const count = own.madeCount;
      for (const { recipe, recipeKey } of buildPartSet(assembly).solids) own.make(recipe, recipeKey);
      return own.madeCount - count;
    };
    const parts = buildPartSet(before).solids;
    expect(makeAll(before)).toBe(new Set(parts.map(({ recipeKey }) => recipeKey)).size);
    expect(makeAll(before)).toBe(0);
    const longerPin = {
      ...before,
      stacks: before.stacks.map((stack, i) =>
        i === 2
          ? {
              ...stack,
              parts: stack.parts.map((part, k) => (k === 1 ? { ...part, length: part.length + 0.01 } : part)),
            }
          : stack,
      ),
    };
    expect(makeAll(longerPin)).toBe(1);
    const moved = {
      ...before,
      chambers: before.chambers.map((chamber, i) =>
        i === 2 ? { ...chamber, z: chamber.z + 0.05 } : chamber,
      ),
    };
    // Plug and shell are drilled elsewhere; the key and the loose parts are as they were.
    expect(makeAll(moved)).toBe(2);
  });

  test('an uncut solid has no cut face, and one that the plane passes by is gone or whole', () => {
    const pin = buildPartSet(sampleAssembly()).solids.find(({ kind }) => kind === 'driver')!;
    const made = kernel.make(pin.recipe, pin.recipeKey);
    expect(kernel.buffers(made, null).capIndices).toHaveLength(0);
    expect(kernel.buffers(made, planeForPart(axisPlane('x', 5), UNMOVED)).indices).toHaveLength(0);
    const kept = kernel.buffers(made, planeForPart(axisPlane('x', -5), UNMOVED));
    expect(kept.capIndices).toHaveLength(0);
    expect(kept.indices.length).toBe(kernel.buffers(made, null).indices.length);
  });

  test('normals are of length one, stand on the surface and point outwards', () => {
    for (const { recipe, recipeKey, key } of buildPartSet(sampleAssembly()).solids) {
      const { positions, normals, indices } = kernel.buffers(kernel.make(recipe, recipeKey), null);
      let leastLikeness = 1;
      let worstLength = 0;
      for (let i = 0; i < indices.length; i += 3) {
        const corners = [0, 1, 2].map((k) => 3 * indices[i + k]!);
        const at = (list: Float32Array, place: number) => list.subarray(place, place + 3);
        const [a, b, c] = corners.map((place) => at(positions, place)) as [V, V, V];
        const u = [b[0]! - a[0]!, b[1]! - a[1]!, b[2]! - a[2]!] as const;
        const v = [c[0]! - a[0]!, c[1]! - a[1]!, c[2]! - a[2]!] as const;
        const cross = [
          u[1] * v[2] - u[2] * v[1],
          u[2] * v[0] - u[0] * v[2],
          u[0] * v[1] - u[1] * v[0],
        ] as const;
        const area = Math.hypot(...cross);
        for (const place of corners) {
          const [x, y, z] = at(normals, place) as unknown as [number, number, number];
          worstLength = Math.max(worstLength, Math.abs(Math.hypot(x, y, z) - 1));
          // Slivers that booleans leave have no direction of their own.
          if (area < 1e-3) continue;
          leastLikeness = Math.min(leastLikeness, (x * cross[0] + y * cross[1] + z * cross[2]) / area);
        }
      }
      expect(worstLength, key).toBeLessThan(1e-4);
      expect(leastLikeness, key).toBeGreaterThan(0.9);
    }
  });
});

type V = Float32Array;
