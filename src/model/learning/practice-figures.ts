/**
 * A practice cylinder that lies on the bench: its true figures, what somebody read from it, and how the two compare. A
 * reading counts within a thousandth, a stack within two: each height hangs on four readings. Where a split stands is what
 * the engine reads in the cylinder that the figures build, no ball, foot on the root. Lengths mm; offsets + high, - low.
 */
import { known } from '../assert.ts';
import type { JobUnit } from '../units/length-unit.ts';
import { inchesToMm, toStoredMm } from '../units/length-unit.ts';
import { membersOf } from './learner-record.ts';
import { offsetOf, readScene, sceneOf } from './scene.ts';

/** What everybody may see of it. */
export type PracticeCard = {
  /** What is written on the cylinder. */
  readonly label: string;
  readonly unit: JobUnit;
  readonly chambers: number;
};

/** 'plug', 'floor', 'root-1', 'pin-1' …: mm each. */
export type FigureName = 'plug' | 'floor' | `root-${number}` | `pin-${number}`;
export type Figures = Readonly<Record<FigureName, number>>;

export const READING_TOLERANCE_MM = inchesToMm(0.001);
export const STACK_TOLERANCE_MM = inchesToMm(0.002);
export const MOST_CHAMBERS = 8;
/** Characters. */
export const LONGEST_LABEL = 60;

/** mm. What each kind of figure can be. */
const RANGES = {
  plug: [0.3, 1],
  floor: [0, 0.2],
  root: [0.05, 0.6],
  pin: [0.05, 0.6],
} as const;

/** The figures of a cylinder, in the order they are read. */
export function figureNames(chambers: number): readonly FigureName[] {
  const numbers = Array.from({ length: chambers }, (_, i) => i + 1);
  return [
    'plug',
    'floor',
    ...numbers.map((number) => `root-${number}` as const),
    ...numbers.map((number) => `pin-${number}` as const),
  ];
}

/** Kind and chamber of a figure; no chamber for what is measured once. */
export function figureParts(name: FigureName): {
  readonly kind: keyof typeof RANGES;
  readonly number: number | null;
} {
  const [kind, number] = name.split('-');
  return { kind: kind as keyof typeof RANGES, number: number === undefined ? null : Number(number) };
}

/** What can be meant by a figure. */
export function figureRange(name: FigureName): { readonly fromMm: number; readonly toMm: number } {
  const [from, to] = RANGES[figureParts(name).kind];
  return { fromMm: inchesToMm(from), toMm: inchesToMm(to) };
}

export type FigureMark = {
  readonly name: FigureName;
  readonly truth: number;
  readonly read: number;
  /** Read less true. */
  readonly difference: number;
  readonly isWithin: boolean;
};

export type StackMark = Omit<FigureMark, 'name'> & { readonly number: number };

/** Compares readings with what is true. */
export function markReadings(
  card: PracticeCard,
  truth: Figures,
  read: Figures,
): { readonly figures: readonly FigureMark[]; readonly stacks: readonly StackMark[] } {
  const figures = figureNames(card.chambers).map((name) => ({
    name,
    ...compare(figure(truth, name), figure(read, name), READING_TOLERANCE_MM),
  }));
  const [trueOffsets, readOffsets] = [truth, read].map((each) => offsetsOf(card, each));
  const stacks = Array.from({ length: card.chambers }, (_, i) => ({
    number: i + 1,
    ...compare(trueOffsets?.[i] ?? NaN, readOffsets?.[i] ?? NaN, STACK_TOLERANCE_MM),
  }));
  return { figures, stacks };
}

/** How far each chamber's split is from the line, as the engine reads it. */
export function offsetsOf(card: PracticeCard, figures: Figures): readonly number[] {
  const numbers = Array.from({ length: card.chambers }, (_, i) => i + 1);
  const reading = readScene(
    sceneOf({
      unit: card.unit,
      plug: figure(figures, 'plug'),
      floor: figure(figures, 'floor'),
      bladeHeight: inchesToMm(0.65),
      chambers: numbers.map((number) => ({
        rootDepth: figure(figures, `root-${number}`),
        pin: figure(figures, `pin-${number}`),
      })),
    }),
  );
  return numbers.map((_, i) => offsetOf(reading, i));
}

export function figure(figures: Figures, name: FigureName): number {
  return known(figures[name], `figure ${name}`);
}

function compare(truth: number, read: number, tolerance: number): Omit<FigureMark, 'name'> {
  const difference = toStoredMm(read - truth);
  return { truth, read, difference, isWithin: Math.abs(difference) <= tolerance + 1e-7 };
}

/** Reads a card from unknown data. */
export function readCard(data: unknown): PracticeCard | null {
  const kept = membersOf(data);
  const [label, unit, chambers] = ['label', 'unit', 'chambers'].map((name) => kept.get(name));
  if (typeof label !== 'string' || label.length > LONGEST_LABEL) return null;
  if (unit !== 'in' && unit !== 'mm') return null;
  if (typeof chambers !== 'number' || !Number.isInteger(chambers)) return null;
  return chambers < 1 || chambers > MOST_CHAMBERS ? null : { label, unit, chambers };
}

/** Reads figures from unknown data: all of them, each within reason, or none. */
export function readFigures(data: unknown, chambers: number): Figures | null {
  const kept = membersOf(data);
  const names = figureNames(chambers);
  const isGood = (name: FigureName) => {
    const mm = kept.get(name);
    const { fromMm, toMm } = figureRange(name);
    return typeof mm === 'number' && mm >= fromMm - 1e-6 && mm <= toMm + 1e-6;
  };
  if (!names.every(isGood)) return null;
  return Object.fromEntries(names.map((name) => [name, kept.get(name)])) as Figures;
}
