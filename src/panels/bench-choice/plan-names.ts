/** What the plans of a cylinder are called; several of one kind are numbered. */
import type { Job } from '../../model/schema/job-schema.ts';
import type { Id } from '../../model/schema/leaf.ts';
import type { Plan } from '../../model/schema/parts-schema.ts';

const NAMES: Readonly<Record<Plan['kind'], string>> = {
  'as found': 'As found',
  planned: 'Planned',
  'as built': 'As built',
};

export function planNames(job: Job, cylinder: Id): { readonly id: Id; readonly label: string }[] {
  const plans = job.plans.filter((plan) => plan.cylinder === cylinder);
  return plans.map(({ id, kind }) => {
    const alike = plans.filter((plan) => plan.kind === kind);
    const number = alike.findIndex((plan) => plan.id === id) + 1;
    return { id, label: alike.length < 2 ? NAMES[kind] : `${NAMES[kind]} ${number}` };
  });
}

/** "Cylinder 2": the first such name that is not taken. */
export function freeName(what: string, taken: readonly { readonly label: string }[]): string {
  for (let number = taken.length + 1; ; number++) {
    const name = `${what} ${number}`;
    if (!taken.some(({ label }) => label === name)) return name;
  }
}
