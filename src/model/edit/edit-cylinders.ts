/** Several cylinders in one job: another one, empty or like one that is there; its name; taking one away. */
import { known } from '../assert.ts';
import { rolesOf } from '../measured/measured-stack.ts';
import type { PartRole } from '../assembly/assembly.ts';
import type { Cylinder } from '../schema/cylinder-schema.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import type { EndForm, Part, Plan } from '../schema/parts-schema.ts';
import { changeCylinder, plugDiameterOf } from './edit-cylinder.ts';
import { withoutStandIns } from './loose-ends.ts';
import { newCylinder } from './new-job.ts';
import { newParts } from './new-parts.ts';
import { assumedPositions } from './usual-positions.ts';
import { assumedLike } from './values.ts';

export type Added = { readonly job: Job; readonly id: Id };

/** Adds a cylinder of which nothing is measured yet, with unmeasured stacks in its chambers. */
export function addCylinder(job: Job, label: string, chambers: number, newId: () => Id): Added {
  const { unit } = job.settings;
  const cylinder = { ...newCylinder(newId, unit, assumedPositions(chambers, unit, null)), label };
  return withCylinder(
    job,
    cylinder,
    newId,
    cylinder.chambers.map(() => newParts(newId, unit)),
  );
}

/**
 * Adds a cylinder like another: as many chambers, sizes as read there, but assumed here until they are measured. What only
 * wear or the shop made of the other one (crest, holes out of line) is left behind, and so are the lengths of its pins.
 */
export function addCylinderLike(job: Job, like: Id, label: string, newId: () => Id): Added {
  const before = cylinderIn(job, like);
  const plan =
    job.plans.find((each) => each.cylinder === like && each.kind === 'planned') ?? planOf(job, like);
  const cylinder = cylinderLike(before, label, newId, likeIn(job));
  const parts = new Map(job.parts.map((part) => [part.id, part]));
  const stacks = before.chambers.map(({ id }) => {
    const items = plan?.stacks.find((stack) => stack.chamber === id)?.items ?? [];
    const alike = partsLike(
      items.flatMap(({ part }) => parts.get(part) ?? []),
      newId,
      likeIn(job),
    );
    return alike.length === 0 ? newParts(newId, job.settings.unit, plugDiameterOf(job, like)) : alike;
  });
  return withCylinder(job, cylinder, newId, stacks);
}

/** Sets what a cylinder is called. */
export function renameCylinder(job: Job, id: Id, label: string): Job {
  return changeCylinder(job, id, (each) => ({ ...each, label }));
}

/** Takes a cylinder away with all that was said about it. Parts that were measured stay on hand. */
export function removeCylinder(job: Job, id: Id): Job {
  const plans = job.plans.filter((plan) => plan.cylinder === id);
  const gone = new Set(plans.map((plan) => plan.id));
  const parts = plans.flatMap(({ stacks }) => stacks.flatMap(({ items }) => items.map(({ part }) => part)));
  const without: Job = {
    ...job,
    cylinders: job.cylinders.filter((each) => each.id !== id),
    seatings: job.seatings
      .filter((each) => each.cylinder !== id)
      .map((each) => ({ ...each, knownSets: each.knownSets.filter((plan) => !gone.has(plan)) })),
    plans: job.plans.filter((plan) => !gone.has(plan.id)),
    intents: job.intents.filter((each) => each.cylinder !== id),
    benchResults: job.benchResults.filter((each) => !gone.has(each.plan)),
  };
  return withoutStandIns(without, parts);
}

/** What goes with a cylinder, as one sentence. */
export function sayCylinderGoes(job: Job, id: Id): string {
  const { label, chambers } = cylinderIn(job, id);
  const plans = job.plans.filter((plan) => plan.cylinder === id);
  const keys = job.seatings.filter((each) => each.cylinder === id).length;
  const tests = job.benchResults.filter((each) => plans.some((plan) => plan.id === each.plan)).length;
  const things = [
    counted(chambers.length, 'chamber'),
    counted(plans.length, 'plan'),
    ...(keys === 0 ? [] : [`what was read of ${counted(keys, 'key')} in it`]),
    ...(tests === 0 ? [] : [counted(tests, 'bench test')]),
  ];
  return `With ${label} go its ${listed(things)}. Its measured parts stay on hand.`;
}

