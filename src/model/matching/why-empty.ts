/** One sentence for why nothing of the bag stands in a chamber, and what would help. Lengths mm. */
import { sayAmount } from '../evaluate/say.ts';
import { type Candidate, marginAt, type Span } from './candidate-heights.ts';
import type { Filling, PairToFill, PlaceToFill } from './pair-to-fill.ts';
import { stepsToSpare } from './resolution.ts';
import type { Part } from '../schema/parts-schema.ts';
import type { Barred } from './site.ts';
import type { Stock } from './stock.ts';
import { sayWanted, wantedHeight } from './wanted-height.ts';

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
  if (!batches.some((batch) => batch.hasBall === site.takesBall)) {
    return site.takesBall
      ? `There is no ball with a bottom pin in the bag for ${chamber}.`
      : `There is no bottom pin in the bag that goes without a ball, as in ${chamber}.`;
  }
  if (spans.length === 0) return whyNoSpan(keyIn, place);
  const wanted = wantedHeight(keyIn, place);
  const needs = wanted === null ? '' : ` It needs ${sayWanted(wanted, unit)}.`;
  const near = nearOf(spans, site.stock, filling);
  if (near === null) return `Everything that could stand in ${chamber} is in use.${needs}`;
  if (near.missing !== null) {
    const { label, by, isLong } = near.missing;
    const way = isLong ? 'too long' : 'too short';
    return `Nothing in the bag fits ${chamber}: ${label}, the nearest, is ${sayAmount(by, unit)} ${way}.${needs}`;
  }
  const takers = new Set(chosen.flatMap((each) => (each === null ? [] : [each.part])));
  return near.fitting.some((part) => takers.has(part))
    ? `What fits ${chamber} is needed in other chambers.${needs}`
    : `The balls that fit ${chamber} are needed in other chambers.${needs}`;
}

const BARRED_WORDS: Readonly<Record<Barred, string>> = {
  'too wide': 'too wide to enter it',
  'too loose': 'so narrow that they would lean over in it',
  'falls through': 'so narrow that they fall through the keyway',
  'never turns':
    'of a shape that never turns there, whatever their length: dome or bevel the pin, or take a driver with a broken edge',
  'cannot be': 'of sizes that cannot be',
};

function whyNoSpan({ site, levelOf }: PairToFill['keyIn'], place: PlaceToFill['place']): string {
  const counts = new Map<Barred, number>();
  let enters = 0;
  for (const batch of site.stock.batches) {
    if (batch.hasBall !== site.takesBall) continue;
    const fit = site.fitOf(place, batch);
    if (fit === null) continue;
    if (fit.barred !== null) counts.set(fit.barred, (counts.get(fit.barred) ?? 0) + batch.lengths.length);
    else if (levelOf(place, fit) === null) enters += 1;
  }
  if (enters > 0)
    return `The height that chamber ${place.number} calls for is not known yet: measure its cut.`;
  const reasons = [...counts].sort((one, other) => other[1] - one[1]);
  const words = reasons.map(([barred, count]) => `${count} are ${BARRED_WORDS[barred]}`).join('; ');
  return `Nothing in the bag can stand in chamber ${place.number}: ${words}.`;
}

type Near = {
  /** Pins that fit. */
  readonly fitting: readonly number[];
  /** When none fits, the one that misses by least. */
  readonly missing: { readonly label: string; readonly by: number; readonly isLong: boolean } | null;
};

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
        missing = { label: labelOf(parts, pin, ball), by: -margin, isLong: offset > fit.highest };
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
