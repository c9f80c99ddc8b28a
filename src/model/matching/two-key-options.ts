/**
 * What could stand in one chamber for two keys: a bottom pin whose top serves both, or a bottom pin with a master pin on it
 * whose tops serve one key each. Every pair that turns is listed. Heights above the foot, offsets + high, - low; mm.
 */
import { known } from '../assert.ts';
import { lowerStackEnd, type MeasuredPart, measureStack } from '../measured/measured-stack.ts';
import type { Item } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { Part } from '../schema/parts-schema.ts';
import { bestOffset, marginAt } from './candidate-heights.ts';
import { type ChamberPlace, type Fit, holeRadius, radiusOf, type SplitWindow } from './fits.ts';
import type { KeyInSite } from './needed-height.ts';
import type { Option } from './option.ts';
import { resolutionOf, stepsApart, stepsToSpare } from './resolution.ts';
import type { Site } from './site.ts';
import type { Batch } from './stock.ts';
import type { TieBreaks } from './tie-breaks.ts';

export type KeyAtLine = { readonly key: Id; readonly line: Id };
/** The split that serves a key. */
export type ServedKey = {
  readonly key: Id;
  readonly line: Id;
  readonly offset: number;
  readonly lowest: number;
  readonly highest: number;
  readonly margin: number;
};

export type Want = {
  readonly at: KeyAtLine;
  readonly keyIn: KeyInSite;
  readonly line: number;
  readonly above: number;
};
export type Stacked = Option & { readonly items: readonly Item[]; readonly serves: readonly ServedKey[] };

export type TwoKeysSetting = {
  readonly site: Site;
  readonly wants: readonly Want[];
  readonly copiesOf: (part: number) => number;
  readonly tieBreaks: TieBreaks;
  readonly rows: number;
  /** mm. Thinner master pins tip over and jam. */
  readonly thinnest: number;
};

/** Height above the foot at which a split stands level for a want. */
type Level = { readonly want: Want; readonly level: number };

export function levelsOf(wants: readonly Want[], place: ChamberPlace, fit: Fit): Level[] | null {
  const levels = wants.flatMap((want): Level[] => {
    const level = want.keyIn.levelOf(place, fit);
    return level === null ? [] : [{ want, level: level + want.above }];
  });
  return levels.length === wants.length ? levels : null;
}

/** Lists the options of a chamber. */
export function twoKeyOptions(setting: TwoKeysSetting, place: ChamberPlace): Stacked[] {
  const { site, wants } = setting;
  const masters = site.stock.batches.filter((batch) => !batch.hasBall && canLieOn(batch));
  return site.stock.batches.flatMap((batch): Stacked[] => {
    const fit = batch.hasBall === site.takesBall ? site.fitOf(place, batch) : null;
    if (fit === null || (fit.barred !== null && fit.barred !== 'never turns')) return [];
    const levels = levelsOf(wants, place, fit);
    if (levels === null) return [];
    const alone = aloneOptions(setting, place, batch, levels);
    return hasDriver(place)
      ? [...alone, ...masters.flatMap((master) => withMaster(setting, place, { batch, master, levels }))]
      : alone;
  });
}

/** The topmost pin of a stack is its driver; without one, a master pin would be taken for it. */
export function hasDriver({ over }: ChamberPlace): boolean {
  return over !== null;
}

/** A pointed or round lower end stands on nothing. */
function canLieOn({ example }: Batch): boolean {
  const lower = example[0]?.ends?.[0].kind;
  return lower !== 'cone' && lower !== 'sphere';
}

/** One split for both keys. */
function aloneOptions(
  setting: TwoKeysSetting,
  place: ChamberPlace,
  batch: Batch,
  levels: readonly Level[],
): Stacked[] {
  const { site } = setting;
  const stack = site.stackOf(place, batch);
  const below = stack.parts[lowerStackEnd(stack)];
  if (below === undefined) return [];
  const splits = levels.flatMap((at): Split[] => {
    const window = site.windowOf(place, below, place.over, at.want.line);
    return window === null || window.empty ? [] : [{ ...at, window }];
  });
  if (splits.length < levels.length) return [];
  return membersOf(setting, batch).flatMap((member): Stacked[] => {
    const heights = splits.map(() => member.height);
    return stackedOf(setting, place, member, null, splits, heights);
  });
}

type Split = Level & { readonly window: SplitWindow };

