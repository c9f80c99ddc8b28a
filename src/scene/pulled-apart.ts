/**
 * Where parts go when they are pulled apart: bodies and key come out of the front one after the other, the shell goes
 * back, the parts of the stacks hang over their chambers in the order in which they stood. Frame of assembly.ts, mm.
 */
import { known } from '../model/assert.ts';
import type { Assembly } from '../model/assembly/assembly.ts';
import { bodySpans, shellShape } from '../geometry/body-sizes.ts';
import type { PartKind } from '../solids/solid-parts.ts';
import type { Offsets } from './part-objects.ts';
import type { PartVisibility } from './scene-types.ts';

/** Clear space between what was pulled apart, as a share of the plug's radius. */
const CLEAR_SHARE = 0.5;

/** Parts of a stack, bottom to top. */
const STACK: readonly PartKind[] = ['ball', 'bottomPin', 'masterPin', 'driver', 'spring'];

/** Measures how far each kind moves. Kinds that stay do not push those that are pulled. */
export function pulledApart(assembly: Assembly, visibility: PartVisibility): Offsets {
  const isPulled = (kind: PartKind): boolean => visibility[kind] === 'pulled apart';
  const plug = known(assembly.bodies[0], 'plug');
  const clear = CLEAR_SHARE * plug.outerRadius;
  const spans = bodySpans(assembly);
  const length = Math.max(...spans.map(({ front, back }) => back - front)) + clear;
  const sleeve = isPulled('sleeve') ? -length : 0;
  const plugOut = isPulled('plug') ? sleeve - length : 0;
  const keyOut = isPulled('key') ? plugOut - (assembly.key?.shape.tipAt ?? length) - clear : 0;
  let height = shellShape(assembly).topY + clear - lowestOfStacks(assembly);
  const stack: Partial<Record<PartKind, readonly [number, number, number]>> = {};
  for (const kind of STACK) {
    if (!isPulled(kind)) continue;
    stack[kind] = [0, height, 0];
    height += clear;
  }
  return {
    ...stack,
    sleeve: [0, 0, sleeve],
    plug: [0, 0, plugOut],
    key: [0, 0, keyOut],
    retainer: [0, 0, clear * 2 + (isPulled('shell') ? length : 0)],
    shell: [0, 0, length],
  };
}

function lowestOfStacks(assembly: Assembly): number {
  const bottom = assembly.key?.bottomY ?? -plugRadiusOf(assembly);
  return bottom;
}

function plugRadiusOf(assembly: Assembly): number {
  return known(assembly.bodies[0], 'plug').outerRadius;
}
