/** What Learn asks of the app. Loaded when the station is gone to; what seals, when something is sealed. */
import type { LearningDesk } from '../panels/learn/learning-desk.ts';
import type { Services } from '../panels/shared/services.tsx';
import { saveOtherFile } from '../persist/job-file.ts';
import { keepLearning, loadLearning, watchLearning } from '../persist/learning-storage.ts';
import { createLearningStore, keptForm, readLearning } from '../state/learning-store.ts';
import { practiceBench } from './practice-bench.ts';

const store = createLearningStore(loadLearning());
store.subscribe((state) => keepLearning(keptForm(state)));
watchLearning((kept) => store.getState().set(readLearning(kept)));

export const learningDesk: LearningDesk<Services> = {
  makeBench: practiceBench,
  store,
  save: async (text, name) => {
    const bytes = new TextEncoder().encode(text);
    const kind = { ending: '.json', mimeType: 'application/json', description: 'Learn' };
    const saved = await saveOtherFile({ bytes, ...kind }, name);
    if (saved.type === 'success') return { type: 'saved', name: saved.name };
    return { type: saved.type === 'cancelled' ? 'cancelled' : 'failed' };
  },
  seal: async (card, figures, passphrase) => {
    const [{ sealPractice }, { pageLock }] = await sealing();
    return sealPractice(card, figures, passphrase, pageLock);
  },
  open: async (file, passphrase) => {
    const [{ openPractice }, { pageLock }] = await sealing();
    return openPractice(file, passphrase, pageLock);
  },
};

function sealing() {
  return Promise.all([import('../persist/locked/practice-seal.ts'), import('./page-lock.ts')]);
}