function withMaster(
  setting: TwoKeysSetting,
  place: ChamberPlace,
  {
    batch,
    master,
    levels,
  }: { readonly batch: Batch; readonly master: Batch; readonly levels: readonly Level[] },
): Stacked[] {
  const parts = stackedParts(setting.site, place, batch, master);
  const [low, high] = [...levels].sort((one, other) => one.level - other.level);
  if (parts === null || low === undefined || high === undefined) return [];
  const lower = setting.site.windowOf(place, parts.bottom, parts.master, low.want.line);
  const upper = setting.site.windowOf(place, parts.master, place.over, high.want.line);
  if (lower === null || upper === null || lower.empty || upper.empty) return [];
  const splits: Split[] = [
    { ...low, window: lower },
    { ...high, window: upper },
  ];
  const thick = membersOf(setting, master).filter(({ height }) => height >= setting.thinnest);
  return membersOf(setting, batch).flatMap((member): Stacked[] => {
    if (stepsOf(setting, marginAt(member.height - low.level, lower)) < 0) return [];
    return thick.flatMap((disc) =>
      disc.pin === member.pin && setting.copiesOf(disc.pin) < 2
        ? []
        : stackedOf(setting, place, member, disc, splits, [member.height, member.height + disc.height]),
    );
  });
}

/** The parts as they will stand: what is a bottom pin and what a master pin follows from their places. */
function stackedParts(
  site: Site,
  place: ChamberPlace,
  batch: Batch,
  master: Batch,
): { readonly bottom: MeasuredPart; readonly master: MeasuredPart } | null {
  const { bench, assembly } = site;
  const items = [...batch.example, ...master.example].map((part): Item => ({ part: part.id }));
  const stack = measureStack(
    [...items, ...place.above],
    bench.parts,
    [],
    radiusOf(assembly),
    holeRadius(place),
    bench.measuring,
  );
  const end = lowerStackEnd(stack);
  const bottom = stack.parts[end];
  const disc = stack.parts[end + 1];
  if (bottom === undefined || disc?.role !== 'masterPin' || site.barredBy(place, disc) !== null) return null;
  return { bottom, master: disc };
}

type Member = { readonly pin: number; readonly ball: number; readonly height: number };

function membersOf({ copiesOf }: TwoKeysSetting, batch: Batch): Member[] {
  return [...batch.lengths].flatMap((length, i): Member[] => {
    const pin = batch.pins[i] ?? -1;
    const ball = batch.balls[i] ?? -1;
    const isLeft = copiesOf(pin) > 0 && (ball < 0 || copiesOf(ball) > 0);
    return isLeft ? [{ pin, ball, height: length + batch.added }] : [];
  });
}

function stepsOf({ site }: TwoKeysSetting, mm: number): number {
  return stepsToSpare(mm, resolutionOf(site.bench.job.settings.unit));
}

/** The option of a stack whose splits stand at these heights; none when one of them does not turn. */
function stackedOf(
  setting: TwoKeysSetting,
  place: ChamberPlace,
  member: Member,
  disc: Member | null,
  splits: readonly Split[],
  heights: readonly number[],
): Stacked[] {
  const { site, wants, copiesOf, tieBreaks, rows } = setting;
  const step = resolutionOf(site.bench.job.settings.unit);
  let spare = Infinity;
  let squares = 0;
  const served: ServedKey[] = [];
  for (const [i, { want, level, window }] of splits.entries()) {
    const offset = (heights[i] ?? 0) - level;
    const margin = marginAt(offset, window);
    spare = Math.min(spare, stepsToSpare(margin, step));
    if (spare < 0) return [];
    squares += stepsApart(offset - bestOffset(window), step) ** 2;
    served.push({ ...want.at, offset, lowest: window.lowest, highest: window.highest, margin });
  }
  const parts = [member.ball, member.pin, disc?.pin ?? -1].filter((part) => part >= 0);
  const also = [member.ball, disc?.pin ?? -1].filter((part) => part >= 0);
  return [
    {
      part: member.pin,
      // a master pin may be a bottom pin elsewhere, so it counts whatever there is of it
      also: also.filter((part) => part !== member.ball || copiesOf(part) < rows),
      filed: 0,
      spare,
      squares,
      ties: tieBreaks(place, member.pin, member.ball),
      items: parts.map((part) => ({ part: partAt(site, part).id })),
      serves: wants.flatMap(({ at }) =>
        served.filter((each) => each.key === at.key && each.line === at.line),
      ),
    },
  ];
}

function partAt({ stock }: Site, number: number): Part {
  return known(stock.parts[number], `part ${number}`);
}
