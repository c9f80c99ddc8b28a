/** What can be done with jobs, and how this person at this bench likes it. */
import { lazy, Suspense, useRef, useState } from 'react';
import type { Workshop } from './create-workshop.ts';

const JobMenuBody = lazy(async () => ({ default: (await import('./job-menu-body.tsx')).JobMenuBody }));
const JobListDialog = lazy(async () => ({ default: (await import('./job-list-dialog.tsx')).JobListDialog }));

export function JobMenu({ workshop }: { readonly workshop: Workshop }) {
  const menu = useRef<HTMLDetailsElement>(null);
  const [wasOpened, setOpened] = useState(false);
  const [isListOpen, setListOpen] = useState(false);
  const [message, setMessage] = useState<string | null>(null);
  const close = () => {
    if (menu.current !== null) menu.current.open = false;
  };
  const run = (action: () => Promise<string | null>) => {
    close();
    void action().then(setMessage);
  };
  return (
    <>
      <details
        ref={menu}
        className="job-menu"
        onToggle={() => setOpened(true)}
        onBlur={(event) => {
          if (!event.currentTarget.contains(event.relatedTarget)) close();
        }}
        onKeyDown={(event) => {
          if (event.key !== 'Escape') return;
          close();
          menu.current?.querySelector('summary')?.focus();
        }}
      >
        <summary className="button">Job</summary>
        {wasOpened ? (
          <Suspense fallback={null}>
            <JobMenuBody
              workshop={workshop}
              run={run}
              onList={() => {
                close();
                setListOpen(true);
              }}
            />
          </Suspense>
        ) : null}
      </details>
      {isListOpen ? (
        <Suspense fallback={null}>
          <JobListDialog workshop={workshop} onClose={() => setListOpen(false)} />
        </Suspense>
      ) : null}
      {message === null ? null : (
        <div className="notice" role="status">
          <p>{message}</p>
          <button type="button" className="button" data-kind="quiet" onClick={() => setMessage(null)}>
            Close
          </button>
        </div>
      )}
    </>
  );
}
