/** What the job menu holds: loaded when it is opened for the first time. */
import { setUnit } from '../model/edit/edit-settings.ts';
import { Choice } from '../panels/shared/choice.tsx';
import { useDocument, usePreference } from '../panels/shared/services.tsx';
import type { Workshop } from './create-workshop.ts';

type JobMenuBodyProps = {
  readonly workshop: Workshop;
  /** Runs what was chosen, and tells what it says. */
  readonly run: (action: () => Promise<string | null>) => void;
  readonly onList: () => void;
};

export function JobMenuBody({ workshop, run, onList }: JobMenuBodyProps) {
  return (
    <div className="job-menu-body">
      <MenuButton onClick={() => run(() => workshop.newCylinder().then(() => null))}>
        New empty job
      </MenuButton>
      <MenuButton onClick={() => run(() => workshop.openExample().then(() => null))}>
        Open the example
      </MenuButton>
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
      <MenuButton onClick={() => run(() => openFile(workshop))}>Open a file…</MenuButton>
      <MenuButton onClick={() => run(() => saveFile(workshop))}>Save to a file…</MenuButton>
      <hr />
      <Settings workshop={workshop} />
    </div>
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
    </div>
  );
}

async function openFile({ show }: Workshop): Promise<string | null> {
  const { openJobFile } = await import('../persist/job-file.ts');
  const opened = await openJobFile();
  if (opened.type === 'cancelled') return null;
  if (opened.type === 'error') return tell(opened.problems);
  if (opened.result.type === 'error') return tell(opened.result.problems);
  show(opened.result.job);
  return null;
}

async function saveFile({ document }: Workshop): Promise<string | null> {
  const { saveJobFile } = await import('../persist/job-file.ts');
  const saved = await saveJobFile(document.getState().job);
  if (saved.type === 'cancelled') return null;
  if (saved.type === 'error') return tell(saved.problems);
  return saved.isVerified ? `Saved to ${saved.name}, and read back.` : `Saved as ${saved.name}.`;
}

function tell(problems: readonly { readonly field: string; readonly message: string }[]): string {
  return problems
    .slice(0, 4)
    .map(({ field, message }) => `${field}: ${message}`)
    .join(' ');
}
