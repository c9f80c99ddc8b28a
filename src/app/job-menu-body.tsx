/** What the job menu holds: loaded when it is opened for the first time. */
import { useEffect, useState } from 'react';
import { setUnit } from '../model/edit/edit-settings.ts';
import { Choice } from '../panels/shared/choice.tsx';
import { useDocument, usePreference } from '../panels/shared/services.tsx';
import type { Workshop } from './create-workshop.ts';
import { KEYS } from './keys.ts';
import { type AskPassphrase, openFile, saveAll, saveFile, saveLocked } from './job-files.ts';
import { WhereIsMyWork } from './where-is-my-work.tsx';
import './keys.css';

type JobMenuBodyProps = {
  readonly workshop: Workshop;
  /** Runs what was chosen, and tells what it says. */
  readonly run: (action: () => Promise<string | null>) => void;
  readonly onList: () => void;
  readonly onPassphrase: AskPassphrase;
};

export function JobMenuBody({ workshop, run, onList, onPassphrase }: JobMenuBodyProps) {
  const isLocked = useIsLocked(workshop);
  return (
    <div className="job-menu-body">
      <MenuButton onClick={() => run(() => workshop.newCylinder().then(() => null))}>
        New empty job
      </MenuButton>
      <Examples onOpen={(file) => run(() => workshop.openExample(file).then(() => null))} />
      <MenuButton
        onClick={() =>
          run(() => {
            workshop.view.getState().chooseBench(true);
            return Promise.resolve(null);
          })
        }
      >
        Cylinders and keys…
      </MenuButton>
      <MenuButton onClick={onList}>Jobs on this computer…</MenuButton>
      <MenuButton onClick={() => run(() => openFile(workshop, onPassphrase))}>Open a file…</MenuButton>
      <hr />
      <MenuButton onClick={() => run(() => saveFile(workshop))}>Save to a file…</MenuButton>
      <MenuButton
        onClick={() =>
          onPassphrase({
            title: 'Save to a locked file',
            isNew: true,
            run: (passphrase) => saveLocked(workshop, passphrase),
          })
        }
      >
        Save to a locked file…
      </MenuButton>
      <MenuButton onClick={() => run(() => saveAll(workshop, today()))}>
        Save all jobs to one file…
      </MenuButton>
      {isLocked === null ? null : isLocked ? (
        <MenuButton onClick={() => run(() => leaveLocked(workshop))}>Close this locked job</MenuButton>
      ) : (
        <MenuButton
          onClick={() =>
            onPassphrase({
              title: 'Lock this job on this computer',
              isNew: true,
              run: async (passphrase) => (await workshop.keeper)?.lock(passphrase) ?? [],
            })
          }
        >
          Lock this job…
        </MenuButton>
      )}
      <WhereIsMyWork workshop={workshop} />
      <hr />
      <Settings workshop={workshop} />
    </div>
  );
}

/** Null where nothing is kept, so that there is nothing to lock. */
function useIsLocked({ keeper }: Workshop): boolean | null {
  const saved = useDocument((state) => state.saved);
  const [isLocked, setLocked] = useState<boolean | null>(null);
  useEffect(() => {
    let isGone = false;
    void keeper.then((kept) => {
      if (!isGone) setLocked(kept?.isLocked() ?? null);
    });
    return () => {
      isGone = true;
    };
  }, [keeper, saved]);
  return isLocked;
}

/** Saves what is left, forgets the key and shows the example: nothing of the job is on screen any more. */
async function leaveLocked(workshop: Workshop): Promise<string | null> {
  const keeper = await workshop.keeper;
  await keeper?.flush();
  await keeper?.forget();
  await workshop.openExample();
  return 'The job is locked. Open it with its passphrase under Jobs on this computer.';
}

/** For the name of a file. */
function today(): string {
  return new Date().toISOString().slice(0, 10);
}

/** Finished jobs to look at, all of them invented. */
const EXAMPLES = [
  { file: 'lighthouse.json', label: 'Oil-store door: one key, one shear line' },
  { file: 'harbour-store.json', label: 'Net store: two keys, a sleeve' },
] as const;

function Examples({ onOpen }: { readonly onOpen: (file: string) => void }) {
  return (
    <details className="fold job-examples">
      <summary>
        <span>Open an example</span>
      </summary>
      {EXAMPLES.map(({ file, label }) => (
        <MenuButton key={file} onClick={() => onOpen(file)}>
          {label}
        </MenuButton>
      ))}
    </details>
  );
}

function MenuButton({ onClick, children }: { readonly onClick: () => void; readonly children: string }) {
  return (
    <button type="button" className="button menu-button" data-kind="quiet" onClick={onClick}>
      {children}
    </button>
  );
}

function Settings({ workshop }: { readonly workshop: Workshop }) {
  const { preferences, document } = workshop;
  const theme = usePreference((state) => state.theme);
  const bench = usePreference((state) => state.bench);
  const veil = usePreference((state) => state.veil);
  const motion = usePreference((state) => state.motion);
  const unit = useDocument(({ job }) => job.settings.unit);
  const set = preferences.getState().set;
  return (
    <div className="job-settings">
      <Choice
        question="Unit"
        options={[
          { value: 'in', label: 'Inch' },
          { value: 'mm', label: 'mm' },
        ]}
        value={unit}
        onChoose={(next) => {
          set({ unit: next });
          document
            .getState()
            .edit(next === 'in' ? 'In inches' : 'In millimetres', (job) => setUnit(job, next));
        }}
      />
      <Choice
        question="Theme"
        options={[
          { value: 'system', label: 'As the computer' },
          { value: 'paper', label: 'Paper' },
          { value: 'slate', label: 'Slate' },
        ]}
        value={theme}
        onChoose={(next) => set({ theme: next })}
      />
      <Choice
        question="Targets"
        options={[
          { value: 'off', label: 'Usual' },
          { value: 'on', label: 'Large, for the bench' },
        ]}
        value={bench}
        onChoose={(next) => set({ bench: next })}
      />
      <Choice
        question="Motion"
        options={[
          { value: 'system', label: 'As the computer' },
          { value: 'full', label: 'Slide and turn' },
          { value: 'reduced', label: 'In a few still steps' },
        ]}
        value={motion}
        onChoose={(next) => set({ motion: next })}
      />
      <Choice
        question="Lengths on screen"
        options={[
          { value: 'off', label: 'Clear' },
          { value: 'on', label: 'Blurred, but for the field in use' },
        ]}
        value={veil}
        onChoose={(next) => set({ veil: next })}
      />
      <Keys workshop={workshop} />
    </div>
  );
}

/** What keys do, where; those that work everywhere can be turned off. */
function Keys({ workshop }: { readonly workshop: Workshop }) {
  const shortcuts = usePreference((state) => state.shortcuts);
  return (
    <details className="fold keys">
      <summary>
        <span className="choice-question">Keys</span>
      </summary>
      {KEYS.map(({ where, keys }) => (
        <section key={where}>
          <h3 className="small">{where}</h3>
          <dl>
            {keys.map(([pressed, what]) => (
              <div key={pressed}>
                <dt>
                  {pressed.split(' ').map((key) => (
                    <kbd key={key}>{key}</kbd>
                  ))}
                </dt>
                <dd>{what}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
      <Choice
        question="Keys that work everywhere"
        options={[
          { value: 'on', label: 'On' },
          { value: 'off', label: 'Off' },
        ]}
        value={shortcuts}
        onChoose={(next) => workshop.preferences.getState().set({ shortcuts: next })}
      />
    </details>
  );
}
