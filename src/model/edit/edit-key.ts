/** Edits of a key: its cuts, what it stops at, its blade. Each gives a new job. Lengths mm. */
import { lengthOf } from '../measured/part-ends.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Cut, Key } from '../schema/key-schema.ts';
import type { AngleValue, Id, LengthValue } from '../schema/leaf.ts';
import { changeById, withOptional } from './change.ts';
import { changeSeating } from './edit-seating.ts';
import { movedValue } from './values.ts';

/** Changes one key. */
export function changeKey(job: Job, id: Id, change: (key: Key) => Key): Job {
  return { ...job, keys: changeById(job.keys, id, change) };
}

/** Changes one cut of a key. */
export function changeCut(job: Job, key: Id, cut: Id, change: (cut: Cut) => Cut): Job {
  return changeKey(job, key, (each) => ({ ...each, cuts: changeById(each.cuts, cut, change) }));
}

/** Sets the metal left under a cut. */
export function setCutRootDepth(job: Job, key: Id, cut: Id, value: LengthValue | undefined): Job {
  return changeCut(job, key, cut, (each) => withOptional(each, 'rootDepth', value));
}

/** Sets the reading over a ball laid in the cut. `ball` is the diameter of the ball that was laid in. */
export function setCutOverBall(
  job: Job,
  key: Id,
  cut: Id,
  reading: LengthValue | undefined,
  ball: LengthValue,
): Job {
  return changeCut(job, key, cut, (each) =>
    withOptional(each, 'overBall', reading === undefined ? undefined : { reading, ball }),
  );
}

/** Sets the ball that was laid in the cuts, for every cut read that way. */
export function setOverBallDiameter(job: Job, key: Id, ball: LengthValue): Job {
  return changeKey(job, key, (each) => ({
    ...each,
    cuts: each.cuts.map((cut) =>
      cut.overBall === undefined ? cut : { ...cut, overBall: { ...cut.overBall, ball } },
    ),
  }));
}

/** Sets where a cut's centre lies, from the stop. */
export function setCutPosition(job: Job, key: Id, cut: Id, value: LengthValue): Job {
  return changeCut(job, key, cut, (each) => ({ ...each, position: value }));
}

/** Slides all cuts along the key by the same amount; + is further from the stop. mm. */
export function slideCuts(job: Job, key: Id, byMm: number): Job {
  if (byMm === 0) return job;
  return changeKey(job, key, (each) => ({
    ...each,
    cuts: each.cuts.map((cut) => ({ ...cut, position: movedValue(cut.position, byMm) })),
  }));
}

/** Sets the flat at the bottom of the cuts, for those that do not state their own. */
export function setRootFlat(job: Job, key: Id, value: LengthValue | undefined): Job {
  return changeKey(job, key, (each) => withOptional(each, 'rootFlat', value));
}

/** Sets the angle between the sides of the cuts, for those that do not state their own. */
export function setCutAngle(job: Job, key: Id, value: AngleValue | undefined): Job {
  return changeKey(job, key, (each) => withOptional(each, 'includedAngle', value));
}

/** Sets the height of the blade where it is not cut. */
export function setBladeHeight(job: Job, key: Id, value: LengthValue | undefined): Job {
  return changeKey(job, key, (each) => withOptional(each, 'bladeHeight', value));
}

/** Sets where the blade ends, from the stop, or how high its nose stands. */
export function setTip(
  job: Job,
  key: Id,
  name: 'position' | 'noseHeight',
  value: LengthValue | undefined,
): Job {
  return changeKey(job, key, (each) => ({ ...each, tip: withOptional(each.tip ?? {}, name, value) }));
}

/**
 * Sets what stops the key. Places of cuts are counted from the stop, so they are turned round: with the tip stopping, they
 * run from the tip back. `stopAt` is where the tip stops, from the plug's front face.
 */
export function setStop(
  job: Job,
  cylinder: Id,
  key: Id,
  kind: Key['stop']['kind'],
  stopAt: LengthValue,
): Job {
  const before = job.keys.find((each) => each.id === key);
  if (before === undefined || before.stop.kind === kind) return job;
  const at = lengthOf(stopAt, 0);
  const turned = changeKey(job, key, (each) => ({
    ...each,
    stop: { kind },
    cuts: each.cuts.map((cut) => ({
      ...cut,
      position: movedValue(cut.position, at - 2 * lengthOf(cut.position, 0)),
    })),
  }));
  return changeSeating(turned, cylinder, key, (seating) =>
    withOptional(seating, 'stopAt', kind === 'tip' ? stopAt : undefined),
  );
}
