/** What the parts in a hole are called on hand, for captions: only where a person gave them a name of their own. */
import { stackParts } from '../../model/edit/stack-parts.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { Id } from '../../model/schema/leaf.ts';
import type { Part, Plan } from '../../model/schema/parts-schema.ts';

/** "ball", "bottom pin 3": what a part is called until it gets a name. */
const NO_NAME = /^(?:ball|bottom pin|master pin|driver|spring)(?: \d+)?$/iu;

function nameOf(part: Part | null): string | null {
  const label = part?.label.trim() ?? '';
  return label === '' || NO_NAME.test(label) ? null : label;
}

/** "L07 on B2" for the lower stack; null where nothing there has a name. */
export function lowerStackName(job: Job, plan: Plan, chamber: Id): string | null {
  const parts = stackParts(job, plan, chamber);
  const names = [parts?.bottomPin ?? null, parts?.ball ?? null].flatMap((part) => nameOf(part) ?? []);
  return names.length === 0 ? null : names.join(' on ');
}

/** The same for everything in the hole: "L07 on B2, under driver D3". */
export function stackName(job: Job, plan: Plan, chamber: Id): string | null {
  const lower = lowerStackName(job, plan, chamber);
  const driver = nameOf(stackParts(job, plan, chamber)?.driver ?? null);
  if (driver === null) return lower;
  return lower === null ? `driver ${driver}` : `${lower}, under driver ${driver}`;
}
