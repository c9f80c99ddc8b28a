/** Gathers what the window engine needs for one split at one line. mm, radians. */
import type { Assembly, AssemblyChamber } from '../assembly/assembly.ts';
import type { EndShape } from '../end-shape.ts';
import { fromDegrees } from '../radians.ts';
import { BROKEN_EDGE_MM } from '../measured/part-ends.ts';
import type { Bench } from '../measured/selection.ts';
import type { WindowInput } from '../window/window-input.ts';
import type { LinePlace, SplitPlace } from './split-place.ts';

export type WindowPlace = {
  readonly place: SplitPlace;
  readonly line: LinePlace;
  readonly bench: Bench;
  readonly assembly: Assembly;
  readonly chamber: AssemblyChamber;
};

/** Builds the input of the window engine. Without a driver in the plan, the usual one is taken: its edge broken. */
export function windowInputFor({ place, line, bench, assembly, chamber }: WindowPlace): WindowInput {
  const { index, measured } = line;
  const innerHole = chamber.holes[index];
  const outerHole = chamber.holes[index + 1];
  const innerRadius = innerHole?.radius ?? 1;
  const lowerRadius = Math.min(place.below.radius.value, innerRadius);
  const upperRadius = Math.min(place.above?.radius.value ?? lowerRadius, outerHole?.radius ?? innerRadius);
  const usual: EndShape = {
    kind: 'bevel',
    width: Math.min(BROKEN_EDGE_MM, upperRadius / 2),
    angle: fromDegrees(45),
  };
  return {
    lineRadius: measured.radius.value,
    crestDrop: chamber.crestDrops[index] ?? 0,
    clearance: measured.clearance.value,
    innerLies: measured.lies,
    turn: assembly.turn,
    lower: { top: place.below.upper.shape, radius: lowerRadius, sideways: 0 },
    upper: { bottom: place.above?.lower.shape ?? usual, radius: upperRadius, sideways: 0 },
    innerHole: { radius: innerRadius, mouth: innerHole?.outerMouth ?? { kind: 'sharp' } },
    ...(outerHole !== undefined && { outerHole: { radius: outerHole.radius } }),
    steepestRamp: fromDegrees(bench.job.settings.steepestRampDeg),
  };
}
