/** Work that is not saved: what is the matter, and what can be done about it. Stays until it is saved. */
import { useEffect, useState } from 'react';
import { useDocument } from '../panels/shared/services.tsx';
import type { Workshop } from './create-workshop.ts';
import { saveFile } from './job-files.ts';
import type { Remedy } from './remedy.ts';
import './save-trouble.css';

const NEWER =
  'This job was saved by a newer Shearsight. It can be looked at here, not changed; what this one does not know of it is not shown. Saving to a file hands it back exactly as it came.';

export function SaveTrouble({ workshop }: { readonly workshop: Workshop }) {
  const saved = useDocument((state) => state.saved);
  const newer = useDocument((state) => state.newer);
  const [remedies, setRemedies] = useState<readonly Remedy[]>([]);
  const [said, setSaid] = useState<string | null>(null);
  useEffect(() => {
    let isGone = false;
    void workshop.keeper.then((keeper) => {
      if (!isGone) setRemedies(keeper?.remedies() ?? []);
    });
    return () => {
      isGone = true;
    };
  }, [workshop, saved]);
  const isTrouble = saved.kind === 'failed' || saved.kind === 'conflict';
  if (newer === null && !isTrouble) return null;
  return (
    <div className="save-trouble" role="alert">
      <p>{newer !== null ? NEWER : isTrouble ? saved.message : null}</p>
      <div className="save-trouble-tools">
        {remedies.map(({ label, run }) => (
          <button key={label} type="button" className="button" onClick={() => void run()}>
            {label}
          </button>
        ))}
        <button
          type="button"
          className="button"
          data-kind="quiet"
          onClick={() => void saveFile(workshop).then(setSaid)}
        >
          Save to a file…
        </button>
      </div>
      {said === null ? null : <p className="small">{said}</p>}
    </div>
  );
}
