/**
 * A full evaluation of a seven-chamber job, windows with their ride curves included, and the same contacts and windows by
 * dense sampling refined until its error is at most 1e-5 mm. Every round evaluates another job (each chamber's stack, bore
 * and ends differ a little), so that nothing can be remembered from the round before.
 */
import { assemble } from '../src/model/assembly/build-assembly.ts';
import { buildFoot, footDrop } from '../src/model/contact/foot.ts';
import { profileHeightAt } from '../src/model/contact/key-profile.ts';
import { evaluate } from '../src/model/evaluate/evaluate.ts';
import { layOut, type Selection } from '../src/model/measured/selection.ts';
import { fromDegrees } from '../src/model/radians.ts';
import type { Job } from '../src/model/schema/job-schema.ts';
import type { WindowInput } from '../src/model/window/window-input.ts';
import { buildJob } from '../tests/support/job-builder.ts';
import { denseLowest } from '../tests/support/dense-window.ts';
import { type Bench, medianMs } from './support/bench.ts';

const SELECTION: Selection = { cylinder: 'cylinder', key: 'key', plan: 'plan' };
/** mm */
const ERROR = 1e-5;

function jobOf(round: number): Job {
  const shift = round * 1e-5;
  return buildJob({
    instrumentError: 'default',
    plugDiameter: 0.748 + shift,
    clearance: 0.004,
    rootFlat: 0.05,
    chamberDiameter: 0.16 + shift,
    pinDiameter: 0.156,
    bladeHeight: 0.5,
    pinTop: { kind: 'dome' },
    driverEnd: { kind: 'bevel', width: 0.005, angleDeg: 45 },
    chamberSpacing: 0.25,
    tip: { position: 2.4, noseHeight: 0.06, rampDeg: 45 },
    chambers: [0.369, 0.421, 0.333, 0.393, 0.453, 0.303, 0.35].map((rootDepth) => ({
      rootDepth,
      ball: 0.15625,
    })),
  });
}

/** Samples evenly, twice as densely each time, until a step is no longer than the error (the sides rise one in one). */
function bySampling(height: (across: number) => number, reach: number): number {
  let best = -Infinity;
  for (let count = 64; (2 * reach) / count > ERROR / 2; count *= 2) {
    for (let i = 0; i <= count; i++) best = Math.max(best, height(-reach + (2 * reach * i) / count));
  }
  return best;
}

function byDenseSampling(job: Job): number {
  const assembly = assemble(layOut(job, SELECTION));
  const { key } = assembly;
  if (key === null) throw new Error('no key');
  let sum = 0;
  for (const [i, chamber] of assembly.chambers.entries()) {
    const foot = assembly.stacks[i]?.parts[0];
    const pin = assembly.stacks[i]?.parts[1];
    const driver = assembly.stacks[i]?.parts[2];
    const hole = chamber.holes[0];
    const line = assembly.lines[0];
    if (!foot || !pin || !driver || !hole || !line) throw new Error('no stack');
    const shape = buildFoot(foot.lower, foot.radius);
    const height = (across: number) =>
      profileHeightAt(key.profile, chamber.z + across) - footDrop(shape, across);
    sum += bySampling(height, foot.radius);
    const input: WindowInput = {
      lineRadius: line.radius,
      crestDrop: 0,
      clearance: line.clearance,
      innerLies: line.lies,
      turn: assembly.turn,
      lower: { top: pin.upper, radius: pin.radius, sideways: 0 },
      upper: { bottom: driver.lower, radius: driver.radius, sideways: 0 },
      innerHole: { radius: hole.radius, mouth: { kind: 'sharp' } },
      steepestRamp: fromDegrees(60),
    };
    sum += denseLowest(input).offset;
  }
  return sum;
}

export const bench: Bench = {
  title: 'Evaluation of a seven-chamber job',
  async run() {
    let round = 0;
    const jobs = Array.from({ length: 400 }, (_, i) => jobOf(i));
    const next = () => jobs[round++ % jobs.length] ?? jobOf(0);
    const ours = await medianMs(() => evaluate(next(), SELECTION), { warmUp: 200, rounds: 200 });
    const dense = await medianMs(() => byDenseSampling(next()), { warmUp: 1, rounds: 5 });
    return [
      { what: 'full evaluation, warm', measured: ours, unit: 'ms', aim: { atMost: 2 } },
      { what: 'contacts and lowest ends by dense sampling to 1e-5 mm', measured: dense, unit: 'ms' },
      { what: 'dense sampling against evaluation', measured: dense / ours, unit: '×', aim: { atLeast: 50 } },
    ];
  },
};
