/** What the repair note asks of the app: pictures and tables as files, and pictures on the clipboard. */
import type { PictureSheet } from '../../drawing/picture-sheet.ts';
import type { Job } from '../../model/schema/job-schema.ts';

export type PictureAsk = {
  readonly sheet: PictureSheet;
  readonly words: { readonly title: string; readonly description: string };
  /** For the name of the file. */
  readonly jobTitle: string;
  /** Put inside the picture; null keeps it out. */
  readonly inside: Job | null;
};

export type NoteFiles = {
  /** Each gives a sentence to tell, or null when nothing needs telling. */
  readonly savePicture: (ask: PictureAsk, form: 'png' | 'svg') => Promise<string | null>;
  readonly copyPicture: (ask: PictureAsk) => Promise<string | null>;
  readonly saveTable: (csv: string, jobTitle: string) => Promise<string | null>;
};
