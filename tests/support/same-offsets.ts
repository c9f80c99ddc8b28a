/**
 * Pairs of jobs that differ in everything a key could be cut from and agree in every offset: each cut is deeper or shallower
 * by what its bottom pin is longer or shorter; what else is restricted is drawn anew.
 */
import type { Job } from '../../src/model/schema/job-schema.ts';
import { buildJob, changed } from './job-builder.ts';
import { seededRandom } from './random-job.ts';
import { inches } from './values.ts';

export function sameOffsets(seed: number): readonly [Job, Job] {
  const random = seededRandom(seed);
  const between = (least: number, most: number) =>
    Math.round((least + (most - least) * random()) * 1e4) / 1e4;
  const depths = Array.from({ length: 2 + Math.floor(random() * 3) }, () => between(0.235, 0.275));
  const offs = depths.map(() => between(-0.012, 0.012));
  const moves = depths.map(() => between(-0.02, 0.02));
  const common = {
    title: `Pair ${seed}`,
    unit: random() < 0.5 ? ('in' as const) : ('mm' as const),
    instrumentError: random() < 0.5 ? ('none' as const) : ('default' as const),
    plugDiameter: between(0.49, 0.53),
    floorHeight: between(0.06, 0.09),
  };
  const level = common.plugDiameter - common.floorHeight;
  const jobWith = (isMoved: boolean) =>
    buildJob({
      ...common,
      bladeHeight: isMoved ? 0.352 : 0.34,
      tip: isMoved
        ? { position: 1.9, noseHeight: 0.07, rampDeg: 40 }
        : { position: 1.7, noseHeight: 0.05, rampDeg: 45 },
      chambers: depths.map((depth, i) => {
        const move = isMoved ? (moves[i] ?? 0) : 0;
        const rootDepth = round(depth + move);
        return { ball: null, rootDepth, bottomPin: round(level - depth - move + (offs[i] ?? 0)) };
      }),
    });
  const note = { jobNumber: `J-${seed}`, work: 'Re-pinned', technician: 'A. Invented' };
  const tests = (job: Job): Job => ({
    ...job,
    note: { ...job.note, shared: note },
    benchResults: [
      {
        plan: 'plan',
        key: 'key',
        chamber: 'chamber-1',
        items: [{ part: 'bottom-pin-1' }],
        turned: true,
        at: '2026-03-02T10:00:00.000Z',
      },
    ],
  });
  const other = changed(tests(jobWith(true)), (job) => {
    job.note.restricted = { keyway: `K${seed}`, toDo: 'Chamber 1: another pin' };
    job.depths = { rootDepths: [inches(between(0.2, 0.3)), inches(between(0.1, 0.2))] };
  });
  return [tests(jobWith(false)), other];
}

function round(inch: number): number {
  return Math.round(inch * 1e4) / 1e4;
}
