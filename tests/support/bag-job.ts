/** Jobs with a bag: loose parts added to a job of `buildJob`, and choices put into its plan. Lengths in inches. */
import type { Match } from '../../src/model/matching/match.ts';
import type { Standing } from '../../src/model/matching/standing.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import type { Part } from '../../src/model/schema/parts-schema.ts';
import { changed } from './job-builder.ts';
import { endForm, type EndOptions, inches } from './values.ts';

export type LooseOptions = {
  readonly length?: number | null;
  readonly diameter?: number | null;
  readonly foot?: EndOptions;
  readonly top?: EndOptions;
  readonly quantity?: number;
  readonly original?: boolean;
  readonly condition?: 'good' | 'fair' | 'poor';
  readonly from?: string;
  readonly label?: string;
  readonly kind?: 'pin' | 'ball';
};

/** One loose part: by default a domed pin with the foot of `buildJob`'s pins. A ball has a diameter and no length. */
export function loose(id: string, options: LooseOptions = {}): Part {
  const { kind = 'pin', length, diameter = 0.116, quantity = 1, original = false, label = id } = options;
  const { condition, from } = options;
  const pin = kind === 'pin';
  const foot = endForm(options.foot ?? { kind: 'cone', tipFlatDiameter: 0.03, includedAngleDeg: 90 });
  return {
    id,
    label,
    kind,
    quantity,
    original,
    ...(diameter === null ? {} : { diameter: inches(diameter) }),
    ...(pin && length != null ? { length: inches(length) } : {}),
    ...(pin ? { ends: [foot, endForm(options.top ?? { kind: 'dome' })] } : {}),
    ...(condition === undefined ? {} : { condition }),
    ...(from === undefined ? {} : { from }),
  };
}

/** The same job with these parts instead of its own lower stacks; drivers and springs stay. */
export function withBag(job: Job, bag: readonly Part[]): Job {
  return changed(job, (copy) => {
    for (const part of copy.parts) {
      if (part.id.includes('bottom-pin') || part.id.includes('ball-')) part.quantity = 0;
    }
    copy.parts.push(...structuredClone(bag as Part[]));
  });
}

/** Puts what was chosen into the plan, under what stands on it. */
export function asPlanned(job: Job, match: Match): Job {
  return match.chambers.reduce(
    (planned, { chamber, standing }) =>
      standing === null ? planned : withLowerStack(planned, match.plan, chamber, standing),
    job,
  );
}

export function withLowerStack(job: Job, planId: string, chamber: string, { items }: Standing): Job {
  return changed(job, (copy) => {
    const plan = copy.plans.find((each) => each.id === planId);
    const stack = plan?.stacks.find((each) => each.chamber === chamber);
    if (stack === undefined) throw new Error(`no stack in ${chamber}`);
    const kinds = stack.items.map((item) => copy.parts.find((part) => part.id === item.part)?.kind);
    const lower = kinds.indexOf('pin') + 1;
    stack.items = [...items.map((item) => ({ ...item })), ...stack.items.slice(lower)];
  });
}
