/**
 * The app put together: stores, the example, the motion clock, and saving, which is loaded after the first picture. One for
 * each page.
 */
import { assemble } from '../model/assembly/build-assembly.ts';
import { firstSelection, layOut } from '../model/measured/selection.ts';
import type { Job } from '../model/schema/job-schema.ts';
import type { Services } from '../panels/shared/services.tsx';
import { keepPreferences, loadPreferences, watchPreferences } from '../persist/preferences-storage.ts';
import { createDocumentStore, type DocumentStore } from '../state/document-store.ts';
import { newId } from '../state/ids.ts';
import {
  createPreferencesStore,
  type DefaultInstrument,
  preferencesOf,
  type PreferencesStore,
  readPreferences,
} from '../state/preferences-store.ts';
import { createViewStore, type ViewStore } from '../state/view-store.ts';
import type { Keeper, KeeperOptions } from './keeper.ts';
import { startMotion } from './motion.ts';
import { breath, pageHasTime } from './page-has-time.ts';

export type Workshop = {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly preferences: PreferencesStore;
  readonly services: Services;
  /** Resolves when saving is loaded; null where the browser keeps nothing. */
  readonly keeper: Promise<Keeper | null>;
  /** This browser has been used before: there may be a job to go on with. */
  readonly isComingBack: boolean;
  readonly openExample: (file?: string) => Promise<void>;
  readonly newCylinder: () => Promise<void>;
  /** Shows another job, and saves it from now on. */
  readonly show: (job: Job) => Promise<void>;
  /** Shows what is known of a job that a newer version saved, with the text as it came. */
  readonly lookAt: (job: Job, raw: string) => Promise<void>;
};

/** Chambers of a new cylinder, until the person says otherwise. */
const USUAL_CHAMBERS = 6;

/** Puts the app together around the job that is shown first. */
export function createWorkshop(
  first: Job,
  exampleId: string | null,
  SolidView: Services['SolidView'],
): Workshop {
  const document = createDocumentStore(first);
  const view = createViewStore(first);
  const kept = loadPreferences();
  const preferences = createPreferencesStore(kept);
  let example = exampleId;

  preferences.subscribe((state) => keepPreferences(preferencesOf(state)));
  watchPreferences((kept) => preferences.getState().set(readPreferences(kept)));
  document.subscribe(({ job, history }, before) => {
    if (job !== before.job) view.getState().follow(job);
    // From the first step on there is something to come back to: the next start looks for it at once.
    if (history.present > 0 && before.history.present === 0)
      keepPreferences(preferencesOf(preferences.getState()));
  });
  startMotion({ document, view, preferences });

  const keeper = startKeeping(
    { document, view, newId, isUnsavedExample: (id) => id === example },
    kept !== null,
  );
  /** What was changed before saving was loaded is saved before it gives way to another job. */
  const makeWay = async () => {
    if (document.getState().history.present > 0) await keeper.catch(() => null);
  };
  const show = async (job: Job) => {
    await makeWay();
    document.getState().load(job);
    view.getState().open(job);
  };
  const lookAt = async (job: Job, raw: string) => {
    await makeWay();
    document.getState().lookAt(job, raw);
    view.getState().open(job);
  };
  const newCylinder = async () => {
    const { unit, instrument } = preferences.getState();
    await show(await emptyJob(unit, instrument));
    view.getState().goTo('measure');
  };
  const openExample = async (file?: string) => {
    const job = await loadExample(file);
    example = job.id;
    await show(job);
    slideHalfWay(view, job);
  };
  if (exampleId !== null) slideHalfWay(view, first);
  return {
    document,
    view,
    preferences,
    services: {
      document,
      view,
      preferences,
      newId,
      now: () => new Date().toISOString(),
      startMyCylinder: () => void newCylinder(),
      isExample: (job) => job.id === example,
      drafts: new Map(),
      matching: async () => (await import('./matching-of-page.ts')).matching,
      noteFiles: async () => (await import('./note-files.ts')).noteFiles,
      learning: async () => (await import('./learning-desk.ts')).learningDesk,
      SolidView,
    },
    keeper,
    isComingBack: kept !== null,
    openExample,
    newCylinder,
    show,
    lookAt,
  };
}

/** An empty job. What makes it is only loaded when it is asked for. */
export async function emptyJob(unit: 'in' | 'mm', instrument: DefaultInstrument | null = null): Promise<Job> {
  const { newJob } = await import('../model/edit/new-job.ts');
  return newJob({ newId, unit, chambers: USUAL_CHAMBERS, instrument });
}

/** The example is a job like any other; every time it is opened it is a new one, so that nothing is overwritten. */
export async function loadExample(file = 'lighthouse.json'): Promise<Job> {
  const response = await fetch(`examples/${file}`);
  if (!response.ok) throw new Error(`The example could not be loaded (${response.status}).`);
  return { ...((await response.json()) as Job), id: newId() };
}

/** The example opens with its key half way in. */
function slideHalfWay(view: ViewStore, job: Job): void {
  const selection = firstSelection(job);
  if (selection === null) return;
  const { key } = assemble(layOut(job, selection));
  if (key !== null) view.getState().moveKey((key.seatedTravel + key.outTravel) / 2);
}

/**
 * What saving brings along, piece by piece where nobody waits for it, so that a press gets in between: making the schemas alone
 * takes longer than a frame.
 */
const KEEPER_PIECES: readonly (() => Promise<unknown>)[] = [
  () => import('../model/schema/leaf.ts'),
  () => import('../model/schema/parts-schema.ts'),
  () => import('../model/schema/cylinder-schema.ts'),
  () => import('../model/schema/job-schema.ts'),
  () => import('../persist/database.ts'),
];

/** Saving needs more code than the first picture: it is loaded when the page has time, or at once to go on with a job. */
async function startKeeping(options: KeeperOptions, isComingBack: boolean): Promise<Keeper | null> {
  if (!isComingBack) {
    await pageHasTime();
    for (const piece of KEEPER_PIECES) {
      await piece();
      await breath();
    }
  }
  const { openKeeper } = await import('./keeper.ts');
  return openKeeper(options);
}
