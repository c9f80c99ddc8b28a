/**
 * Which measurement, repeated or replaced by another route, would help most: every way to shrink a doubt is tried on all
 * chambers that cannot be decided yet, and the ways are ranked by how many chambers they would decide, then by how much
 * doubt they take away. What is common to all chambers is taken away in all of them. Distances mm.
 */
import { COVERAGE_FACTOR, type Estimate, type FieldRef, type Term, variance } from '../estimate/estimate.ts';
import type { Measuring } from '../estimate/read-value.ts';
import { byStandingUp } from '../evaluate/routes.ts';
import { sayAmount, sayField } from '../evaluate/say.ts';
import type { Id } from '../schema/leaf.ts';
import type { JobUnit } from '../units/length-unit.ts';

/** A chamber whose verdict waits for a smaller ±: the distance that crosses an end of its window. */
export type OpenChamber = {
  readonly chamber: Id;
  readonly number: number;
  /** To the end of the window that is nearer for its ±; positive inside. */
  readonly distance: Estimate;
  /** The causes behind the height the key calls for, which standing a pin up replaces. */
  readonly needed: readonly Term[];
  /** Height of its lower stack and the plug's diameter: where on the caliper it would be read. */
  readonly stackHeight: number;
  readonly plugDiameter: number;
};

export type Help = {
  readonly kind: 'read again' | 'measure' | 'stand it up';
  /** What to measure; null for standing a pin up in one chamber. */
  readonly field: FieldRef | null;
  readonly chambers: readonly {
    readonly chamber: Id;
    readonly number: number;
    /** The ± before and after. */
    readonly from: number;
    readonly to: number;
    /** The verdict would not wait any longer, if the value stays as it is. */
    readonly decides: boolean;
  }[];
  readonly sentence: string;
};

/** Readings that somebody takes when asked to read again: two more of the same. */
const READINGS_IN_ALL = 3;
/** mm. Less than this is not worth a walk to the bench (.0001 in). */
const WORTH_MM = 0.00254;

/** Ranks what would help; best first. */
export function whatHelps(
  open: readonly OpenChamber[],
  setting: { readonly unit: JobUnit; readonly measuring: Measuring; readonly instrument: Id | null },
): Help[] {
  const fields = new Map<string, FieldRef>();
  for (const { distance } of open)
    for (const { cause } of distance.terms) fields.set(nameOf(cause.field), cause.field);
  const helps = [...fields.values()].flatMap((field): Help[] => {
    const own = open.flatMap(({ distance }) =>
      distance.terms.filter(({ cause }) => nameOf(cause.field) === nameOf(field)),
    );
    const isAssumed = own.some(({ cause }) => cause.kind === 'assumed');
    const isRead = own.some(({ cause }) => cause.kind === 'repeatability');
    if (!isAssumed && !isRead) return [];
    const change = isAssumed ? withoutGuess : readAgain;
    return [
      helpOf(isAssumed ? 'measure' : 'read again', field, open, setting.unit, ({ distance }) =>
        distance.terms.flatMap((term) =>
          nameOf(term.cause.field) === nameOf(field) ? change(term) : [term],
        ),
      ),
    ];
  });
  const standing = open.map((one) =>
    helpOf('stand it up', null, [one], setting.unit, (each) =>
      stoodUp(each, setting.measuring, setting.instrument),
    ),
  );
  return [...helps, ...standing]
    .filter(({ chambers }) => chambers.length > 0)
    .sort((one, other) => decided(other) - decided(one) || gain(other) - gain(one));
}

function helpOf(
  kind: Help['kind'],
  field: FieldRef | null,
  open: readonly OpenChamber[],
  unit: JobUnit,
  after: (one: OpenChamber) => readonly Term[],
): Help {
  const chambers = open.flatMap((one) => {
    const from = COVERAGE_FACTOR * Math.sqrt(Math.max(0, variance(one.distance.terms)));
    const to = COVERAGE_FACTOR * Math.sqrt(Math.max(0, variance(after(one))));
    if (from - to < WORTH_MM) return [];
    const decides = Math.abs(one.distance.value) >= to;
    return [{ chamber: one.chamber, number: one.number, from, to, decides }];
  });
  return { kind, field, chambers, sentence: sentenceOf(kind, field, chambers, unit) };
}

function sentenceOf(
  kind: Help['kind'],
  field: FieldRef | null,
  chambers: Help['chambers'],
  unit: JobUnit,
): string {
  const first = chambers[0];
  if (first === undefined) return '';
  const what =
    field === null
      ? `Stand a pin up in chamber ${first.number} and read how far`
      : kind === 'measure'
        ? `Measure ${fieldWords(field, chambers)}, which is assumed now`
        : `Read ${fieldWords(field, chambers)} twice more`;
  const from = Math.max(...chambers.map((each) => each.from));
  const to = Math.max(...chambers.map((each) => each.to));
  const numbers = chambers.filter((each) => each.decides).map((each) => String(each.number));
  const result =
    numbers.length === 0
      ? ''
      : `; that would settle chamber${numbers.length > 1 ? 's' : ''} ${numbers.join(', ')} if the value stays`;
  return `${what}: ± ${sayAmount(from, unit)} becomes ± ${sayAmount(to, unit)}${result}.`;
}

/** What belongs to one chamber is told with its number. */
function fieldWords(field: FieldRef, chambers: Help['chambers']): string {
  const isOwn = ['group', 'part', 'cut', 'chamber'].includes(field.owner);
  const [only] = chambers;
  const where = isOwn && chambers.length === 1 && only !== undefined ? ` of chamber ${only.number}` : '';
  return `${sayField(field)}${where}`;
}

/** Reading again shrinks only what differs from reading to reading. */
function readAgain(term: Term): Term[] {
  if (term.cause.kind !== 'repeatability') return [term];
  return [{ ...term, weight: term.weight / Math.sqrt(READINGS_IN_ALL) }];
}

/** What is measured is no guess any more; what the instrument adds instead is small beside it and left out. */
function withoutGuess(term: Term): Term[] {
  return term.cause.kind === 'assumed' ? [] : [term];
}

/** The height called for, read by standing this very stack up: plug, floor, cut and zero drop out. */
function stoodUp(
  { distance, needed, stackHeight, plugDiameter, chamber }: OpenChamber,
  measuring: Measuring,
  instrument: Id | null,
): readonly Term[] {
  const isNeeded = new Set(needed.map(({ cause }) => cause.id));
  const reading = (value: number) => ({
    readings: [{ typed: '', unit: 'mm' as const, value, instrument, session: null }],
    estimator: 'mean' as const,
    basis: 'measured' as const,
  });
  const entry = { chamber, items: [], stack: reading(stackHeight), reading: reading(0) };
  const route = byStandingUp(entry, plugDiameter, measuring);
  return [...distance.terms.filter(({ cause }) => !isNeeded.has(cause.id)), ...route.terms];
}

function nameOf({ owner, id, name }: FieldRef): string {
  return `${owner}/${id}/${name}`;
}

function decided({ chambers }: Help): number {
  return chambers.filter(({ decides }) => decides).length;
}

function gain({ chambers }: Help): number {
  return chambers.reduce((sum, { from, to }) => sum + from - to, 0);
}
