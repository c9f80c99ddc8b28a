/** The bag: what is in it, found, mended, taken out. With nothing in it, what to do first. */
import { lazy, Suspense, useMemo, useState } from 'react';
import { removeParts, whatGoesWith } from '../../model/edit/remove-parts.ts';
import type { Look } from '../shared/look.ts';
import { useEdit } from '../shared/services.tsx';
import { BagList, BagTools } from './bag-list.tsx';
import { allRows, type BagFilter, FIRST_FILTER, isLoose, shownRows } from './bag-rows.ts';
import { BagRowView } from './bag-row.tsx';
import { RemoveDialog } from './remove-dialog.tsx';

const PartDialog = lazy(async () => ({ default: (await import('./part-dialog.tsx')).PartDialog }));

type BagSectionProps = {
  readonly look: Look;
  readonly said: string;
  readonly say: (words: string) => void;
  readonly onPaste: (text: string) => void;
};

export function BagSection({ look, said, say, onPaste }: BagSectionProps) {
  const [filter, setFilter] = useState<BagFilter>(FIRST_FILTER);
  const [opened, setOpened] = useState<string | null>(null);
  const [asked, setAsked] = useState<string | null>(null);
  const [kept] = useState(() => new Map<string, string>());
  const edit = useEdit();
  const { job } = look;
  const rows = useMemo(() => allRows(job), [job]);
  const shown = useMemo(() => shownRows(rows, filter), [rows, filter]);
  const openedRow = rows.find(({ part }) => part.id === opened);
  const askedRow = rows.find(({ part }) => part.id === asked);
  const takeOut = (id: string, label: string) => {
    edit(`${label} taken out`, (before) => removeParts(before, new Set([id])));
    setAsked(null);
    say(`${label} is taken out. Undo brings it back.`);
  };
  const askToTakeOut = (id: string) => {
    const label = job.parts.find((part) => part.id === id)?.label ?? 'The part';
    if (whatGoesWith(job, new Set([id])).length === 0) takeOut(id, label);
    else setAsked(id);
  };
  return (
    <section className="bag" aria-labelledby="bag-title">
      <h3 id="bag-title">The bag</h3>
      {rows.some(isLoose) ? null : <EmptyBag look={look} onPaste={onPaste} />}
      {rows.length === 0 ? null : (
        <>
          <BagTools
            filter={filter}
            setFilter={(changes) => setFilter({ ...filter, ...changes })}
            rows={rows}
            shown={shown.length}
          />
          {shown.length === 0 ? null : (
            <BagList
              rows={shown}
              renderRow={(row, place) => (
                <BagRowView look={look} row={row} place={place} kept={kept} onOpen={setOpened} />
              )}
            />
          )}
        </>
      )}
      <output className="small">{said}</output>
      <p className="small quiet bag-foot">
        Salvaged pins may still belong to a live key system: treat their lengths like a key, and keep the
        original parts of a cylinder apart, by chamber.
      </p>
      <Suspense fallback={null}>
        {openedRow === undefined ? null : (
          <PartDialog look={look} row={openedRow} onClose={() => setOpened(null)} onRemove={askToTakeOut} />
        )}
      </Suspense>
      {askedRow === undefined ? null : (
        <RemoveDialog
          label={askedRow.part.label}
          sentences={whatGoesWith(job, new Set([askedRow.part.id]))}
          onYes={() => takeOut(askedRow.part.id, askedRow.part.label)}
          onClose={() => setAsked(null)}
        />
      )}
    </section>
  );
}

function EmptyBag({ look, onPaste }: { readonly look: Look; readonly onPaste: (text: string) => void }) {
  const hasRanges = look.evaluation.chambers.some(({ useFrom }) => useFrom !== null);
  return (
    <div className="bag-empty">
      <p>
        <strong>Nothing in the bag yet.</strong> Not every pin has to be measured:
      </p>
      <ol>
        <li>
          <span>
            {hasRanges
              ? 'Lock the caliper at the figures above and let the pins through. About a dozen of sixty stay.'
              : 'Measure plug, key and cuts first: then there are figures to sort the bag by, and about a dozen of sixty stay.'}
          </span>
        </li>
        <li>
          <span>
            Measure those: the length and Enter, one after another. A caliper that types does both by itself.
          </span>
        </li>
        <li>
          <span>
            Or take over a list you have:{' '}
            <button type="button" className="button" onClick={() => onPaste('')}>
              Paste from a spreadsheet
            </button>
          </span>
        </li>
      </ol>
    </div>
  );
}
