/** What the bag is for the cylinder in hand: its loose pins as heights, and each chamber's range with what lies in it. mm. */
import type { ChartRange } from '../../drawing/bag-chart.ts';
import { type BagHeights, bagHeights, inRange } from '../../model/matching/bag-heights.ts';
import { type Stock, takeStock } from '../../model/matching/stock.ts';
import { lengthOf } from '../../model/measured/part-ends.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import type { Look } from '../shared/look.ts';

export type WantedRange = ChartRange & {
  readonly chamber: string;
  /** No length is certain: about this one. */
  readonly isAbout: boolean;
};

/** Whether a ball stands under the pins of this cylinder; for one whose stacks are empty, whether there are balls on hand. */
export function takesBall({ rows, job }: Look): boolean {
  const stacks = rows.rows.flatMap(({ parts }) => (parts === null ? [] : [parts]));
  const filled = stacks.filter(({ lower }) => lower.length > 0);
  if (filled.length > 0) return filled.some(({ ball }) => ball !== null);
  return job.parts.some(({ kind }) => kind === 'ball');
}

/** What the lengths are of. */
export function whatIsMeasured(look: Look): string {
  return takesBall(look) ? 'ball + bottom pin' : 'bottom pin';
}

export type Bag = BagHeights & {
  /** With which ball a pin measured alone is counted, in words; null where there is no such pin. */
  readonly ballWords: string | null;
};

export function bagOf(look: Look): Bag {
  const { job, bench } = look;
  const stock = takeStock(job, bench.measuring);
  const withBall = takesBall(look);
  return {
    ...bagHeights(job, stock, withBall),
    ballWords: withBall ? countedBalls(stock, job.settings.unit) : null,
  };
}

/** Balls told one by one. */
const MOST_BALLS = 3;

function countedBalls({ batches }: Stock, unit: JobUnit): string | null {
  const labels = new Map<string, string>();
  for (const { example, hasBall, added } of batches) {
    const [ball] = example;
    if (!hasBall || added === 0 || ball === undefined) continue;
    const size = formatLength(lengthOf(ball.diameter, added), { unit, hasUnit: true, keepsPlaces: true });
    if (!labels.has(size)) labels.set(size, ball.label);
  }
  const told = [...labels].slice(0, MOST_BALLS).map(([size, label]) => `${size} (${label})`);
  if (told.length === 0) return null;
  const more = labels.size - told.length;
  return `A pin measured alone is counted with a ball of ${told.join(', or of ')}${more > 0 ? `, and with ${more} more` : ''} under it.`;
}

/** The ranges of the table on Measure and Check, by chamber, and how the bag fills them. */
export function wantedRanges(look: Look, bag: BagHeights, picked: string | null): WantedRange[] {
  const { unit } = look.job.settings;
  return look.rows.rows.flatMap(({ chamber, number }): WantedRange[] => {
    const result = look.chamberResults.get(chamber.id);
    if (result === undefined || result.useFrom === null || result.useTo === null) return [];
    const { useTo: to, noneCertain: isAbout } = result;
    // Nothing is shorter than nothing.
    const from = Math.max(0, result.useFrom);
    // What would be best if the readings were exact may lie just outside what is sure.
    const best = result.best === null ? null : Math.min(Math.max(result.best, from), to);
    const { count, nearest } = inRange(bag, from, to);
    const by =
      nearest === null ? '' : formatLength(Math.abs(nearest.by), { unit, form: 'bench', keepsPlaces: true });
    const words =
      count > 0
        ? count === 1
          ? 'one in the bag'
          : `${count} in the bag`
        : nearest === null
          ? 'none in the bag'
          : `none; ${shortLabel(nearest.pin.label)} is ${by} too ${nearest.by < 0 ? 'short' : 'long'}`;
    return [
      {
        chamber: chamber.id,
        number,
        from,
        to,
        best,
        isAbout,
        words,
        isEmpty: count === 0,
        isPicked: chamber.id === picked,
      },
    ];
  });
}

function shortLabel(label: string): string {
  return label.length > 12 ? `${label.slice(0, 11)}…` : label;
}

/** Says the gaps in one sentence: which ranges have no part in them. */
export function gapWords(ranges: readonly WantedRange[]): string {
  const empty = ranges.filter(({ isEmpty }) => isEmpty).map(({ number }) => String(number));
  if (ranges.length === 0) return '';
  if (empty.length === 0) return 'Every range has a part in it.';
  if (empty.length === ranges.length) return 'No range has a part in it yet.';
  const list =
    empty.length < 2 ? empty.join('') : `${empty.slice(0, -1).join(', ')} and ${empty.at(-1) ?? ''}`;
  return empty.length === 1 ? `Nothing for chamber ${list}.` : `Nothing for chambers ${list}.`;
}
