/** The jobs kept on this computer. */
import { useEffect, useRef, useState } from 'react';
import type { ListedJob } from '../persist/job-list.ts';
import type { Workshop } from './create-workshop.ts';
import type { AskPassphrase } from './job-files.ts';
import '../panels/shared/dialog.css';

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
  const change = async (id: string, isTrashed: boolean) => {
    const keeper = await workshop.keeper;
    await (isTrashed ? keeper?.list.bringBack(id) : keeper?.list.delete(id));
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
  readonly onChange: (id: string, isTrashed: boolean) => Promise<void>;
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
          <button
            type="button"
            className="button"
            data-kind="quiet"
            onClick={() => void onChange(job.id, job.trashedAt !== null)}
          >
            {job.trashedAt === null ? 'Delete' : 'Bring back'}
          </button>
        </li>
      ))}
    </ul>
  );
}

function whenSaved(at: string): string {
  return new Date(at).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' });
}

async function readList(workshop: Workshop): Promise<readonly ListedJob[] | 'none kept'> {
  const keeper = await workshop.keeper;
  return keeper === null ? 'none kept' : keeper.list.list();
}
