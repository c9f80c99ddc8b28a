/** Says what became of a file that was handed out. */
import type { SavedFile } from '../persist/job-file.ts';

/** `more` follows where there is a file. */
export function tellSaved(saved: SavedFile, more: string): string | null {
  if (saved.type === 'cancelled') return null;
  if (saved.type === 'error') return saved.problems.map(({ message }) => message).join(' ');
  return `${saved.isVerified ? `Saved to ${saved.name}, and read back.` : `Saved as ${saved.name}.`}${more}`;
}
