/** One sentence for why nothing of the bag stands in a chamber, and what would help. Lengths mm. */
import { sayAmount } from '../evaluate/say.ts';
import { type Candidate, marginAt, type Span } from './candidate-heights.ts';
import type { Filling, PairToFill, PlaceToFill } from './pair-to-fill.ts';
import { stepsToSpare } from './resolution.ts';
import type { Part } from '../schema/parts-schema.ts';
import type { Barred } from './fits.ts';
import type { Batch, Stock } from './stock.ts';
import { sayWanted, type SureHeight, sureHeight, wantedHeight } from './wanted-height.ts';

/** Says why a chamber stays empty. `chosen`: what stands in the others. */
export function whyEmpty(
  { keyIn }: PairToFill,
  { place, spans }: PlaceToFill,
  filling: Filling,
  chosen: readonly (Candidate | null)[],
): string {
  const { site } = keyIn;
  const unit = site.bench.job.settings.unit;
  const chamber = `chamber ${place.number}`;
  const { batches } = site.stock;
  if (batches.length === 0) return `There is nothing in the bag for ${chamber} yet.`;
  const ofKind = batches.filter((batch) => batch.hasBall === site.takesBall);
  if (ofKind.length === 0) {
    return site.takesBall
      ? `There is no ball with a bottom pin in the bag for ${chamber}.`
      : `There is no bottom pin in the bag that goes without a ball, as in ${chamber}.`;
  }
  const wanted = wantedHeight(keyIn, place);
  const sure = wanted === null ? null : sureHeight(keyIn, place);
  const needs = wanted === null ? '' : ` It needs ${sayWanted(wanted, sure, unit)}.`;
  const left = ofKind.filter((batch) => countLeft(batch, filling) > 0);
  if (left.length === 0) return `No loose part is left for ${chamber}: everything on hand is in use.${needs}`;
  const near = nearOf(spans, site.stock, filling);
  if (near === null) return whyBarred(keyIn, place, left, filling);
  if (near.missing !== null) {
    const { label, isLong } = near.missing;
    const by = missedBy(near.missing, sure);
    const amount = by < filling.step / 2 ? `less than ${sayAmount(filling.step, unit)}` : sayAmount(by, unit);
    const way = isLong ? 'too long' : 'too short';
    return `Nothing in the bag fits ${chamber}: ${label}, the nearest, is ${amount} ${way}.${needs}`;
  }
  const takers = new Set(chosen.flatMap((each) => (each === null ? [] : [each.part])));
  return near.fitting.some((part) => takers.has(part))
    ? `What fits ${chamber} is needed in other chambers.${needs}`
    : `The balls that fit ${chamber} are needed in other chambers.${needs}`;
}

const BARRED_WORDS: Readonly<Record<Barred, string>> = {
  'too wide': 'too wide to enter it',
  'too loose': 'so narrow as to lean over in it',
  'falls through': 'so narrow as to fall through the keyway',
  'never turns':
    'of a shape that never turns there at any length: dome or bevel the pin, or take a driver with a broken edge',
  'cannot be': 'of sizes that cannot be',
};

function whyBarred(
  { site, levelOf }: PairToFill['keyIn'],
  place: PlaceToFill['place'],
  batches: readonly Batch[],
  filling: Filling,
): string {
  const counts = new Map<Barred, number>();
  for (const batch of batches) {
    const fit = site.fitOf(place, batch);
    if (fit === null) continue;
    if (fit.barred !== null)
      counts.set(fit.barred, (counts.get(fit.barred) ?? 0) + countLeft(batch, filling));
    else if (levelOf(place, fit) === null) {
      return `The height that chamber ${place.number} calls for is not known yet: measure its cut.`;
    }
  }
  const reasons = [...counts].sort((one, other) => other[1] - one[1]);
  const words = reasons.map(
    ([barred, count]) => `${count} ${count === 1 ? 'is' : 'are'} ${BARRED_WORDS[barred]}`,
  );
  return `Nothing in the bag can stand in chamber ${place.number}: ${words.join('; ')}.`;
}

function countLeft({ pins, balls }: Batch, { copies }: Filling): number {
  let count = 0;
  for (let i = 0; i < pins.length; i++) {
    const ball = balls[i] ?? -1;
    if ((copies[pins[i] ?? -1] ?? 0) > 0 && (ball < 0 || (copies[ball] ?? 0) > 0)) count += 1;
  }
  return count;
}

type Near = {
  /** Pins that fit. */
  readonly fitting: readonly number[];
  /** When none fits, the one that misses by least. */
  readonly missing: Miss | null;
};

/** `by` is what it lacks to turn at all. */
type Miss = {
  readonly label: string;
  readonly height: number;
  readonly by: number;
  readonly isLong: boolean;
};

/** From the range that is told beside it, so that both figures can be held against each other. */
function missedBy({ height, by, isLong }: Miss, sure: SureHeight | null): number {
  const outside = sure === null ? by : isLong ? height - sure.to : sure.from - height;
  return outside > 0 ? outside : by;
}

/** Null when no copy of anything is left. */
function nearOf(spans: readonly Span[], { parts }: Stock, { copies, step }: Filling): Near | null {
  const fitting: number[] = [];
  let missing: Near['missing'] = null;
  for (const { batch, fit, level } of spans) {
    for (let i = 0; i < batch.lengths.length; i++) {
      const pin = batch.pins[i] ?? 0;
      const ball = batch.balls[i] ?? -1;
      if ((copies[pin] ?? 0) < 1 || (ball >= 0 && (copies[ball] ?? 0) < 1)) continue;
      const offset = (batch.lengths[i] ?? 0) + batch.added - level;
      const margin = marginAt(offset, fit);
      if (stepsToSpare(margin, step) >= 0) fitting.push(pin);
      else if (missing === null || -margin < missing.by) {
        const height = (batch.lengths[i] ?? 0) + batch.added;
        missing = { label: labelOf(parts, pin, ball), height, by: -margin, isLong: offset > fit.highest };
      }
    }
  }
  if (fitting.length > 0) return { fitting, missing: null };
  return missing === null ? null : { fitting, missing };
}

function labelOf(parts: readonly Part[], pin: number, ball: number): string {
  const on = parts[ball];
  const label = parts[pin]?.label ?? '';
  return on === undefined ? label : `${label} on ${on.label}`;
}
