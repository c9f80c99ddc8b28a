/** The states of a cylinder that a note sets side by side: as found, planned, as built. */
import { type ShareableView, shareableView } from '../../model/sharing/shareable-view.ts';
import type { Plan } from '../../model/schema/parts-schema.ts';
import { type Look, lookAt } from '../shared/look.ts';

const KINDS: readonly Plan['kind'][] = ['as found', 'planned', 'as built'];

export const STATE_NAMES: Readonly<Record<Plan['kind'], string>> = {
  'as found': 'As found',
  planned: 'Planned',
  'as built': 'As built',
};

/** Looks at one plan of each kind: the one on screen, else the first that is not only a set known to work. */
export function noteStates({ job, selection, bench }: Look): Look[] {
  const known = bench.seating?.knownSets ?? [];
  return KINDS.flatMap((kind) => {
    const plans = job.plans.filter((plan) => plan.cylinder === selection.cylinder && plan.kind === kind);
    const plan =
      plans.find(({ id }) => id === selection.plan) ??
      plans.find(({ id }) => !known.includes(id)) ??
      plans[0];
    return plan === undefined ? [] : [lookAt(job, { ...selection, plan: plan.id })];
  });
}

/** The last word there is about the cylinder: as built, else planned, else as found. */
export function latestState(states: readonly Look[], look: Look): Look {
  return states.at(-1) ?? look;
}

/** What may be shared of all states. */
export function sharedOf(look: Look, states: readonly Look[]): ShareableView {
  return shareableView(
    look.job,
    look.bench.cylinder,
    look.bench.key,
    states.map(({ bench, evaluation }) => ({ plan: bench.plan, evaluation })),
  );
}
