/**
 * The cylinder cut open with its key being pushed in, as plain data for a scene file: what there is, and where it stands from
 * one moment to the next, taken from the model. Frame of assembly.ts; mm, seconds.
 */
import type { Assembly } from '../../model/assembly/assembly.ts';
import { poseAt } from '../../model/assembly/pose-at.ts';
import { namedParts } from '../../geometry/part-names.ts';
import type { SpringShape } from '../helix-mesh.ts';
import type { Recipe } from '../recipe.ts';
import { axisPlane, type SectionPlane, type Triple } from '../section-plane.ts';
import { buildPartSet, type PartKind, placeParts } from '../solid-parts.ts';

export type MovingPart = {
  /** As in "chamber 2 bottom pin"; no length in it. */
  readonly name: string;
  readonly kind: PartKind;
  readonly made:
    | { readonly kind: 'solid'; readonly recipe: Recipe; readonly cut: SectionPlane | null }
    /** Its length at every moment. */
    | { readonly kind: 'spring'; readonly shape: SpringShape; readonly lengths: Float32Array };
  /** Where it stands at every moment, three numbers each; one moment if it never moves. */
  readonly shifts: Float32Array;
};

export type InsertionOrder = {
  /** Moments, from 0; one if nothing moves. */
  readonly seconds: Float32Array;
  readonly parts: readonly MovingPart[];
  /** Colour of each kind of part, "#rrggbb". */
  readonly colours: Readonly<Record<PartKind, string>>;
};

/** mm of travel from one moment to the next: corners of a pin's way are met within half of it. */
const STEP_MM = 0.05;
const MOST_STEPS = 1200;
const INSERTION_SECONDS = 5;

/** Takes the way of every part from the model, key out to key home. Without a key everything stands still. */
export function insertionOrder(assembly: Assembly, colours: InsertionOrder['colours']): InsertionOrder {
  const travels = travelsOf(assembly);
  const moments = travels.map((travel) => placeParts(assembly, poseAt(assembly, { travel })));
  const { solids, springs } = buildPartSet(assembly);
  const names = new Map(namedParts(assembly).map(({ partKey, name }) => [partKey, name]));
  const parts = [...solids, ...springs].flatMap((part): MovingPart[] => {
    const places = moments.flatMap((each) => each.get(part.key) ?? []);
    if (places.length !== moments.length) return [];
    return [
      {
        name: names.get(part.key) ?? part.kind,
        kind: part.kind,
        made:
          'recipe' in part
            ? { kind: 'solid', recipe: part.recipe, cut: isBody(part.kind) ? axisPlane('x', 0) : null }
            : {
                kind: 'spring',
                shape: part.shape,
                lengths: Float32Array.from(places, ({ length }) => length ?? 0),
              },
        shifts: onceIfStill(places.map(({ shift }) => shift)),
      },
    ];
  });
  const last = Math.max(1, travels.length - 1);
  const seconds = Float32Array.from(travels, (_, i) => (i / last) * INSERTION_SECONDS);
  return { seconds, parts, colours };
}

/** mm still out, from clear of every stack to home. */
export function travelsOf({ key }: Assembly): (number | null)[] {
  if (key === null) return [null];
  const way = key.outTravel - key.seatedTravel;
  const steps = Math.max(1, Math.min(MOST_STEPS, Math.ceil(way / STEP_MM)));
  return Array.from({ length: steps + 1 }, (_, i) =>
    i === steps ? key.seatedTravel : key.outTravel - (way * i) / steps,
  );
}

function isBody(kind: PartKind): boolean {
  return kind === 'plug' || kind === 'sleeve' || kind === 'shell' || kind === 'retainer';
}

function onceIfStill(shifts: readonly Triple[]): Float32Array {
  const all = Float32Array.from(shifts.flat());
  const first = all.subarray(0, 3);
  return all.every((value, i) => value === first[i % 3]) ? first.slice() : all;
}
