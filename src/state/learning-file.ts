/**
 * The file of what belongs to a learner: saved when they ask, read back here or on another device. Everything in it is read
 * field by field; what cannot be read is counted, so that nothing is lost without a word.
 */
import { membersOf } from '../model/learning/learner-record.ts';
import { LESSON_IDS } from '../model/learning/lesson.ts';
import { keptForm, type Learning, readLearning } from './learning-store.ts';

const FORMAT = 'shearsight-learning';
const FILE_VERSION = 1;
/** Ten times what two hundred rounds take. */
const MOST_CHARACTERS = 4_000_000;

export type LearningFault = 'not one' | 'damaged' | 'newer';

export type ReadLearningFile =
  | {
      readonly type: 'learning';
      readonly learning: Learning;
      readonly seenLessons: readonly string[];
      /** Rounds in the file that could not be read. */
      readonly lost: number;
    }
  | { readonly type: 'error'; readonly fault: LearningFault };

/** Writes the file. */
export function learningFileText(learning: Learning, seenLessons: readonly string[]): string {
  const all = { format: FORMAT, version: FILE_VERSION, seenLessons, ...keptForm(learning) };
  return `${JSON.stringify(all, null, 2)}\n`;
}

/** Reads the text of a file that should be a learner's. */
export function readLearningFile(text: string): ReadLearningFile {
  let data: unknown;
  try {
    data = text.length > MOST_CHARACTERS ? null : JSON.parse(text.replace(/^\ufeff/u, ''));
  } catch {
    return { type: 'error', fault: text.includes(FORMAT) ? 'damaged' : 'not one' };
  }
  const kept = membersOf(data);
  if (kept.get('format') !== FORMAT) return { type: 'error', fault: 'not one' };
  const version = kept.get('version');
  if (typeof version === 'number' && version > FILE_VERSION) return { type: 'error', fault: 'newer' };
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
