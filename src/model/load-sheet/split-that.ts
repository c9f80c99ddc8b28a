/** The split of each chamber that is nearest to being clear at the inner line. */
import type { SplitResult } from '../evaluate/evaluation.ts';
import type { Facts } from '../findings/facts.ts';

export function splitThat({ evaluation }: Pick<Facts, 'evaluation'>): SplitResult[] {
  return evaluation.chambers.flatMap((chamber) => {
    const best = chamber.verdicts[0]?.split;
    const split = best == null ? undefined : chamber.splits[best];
    return split === undefined ? [] : [split];
  });
}
