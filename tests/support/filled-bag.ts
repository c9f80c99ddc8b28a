/** What stands in each chamber of a choice, in words: "ball + pin, filed", or nothing. */
import type { Candidate } from '../../src/model/matching/candidate-heights.ts';
import type { PairToFill } from '../../src/model/matching/pair-to-fill.ts';

export function buildFilled({ keyIn }: PairToFill, chosen: readonly (Candidate | null)[]): string[] {
  const { parts } = keyIn.site.stock;
  return chosen.map((each) => {
    if (each === null) return 'nothing';
    const { span, at, filed } = each;
    const names = [span.batch.balls[at] ?? -1, span.batch.pins[at] ?? -1].flatMap(
      (number) => parts[number]?.id ?? [],
    );
    return `${names.join(' + ')}${filed > 0 ? ', filed' : ''}`;
  });
}
