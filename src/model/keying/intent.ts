/** What a key is meant to do in a cylinder: read from the job and set in it. One entry for each line. */
import { known } from '../assert.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { Turning } from './key-outcomes.ts';

export type KeyAndCylinder = { readonly key: Id; readonly cylinder: Id };

/** Says what a key is meant to turn; null takes back what was said. */
export function setIntent(job: Job, { key, cylinder }: KeyAndCylinder, meant: Turning | null): Job {
  const others = job.intents.filter((each) => each.key !== key || each.cylinder !== cylinder);
  if (meant === null) return { ...job, intents: others };
  const { lines } = known(
    job.cylinders.find(({ id }) => id === cylinder),
    `cylinder ${cylinder}`,
  );
  const own = lines.map(({ id }, i) => ({ key, cylinder, line: id, turns: turnsLine(meant, i) }));
  return { ...job, intents: [...others, ...own] };
}

function turnsLine(meant: Turning, lineIndex: number): boolean {
  if (meant === 'either') return true;
  return meant === (lineIndex === 0 ? 'plug' : 'together');
}
