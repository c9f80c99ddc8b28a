/**
 * What belongs to the learner: saved, not undoable. Language of the lessons, name on their page, what they predicted, ten
 * readings of a pin, and the practice cylinder on the bench with its readings; its true figures only under their seal.
 * Nothing about any job. What was kept is read field by field: a field that is not as it should be was never set.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import { membersOf, readRounds, type RoundRecord } from '../model/learning/learner-record.ts';
import { type PracticeFile, practiceFileText, readPracticeFile } from '../model/learning/practice-file.ts';
import { READINGS } from '../model/learning/ten-readings.ts';

export const LANGUAGES = ['en', 'de'] as const;
export type Language = (typeof LANGUAGES)[number];

export type PracticeOnBench = {
  readonly file: PracticeFile;
  /** As typed, by figure. */
  readonly typed: Readonly<Record<string, string>>;
};

export type Learning = {
  readonly language: Language;
  readonly name: string;
  readonly rounds: readonly RoundRecord[];
  /** As typed. */
  readonly careful: readonly string[];
  readonly hurried: readonly string[];
  readonly practice: PracticeOnBench | null;
};

export type LearningState = Learning & { readonly set: (changes: Partial<Learning>) => void };
export type LearningStore = StoreApi<LearningState>;

export const EMPTY_LEARNING: Learning = Object.freeze({
  language: 'en',
  name: '',
  rounds: [],
  careful: [],
  hurried: [],
  practice: null,
});

/** Characters of a name, and of anything typed into a field. */
export const LONGEST_NAME = 80;
export const LONGEST_TYPED = 60;

/** Makes the store from what was kept. */
export function createLearningStore(kept: unknown = null): LearningStore {
  return createStore<LearningState>()((set) => ({
    ...readLearning(kept),
    set: (changes) => set(changes),
  }));
}

/** As it is kept. */
export function keptForm({ language, name, rounds, careful, hurried, practice }: Learning): object {
  const cylinder = practice === null ? null : practiceFileText(practice.file);
  return { language, name, rounds, careful, hurried, practice: cylinder, typed: practice?.typed ?? {} };
}

export function readLearning(data: unknown): Learning {
  const kept = membersOf(data);
  const name = kept.get('name');
  const cylinder = kept.get('practice');
  const read = typeof cylinder === 'string' ? readPracticeFile(cylinder) : null;
  return {
    language: LANGUAGES.find((each) => each === kept.get('language')) ?? EMPTY_LEARNING.language,
    name: typeof name === 'string' ? name.slice(0, LONGEST_NAME) : '',
    rounds: readRounds(kept.get('rounds')),
    careful: readTyped(kept.get('careful')),
    hurried: readTyped(kept.get('hurried')),
    practice:
      read?.type === 'practice' ? { file: read.file, typed: readTypedFigures(kept.get('typed')) } : null,
  };
}

function readTyped(data: unknown): string[] {
  const list: unknown[] = Array.isArray(data) ? data.slice(0, READINGS) : [];
  return list.map((text) => (typeof text === 'string' ? text.slice(0, LONGEST_TYPED) : ''));
}

function readTypedFigures(data: unknown): Record<string, string> {
  const good = [...membersOf(data)].filter(([, text]) => typeof text === 'string').slice(0, LONGEST_TYPED);
  return Object.fromEntries(good.map(([name, text]) => [name, String(text).slice(0, LONGEST_TYPED)]));
}
