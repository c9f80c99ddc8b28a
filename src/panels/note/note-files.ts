/** What the repair note asks of the app: pictures, tables and solids as files, and pictures on the clipboard. */
import type { PictureSheet } from '../../drawing/picture-sheet.ts';
import type { Assembly } from '../../model/assembly/assembly.ts';
import type { Job } from '../../model/schema/job-schema.ts';

export type PictureAsk = {
  readonly sheet: PictureSheet;
  readonly words: { readonly title: string; readonly description: string };
  /** For the name of the file. */
  readonly jobTitle: string;
  /** Put inside the picture; null keeps it out. */
  readonly inside: Job | null;
};

export type PrintAsk = {
  /** What it is made from: the bench, or stand-ins. */
  readonly assembly: Assembly;
  /** The cutaway set, every part whole, or one part by its key in cut-parts.ts. */
  readonly what: { readonly kind: 'cutaway' | 'all' } | { readonly kind: 'part'; readonly part: string };
  /** In a file's name: "cutaway". */
  readonly name: string;
  /** How many times as large. */
  readonly factor: number;
  /** All around, mm of the print. */
  readonly clearance: number;
  readonly jobTitle: string;
};

export type SceneAsk = { readonly assembly: Assembly; readonly jobTitle: string };

export type ClipAsk = {
  /** The picture after a share of the way, 0 to 1; all of one size. */
  readonly frameAt: (share: number) => PictureSheet;
  readonly jobTitle: string;
  /** What is saved instead where the browser writes no clips. */
  readonly strip: PictureAsk;
};

export type NoteFiles = {
  /** Each gives a sentence to tell, or null when nothing needs telling. */
  readonly savePicture: (ask: PictureAsk, form: 'png' | 'svg') => Promise<string | null>;
  readonly copyPicture: (ask: PictureAsk) => Promise<string | null>;
  readonly savePrint: (ask: PrintAsk, form: '3mf' | 'stl') => Promise<string | null>;
  readonly saveClip: (ask: ClipAsk) => Promise<string | null>;
  /** The insertion as a scene that moves. */
  readonly saveScene: (ask: SceneAsk) => Promise<string | null>;
  readonly saveTable: (csv: string, jobTitle: string) => Promise<string | null>;
};
