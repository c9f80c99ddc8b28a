/**
 * Cuts too different for their spacing: the deeper one's cutter takes away part of the shallower one's flat.
 *
 * Frame as in key-profile.ts. mm, radians.
 *
 *      shallow root
 *     ____......          the deeper cutter's side starts before the flat's end: that part of the flat is gone,
 *    /    \               and beyond the middle of the cut the root under the chamber is lower too
 *          \_______/
 *            deep root
 */
import type { Radians } from '../radians.ts';
import { SAME_CONTACT_MM } from '../tolerances.ts';
import { flankRise, type KeyCut, type KeyShape } from './key-profile.ts';

export type EatenFlat = {
  readonly cut: string;
  /** The neighbour's cut, or the tip's ramp. */
  readonly by: { readonly kind: 'cut'; readonly cut: string } | { readonly kind: 'tip' };
  /** Width that this one takes from the flat. */
  readonly eaten: number;
  /** Width left of the flat after all that eat it. */
  readonly flatLeft: number;
  /** How far this one lowers the root at the middle of the cut; 0 when it does not reach the middle. */
  readonly rootDrop: number;
};

type Reach = {
  readonly by: EatenFlat['by'];
  readonly from: number;
  readonly to: number;
  readonly rootDrop: number;
};

/** Lists every flat that a neighbour's cutter or the tip's ramp takes part of, in the order of the cuts. */
export function eatenFlats(shape: KeyShape): EatenFlat[] {
  return shape.cuts.flatMap((cut) => {
    const reaches = [
      ...shape.cuts.filter((other) => other !== cut).map((other) => reachOfCut(other, cut)),
      reachOfTip(shape, cut),
    ].filter(
      ({ from, to, rootDrop }) => to - from > SAME_CONTACT_MM || (rootDrop > SAME_CONTACT_MM && to >= from),
    );
    const flatLeft = Math.max(0, cut.rootFlat - covered(reaches));
    return reaches.map(({ by, from, to, rootDrop }) => ({
      cut: cut.id,
      by,
      eaten: to - from,
      flatLeft,
      rootDrop,
    }));
  });
}

/** Largest difference of root depth between neighbours that leaves both flats whole; 0 when the flats overlap. */
export function largestStep(spacing: number, rootFlat: number, includedAngle: Radians): number {
  return Math.max(0, spacing - rootFlat) * flankRise({ includedAngle });
}

function reachOfCut(eater: KeyCut, cut: KeyCut): Reach {
  const deeper = cut.rootDepth - eater.rootDepth;
  const reach = deeper > 0 ? eater.rootFlat / 2 + deeper / flankRise(eater) : -Infinity;
  const away = Math.max(0, Math.abs(cut.at - eater.at) - eater.rootFlat / 2);
  return {
    by: { kind: 'cut', cut: eater.id },
    ...onFlat(cut, eater.at - reach, eater.at + reach),
    rootDrop: Math.max(0, deeper - away * flankRise(eater)),
  };
}

function reachOfTip(shape: KeyShape, cut: KeyCut): Reach {
  const rise = Math.tan(shape.tipRamp);
  const from = shape.tipAt - (cut.rootDepth - shape.tipHeight) / rise;
  const middle = shape.tipHeight + (shape.tipAt - cut.at) * rise;
  return {
    by: { kind: 'tip' },
    ...onFlat(cut, from, Infinity),
    rootDrop: Math.max(0, cut.rootDepth - middle),
  };
}

function onFlat(cut: KeyCut, from: number, to: number): { from: number; to: number } {
  return { from: Math.max(from, cut.at - cut.rootFlat / 2), to: Math.min(to, cut.at + cut.rootFlat / 2) };
}

function covered(reaches: readonly Reach[]): number {
  let width = 0;
  let end = -Infinity;
  for (const { from, to } of [...reaches].sort((one, other) => one.from - other.from)) {
    width += Math.max(0, to - Math.max(from, end));
    end = Math.max(end, to);
  }
  return width;
}
