/**
 * Edits of the master pins: the pins between bottom pin and driver. A pin is a master pin by its place alone, so adding
 * one puts it under the driver. Each gives a new job. Lengths mm.
 */
import { assert } from '../assert.ts';
import { rolesOf } from '../measured/measured-stack.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Item } from '../schema/key-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import type { EndForm, Part } from '../schema/parts-schema.ts';
import { withOptional } from './change.ts';
import { changePart, changeStack, eachStack } from './edit-stack.ts';
import { usualSizes } from './usual-values.ts';
import { endForm } from './end-forms.ts';
import { assumedValue } from './values.ts';

/** Pictures to choose from, for either end. */
export type MasterEnd = 'broken edge' | 'sharp edge' | 'domed';

/** As many as one stack takes; the file holds twelve parts in all. */
export const MOST_MASTER_PINS = 6;

/** The master pins of a plan's chamber, bottom to top. */
export function masterPinsIn(job: Job, plan: Id, chamber: Id): readonly Part[] {
  return eachStack(job, plan).find(({ stack }) => stack.chamber === chamber)?.masterPins ?? [];
}

/** Adds a master pin on top of those there are, under the driver, as wide as the bottom pin, its ends not looked at. */
export function addMasterPin(
  job: Job,
  plan: Id,
  chamber: Id,
  length: LengthValue | undefined,
  newId: () => Id,
): Job {
  const parts = eachStack(job, plan).find(({ stack }) => stack.chamber === chamber);
  assert(parts !== undefined, `plan ${plan} has no stack in chamber ${chamber}`);
  if (parts.driver === null || parts.masterPins.length >= MOST_MASTER_PINS) return job;
  const { unit } = job.settings;
  const pin: Part = {
    id: newId(),
    label: 'master pin',
    kind: 'pin',
    diameter: parts.bottomPin?.diameter ?? assumedValue(usualSizes(null).pinDiameter[unit], unit),
    quantity: 1,
    original: false,
  };
  const driver = parts.driver.id;
  const added = changeStack(job, plan, chamber, (stack) => ({
    ...stack,
    items: stack.items.flatMap((item) => (item.part === driver ? [{ part: pin.id }, item] : [item])),
  }));
  return { ...added, parts: [...added.parts, withOptional(pin, 'length', length)] };
}

/** Takes a master pin out of its hole. It stays a part of the job only where something else speaks of it. */
export function removeMasterPin(job: Job, plan: Id, chamber: Id, pin: Id): Job {
  const without = changeStack(job, plan, chamber, (stack) => ({
    ...stack,
    items: stack.items.filter((item) => item.part !== pin),
  }));
  if (isSpokenOf(without, pin)) return without;
  return { ...without, parts: without.parts.filter((part) => part.id !== pin) };
}

/** Moves a master pin one place up or down among the master pins of its stack. */
export function moveMasterPin(job: Job, plan: Id, chamber: Id, pin: Id, way: 'up' | 'down'): Job {
  return changeStack(job, plan, chamber, (stack) => {
    const at = stack.items.findIndex((item) => item.part === pin);
    const to = way === 'up' ? at + 1 : at - 1;
    const roles = rolesOf(stack.items.map((item) => kindOf(job, item)));
    const [moved, other] = [stack.items[at], stack.items[to]];
    if (moved === undefined || other === undefined || roles[to] !== 'masterPin') return stack;
    return { ...stack, items: stack.items.map((item, i) => (i === at ? other : i === to ? moved : item)) };
  });
}

/** Sets one end of a master pin as seen. The other end, if nobody looked at it, is assumed alike. */
export function setMasterEnd(job: Job, pin: Id, which: 'lower' | 'upper', end: MasterEnd): Job {
  const form = endForm(end, job.settings.unit);
  return changePart(job, pin, (part) => {
    const other: EndForm = { ...form, basis: 'assumed' };
    const lower = which === 'lower' ? form : (part.ends?.[0] ?? other);
    const upper = which === 'upper' ? form : (part.ends?.[1] ?? other);
    return { ...part, ends: [lower, upper] };
  });
}

/** How an end of a master pin was seen to be; null when nobody looked. */
export function masterEndSeen(part: Part, which: 'lower' | 'upper'): MasterEnd | null {
  const form = part.ends?.[which === 'lower' ? 0 : 1];
  if (form?.basis !== 'seen') return null;
  if (form.kind === 'dome') return 'domed';
  if (form.kind === 'bevel' || form.kind === 'radius') return 'broken edge';
  return form.kind === 'flat' ? 'sharp edge' : null;
}

function kindOf(job: Job, item: Item): Part['kind'] {
  return job.parts.find((part) => part.id === item.part)?.kind ?? 'spring';
}

function isSpokenOf(job: Job, part: Id): boolean {
  const holds = (items: readonly Item[]) => items.some((item) => item.part === part);
  return (
    job.plans.some(({ stacks }) =>
      stacks.some(({ items, rest }) => holds(items) || holds(rest?.items ?? [])),
    ) ||
    job.groups.some((group) => group.parts.includes(part)) ||
    job.benchResults.some(({ items }) => holds(items)) ||
    job.seatings.some(({ standsUpBy, felt }) => [...standsUpBy, ...felt].some(({ items }) => holds(items)))
  );
}
