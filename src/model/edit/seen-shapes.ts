/** The end shapes of a plan's parts, as far as somebody looked: what is common to every stack, in the words of the pictures. */
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { EndForm, Part } from '../schema/parts-schema.ts';
import { eachStack } from './edit-stack.ts';

/** Pictures to choose from. */
export type PinTop = 'domed' | 'broken edge' | 'sharp edge';
export type DriverEnd = 'broken edge' | 'sharp edge' | 'rounded edge';
export type KeyFoot = 'ball' | 'pointed pin' | 'rounded pin';

/** The top all bottom pins of a plan were seen to have; null when nobody looked, or they differ. */
export function pinTopsSeen(job: Job, plan: Id): PinTop | null {
  return common(eachStack(job, plan).map((parts) => topOf(seenEnd(parts.bottomPin, 1))));
}

/** The lower end all drivers of a plan were seen to have. */
export function driverEndsSeen(job: Job, plan: Id): DriverEnd | null {
  return common(eachStack(job, plan).map((parts) => driverEndOf(seenEnd(parts.driver, 0))));
}

/** What rides on the key in every hole of a plan. */
export function keyFoot(job: Job, plan: Id): KeyFoot | null {
  return common(
    eachStack(job, plan).map((parts) => {
      if (parts.ball !== null) return 'ball';
      const form = parts.bottomPin?.ends?.[0];
      if (form?.kind === 'cone') return 'pointed pin';
      return form?.kind === 'dome' || form?.kind === 'sphere' ? 'rounded pin' : null;
    }),
  );
}

function topOf(form: EndForm | null): PinTop | null {
  if (form === null) return null;
  if (form.kind === 'dome') return 'domed';
  if (form.kind === 'bevel' || form.kind === 'radius') return 'broken edge';
  return form.kind === 'flat' ? 'sharp edge' : null;
}

function driverEndOf(form: EndForm | null): DriverEnd | null {
  if (form === null) return null;
  if (form.kind === 'radius' || form.kind === 'dome') return 'rounded edge';
  if (form.kind === 'bevel') return 'broken edge';
  return form.kind === 'flat' ? 'sharp edge' : null;
}

function seenEnd(part: Part | null, which: 0 | 1): EndForm | null {
  const form = part?.ends?.[which];
  return form?.basis === 'seen' ? form : null;
}

function common<T>(answers: readonly (T | null)[]): T | null {
  const [first] = answers;
  return first !== undefined && answers.every((answer) => answer === first) ? first : null;
}
