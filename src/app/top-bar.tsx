import { useState } from 'react';
import { useStore } from 'zustand';
import { setTitle } from '../model/edit/edit-settings.ts';
import { useDocument, useView } from '../panels/shared/services.tsx';
import type { Workshop } from './create-workshop.ts';
import { JobMenu } from './job-menu.tsx';
import { savedWords } from './saved-words.ts';
import { STATIONS } from './stations.tsx';
import { UndoButtons } from './undo-buttons.tsx';
import './top-bar.css';

/** Beside index.html, wherever that is. */
const mark = 'icon.svg';

export function TopBar({ workshop }: { readonly workshop: Workshop }) {
  const saved = useDocument((state) => state.saved);
  const words = savedWords(saved);
  return (
    <header className="top-bar">
      <h1 className="wordmark">
        <span className="wordmark-word">Shearsight</span>
        <img className="wordmark-mark" src={mark} alt="Shearsight" />
      </h1>
      <JobTitle workshop={workshop} />
      <output
        className="saved"
        data-trouble={saved.kind === 'failed' || saved.kind === 'conflict'}
        title={words}
      >
        {words}
      </output>
      <div className="top-tools">
        <UndoButtons />
        <JobMenu workshop={workshop} />
      </div>
      <StationNav />
    </header>
  );
}

function StationNav() {
  const station = useView((view) => view.station);
  return (
    <nav className="stations" aria-label="Stations">
      {STATIONS.map(({ id, label }) => (
        <a
          key={id}
          href={`#${id}`}
          className="station-link"
          aria-current={id === station ? 'page' : undefined}
        >
          {label}
        </a>
      ))}
      <a href="#section" className="station-link" data-kind="section">
        Section
      </a>
    </nav>
  );
}

/** The title is a text like any other: it is one undo step when it is done. */
function JobTitle({ workshop }: { readonly workshop: Workshop }) {
  const title = useStore(workshop.document, ({ job }) => job.title);
  const [draft, setDraft] = useState<string | null>(null);
  const commit = () => {
    const written = draft?.trim();
    if (written !== undefined && written !== '' && written !== title)
      workshop.document.getState().edit('Title', (job) => setTitle(job, written));
    setDraft(null);
  };
  return (
    <span className="job-title" data-text={draft ?? title}>
      <input
        type="text"
        aria-label="Title of the job"
        maxLength={200}
        value={draft ?? title}
        data-dirty={draft !== null}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.currentTarget.blur();
          if (event.key === 'Escape') setDraft(null);
        }}
      />
    </span>
  );
}
