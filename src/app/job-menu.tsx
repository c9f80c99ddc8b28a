/** What can be done with jobs, and how this person at this bench likes it. */
import { lazy, Suspense, useEffect, useRef, useState } from 'react';
import type { Workshop } from './create-workshop.ts';
import { useDroppedFiles } from './use-dropped-files.ts';
import type { PassphraseAsk } from './passphrase-dialog.tsx';

const JobMenuBody = lazy(async () => ({ default: (await import('./job-menu-body.tsx')).JobMenuBody }));
const PassphraseDialog = lazy(async () => ({
  default: (await import('./passphrase-dialog.tsx')).PassphraseDialog,
}));
const JobListDialog = lazy(async () => ({ default: (await import('./job-list-dialog.tsx')).JobListDialog }));

/** What nobody foresaw: a part of the app that could not be loaded, for example. */
const UNDONE = 'That did not work; your job is as it was. Load this page again, then try once more.';

export function JobMenu({ workshop }: { readonly workshop: Workshop }) {
  const menu = useRef<HTMLDetailsElement>(null);
  const [wasOpened, setOpened] = useState(false);
  const [isListOpen, setListOpen] = useState(false);
  const [message, setMessage] = useState<string | null>(null);
  const [asked, setAsked] = useState<PassphraseAsk | null>(null);
  // What the start could not bring back is told once.
  useEffect(() => {
    void workshop.keeper.then((keeper) => {
      if (keeper !== null && keeper.notices.length > 0) setMessage(keeper.notices.join(' '));
    });
  }, [workshop]);
  const close = () => {
    if (menu.current !== null) menu.current.open = false;
  };
  useEffect(() => {
    const press = ({ target }: PointerEvent) => {
      if (menu.current?.contains(target as Node) === false) menu.current.open = false;
    };
    window.addEventListener('pointerdown', press);
    return () => window.removeEventListener('pointerdown', press);
  }, []);
  const run = (action: () => Promise<string | null>) => {
    close();
    void action().then(setMessage, () => setMessage(UNDONE));
  };
  useDroppedFiles((file) =>
    run(async () => {
      const [{ readChosenFile }, { showOpened }] = await Promise.all([
        import('../persist/job-file.ts'),
        import('./job-files.ts'),
      ]);
      return showOpened(workshop, await readChosenFile(file, null), setAsked);
    }),
  );
  return (
    <>
      <details
        ref={menu}
        className="job-menu"
        onToggle={() => wasOpened || setOpened(true)}
        onBlur={({ currentTarget, relatedTarget }) => {
          // Focus that goes nowhere is no leaving: another window, a press on plain text, a page that still settles.
          if (relatedTarget !== null && !currentTarget.contains(relatedTarget)) close();
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
              onPassphrase={(ask) => {
                close();
                setAsked(ask);
              }}
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
          <JobListDialog workshop={workshop} onPassphrase={setAsked} onClose={() => setListOpen(false)} />
        </Suspense>
      ) : null}
      {asked === null ? null : (
        <Suspense fallback={null}>
          <PassphraseDialog ask={asked} onClose={() => setAsked(null)} />
        </Suspense>
      )}
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
