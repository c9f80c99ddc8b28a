/** What Learn asks of the app: benches to practise on, what the learner keeps, files, and a seal for true figures. */
import type { PracticeFile } from '../../model/learning/practice-file.ts';
import type { Figures, PracticeCard } from '../../model/learning/practice-figures.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { LearningStore } from '../../state/learning-store.ts';

export type Saved =
  | { readonly type: 'saved'; readonly name: string }
  | { readonly type: 'cancelled' }
  | { readonly type: 'failed' };

export type Opened =
  | { readonly type: 'figures'; readonly figures: Figures }
  | { readonly type: 'error'; readonly reason: 'wrong passphrase' | 'damaged' };

export type LearningDesk<Bench> = {
  /** Makes a bench of its own for a cylinder that is not the person's: the same services, other stores. */
  readonly makeBench: (job: Job, services: Bench) => Bench;
  readonly store: LearningStore;
  /** Saves a text as a JSON file of this name. */
  readonly save: (text: string, name: string) => Promise<Saved>;
  /** Gives the text of the sealed file. Takes about a second. */
  readonly seal: (card: PracticeCard, figures: Figures, passphrase: string) => Promise<string>;
  readonly open: (file: PracticeFile, passphrase: string) => Promise<Opened>;
};
