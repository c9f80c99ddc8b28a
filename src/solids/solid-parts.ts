/**
 * The parts of an assembly as solids: what each is called (as in geometry/cut-parts.ts), what it is made of, and where it
 * stands in a pose.
 *
 * Frame: bodies and the key are made where they lie at rest (assembly.ts), the key home; the parts of a stack stand on
 * their own lowest point at the origin. Lengths mm, angles radians.
 */
import { known } from '../model/assert.ts';
import type { Assembly, AssemblyKey, PartRole, StackPart } from '../model/assembly/assembly.ts';
import type { Pose } from '../model/assembly/pose.ts';
import { bodyPartKey, keyPartKey, sidewaysOf, stackPartKey } from '../geometry/cut-parts.ts';
import { flattenOutline, flattenPath } from '../geometry/flatten.ts';
import { placedKey } from '../geometry/key-outline.ts';
import { partProfile } from '../geometry/part-profile.ts';
import { bodyRecipe, retainerRecipe } from './body-recipes.ts';
import type { SpringShape } from './helix-mesh.ts';
import type { ProfilePoint } from './lathe-mesh.ts';
import { type Recipe, recipeKey } from './recipe.ts';
import type { Placement } from './section-plane.ts';

export type PartKind = 'plug' | 'sleeve' | 'shell' | 'retainer' | 'key' | PartRole;

/** A part made with booleans. */
export type SolidPart = {
  readonly key: string;
  readonly kind: PartKind;
  /** In its stack, counted from the bottom; 0 for what stands in none. */
  readonly place: number;
  readonly recipe: Recipe;
  /** Identity of the recipe: parts of equal numbers share their solid. */
  readonly recipeKey: string;
};

/** A spring: bent, never cut; its length comes from the pose. */
export type SpringPart = {
  readonly key: string;
  readonly kind: 'spring';
  readonly place: number;
  readonly shape: SpringShape;
  readonly shapeKey: string;
};

export type PartSet = { readonly solids: readonly SolidPart[]; readonly springs: readonly SpringPart[] };

/** Where a part stands; a spring also has its length then. */
export type PartPlace = Placement & { readonly length: number | null };

/** mm. Curves of outlines are cut into straight pieces that stay this near. */
const OUTLINE_ERROR_MM = 0.0015;

/** Names the ring of a line, as cutAlong does. */
export function retainerPartKey(lineId: string): string {
  return `retainer ${lineId}`;
}

/** Lists everything there is to show. */
export function buildPartSet(assembly: Assembly): PartSet {
  const bodies = assembly.bodies.map((body, i) =>
    solid(bodyPartKey(body.id), body.role, 0, bodyRecipe(assembly, i)),
  );
  const rings = assembly.lines.map((line, i) =>
    solid(retainerPartKey(line.id), 'retainer', 0, retainerRecipe(assembly, i)),
  );
  const { key } = assembly;
  const keys = key === null ? [] : [solid(keyPartKey(key.id), 'key', 0, keyRecipe(key))];
  const stacked = assembly.stacks.flatMap((stack) =>
    stack.parts.map((part, place) => ({ part, place, partKey: stackPartKey(stack.chamber, place) })),
  );
  return {
    solids: [
      ...bodies,
      ...rings,
      ...keys,
      ...stacked
        .filter(({ part }) => part.role !== 'spring')
        .map(({ part, place, partKey }) => solid(partKey, part.role, place, turnedRecipe(part))),
    ],
    springs: stacked
      .filter(({ part }) => part.role === 'spring')
      .map(({ part, place, partKey }) => spring(partKey, place, part)),
  };
}

/** Finds where every part stands; parts that are not there (no key in) are missing from the map. */
export function placeParts(assembly: Assembly, pose: Pose): Map<string, PartPlace> {
  const places = new Map<string, PartPlace>();
  const turnOf = (bodyId: string): Pick<Placement, 'turn' | 'axisY'> => ({
    turn: pose.turns.get(bodyId) ?? 0,
    axisY: assembly.bodies.find((body) => body.id === bodyId)?.axisY ?? 0,
  });
  const still = { shift: [0, 0, 0], length: null } as const;
  for (const body of assembly.bodies) places.set(bodyPartKey(body.id), { ...still, ...turnOf(body.id) });
  for (const line of assembly.lines)
    places.set(retainerPartKey(line.id), { ...still, ...turnOf(line.inner) });
  const { key } = assembly;
  if (key !== null && Number.isFinite(pose.travel)) {
    const plug = known(assembly.bodies[0], 'plug');
    places.set(keyPartKey(key.id), { ...turnOf(plug.id), shift: [0, 0, -pose.travel], length: null });
  }
  for (const stack of pose.stacks) {
    const chamber = assembly.chambers.find((each) => each.id === stack.chamber);
    if (chamber === undefined || chamber.closed) continue;
    stack.parts.forEach((posed, i) => {
      const isSpring = posed.part.role === 'spring';
      places.set(stackPartKey(stack.chamber, i), {
        ...turnOf(posed.turnsWith),
        shift: [sidewaysOf(chamber, posed), posed.y, chamber.z],
        length: isSpring ? posed.topY - posed.y : null,
      });
    });
  }
  return places;
}

function solid(key: string, kind: PartKind, place: number, recipe: Recipe): SolidPart {
  return { key, kind, place, recipe, recipeKey: recipeKey(recipe) };
}

function spring(key: string, place: number, part: StackPart): SpringPart {
  const { radius, wire, coils, solid: squeezed } = part;
  const shape = { radius, wire, coils, solid: squeezed };
  return { key, kind: 'spring', place, shape, shapeKey: JSON.stringify(shape) };
}

/** The key's outline as thick as its blade. */
export function keyRecipe(key: AssemblyKey): Recipe {
  const loops = placedKey(key, 0).map((outline) => flattenOutline(outline, OUTLINE_ERROR_MM));
  return { kind: 'prism', along: 'x', from: -key.thickness / 2, to: key.thickness / 2, loops };
}

/** A ball, pin or driver as a lathe would turn it. */
export function turnedRecipe(part: StackPart): Recipe {
  const profile = flattenPath(partProfile(part), OUTLINE_ERROR_MM).map(
    ({ x, y }): ProfilePoint => ({ r: Math.max(0, x), y }),
  );
  return {
    kind: 'lathe',
    profile: withoutRepeats(profile),
    isRing: false,
    axis: 'y',
    at: { x: 0, y: 0, z: 0 },
    drape: null,
  };
}

function withoutRepeats(profile: readonly ProfilePoint[]): ProfilePoint[] {
  return profile.filter((point, i) => {
    const before = profile[i - 1];
    return before === undefined || Math.hypot(point.r - before.r, point.y - before.y) > 1e-6;
  });
}
