/** A newer Shearsight is ready: used at the next start, or now if the person says so. Never in the middle of a job. */
import { useEffect, useState } from 'react';
import { startOffline } from './offline.ts';
import type { Workshop } from './create-workshop.ts';

export function UpdateNotice({ workshop }: { readonly workshop: Workshop }) {
  const [changeOver, setChangeOver] = useState<(() => void) | null>(null);
  const [isLater, setLater] = useState(false);
  useEffect(() => {
    void startOffline((ready) => setChangeOver(() => ready));
  }, []);
  if (changeOver === null || isLater) return null;
  const saveAndChange = async () => {
    const keeper = await workshop.keeper;
    await keeper?.flush();
    changeOver();
  };
  return (
    <div className="notice" role="status">
      <p>A newer Shearsight is ready. It is used from the next start on.</p>
      <button type="button" className="button" onClick={() => void saveAndChange()}>
        Save and use it now
      </button>
      <button type="button" className="button" data-kind="quiet" onClick={() => setLater(true)}>
        Later
      </button>
    </div>
  );
}
