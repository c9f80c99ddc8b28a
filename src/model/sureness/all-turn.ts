/**
 * How sure it is that every stack lets a line turn: the share of draws in which each chamber has a split inside its window.
 * What is common to all chambers (plug, floor, zero, scale) is drawn once for all, so it is not multiplied. The figure stands
 * on guesses (how a caliper errs, how assumed sizes spread): words on the working screen, the figure in details.
 */
import type { SplitAtLine } from '../evaluate/split-results.ts';
import type { Id } from '../schema/leaf.ts';
import { draw, planDraws, seededNumbers } from './draws.ts';

export type ChamberSplits = { readonly chamber: Id; readonly splits: readonly SplitAtLine[] };

export type HowSure = {
  readonly line: Id;
  /** Share of draws, 0 to 1; null when a chamber's call is not known, or it has no stack. */
  readonly allTurn: number | null;
  readonly chambers: readonly { readonly chamber: Id; readonly turns: number | null }[];
  readonly words: SureWords;
};

export type SureWords =
  | 'all but certain'
  | 'very likely'
  | 'likely'
  | 'about as likely as not'
  | 'unlikely'
  | 'very unlikely'
  | 'not known';

/** Enough for two figures: the standard error is at most half a percent. */
const DRAWS = 10_000;
/** Always the same draws, so that the same readings always give the same words. */
const SEED = 1;

/** Finds how sure each line is. */
export function howSure(chambers: readonly ChamberSplits[], lines: readonly Id[], draws = DRAWS): HowSure[] {
  const splits = chambers.flatMap(({ splits: own }, chamber) =>
    own.map(({ split, judgement }) => ({
      chamber,
      line: split.line,
      never: split.verdict === 'never turns',
      judgement,
    })),
  );
  const plan = planDraws(splits.flatMap(({ judgement }) => [judgement.toLowest, judgement.toHighest]));
  const places = lines.map((line) =>
    splits.flatMap((each, i) => (each.line === line && !each.never ? [i] : [])),
  );
  const counts = lines.map(() => new Array<number>(chambers.length).fill(0));
  const all = lines.map(() => 0);
  draw(plan, draws, seededNumbers(SEED), (values) => {
    lines.forEach((_, l) => {
      const turning = new Set<number>();
      for (const i of places[l] ?? []) {
        const isInside = (values[2 * i] ?? -1) >= 0 && (values[2 * i + 1] ?? -1) >= 0;
        if (isInside) turning.add(splits[i]?.chamber ?? -1);
      }
      const count = counts[l];
      for (const chamber of turning) if (count !== undefined) count[chamber] = (count[chamber] ?? 0) + 1;
      if (turning.size === chambers.length) all[l] = (all[l] ?? 0) + 1;
    });
  });
  const isKnown = chambers.map(({ splits: own }) => own.length > 0);
  return lines.map((line, l): HowSure => {
    const share = chambers.length > 0 && isKnown.every(Boolean) ? (all[l] ?? 0) / draws : null;
    return {
      line,
      allTurn: share,
      chambers: chambers.map(({ chamber }, i) => ({
        chamber,
        turns: isKnown[i] === true ? (counts[l]?.[i] ?? 0) / draws : null,
      })),
      words: sureWords(share),
    };
  });
}

/** Words for a share: it stands on guesses, so no finer ones. */
export function sureWords(share: number | null): SureWords {
  if (share === null) return 'not known';
  if (share >= 0.99) return 'all but certain';
  if (share >= 0.9) return 'very likely';
  if (share >= 2 / 3) return 'likely';
  if (share >= 1 / 3) return 'about as likely as not';
  return share >= 0.1 ? 'unlikely' : 'very unlikely';
}
