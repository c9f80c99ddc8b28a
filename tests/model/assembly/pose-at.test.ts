/** Which body carries a part: the one in whose hole its middle is. Heights above the plug's axis, inches. */
import { describe, expect, test } from 'vitest';
import { assemble } from '../../../src/model/assembly/build-assembly.ts';
import { poseAt } from '../../../src/model/assembly/pose-at.ts';
import { layOut } from '../../../src/model/measured/selection.ts';
import { buildJob } from '../../support/job-builder.ts';
import { SELECTION } from '../../support/small-job.ts';

// plug .512 across, sleeve .632: lines at .256 and at .316 + half of .003
const SLEEVED = buildJob({
  chambers: [{ rootDepth: 0.26, bottomPin: 0.1 }],
  sleeve: { outerDiameter: 0.632, clearance: 0.003 },
});

/** The bottom pin lifted so that its middle stands at this height. */
function carrierAt(middle: number) {
  const assembly = assemble(layOut(SLEEVED, SELECTION));
  const seated = poseAt(assembly, { travel: 0 }).stacks[0]!;
  const pin = seated.parts[0]!;
  const lift = middle * 25.4 - (pin.y + pin.topY) / 2;
  const lifted = poseAt(assembly, { travel: 0, lift }).stacks[0]!;
  const posed = lifted.parts[0]!;
  expect((posed.y + posed.topY) / 2 / 25.4).toBeCloseTo(middle, 9);
  return posed.turnsWith;
}

describe('a part turns with', () => {
  test.each([
    [0.1, 'plug'],
    [0.255, 'plug'],
    [0.257, 'sleeve'],
    [0.3165, 'sleeve'],
    [0.3185, 'shell'],
    [0.5, 'shell'],
  ])('its middle at %f: the %s', (middle, body) => {
    expect(carrierAt(middle)).toBe(body);
  });
});

test('a lifted stack takes along what stands on it, and the spring gives way up to the cap', () => {
  const assembly = assemble(layOut(buildJob({ chambers: 1 }), SELECTION));
  const [still, lifted] = [0, 1].map((lift) => poseAt(assembly, { travel: 0, lift }).stacks[0]!);
  still!.parts.forEach((part, i) => {
    const other = lifted!.parts[i]!;
    expect(other.y - part.y).toBeCloseTo(1, 9);
    if (part.part.role !== 'spring') expect(other.topY - part.topY).toBeCloseTo(1, 9);
    else expect(other.topY).toBeLessThanOrEqual(assembly.chambers[0]!.capY + 1e-9);
  });
  const [, , spring] = still!.parts;
  // from the top of the driver to the cap, less what the spring takes up when squeezed solid
  const room = assembly.chambers[0]!.capY - spring!.y;
  const over = poseAt(assembly, { travel: 0, lift: room - spring!.part.solid + 0.3 }).stacks[0]!;
  expect(over.crushedBy).toBeCloseTo(0.3, 9);
  expect(still!.crushedBy).toBe(0);
});
