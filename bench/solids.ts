/**
 * Plug and shell of a seven-chamber cylinder made from their recipes with manifold-3d and, from the same blanks in the same
 * order, with three-bvh-csg. Every round drills other chambers, so that nothing can be remembered from the round before.
 * Both give the same bodies: their volumes are compared before anything is timed.
 */
import { BufferAttribute, BufferGeometry } from 'three';
import { ADDITION, Brush, Evaluator, SUBTRACTION } from 'three-bvh-csg/src/index.js';
import { poseAt } from '../src/model/assembly/pose-at.ts';
import type { Assembly } from '../src/model/assembly/assembly.ts';
import { loadManifold } from '../src/solids/load-manifold.ts';
import { SolidsKernel } from '../src/solids/manifold-kernel.ts';
import { placedLathe } from '../src/solids/placed-lathe.ts';
import type { Recipe } from '../src/solids/recipe.ts';
import { axisPlane, planeForPart } from '../src/solids/section-plane.ts';
import { buildPartSet, placeParts } from '../src/solids/solid-parts.ts';
import { meshVolume } from '../tests/support/closed-mesh.ts';
import { sampleAssembly } from '../tests/support/sample-assembly.ts';
import { type Bench, medianMs } from './support/bench.ts';

/** The share by which the two libraries' volumes of one body may differ. */
const SAME_VOLUME = 1e-4;

function assemblyOf(round: number): Assembly {
  const plain = sampleAssembly({ chambers: 7 });
  return {
    ...plain,
    chambers: plain.chambers.map((chamber) => ({
      ...chamber,
      holes: chamber.holes.map((hole) => ({ ...hole, radius: hole.radius + round * 1e-4 })),
    })),
  };
}

function bodiesOf(assembly: Assembly): Recipe[] {
  return buildPartSet(assembly)
    .solids.filter(({ kind }) => kind === 'plug' || kind === 'shell')
    .map(({ recipe }) => recipe);
}

/** A blank as three-bvh-csg takes it. Extruded blanks are plain blocks: manifold-3d gives their corners. */
function brushOf(recipe: Recipe, kernel: SolidsKernel): Brush {
  const geometry = new BufferGeometry();
  const mesh =
    recipe.kind === 'lathe'
      ? placedLathe(recipe)
      : (({ vertProperties, triVerts }) => ({ positions: vertProperties, triangles: triVerts }))(
          kernel.make(recipe).solid.getMesh(),
        );
  if (recipe.kind === 'lathe' && recipe.axis === 'z') turnABit(mesh.positions, recipe.at.y);
  if (recipe.kind === 'prism' && recipe.along === 'z') shortenABit(mesh.positions);
  geometry.setAttribute('position', new BufferAttribute(mesh.positions, 3));
  geometry.setIndex(new BufferAttribute(mesh.triangles, 1));
  const brush = new Brush(geometry.toNonIndexed());
  brush.geometry.computeVertexNormals();
  brush.updateMatrixWorld();
  return brush;
}

/** Radians. A part of a facet. */
const BIT = 0.0173;

/**
 * Turns a round blank about its axis, the bore less than the barrel, so that no corner of one lies on an edge of the other:
 * manifold-3d does not mind, three-bvh-csg makes fifty times the triangles of it. It is spared that here.
 */
function turnABit(positions: Float32Array, axisY: number): void {
  const widest = Math.max(...positions.filter((_, i) => i % 3 === 0));
  const [cosine, sine] = [Math.cos(BIT / widest), Math.sin(BIT / widest)];
  for (let i = 0; i < positions.length; i += 3) {
    const x = positions[i] ?? 0;
    const y = (positions[i + 1] ?? 0) - axisY;
    positions[i] = cosine * x - sine * y;
    positions[i + 1] = axisY + sine * x + cosine * y;
  }
}

/** mm. Far less than a facet, far more than a rounding error. */
const HAIR_MM = 1e-3;

/**
 * Draws the ends of a block in by a hair, and lets its underside down by one: the tower's ends lie in those of the barrel, its
 * underside runs through the middle of them, and three-bvh-csg makes three hundred times the triangles of faces that
 * coincide. The volume changes by less than it is compared to.
 */
function shortenABit(positions: Float32Array): void {
  const lowest = (axis: number) => Math.min(...positions.filter((_, i) => i % 3 === axis));
  const highest = (axis: number) => Math.max(...positions.filter((_, i) => i % 3 === axis));
  const [bottom, front, back] = [lowest(1), lowest(2), highest(2)];
  for (let i = 0; i < positions.length; i += 3) {
    if (positions[i + 1] === bottom) positions[i + 1] = bottom - HAIR_MM;
    if (positions[i + 2] === front) positions[i + 2] = front + HAIR_MM;
    else if (positions[i + 2] === back) positions[i + 2] = back - HAIR_MM;
  }
}

