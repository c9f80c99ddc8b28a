/**
 * A caliper that does not read zero when closed. Plug, metal under the key, root depth and pin are all read with it, each
 * wrong by the same: pin called for = (plug + e) - (metal + e) - (root + e), and the pin chosen reads that, so it is e
 * shorter again. Offset of the split: -2 e.
 */
import { toStoredMm } from '../../units/length-unit.ts';
import { sizeOf } from '../draw.ts';
import { withSplit } from '../placed-split.ts';
import type { Lesson } from '../lesson.ts';
import { crossingOf, offsetOf, sceneOf } from '../scene.ts';
import { PLACE_REACH_MM, PLACE_TOLERANCE_MM } from '../tolerance.ts';

export const CALIPER_ZERO: Lesson = {
  id: 'caliper-zero',
  steps: (draw) => {
    const around = { unit: draw.unit };
    const chamber = { rootDepth: draw.length(0.3, 0.46) };
    // Twice each stands clear of where a usual stack stops turning.
    const size = sizeOf(draw.pick([0.001, 0.003, 0.005]), draw.unit);
    const sign = draw.pick([1, -1]);
    const offset = toStoredMm(-2 * sign * size);
    const scene = (mm: number) => sceneOf(withSplit(around, chamber, mm));
    const wrong = { low: -2 * size, level: 0, high: 2 * size };
    const truth = scene(offset);
    const way = sign > 0 ? 'over' : 'under';
    return [
      {
        id: `which-way-${way}`,
        kind: 'choose',
        given: { by: size },
        truth,
        options: ['low', 'level', 'high'],
        build: (option) => scene(wrong[option as keyof typeof wrong]),
        reads: (reading) => crossingOf(reading),
      },
      {
        id: `how-far-${way}`,
        kind: 'place',
        given: { by: size },
        truth,
        build: (mm) => scene(offset - mm),
        reads: (reading) => offsetOf(reading),
        tolerance: PLACE_TOLERANCE_MM,
        range: { from: -PLACE_REACH_MM, to: PLACE_REACH_MM },
      },
    ];
  },
};
