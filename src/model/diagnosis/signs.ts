/**
 * Signs in the numbers that are no finding of their own: stacks outside their windows, springs nearly solid, keys barely
 * held. Each says whether it is so, or nearly, in one sentence. mm, radians.
 */
import type { ChamberResult, Show, SplitResult } from '../evaluate/evaluation.ts';
import { sayAmount } from '../evaluate/say.ts';
import { type Facts, homeTravel, outTravel } from '../findings/facts.ts';
import { asRadians, toDegrees } from '../radians.ts';
import type { Id } from '../schema/leaf.ts';

export type Sign = {
  readonly standing: 'found' | 'near';
  readonly text: string;
  readonly show: Show;
};

export type SignName =
  | 'chambers off'
  | 'one chamber off'
  | 'chambers low'
  | 'chambers high'
  | 'high and rubs'
  | 'little to spare'
  | 'tight spring'
  | 'barely held'
  | 'a waist at the line'
  | 'does not lock'
  | 'master pins';

/** mm. A spring or a hold with less than this to spare is near its end (.020 in). Common practice, no source. */
const NEAR_MM = 0.508;

/** Looks for a sign. */
export function signsOf(facts: Facts, name: SignName): Sign[] {
  switch (name) {
    case 'chambers off':
      return offs(facts, () => true);
    case 'one chamber off': {
      const all = offs(facts, () => true);
      return all.length === 1 ? all : [];
    }
    case 'chambers low':
      return offs(facts, (split) => split.offset - split.window.lowest < split.window.highest - split.offset);
    case 'chambers high':
      return offs(
        facts,
        (split) => split.offset - split.window.lowest >= split.window.highest - split.offset,
      );
    case 'high and rubs':
      return rubs(facts);
    case 'little to spare':
      return leastToSpare(facts);
    case 'tight spring':
      return tightSprings(facts);
    case 'barely held':
      return barelyHeld(facts);
    case 'a waist at the line':
      return waists(facts);
    case 'does not lock':
      return notLocking(facts);
    case 'master pins':
      return masterPins(facts);
  }
}

type Placed = { readonly chamber: ChamberResult; readonly split: SplitResult };

/** The split nearest to being clear at the inner line, chamber by chamber. */
function placed({ evaluation }: Facts): Placed[] {
  return evaluation.chambers.flatMap((chamber): Placed[] => {
    const best = chamber.verdicts[0]?.split;
    const split = best == null ? undefined : chamber.splits[best];
    return split === undefined ? [] : [{ chamber, split }];
  });
}

function closeUp(facts: Facts, chamber: Id): Show {
  return { travel: homeTravel(facts), chamber, view: 'close-up' };
}

/** Surely outside its window: found; not certain to be inside: near. */
function offs(facts: Facts, isWanted: (split: SplitResult) => boolean): Sign[] {
  return placed(facts).flatMap(({ chamber, split }): Sign[] => {
    const { verdict, offset, window } = split;
    const isOff = verdict === 'too low' || verdict === 'too high';
    if ((!isOff && verdict !== "can't say yet") || !isWanted(split)) return [];
    const by = isOff
      ? sayAmount(Math.max(window.lowest - offset, offset - window.highest), facts.unit)
      : sayAmount(split.expandedUncertainty, facts.unit);
    const text = isOff
      ? `Chamber ${chamber.number} is ${verdict}, ${by} outside where it turns.`
      : `Chamber ${chamber.number} lies near a limit; its offset is good to about ±${by}.`;
    return [{ standing: isOff ? 'found' : 'near', text, show: closeUp(facts, chamber.chamber) }];
  });
}

function rubs(facts: Facts): Sign[] {
  return placed(facts).flatMap(({ chamber, split }): Sign[] => {
    if (split.verdict !== 'high, rubs') return [];
    const from = Math.round(toDegrees(asRadians(split.rubsFrom ?? 0)) / 10) * 10;
    const text = `Chamber ${chamber.number} is ${sayAmount(split.offset, facts.unit)} high and rubs from about ${from}°.`;
    return [{ standing: 'found', text, show: closeUp(facts, chamber.chamber) }];
  });
}

function leastToSpare(facts: Facts): Sign[] {
  const inside = placed(facts).filter(({ split }) => split.margin >= 0);
  const [least] = inside.sort((one, other) => one.split.margin - other.split.margin);
  if (least === undefined) return [];
  const text = `Chamber ${least.chamber.number} has the least to spare: ${sayAmount(least.split.margin, facts.unit)}.`;
  return [{ standing: 'near', text, show: closeUp(facts, least.chamber.chamber) }];
}

function tightSprings(facts: Facts): Sign[] {
  return facts.rest.chambers.flatMap(({ chamber, number, spring }): Sign[] => {
    const spare = spring?.toSpare;
    if (spare == null || spare < 0 || spare >= NEAR_MM) return [];
    const text = `The spring of chamber ${number} is ${sayAmount(spare, facts.unit)} from solid at the worst place.`;
    const show: Show = { travel: spring?.worstTravel ?? 0, chamber, view: 'section' };
    return [{ standing: 'near', text, show }];
  });
}

function barelyHeld(facts: Facts): Sign[] {
  const held = facts.way.chambers.flatMap((each) =>
    each.holdsKey === null ? [] : [{ ...each, by: each.holdsKey }],
  );
  const [most] = held.sort((one, other) => other.by - one.by);
  if (most === undefined || most.by <= 0 || most.by >= NEAR_MM) return [];
  const text = `Only chamber ${most.number} holds the turned key, by ${sayAmount(most.by, facts.unit)}.`;
  return [
    { standing: 'near', text, show: { travel: most.highestAt, chamber: most.chamber, view: 'section' } },
  ];
}

function waists(facts: Facts): Sign[] {
  return facts.rest.chambers.flatMap(({ chamber, number, waist }): Sign[] => {
    if (waist?.isAtLine !== true) return [];
    const slack = Math.round(toDegrees(waist.slack));
    const text = `The ${waist.kind} of chamber ${number} stands at the line with its waist: up to ${slack}° of slack.`;
    return [{ standing: 'near', text, show: { travel: outTravel(facts), chamber, view: 'section' } }];
  });
}

function notLocking(facts: Facts): Sign[] {
  const open = facts.rest.chambers.filter(({ atLines }) => atLines.some((each) => each.locks === false));
  if (open.length === 0) return [];
  const all = open.length === facts.rest.chambers.length;
  const numbers = open.map(({ number }) => number).join(', ');
  const text = all
    ? 'No chamber locks with the key out.'
    : `Chambers that do not lock with the key out: ${numbers}; the others hold.`;
  const show: Show = { travel: outTravel(facts), chamber: open[0]?.chamber ?? null, view: 'section' };
  return [{ standing: all ? 'found' : 'near', text, show }];
}

function masterPins(facts: Facts): Sign[] {
  const count = facts.sites.filter(({ stack }) =>
    stack.parts.some((part) => part.role === 'masterPin'),
  ).length;
  if (count === 0) return [];
  const text = `${count === 1 ? 'One chamber has' : `${count} chambers have`} master pins: each doubles the keys that work.`;
  return [{ standing: 'near', text, show: { travel: homeTravel(facts), chamber: null, view: 'section' } }];
}
