/**
 * The file of what belongs to a learner: saved when they ask, read back here or on another device. Everything in it is read
 * field by field; what cannot be read is counted, so that nothing is lost without a word.
 */
import { LESSON_IDS } from '../model/learning/lesson.ts';
import { openOwnFile, type OwnFileFault, type OwnFileKind } from '../model/learning/own-file.ts';
import { keptForm, type Learning, readLearning } from './learning-store.ts';

const KIND: OwnFileKind = {
  format: 'shearsight-learning',
  version: 1,
  // Ten times what two hundred rounds take.
  mostCharacters: 4_000_000,
};

export type ReadLearningFile =
  | {
      readonly type: 'learning';
      readonly learning: Learning;
      readonly seenLessons: readonly string[];
      /** Rounds in the file that could not be read. */
      readonly lost: number;
    }
  | { readonly type: 'error'; readonly fault: OwnFileFault };

/** Writes the file. */
export function learningFileText(learning: Learning, seenLessons: readonly string[]): string {
  const all = { format: KIND.format, version: KIND.version, seenLessons, ...keptForm(learning) };
  return `${JSON.stringify(all, null, 2)}\n`;
}

/** Reads the text of a file that should be a learner's. */
export function readLearningFile(text: string): ReadLearningFile {
  const opened = openOwnFile(text, KIND);
  if (opened.type === 'error') return opened;
  const { data, kept } = opened;
  const rounds = kept.get('rounds');
  if (!Array.isArray(rounds)) return { type: 'error', fault: 'damaged' };
  const learning = readLearning(data);
  const seen = kept.get('seenLessons');
  return {
    type: 'learning',
    learning,
    seenLessons: Array.isArray(seen) ? LESSON_IDS.filter((id) => seen.includes(id)) : [],
    lost: rounds.length - learning.rounds.length,
  };
}

/** Whether there is anything that reading a file back would take away; the language is not. */
export function hasProgress({ name, rounds, careful, hurried, practice }: Learning): boolean {
  const typed = [...careful, ...hurried].some((text) => text !== '');
  return name !== '' || rounds.length > 0 || typed || practice !== null;
}
