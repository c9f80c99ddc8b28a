/**
 * Windows of splits drawn at random, kept as text: the three limits and what each rests on, where a top that is too high or too low stops,
 * how the driver rides. That they are right is held by shear-window.test.ts and tests/outside/window*.test.ts against solids and points.
 */
import { describe, test } from 'vitest';
import { asRadians, fromDegrees } from '../../../src/model/radians.ts';
import { bindsAt } from '../../../src/model/window/binds-at.ts';
import { lowerStops } from '../../../src/model/window/lower-stops.ts';
import { mouthEdge, mouthOf, mouthReach, surfaceEdge } from '../../../src/model/window/mouth-edge.ts';
import { rubsFrom, tightestUpTo } from '../../../src/model/window/no-touch.ts';
import { nesting } from '../../../src/model/window/own-lift.ts';
import { rideCurve, rideMarks } from '../../../src/model/window/ride-curve.ts';
import { shearWindow } from '../../../src/model/window/shear-window.ts';
import type { LinePoint, WindowInput } from '../../../src/model/window/window-input.ts';
import { asText } from '../../support/as-text.ts';
import { expectGoldenPart } from '../../support/golden.ts';
import { type EndKind, randomWindow, seededRandom } from '../../support/window-cases.ts';

const ENDS: readonly EndKind[] = ['flat', 'bevel', 'radius', 'dome', 'cone', 'cup', 'sphere'];
const OFFSETS = [-0.5, -0.2, 0, 0.08, 0.3] as const;
const TURNS = [0, 2, 8, 20, 60].map(fromDegrees);

/** Each end above and below, and some with each mouth, worn and new. */
const CASES = ENDS.flatMap((lower, i) =>
  ENDS.slice(1).flatMap((upper, j) => {
    const drawn = randomWindow(seededRandom(100 * i + j + 1), [lower], [upper]);
    return [
      { name: `${lower} under ${upper}`, input: drawn },
      ...(j % 6 === i % 6 ? others(lower, upper, drawn) : []),
    ];
  }),
);

function others(lower: EndKind, upper: EndKind, drawn: WindowInput): { name: string; input: WindowInput }[] {
  const under = `${lower} under ${upper}`;
  const size = drawn.innerHole.radius * 0.15;
  return [
    {
      name: `${under}, countersunk`,
      input: { ...drawn, innerHole: { ...drawn.innerHole, mouth: { kind: 'countersunk', size } } },
    },
    {
      name: `${under}, deburred`,
      input: { ...drawn, innerHole: { ...drawn.innerHole, mouth: { kind: 'deburred along', size } } },
    },
    { name: `${under}, worn and centred`, input: { ...drawn, crestDrop: 0.1, innerLies: 'centred' } },
    {
      name: `${under}, a small turn`,
      input: {
        ...drawn,
        turn: { angle: fromDegrees(12) },
        outerHole: { radius: drawn.innerHole.radius * 1.1 },
      },
    },
    { name: `${under}, a steep ramp`, input: { ...drawn, steepestRamp: fromDegrees(80) } },
    {
      name: `${under}, no play`,
      input: { ...drawn, lower: { ...drawn.lower, sideways: 0 }, upper: { ...drawn.upper, sideways: 0 } },
    },
  ];
}

describe('windows', () => {
  test.each(CASES)('$name', ({ name, input }) => {
    expectGoldenPart('windows/windows.txt', name, asText(windowText(input)));
  });
});

const point = ({ x, y, z }: LinePoint): string => [x, y, z].map((mm) => mm.toFixed(3)).join(' ');

function windowText(input: WindowInput): unknown {
  const mouth = mouthOf(input);
  return {
    window: shearWindow(input),
    tightest: tightestUpTo(input, asRadians(input.turn.angle)),
    nesting: nesting(input.lower, input.upper),
    mouth: { ...mouth, reach: mouthReach(mouth) },
    edges: [mouthEdge(mouth, 0), mouthEdge(mouth, 0.05), surfaceEdge(mouth)],
    at: OFFSETS.map((offset) => {
      const binding = bindsAt(input, offset);
      const lower = lowerStops(input, offset);
      return {
        offset,
        rubsFrom: rubsFrom(input, offset),
        ...(binding && { ...binding, contact: point(binding.contact) }),
        lowerTurn: lower?.turn ?? null,
        lowerAt: lower && point(lower.contact),
      };
    }),
    rides: TURNS.map((turn) => ({ turn, low: rideCurve(input)(turn), lifted: rideCurve(input, 0.1)(turn) })),
    marks: rideMarks(input, 4),
  };
}
