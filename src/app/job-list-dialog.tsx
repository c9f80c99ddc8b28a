/** The jobs kept on this computer: opened, deleted, brought back, removed for good. */
import { useEffect, useRef, useState } from 'react';
import type { ListedJob } from '../persist/job-list.ts';
import type { Workshop } from './create-workshop.ts';
import type { AskPassphrase } from './job-files.ts';
import '../panels/shared/dialog.css';
import './job-list-dialog.css';

type JobChange = 'delete' | 'bring back' | 'remove';

export function JobListDialog({
  workshop,
  onPassphrase,
  onClose,
}: {
  readonly workshop: Workshop;
  readonly onPassphrase: AskPassphrase;
  readonly onClose: () => void;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [jobs, setJobs] = useState<readonly ListedJob[] | 'loading' | 'none kept'>('loading');
  const [notices, setNotices] = useState<readonly string[]>([]);
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    void readList(workshop).then(setJobs);
    return () => element?.close();
  }, [workshop]);

  const open = async (id: string, isLocked: boolean) => {
    const keeper = await workshop.keeper;
    if (isLocked && keeper !== null) {
      onClose();
      onPassphrase({
        title: 'Open a locked job',
        isNew: false,
        run: (passphrase) => keeper.unlock(id, passphrase),
      });
      return;
    }
    const told = (await keeper?.open(id)) ?? [];
    if (told.length === 0) onClose();
    else setNotices(told);
  };
  const change = async (id: string, what: JobChange) => {
    const keeper = await workshop.keeper;
    if (what === 'delete') await keeper?.list.delete(id);
    else if (what === 'bring back') await keeper?.list.bringBack(id);
    else await removeForGood(workshop, id);
    setJobs(await readList(workshop));
  };
  return (
    <dialog ref={dialog} className="dialog" aria-labelledby="jobs-title" onClose={onClose}>
      <h2 id="jobs-title">Jobs on this computer</h2>
      {notices.map((notice) => (
        <p key={notice}>{notice}</p>
      ))}
      {jobs === 'loading' ? <p className="quiet">Looking…</p> : null}
      {jobs === 'none kept' ? <p>This browser keeps nothing here: save to a file.</p> : null}
      {Array.isArray(jobs) ? <Jobs jobs={jobs} onOpen={open} onChange={change} /> : null}
      <div className="dialog-buttons">
        <button type="button" className="button" onClick={onClose}>
          Close
        </button>
      </div>
    </dialog>
  );
}

function Jobs({
  jobs,
  onOpen,
  onChange,
}: {
  readonly jobs: readonly ListedJob[];
  readonly onOpen: (id: string, isLocked: boolean) => Promise<void>;
  readonly onChange: (id: string, what: JobChange) => Promise<void>;
}) {
  if (jobs.length === 0)
    return <p className="quiet">None yet: a job is kept as soon as something in it is changed.</p>;
  return (
    <ul className="job-list">
      {jobs.map((job) => (
        <li key={job.id} className="job-list-line">
          <button
            type="button"
            className="button menu-button"
            data-kind="quiet"
            disabled={job.state === 'damaged' || job.trashedAt !== null}
            onClick={() => void onOpen(job.id, job.state === 'locked')}
          >
            <span>{job.title ?? (job.state === 'locked' ? 'A locked job' : 'A damaged job')}</span>
            <span className="small quiet">{job.trashedAt === null ? whenSaved(job.savedAt) : 'deleted'}</span>
          </button>
          {job.trashedAt === null ? (
            <ListButton onClick={() => void onChange(job.id, 'delete')}>Delete</ListButton>
          ) : (
            <DeletedJob onChange={(what) => void onChange(job.id, what)} />
          )}
        </li>
      ))}
    </ul>
  );
}

/** What can be done with a deleted job. Removing is asked about: it is the one thing here that has no way back. */
function DeletedJob({ onChange }: { readonly onChange: (what: JobChange) => void }) {
  const [isAsking, setAsking] = useState(false);
  if (isAsking)
    return (
      <div className="job-list-choices" role="group" aria-label="Remove for good?">
        <p className="small">There is no way back.</p>
        <ListButton onClick={() => setAsking(false)} isFirst>
          Keep it
        </ListButton>
        <ListButton onClick={() => onChange('remove')}>Remove it</ListButton>
      </div>
    );
  return (
    <div className="job-list-choices">
      <ListButton onClick={() => onChange('bring back')}>Bring back</ListButton>
      <ListButton onClick={() => setAsking(true)}>Remove for good…</ListButton>
    </div>
  );
}

type ListButtonProps = {
  readonly onClick: () => void;
  readonly children: string;
  /** Has the focus when it comes up. */
  readonly isFirst?: boolean;
};

function ListButton({ onClick, children, isFirst = false }: ListButtonProps) {
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (isFirst) button.current?.focus();
  }, [isFirst]);
  return (
    <button ref={button} type="button" className="button" data-kind="quiet" onClick={onClick}>
      {children}
    </button>
  );
}

/** Leaves no trace of a job. One that is on screen gives way to the example first, or the next step would bring it back. */
async function removeForGood(workshop: Workshop, id: string): Promise<void> {
  const keeper = await workshop.keeper;
  if (workshop.document.getState().job.id === id) {
    await keeper?.flush();
    await workshop.openExample();
  }
  await keeper?.removeForGood(id);
}

function whenSaved(at: string): string {
  return new Date(at).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' });
}

async function readList(workshop: Workshop): Promise<readonly ListedJob[] | 'none kept'> {
  const keeper = await workshop.keeper;
  if (keeper === null) return 'none kept';
  // What was just changed is listed as it is now.
  await keeper.flush();
  return keeper.list.list();
}
