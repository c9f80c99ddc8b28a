/**
 * Does it turn when the key is held otherwise: lifted, rocked at the bow, drawn out a hair? Looked for on the nominal
 * sizes, up to as far as the person wants to look. mm; offsets + high, - low.
 *
 *    lifted   every stack rises by the same
 *    rocked   the bow rises, the tip stays: a stack rises by its share of the way to the tip
 *    drawn    every stack follows its own side of the key
 */
import { contactAt } from '../contact/contact-at.ts';
import { buildFoot } from '../contact/foot.ts';
import type { ChamberResult } from '../evaluate/evaluation.ts';
import { type Facts, stackOf } from './facts.ts';

export type Span = { readonly from: number; readonly to: number };

export type MovedKey = {
  /** It turns as the key sits: nothing else is of interest then. */
  readonly turnsAsItSits: boolean;
  readonly lifted: Span | null;
  readonly rocked: Span | null;
  readonly drawn: Span | null;
};

/** Places looked at when the key is drawn. */
const STEPS = 50;

/** Looks; null while some chamber has no offset yet. */
export function movedKey(facts: Facts): MovedKey | null {
  const { assembly, thresholds } = facts;
  const { key } = assembly;
  const rooms = roomsOf(facts);
  if (key === null || rooms === null) return null;
  const all: Span = { from: 0, to: thresholds.keyMoved };
  const turnsAsItSits = rooms.every(({ spans }) => spans.some(({ from, to }) => from <= 0 && to >= 0));
  const within = (scale: (chamber: string) => number): Span | null =>
    rooms.reduce<Span[]>((left, { chamber, spans }) => cut(left, spans, scale(chamber)), [all])[0] ?? null;
  const tip = key.shape.tipAt - key.seatedTravel;
  const share = (chamber: string) => {
    const z = assembly.chambers.find((each) => each.id === chamber)?.z ?? 0;
    return tip > 0 ? Math.max(0, (tip - z) / tip) : 1;
  };
  return {
    turnsAsItSits,
    lifted: turnsAsItSits ? null : within(() => 1),
    rocked: turnsAsItSits ? null : within(share),
    drawn: turnsAsItSits ? null : drawnOut(facts, rooms),
  };
}

/** Does it turn with the key drawn out so far? Null while some chamber has no offset yet. */
export function turnsDrawn(facts: Facts, by: number): boolean | null {
  const rooms = roomsOf(facts);
  return rooms === null ? null : fitsDrawn(facts, rooms, by);
}

type Room = { readonly chamber: string; readonly spans: readonly Span[] };

function roomsOf({ assembly, evaluation }: Facts): Room[] | null {
  const line = evaluation.lines[0]?.line;
  const rooms = evaluation.chambers.map((chamber) => roomOf(chamber, line));
  const isKnown = assembly.key !== null && rooms.length > 0 && rooms.every((each) => each.spans.length > 0);
  return isKnown ? rooms : null;
}

function fitsDrawn(facts: Facts, rooms: readonly Room[], by: number): boolean {
  return rooms.every(({ chamber, spans }) => {
    const rise = riseOf(facts, chamber, by);
    return spans.some(({ from, to }) => from <= rise && rise <= to);
  });
}

/** By how much a chamber's stack may rise or fall so that one of its splits lies in the window. */
function roomOf(chamber: ChamberResult, line: string | undefined): Room {
  const spans = chamber.splits
    .filter((split) => split.line === line && split.window.lowest <= split.window.highest)
    .map(({ window, offset }) => ({ from: window.lowest - offset, to: window.highest - offset }));
  return { chamber: chamber.chamber, spans };
}

/** What is left of spans after a chamber that rises by this share of the movement. */
function cut(left: readonly Span[], spans: readonly Span[], share: number): Span[] {
  return left.flatMap((own) =>
    spans.flatMap((span): Span[] => {
      if (share === 0) return span.from <= 0 && span.to >= 0 ? [own] : [];
      const from = Math.max(own.from, span.from / share);
      const to = Math.min(own.to, span.to / share);
      return from < to ? [{ from, to }] : [];
    }),
  );
}

function drawnOut(facts: Facts, rooms: readonly Room[]): Span | null {
  const { assembly, thresholds } = facts;
  const { key } = assembly;
  if (key === null) return null;
  let first: number | null = null;
  for (let i = 1; i <= STEPS; i++) {
    const by = (thresholds.keyMoved * i) / STEPS;
    if (fitsDrawn(facts, rooms, by)) first ??= by;
    else if (first !== null) return { from: first, to: (thresholds.keyMoved * (i - 1)) / STEPS };
  }
  return first === null ? null : { from: first, to: thresholds.keyMoved };
}

function riseOf(facts: Facts, id: string, by: number): number {
  const { assembly } = facts;
  const { key } = assembly;
  const chamber = assembly.chambers.find((each) => each.id === id);
  const part = stackOf(facts, id)?.parts[0];
  if (key === null || chamber === undefined || part === undefined) return NaN;
  const foot = buildFoot(part.lower, part.radius);
  const at = (travel: number) => contactAt(key.profile, foot, chamber.z, travel).height;
  return at(key.seatedTravel + by) - at(key.seatedTravel);
}
