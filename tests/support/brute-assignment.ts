/** Every choice of options there is, for small cases: the best by all levels, parts and shared parts counted as they are. */
import { compareScores, type Score, scoreOf } from '../../src/model/matching/levels.ts';
import type { Option } from '../../src/model/matching/option.ts';

export function bestByTryingAll(
  rows: readonly (readonly Option[])[],
  copiesOf: (part: number) => number,
): Score {
  let best = scoreOf([]);
  const used = new Map<number, number>();
  const chosen: (Option | null)[] = [];
  const take = (option: Option, by: number) => {
    for (const part of [option.part, ...option.also]) used.set(part, (used.get(part) ?? 0) + by);
  };
  const goOn = (row: number): void => {
    const options = rows[row];
    if (options === undefined) {
      const score = scoreOf(chosen);
      if (compareScores(score, best) < 0) best = score;
      return;
    }
    chosen.push(null);
    goOn(row + 1);
    chosen.pop();
    for (const option of options) {
      take(option, 1);
      if ([option.part, ...option.also].every((part) => (used.get(part) ?? 0) <= copiesOf(part))) {
        chosen.push(option);
        goOn(row + 1);
        chosen.pop();
      }
      take(option, -1);
    }
  };
  goOn(0);
  return best;
}