export function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

export function listed(things: readonly string[]): string {
  return things.length < 2 ? things.join('') : `${things.slice(0, -1).join(', ')} and ${things.at(-1) ?? ''}`;
}

function withCylinder(job: Job, cylinder: Cylinder, newId: () => Id, stacks: readonly Part[][]): Added {
  const plan: Plan = {
    id: newId(),
    cylinder: cylinder.id,
    kind: 'planned',
    stacks: cylinder.chambers.map(({ id }, i) => ({
      chamber: id,
      items: (stacks[i] ?? []).map((part) => ({ part: part.id })),
    })),
  };
  return {
    id: cylinder.id,
    job: {
      ...job,
      cylinders: [...job.cylinders, cylinder],
      parts: [...job.parts, ...stacks.flat()],
      plans: [...job.plans, plan],
    },
  };
}

type Like = (value: LengthValue) => LengthValue;

/** Takes a length over from a thing of this job. */
function likeIn({ sessions }: Job): Like {
  return (value) => assumedLike(value, sessions);
}

function cylinderLike(before: Cylinder, label: string, newId: () => Id, like: Like): Cylinder {
  const bodies = new Map(before.bodies.map(({ id }) => [id, newId()]));
  const bodyOf = (id: Id) => known(bodies.get(id), `body ${id}`);
  const { keywayWidth, endPlay } = before;
  return {
    id: newId(),
    label,
    turn: before.turn,
    bodies: before.bodies.map(({ id, role, outerDiameter, length }) => ({
      id: bodyOf(id),
      role,
      ...(outerDiameter !== undefined && { outerDiameter: like(outerDiameter) }),
      ...(length !== undefined && { length: like(length) }),
    })),
    lines: before.lines.map(({ inner, outer, clearance, lies }) => ({
      id: newId(),
      inner: bodyOf(inner),
      outer: bodyOf(outer),
      clearance: like(clearance),
      lies,
    })),
    chambers: before.chambers.map(({ position, capDepth, holes, closed }) => ({
      id: newId(),
      position: like(position),
      ...(capDepth !== undefined && { capDepth: like(capDepth) }),
      holes: holes.map(({ body, diameter }) => ({
        body: bodyOf(body),
        ...(diameter !== undefined && { diameter: like(diameter) }),
      })),
      ...(closed !== undefined && { closed }),
    })),
    ...(keywayWidth !== undefined && { keywayWidth: like(keywayWidth) }),
    ...(endPlay !== undefined && { endPlay: like(endPlay) }),
  };
}

/** Parts of the same kinds and shapes that nobody measured yet: what decides a height is left open. */
function partsLike(stack: readonly Part[], newId: () => Id, like: Like): Part[] {
  const roles = rolesOf(stack.map(({ kind }) => kind));
  return stack.map(({ kind, diameter, length, ends, solid, free }, i): Part => {
    const role = roles[i] ?? 'spring';
    return {
      id: newId(),
      label: STAND_IN_LABELS[role],
      kind,
      quantity: 1,
      original: false,
      ...(diameter !== undefined && { diameter: like(diameter) }),
      ...(role === 'driver' && length !== undefined && { length: like(length) }),
      ...(ends !== undefined && { ends: [assumedEnd(ends[0]), assumedEnd(ends[1])] }),
      ...(solid !== undefined && { solid: like(solid) }),
      ...(free !== undefined && { free: like(free) }),
    };
  });
}

const STAND_IN_LABELS = {
  ball: 'ball',
  bottomPin: 'bottom pin',
  masterPin: 'master pin',
  driver: 'driver',
  spring: 'spring',
} as const satisfies Record<PartRole, string>;

function assumedEnd(end: EndForm): EndForm {
  return { ...end, basis: 'assumed' };
}

function cylinderIn(job: Job, id: Id): Cylinder {
  return known(
    job.cylinders.find((each) => each.id === id),
    `cylinder ${id}`,
  );
}

function planOf(job: Job, cylinder: Id): Plan | undefined {
  return job.plans.find((each) => each.cylinder === cylinder);
}
