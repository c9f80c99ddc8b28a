/** Which way up a part goes, told by its ends as a person sees them. */
import type { EndShape } from '../end-shape.ts';
import type { MeasuredPart } from '../measured/measured-stack.ts';

const WORDS: Readonly<Record<EndShape['kind'], string>> = {
  flat: 'flat end',
  bevel: 'broken edge',
  radius: 'rounded edge',
  dome: 'crown',
  cone: 'point',
  cup: 'dimple',
  sphere: 'round end',
};

/** "dimple down, crown up"; "either way up" for ends that are alike. */
export function sayWayUp({
  lower,
  upper,
  flipped,
}: Pick<MeasuredPart, 'lower' | 'upper' | 'flipped'>): string {
  if (lower.shape.kind === upper.shape.kind) return flipped ? 'turned over' : 'either way up';
  const text = `${WORDS[lower.shape.kind]} down, ${WORDS[upper.shape.kind]} up`;
  return flipped ? `${text} (turned over)` : text;
}
