/**
 * The ends of parts as people tell them by picture, and what the job keeps of each: a shape that was seen, with the sizes it
 * usually has until somebody measures them. Lengths mm, angles degrees.
 */
import type { EndForm } from '../schema/parts-schema.ts';
import type { JobUnit } from '../units/length-unit.ts';
import { assumedValue, statedAngle } from './values.ts';

export const END_NAMES = [
  'domed',
  'broken edge',
  'sharp edge',
  'rounded edge',
  'dimpled',
  'pointed',
  'rounded',
] as const;
export type EndName = (typeof END_NAMES)[number];

/** A broken edge, and how much it may be. Common practice, no source. */
const BROKEN_EDGE = {
  in: ['.005', '.002', '.010'],
  mm: ['0.13', '0.05', '0.25'],
} as const satisfies Record<JobUnit, readonly [string, string, string]>;

/** Makes the shape of an end that was seen. */
export function endForm(name: EndName, unit: JobUnit): EndForm {
  switch (name) {
    case 'domed':
      return { kind: 'dome', basis: 'seen' };
    case 'broken edge':
      return {
        kind: 'bevel',
        width: assumedValue(BROKEN_EDGE[unit], unit),
        angle: statedAngle(45),
        basis: 'seen',
      };
    case 'sharp edge':
      return { kind: 'flat', basis: 'seen' };
    case 'rounded edge':
      return { kind: 'radius', radius: assumedValue(BROKEN_EDGE[unit], unit), basis: 'seen' };
    case 'dimpled':
      return { kind: 'cup', basis: 'seen' };
    case 'pointed':
      return { kind: 'cone', includedAngle: statedAngle(90), basis: 'seen' };
    case 'rounded':
      return { kind: 'sphere', basis: 'seen' };
  }
}

const NAMES: Readonly<Record<EndForm['kind'], EndName>> = {
  dome: 'domed',
  bevel: 'broken edge',
  flat: 'sharp edge',
  radius: 'rounded edge',
  cup: 'dimpled',
  cone: 'pointed',
  sphere: 'rounded',
};

/** Names an end that was seen; null when nobody looked. */
export function endName(form: EndForm | undefined): EndName | null {
  return form === undefined || form.basis === 'assumed' ? null : NAMES[form.kind];
}
