/** Where the job is kept, and how safely: in a few lines, for whoever asks. */
import { useEffect, useState } from 'react';
import { useDocument } from '../panels/shared/services.tsx';
import type { StorageStatus } from '../persist/storage-status.ts';
import type { Workshop } from './create-workshop.ts';
import { savedWords } from './saved-words.ts';
import './save-trouble.css';

export function WhereIsMyWork({ workshop }: { readonly workshop: Workshop }) {
  const saved = useDocument((state) => state.saved);
  const [kept, setKept] = useState<{ status: StorageStatus; isLocked: boolean } | 'nothing' | null>(null);
  useEffect(() => {
    let isGone = false;
    void workshop.keeper.then(async (keeper) => {
      const next =
        keeper === null ? 'nothing' : { status: await keeper.status(), isLocked: keeper.isLocked() };
      if (!isGone) setKept(next);
    });
    return () => {
      isGone = true;
    };
  }, [workshop, saved]);
  return (
    <div className="where-work small">
      <p>Where is my work? {sentence(savedWords(saved))}</p>
      {kept === null || kept === 'nothing' ? null : (
        <p className="quiet">
          {kept.isLocked
            ? 'Locked with a passphrase. '
            : 'In clear: whoever uses this computer can read it. '}
          {PROMISES[kept.status.persistence]}
        </p>
      )}
    </div>
  );
}

const PROMISES: Readonly<Record<StorageStatus['persistence'], string>> = {
  granted: 'The browser keeps it until somebody clears it. Only a file is safe from that.',
  refused:
    'The browser may clear it when room is short or after some days without a visit: save to a file, or install this page.',
  unknown: 'The browser does not say how long it keeps it: save to a file.',
};

function sentence(words: string): string {
  const first = words.charAt(0).toUpperCase() + words.slice(1);
  return /[.…]$/.test(first) ? first : `${first}.`;
}