function evaluateWithBrushes(recipe: Recipe, evaluator: Evaluator, kernel: SolidsKernel): Brush {
  switch (recipe.kind) {
    case 'lathe':
    case 'prism':
      return brushOf(recipe, kernel);
    case 'union': {
      const brushes = recipe.of.map((each) => evaluateWithBrushes(each, evaluator, kernel));
      return brushes.reduce((joined, each) => evaluator.evaluate(joined, each, ADDITION));
    }
    case 'difference': {
      const tools = recipe.take.map((each) => evaluateWithBrushes(each, evaluator, kernel));
      const from = evaluateWithBrushes(recipe.from, evaluator, kernel);
      return tools.reduce((left, tool) => evaluator.evaluate(left, tool, SUBTRACTION), from);
    }
  }
}

function volumeOf({ geometry }: Brush): number {
  const index = geometry.getIndex();
  const { array, count } = geometry.getAttribute('position');
  const corners = Math.min(geometry.drawRange.count, index?.count ?? count);
  const triangles = Array.from({ length: corners }, (_, i) => index?.getX(i) ?? i);
  return meshVolume({ positions: array, triangles });
}

export const bench: Bench = {
  title: 'Solids: plug and shell of seven chambers',
  run: async () => {
    const library = await loadManifold();
    const blanks = new SolidsKernel(library);
    const evaluator = new Evaluator();
    evaluator.attributes = ['position', 'normal'];
    evaluator.useGroups = false;
    checkSameVolumes(library, blanks, evaluator);

    let round = 0;
    const kernel = new SolidsKernel(library);
    const ours = await medianMs(
      () => {
        round += 1;
        for (const recipe of bodiesOf(assemblyOf(round))) kernel.make(recipe).solid.getMesh();
        kernel.keepOnly(new Set());
      },
      { warmUp: 5, rounds: 21 },
    );
    const theirs = await medianMs(
      () => {
        round += 1;
        for (const recipe of bodiesOf(assemblyOf(round))) evaluateWithBrushes(recipe, evaluator, blanks);
        blanks.keepOnly(new Set());
      },
      { warmUp: 2, rounds: 7 },
    );
    return [
      { what: 'rebuild with manifold-3d', measured: ours, unit: 'ms' },
      { what: 'rebuild with three-bvh-csg, same blanks', measured: theirs, unit: 'ms' },
      { what: 'ratio', measured: theirs / ours, unit: '×', aim: { atLeast: 8 } },
      ...(await editRows(library)),
    ];
  },
};

function checkSameVolumes(
  library: Awaited<ReturnType<typeof loadManifold>>,
  blanks: SolidsKernel,
  evaluator: Evaluator,
): void {
  const kernel = new SolidsKernel(library);
  for (const recipe of bodiesOf(assemblyOf(0))) {
    const ours = kernel.make(recipe).solid.volume();
    const theirs = volumeOf(evaluateWithBrushes(recipe, evaluator, blanks));
    if (Math.abs(theirs / ours - 1) > SAME_VOLUME) {
      throw new Error(`The two libraries made different bodies: ${String(ours)} and ${String(theirs)} mm3.`);
    }
  }
}

/** What one edit of one pin's length, and one move of the plane, ask for. */
async function editRows(library: Awaited<ReturnType<typeof loadManifold>>) {
  const kernel = new SolidsKernel(library);
  const assembly = assemblyOf(0);
  const makeAll = (next: Assembly) => {
    for (const { recipe, recipeKey } of buildPartSet(next).solids) kernel.make(recipe, recipeKey);
  };
  makeAll(assembly);
  const before = kernel.madeCount;
  let round = 0;
  const edit = await medianMs(
    () => {
      round += 1;
      makeAll({
        ...assembly,
        stacks: assembly.stacks.map((stack, i) => ({
          ...stack,
          parts: stack.parts.map((part, k) =>
            i === 2 && k === 1 ? { ...part, length: 5 + round / 1000 } : part,
          ),
        })),
      });
    },
    { warmUp: 3, rounds: 11 },
  );
  const madeByEdits = kernel.madeCount - before;
  const places = placeParts(assembly, poseAt(assembly, { travel: 0 }));
  const parts = buildPartSet(assembly).solids;
  const cut = await medianMs(
    () => {
      round += 1;
      const plane = axisPlane('x', (round % 100) / 100);
      const seen = new Set<string>();
      for (const { key, recipe, recipeKey } of parts) {
        const place = places.get(key);
        if (seen.has(recipeKey) || place === undefined) continue;
        seen.add(recipeKey);
        kernel.buffers(kernel.make(recipe, recipeKey), planeForPart(plane, place));
      }
    },
    { warmUp: 5, rounds: 21 },
  );
  return [
    {
      what: "solids made anew by an edit of one pin's length",
      measured: madeByEdits / 14,
      unit: 'solids',
      aim: { atMost: 1 },
    },
    { what: 'that edit, all parts looked through', measured: edit, unit: 'ms' },
    { what: 'all parts cut anew by a moved plane', measured: cut, unit: 'ms' },
  ];
}
