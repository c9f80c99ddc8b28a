/** Several keys in one job: another one, its name, taking one away. */
import { known } from '../assert.ts';
import { lengthOf } from '../measured/part-ends.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Key } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import { plugDiameterOf } from './edit-cylinder.ts';
import { changeKey } from './edit-key.ts';
import { type Added, counted, listed } from './edit-cylinders.ts';
import { newKey } from './new-job.ts';
import { evenPositions } from './usual-positions.ts';
import { assumedLike } from './values.ts';

/**
 * Adds a key of which nothing is measured yet, with a cut for each chamber of a cylinder, assumed to lie under it. What is
 * usual for a blade in such a plug is assumed; cuts are left to be measured.
 */
export function addKey(job: Job, cylinder: Id, label: string, newId: () => Id): Added {
  const { unit } = job.settings;
  const { chambers } = known(
    job.cylinders.find((each) => each.id === cylinder),
    `cylinder ${cylinder}`,
  );
  const places = chambers
    .map(({ position }) => position)
    .sort((one, other) => lengthOf(one, 0) - lengthOf(other, 0));
  const perUnit = unit === 'in' ? 25.4 : 1;
  const first = lengthOf(places[0], 0) / perUnit;
  const last = lengthOf(places.at(-1), 0) / perUnit;
  const spacing = places.length > 1 ? (last - first) / (places.length - 1) : 0;
  const even = evenPositions(places.length, first, spacing, unit);
  const key = newKey(newId, unit, even, plugDiameterOf(job, cylinder));
  const added: Key = {
    ...key,
    label,
    cuts: key.cuts.map((cut, i) => {
      const over = places[i];
      return over === undefined ? cut : { ...cut, position: assumedLike(over, job.sessions) };
    }),
  };
  return { job: { ...job, keys: [...job.keys, added] }, id: added.id };
}

/** Sets what a key is called. */
export function renameKey(job: Job, id: Id, label: string): Job {
  return changeKey(job, id, (each) => ({ ...each, label }));
}

/** Takes a key away with its cuts and all that was read or felt with it. */
export function removeKey(job: Job, id: Id): Job {
  return {
    ...job,
    keys: job.keys.filter((each) => each.id !== id),
    seatings: job.seatings.filter((each) => each.key !== id),
    intents: job.intents.filter((each) => each.key !== id),
    benchResults: job.benchResults.filter((each) => each.key !== id),
  };
}

/** What goes with a key, as one sentence. */
export function sayKeyGoes(job: Job, id: Id): string {
  const { label, cuts } = known(
    job.keys.find((each) => each.id === id),
    `key ${id}`,
  );
  const cylinders = job.seatings.filter((each) => each.key === id).length;
  const tests = job.benchResults.filter((each) => each.key === id).length;
  const things = [
    counted(cuts.length, 'cut'),
    ...(cylinders === 0 ? [] : [`what was read of it in ${counted(cylinders, 'cylinder')}`]),
    ...(tests === 0 ? [] : [counted(tests, 'bench test')]),
  ];
  return `With ${label} go its ${listed(things)}.`;
}
