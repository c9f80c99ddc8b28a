/**
 * A set that somebody who teaches has put together: which lessons in which order, from which seed, in which unit, how close
 * sums have to come. Its link and its file reproduce it exactly and say nothing of anybody's job. The link is a fragment of
 * the page's address, which is never sent to a server; its last piece is a check over the others.
 *
 *     #learn/set/4711/in/127/deep-cut.key-floor/1k9x2ab
 *                 seed   | |   lessons            check
 *                     unit tolerance in ten-thousandths of a mm
 */
import type { JobUnit } from '../units/length-unit.ts';
import { MOST_SEED } from './draw.ts';
import { LESSON_IDS, type LessonId } from './lesson.ts';
import { SUM_TOLERANCE_MM, TOLERANCE_FROM_MM, TOLERANCE_TO_MM } from './tolerance.ts';

export type LessonSet = {
  readonly lessons: readonly LessonId[];
  readonly seed: number;
  readonly unit: JobUnit;
  /** A whole number of ten-thousandths of a mm. */
  readonly toleranceMm: number;
};

/** What is wrong with a link or a file; `part` is the piece that is. */
export type SetFault = {
  readonly fault:
    | 'cut off'
    | 'changed'
    | 'not a set'
    | 'newer'
    | 'no lessons'
    | 'no such lesson'
    | 'twice'
    | 'seed'
    | 'unit'
    | 'tolerance';
  readonly part: string;
};

export type ReadSet =
  | { readonly type: 'set'; readonly set: LessonSet }
  | { readonly type: 'error'; readonly fault: SetFault };

const START = '#learn/set/';
const FORMAT = 'shearsight-lessons';
const FILE_VERSION = 1;
/** Ten-thousandths of a mm in one. */
const PER_MM = 10_000;
/** Characters of a piece that a sentence repeats. */
const QUOTED = 40;
/** Longer than any set's link or file. */
const MOST_CHARACTERS = 4_000;

export const USUAL_TOLERANCE_MM = steady(SUM_TOLERANCE_MM);

/** A tolerance as sets hold it. mm. */
export function steady(mm: number): number {
  return Math.round(mm * PER_MM) / PER_MM;
}

/** Writes the link of a set. */
export function setLink({ lessons, seed, unit, toleranceMm }: LessonSet): string {
  const body = `${seed}/${unit}/${Math.round(toleranceMm * PER_MM)}/${lessons.join('.')}`;
  return `${START}${body}/${checkOf(body)}`;
}

/** Reads the link of a set; null for the address of anything else. */
export function readSetLink(fragment: string): ReadSet | null {
  if (!fragment.startsWith(START)) return null;
  if (fragment.length > MOST_CHARACTERS) return wrong('changed', fragment);
  const pieces = fragment.slice(START.length).split('/');
  const [seed, unit, tolerance, lessons, check] = pieces;
  if (pieces.length < 5 || !check) return wrong('cut off', fragment);
  if (pieces.length > 5) return wrong('changed', fragment);
  if (check !== checkOf(pieces.slice(0, 4).join('/')))
    return wrong(check.length < CHECK_LENGTH ? 'cut off' : 'changed', fragment);
  return readParts({
    seed: digits(seed),
    unit,
    toleranceMm: digits(tolerance) / PER_MM,
    lessons: lessons === '' ? [] : (lessons ?? '').split('.'),
  });
}

/** Writes the file of a set. */
export function setFileText({ lessons, seed, unit, toleranceMm }: LessonSet): string {
  const file = { format: FORMAT, version: FILE_VERSION, lessons, seed, unit, toleranceMm };
  return `${JSON.stringify(file, null, 2)}\n`;
}

/** Reads the text of a file that should be a set. */
export function readSetFile(text: string): ReadSet {
  if (text.length > MOST_CHARACTERS) return wrong('not a set', text);
  let data: unknown;
  try {
    data = JSON.parse(text.replace(/^\ufeff/u, ''));
  } catch {
    return wrong(text.includes(FORMAT) ? 'cut off' : 'not a set', text);
  }
  const members = new Map<string, unknown>(
    typeof data === 'object' && data !== null ? Object.entries(data) : [],
  );
  if (members.get('format') !== FORMAT) return wrong('not a set', text);
  const version = members.get('version');
  if (version !== FILE_VERSION)
    return wrong(typeof version === 'number' && version > FILE_VERSION ? 'newer' : 'changed', text);
  const lessons = members.get('lessons');
  return readParts({
    seed: members.get('seed'),
    unit: members.get('unit'),
    toleranceMm: members.get('toleranceMm'),
    lessons: Array.isArray(lessons) ? (lessons as unknown[]) : [],
  });
}

type Parts = {
  readonly seed: unknown;
  readonly unit: unknown;
  readonly toleranceMm: unknown;
  readonly lessons: readonly unknown[];
};

function readParts({ seed, unit, toleranceMm, lessons }: Parts): ReadSet {
  if (lessons.length === 0) return wrong('no lessons', '');
  const known: LessonId[] = [];
  for (const name of lessons) {
    const lesson = LESSON_IDS.find((id) => id === name);
    if (lesson === undefined) return wrong('no such lesson', String(name));
    if (known.includes(lesson)) return wrong('twice', lesson);
    known.push(lesson);
  }
  if (typeof seed !== 'number' || !Number.isInteger(seed) || seed < 0 || seed > MOST_SEED)
    return wrong('seed', String(seed));
  if (unit !== 'in' && unit !== 'mm') return wrong('unit', String(unit));
  if (!isTolerance(toleranceMm)) return wrong('tolerance', String(toleranceMm));
  return { type: 'set', set: { lessons: known, seed, unit, toleranceMm } };
}

function isTolerance(mm: unknown): mm is number {
  return (
    typeof mm === 'number' &&
    mm === steady(mm) &&
    mm >= steady(TOLERANCE_FROM_MM) &&
    mm <= steady(TOLERANCE_TO_MM)
  );
}

function wrong(fault: SetFault['fault'], part: string): ReadSet {
  return { type: 'error', fault: { fault, part: part.slice(0, QUOTED) } };
}

/** NaN for anything but a few digits. */
function digits(text: string | undefined): number {
  return /^\d{1,6}$/u.test(text ?? '') ? Number(text) : NaN;
}

const CHECK_LENGTH = 7;

/** FNV-1a, 32 bits: finds a slip of copying, protects nothing. */
function checkOf(text: string): string {
  let sum = 0x811c9dc5;
  for (const letter of text) sum = Math.imul(sum ^ letter.charCodeAt(0), 0x01000193) >>> 0;
  return sum.toString(36).padStart(CHECK_LENGTH, '0');
}
