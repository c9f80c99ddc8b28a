/**
 * Preferences: saved, not undoable. How this person at this bench likes it; nothing about any job. Where they are kept is
 * the business of src/persist, which hands back unknown data: it is read field by field, and a field that is not as it
 * should be is as if it had never been set.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Instrument } from '../model/schema/cylinder-schema.ts';

/** The instrument new jobs start with; it gets its id in the job. */
export type DefaultInstrument = Omit<Instrument, 'id'>;

export type Preferences = {
  readonly theme: 'system' | 'paper' | 'slate';
  readonly unit: 'in' | 'mm';
  readonly instrument: DefaultInstrument | null;
  readonly motion: 'system' | 'reduced' | 'full';
  readonly shortcuts: 'on' | 'off';
  /** Large targets, for gloves and grease. */
  readonly bench: 'on' | 'off';
  /** Fields are filled by a caliper that types: on-screen keyboards stay away. */
  readonly caliper: 'on' | 'off';
  /** Lengths that a key could be cut from are blurred, but for the field that is being used. */
  readonly veil: 'on' | 'off';
  /** Which lessons were seen to their end. */
  readonly seenLessons: readonly string[];
};

export type PreferencesState = Preferences & {
  readonly set: (changes: Partial<Preferences>) => void;
};

export type PreferencesStore = StoreApi<PreferencesState>;

export const DEFAULT_PREFERENCES: Preferences = Object.freeze({
  theme: 'system',
  unit: 'in',
  instrument: null,
  motion: 'system',
  shortcuts: 'on',
  bench: 'off',
  caliper: 'off',
  veil: 'off',
  seenLessons: [],
});

/** Makes the store from what was kept. */
export function createPreferencesStore(kept: unknown = null): PreferencesStore {
  return createStore<PreferencesState>()((set) => ({
    ...readPreferences(kept),
    set: (changes) => set(changes),
  }));
}

/** The preferences alone, fit to be kept. */
export function preferencesOf(state: Preferences): Preferences {
  const { theme, unit, instrument, motion, shortcuts, bench, caliper, veil, seenLessons } = state;
  return { theme, unit, instrument, motion, shortcuts, bench, caliper, veil, seenLessons };
}

/** Reads preferences from unknown data: each good field counts, the others are at their defaults. */
export function readPreferences(data: unknown): Preferences {
  const kept = ownMembers(data);
  const { theme, unit, motion, shortcuts, bench, caliper, veil } = DEFAULT_PREFERENCES;
  return {
    theme: oneOf(kept.get('theme'), ['system', 'paper', 'slate'], theme),
    unit: oneOf(kept.get('unit'), ['in', 'mm'], unit),
    instrument: readInstrument(kept.get('instrument')),
    motion: oneOf(kept.get('motion'), ['system', 'reduced', 'full'], motion),
    shortcuts: oneOf(kept.get('shortcuts'), ['on', 'off'], shortcuts),
    bench: oneOf(kept.get('bench'), ['on', 'off'], bench),
    caliper: oneOf(kept.get('caliper'), ['on', 'off'], caliper),
    veil: oneOf(kept.get('veil'), ['on', 'off'], veil),
    seenLessons: readNames(kept.get('seenLessons')),
  };
}

/** Short names only, and not without end. */
function readNames(data: unknown): string[] {
  const names: unknown[] = Array.isArray(data) ? data.slice(0, 100) : [];
  return names.filter((name) => typeof name === 'string' && name.length <= 40) as string[];
}

/** All of an instrument or none of it: half a specification would be a made-up one. */
function readInstrument(data: unknown): DefaultInstrument | null {
  const kept = ownMembers(data);
  const label = kept.get('label');
  const kinds = ['digital caliper', 'dial caliper', 'micrometer', 'dial indicator', 'other'] as const;
  const kind = oneOf(kept.get('kind'), kinds, null);
  const source = oneOf(kept.get('source'), ['maker', 'assumed', 'checked'] as const, null);
  const resolutionMm = errorMm(kept.get('resolutionMm'));
  const maxPermissibleErrorMm = errorMm(kept.get('maxPermissibleErrorMm'));
  const repeatabilityMm = errorMm(kept.get('repeatabilityMm'));
  if (typeof label !== 'string' || label.length > 400 || kind === null || source === null) return null;
  if (resolutionMm === null || maxPermissibleErrorMm === null || repeatabilityMm === null) return null;
  return { label, kind, resolutionMm, maxPermissibleErrorMm, repeatabilityMm, source };
}

/** mm, within what the job file allows for an instrument's error. */
function errorMm(value: unknown): number | null {
  return typeof value === 'number' && value >= 0 && value <= 1 ? value : null;
}

function oneOf<T extends string, D>(value: unknown, allowed: readonly T[], otherwise: D): T | D {
  return allowed.find((word) => word === value) ?? otherwise;
}

function ownMembers(data: unknown): ReadonlyMap<string, unknown> {
  return new Map(typeof data === 'object' && data !== null ? Object.entries(data) : []);
}
