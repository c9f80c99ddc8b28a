/**
 * The end shapes people tell by picture: top of the bottom pins, bottom of the drivers, what rides on the key. One answer
 * holds for every stack of the plan.
 */
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { EndForm, EndSizes, Part } from '../schema/parts-schema.ts';
import { changePlan, eachStack } from './edit-stack.ts';
import { endForm } from './end-forms.ts';
import type { DriverEnd, KeyFoot, PinTop } from './seen-shapes.ts';
import { newParts } from './new-parts.ts';

/** Sets the top of every bottom pin of a plan, as seen. */
export function setPinTops(job: Job, plan: Id, top: PinTop): Job {
  const pins = new Set(eachStack(job, plan).flatMap((parts) => parts.bottomPin?.id ?? []));
  return withEnd(job, pins, 1, endForm(top, job.settings.unit));
}

/** Sets the lower end of every driver of a plan, as seen. */
export function setDriverEnds(job: Job, plan: Id, end: DriverEnd): Job {
  const drivers = new Set(eachStack(job, plan).flatMap((parts) => parts.driver?.id ?? []));
  return withEnd(job, drivers, 0, endForm(end, job.settings.unit));
}

/** Sets what rides on the key: a ball under each pin, or the pin's own tip. Heights read with the old parts go. */
export function setKeyFoot(job: Job, plan: Id, foot: KeyFoot, newId: () => Id): Job {
  const before = eachStack(job, plan);
  const balls = new Set(before.flatMap((parts) => parts.ball?.id ?? []));
  const pins = new Set(before.flatMap((parts) => parts.bottomPin?.id ?? []));
  if (foot !== 'ball') {
    const without = changePlan(job, plan, (each) => ({
      ...each,
      stacks: each.stacks.map((stack) => ({
        ...stack,
        items: stack.items.filter((item) => !balls.has(item.part)),
      })),
    }));
    return withEnd(
      { ...without, groups: without.groups.filter((group) => !group.parts.some((id) => balls.has(id))) },
      pins,
      0,
      endForm(foot === 'pointed pin' ? 'pointed' : 'rounded', job.settings.unit),
    );
  }
  const added: Part[] = [];
  const withBalls = changePlan(job, plan, (each) => ({
    ...each,
    stacks: each.stacks.map((stack) => {
      if (stack.items.some((item) => balls.has(item.part))) return stack;
      const ball = newParts(newId, job.settings.unit).find((part) => part.kind === 'ball');
      if (ball === undefined) return stack;
      const pin = job.parts.find((part) => pins.has(part.id) && stack.items.some((i) => i.part === part.id));
      added.push(pin?.diameter === undefined ? ball : { ...ball, diameter: pin.diameter });
      return { ...stack, items: [{ part: ball.id }, ...stack.items] };
    }),
  }));
  return withoutLowerEnds({ ...withBalls, parts: [...withBalls.parts, ...added] }, pins);
}

/** A part gets its other end assumed flat when nobody looked at it. */
function withEnd(job: Job, parts: ReadonlySet<Id>, which: 0 | 1, form: EndForm): Job {
  return {
    ...job,
    parts: job.parts.map((part) => {
      if (!parts.has(part.id)) return part;
      const lower = which === 0 ? form : (part.ends?.[0] ?? NOT_LOOKED_AT);
      const upper = which === 1 ? form : (part.ends?.[1] ?? topNotLookedAt(part));
      return { ...part, ends: [lower, upper] };
    }),
  };
}

function withoutLowerEnds(job: Job, pins: ReadonlySet<Id>): Job {
  return {
    ...job,
    parts: job.parts.map((part) =>
      pins.has(part.id) && part.ends !== undefined ? { ...part, ends: [NOT_LOOKED_AT, part.ends[1]] } : part,
    ),
  };
}

const NOT_LOOKED_AT: EndForm = { kind: 'flat', basis: 'assumed' };
const DOMED: EndSizes = { kind: 'dome' };

/** The far end of a pin: what the top of a bottom pin usually is, with what else it could be. */
function topNotLookedAt(part: Part): EndForm {
  if (part.kind !== 'pin') return NOT_LOOKED_AT;
  return { ...DOMED, basis: 'assumed', alternatives: [{ kind: 'bevel' }, { kind: 'flat' }] };
}
