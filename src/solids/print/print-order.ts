/**
 * What is printed of a cylinder: every part whole, one part, or a cutaway set to teach with: the bodies cut open along the
 * plane through the chambers, key and pins whole, so that pins are laid into half chambers and the key is slid under them.
 * What has no end to stand on is cut across its middle, and glued. Plain data: the worker makes the solids of it.
 *
 *        ___________________
 *       |  | |  | |  | |    |  tower     shell half, cut face down on the bed
 *       |__|_|__|_|__|_|____|
 *       |___________________|  bore      plug half in it
 */
import { known } from '../../model/assert.ts';
import type { Assembly, AssemblyKey, StackPart } from '../../model/assembly/assembly.ts';
import { retainers } from '../../geometry/body-sizes.ts';
import { bodyPartKey, stackPartKey } from '../../geometry/cut-parts.ts';
import { namedParts } from '../../geometry/part-names.ts';
import { bodyRecipe } from '../body-recipes.ts';
import type { Lathe, Recipe } from '../recipe.ts';
import { axisPlane } from '../section-plane.ts';
import { keyRecipe, retainerPartKey } from '../solid-parts.ts';
import type { PrintPiece } from './print-piece.ts';
import { turnedDownRecipe, withClearance } from './turned-down.ts';

/** `cutaway`: the set to teach with; `all`: every part whole; otherwise the key of a part. */
export type PrintChoice =
  | { readonly kind: 'cutaway' | 'all' }
  | { readonly kind: 'part'; readonly part: string };

export type PrintScale = {
  /** How many times as large as the cylinder. */
  readonly factor: number;
  /** Between a printed part and what it slides in, all around, mm of the print. */
  readonly clearance: number;
};

export type PrintOrder = { readonly factor: number; readonly pieces: readonly PrintPiece[] };

export type OrderedPrint =
  | { readonly type: 'success'; readonly order: PrintOrder }
  | { readonly type: 'error'; readonly sentence: string };

/** Of what is thinnest, clearance may take this much. */
const MOST_TAKEN = 0.5;
/** An end whose flat is smaller than this share of the radius does not carry a print. */
const LEAST_FOOTING = 0.25;
/** mm. Points of a profile this near its end lie in it. */
const SAME_LEVEL_MM = 1e-3;

type Printable = {
  readonly key: string;
  readonly pieces: readonly PrintPiece[];
  readonly cutaway: readonly PrintPiece[];
};

/** Says what to print, or why it cannot be. */
export function printOrder(assembly: Assembly, choice: PrintChoice, scale: PrintScale): OrderedPrint {
  const { factor, clearance } = scale;
  const taken = clearance / factor;
  const thinnest = thinnestOf(assembly);
  if (2 * taken > MOST_TAKEN * thinnest)
    return {
      type: 'error',
      sentence: `At ${factor}:1 the thinnest part is ${Number((thinnest * factor).toFixed(2))} mm; a clearance of ${clearance} mm on both sides leaves too little of it. Enlarge more, or take less clearance: 0.2 mm for example.`,
    };
  const all = printables(withClearance(assembly, taken), taken);
  const chosen = choice.kind === 'part' ? all.filter(({ key }) => key === choice.part) : all;
  if (chosen.length === 0)
    return { type: 'error', sentence: 'That part is no longer in the cylinder. Choose another one.' };
  const pieces = chosen.flatMap((each) => (choice.kind === 'cutaway' ? each.cutaway : each.pieces));
  return { type: 'success', order: { factor, pieces } };
}

/** Everything but springs, which cannot be printed. */
function printables(assembly: Assembly, taken: number): Printable[] {
  const bodies = new Map(assembly.bodies.map(({ id }, i) => [bodyPartKey(id), i]));
  const rings = new Map(assembly.lines.map(({ id }, i) => [retainerPartKey(id), i]));
  const turned = new Map(
    assembly.stacks.flatMap(({ chamber, parts }) =>
      parts.map((part, place) => [stackPartKey(chamber, place), part] as const),
    ),
  );
  return namedParts(assembly).flatMap(({ partKey: key, name }): Printable[] => {
    const body = bodies.get(key);
    if (body !== undefined) return [openBody(key, name, bodyRecipe(assembly, body))];
    const ring = rings.get(key);
    if (ring !== undefined) return [openBody(key, name, ringRecipe(assembly, ring, taken))];
    const part = turned.get(key);
    if (part?.role === 'spring') return [];
    const pieces =
      part === undefined
        ? [keyPiece(known(assembly.key, 'key to print'), name)]
        : standing(name, part, taken);
    return [{ key, pieces, cutaway: pieces }];
  });
}

function openBody(key: string, name: string, recipe: Recipe): Printable {
  return {
    key,
    pieces: [{ name, recipe, cut: null, lie: 'on its front' }],
    cutaway: [{ name: `${name} half`, recipe, cut: axisPlane('x', 0), lie: 'on its side' }],
  };
}

function keyPiece(key: AssemblyKey, name: string): PrintPiece {
  return { name, recipe: keyRecipe(key), cut: null, lie: 'on its side' };
}

/** The ring with play in its groove: wider inside, thinner. */
function ringRecipe(assembly: Assembly, line: number, taken: number): Recipe {
  const ring = known(retainers(assembly)[line], `retainer ${line}`);
  const [front, back] = [ring.span.front + taken, ring.span.back - taken];
  const inner = ring.innerRadius + taken;
  return {
    kind: 'lathe',
    profile: [
      { r: inner, y: front },
      { r: ring.outerRadius, y: front },
      { r: ring.outerRadius, y: back },
      { r: inner, y: back },
    ],
    isRing: true,
    axis: 'z',
    at: { x: 0, y: ring.inner.axisY, z: 0 },
    drape: null,
  };
}

/** A turned part on the end that carries it better, or in two halves on their cut. */
function standing(name: string, part: StackPart, taken: number): PrintPiece[] {
  const recipe = turnedDownRecipe(part, taken) as Lathe;
  const { profile } = recipe;
  const flatAt = (y: number) =>
    Math.max(0, ...profile.filter((point) => Math.abs(point.y - y) < SAME_LEVEL_MM).map(({ r }) => r));
  const [lower, upper] = [flatAt(0), flatAt(part.length)];
  if (Math.max(lower, upper) >= LEAST_FOOTING * part.radius)
    return [{ name, recipe, cut: null, lie: lower >= upper ? 'upright' : 'upside down' }];
  const middle = part.length / 2;
  return [
    { name: `${name}, lower half`, recipe, cut: axisPlane('y', middle, true), lie: 'upside down' },
    { name: `${name}, upper half`, recipe, cut: axisPlane('y', middle), lie: 'upright' },
  ];
}

function thinnestOf(assembly: Assembly): number {
  const pins = assembly.stacks.flatMap(({ parts }) =>
    parts.filter(({ role }) => role !== 'spring').map(({ radius }) => 2 * radius),
  );
  const rings = retainers(assembly).map(({ span }) => span.back - span.front);
  return Math.min(...pins, ...rings, assembly.key?.thickness ?? Infinity);
}
