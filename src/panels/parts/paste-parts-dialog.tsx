/** A block of cells from a spreadsheet: shown as it would be read, every trouble in its cell, stored in one step after a yes. */
import { memo, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { labelsOf } from '../../model/edit/labels.ts';
import { addParts, MOST_PARTS, roomForParts } from '../../model/edit/loose-parts.ts';
import type { PastedColumn } from '../../model/edit/pasted-columns.ts';
import {
  type PastedRow,
  type PasteSettings,
  type PasteSummary,
  restOfPaste,
  summarise,
} from '../../model/edit/pasted-parts.ts';
import { MAX_BLOCK_ROWS } from '../../model/units/parse-block.ts';
import { PLAUSIBLE } from '../measure/field-spec.ts';
import type { Look } from '../shared/look.ts';
import { useEdit, useServices } from '../shared/services.tsx';
import { type Like, likeWords } from './next-like.ts';
import { PasteOptions, PastePreview } from './paste-preview.tsx';
import {
  AS_SUGGESTED,
  type PasteChoices,
  type PasteProgress,
  usePastedRows,
  usePastedTable,
} from './use-paste.ts';
import '../shared/dialog.css';
import './paste-parts-dialog.css';

type PastePartsDialogProps = {
  readonly look: Look;
  readonly like: Like;
  readonly first: string;
  readonly onClose: (said: string) => void;
};

type Yes = { readonly renames: boolean; readonly takesOtherUnit: boolean };
const NO_YES: Yes = { renames: false, takesOtherUnit: false };
const NO_ROWS: readonly (readonly string[])[] = [];

export function PastePartsDialog({ look, like, first, onClose }: PastePartsDialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [text, setText] = useState(first);
  const [choices, setChoices] = useState<PasteChoices>(AS_SUGGESTED);
  const [yes, setYes] = useState<Yes>(NO_YES);
  const [said, setSaid] = useState('');
  const edit = useEdit();
  const { newId } = useServices();
  const { job } = look;
  const table = usePastedTable(text, choices, job.settings.unit);
  const rows = table.block.type === 'block' ? table.block.rows : NO_ROWS;
  const settings = usePasteSettings(look, like, table.guess, yes);
  const { progress, stop } = usePastedRows(rows, settings);
  const room = roomForParts(job);
  const summary = useMemo(
    () => (progress.kind === 'read' ? summarise(progress.rows, room) : null),
    [progress, room],
  );
  const isSettled = progress.kind === 'read' && progress.isSettled;
  const write = useCallback((written: string) => {
    setText(written);
    setSaid('');
  }, []);
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    return () => element?.close();
  }, []);
  const store = (read: readonly PastedRow[], { parts }: PasteSummary) => {
    const words = parts.length === 1 ? 'one part' : `${parts.length.toLocaleString('en')} parts`;
    edit(`Pasted ${words}`, (before) => addParts(before, parts, newId));
    const rest = restOfPaste(read, parts.length, table.separator);
    const done = `${words} put into the bag, in one step.`;
    if (rest === '') {
      onClose(done);
      return;
    }
    // What was not stored stays, to be mended or stored elsewhere.
    setText(rest);
    setChoices({ separator: table.separator, hasHeading: false, columns: table.guess.columns });
    setYes(NO_YES);
    setSaid(`${done} The rows that were left out are still here.`);
  };
  return (
    <dialog
      ref={dialog}
      className="dialog paste-parts"
      aria-labelledby="paste-parts-title"
      onClose={() => onClose('')}
    >
      <h2 id="paste-parts-title">Paste from a spreadsheet</h2>
      <PasteText text={text} onWrite={write} />
      {said === '' ? null : <p role="status">{said}</p>}
      {table.block.type === 'error' ? (
        <p role="status" className="paste-trouble">
          {table.block.message} Nothing is lost: the text stays here.
        </p>
      ) : null}
      {table.block.type === 'block' ? (
        <>
          <PasteOptions table={table} choices={choices} setChoices={setChoices} />
          <p className="small">
            <span className="quiet">Each row, unless a column says otherwise: </span>
            {likeWords(like, look)}.
          </p>
          {progress.kind === 'read' ? (
            <PastePreview
              table={table}
              rows={progress.rows}
              setColumns={(c) => changeColumns(c)}
              unit={job.settings.unit}
            />
          ) : (
            <Reading progress={progress} stop={stop} />
          )}
          {summary === null ? null : (
            <Outcome
              summary={summary}
              room={room}
              yes={yes}
              setYes={(changes) => setYes({ ...yes, ...changes })}
            />
          )}
        </>
      ) : null}
      <div className="dialog-buttons">
        <button
          type="button"
          className="button"
          data-kind="main"
          disabled={summary === null || summary.parts.length === 0 || !isSettled}
          onClick={() => {
            if (progress.kind === 'read' && summary !== null) store(progress.rows, summary);
          }}
        >
          {storeWords(summary)}
        </button>
        <button type="button" className="button" onClick={() => onClose('')}>
          Leave the bag as it is
        </button>
      </div>
    </dialog>
  );

  function changeColumns(columns: readonly PastedColumn[]) {
    setChoices({ ...choices, columns });
  }
}

/** Drawn only when the text changes: a hundred thousand lines are not to be laid out anew at each word about them. */
const PasteText = memo(function PasteText({
  text,
  onWrite,
}: {
  readonly text: string;
  readonly onWrite: (text: string) => void;
}) {
  return (
    <label className="paste-text">
      <span>
        A row for each part: copy the cells and paste them here. At most {MAX_BLOCK_ROWS.toLocaleString('en')}{' '}
        rows at a time; a job holds {MOST_PARTS.toLocaleString('en')} parts.
      </span>
      <textarea rows={4} value={text} spellCheck={false} onChange={(event) => onWrite(event.target.value)} />
    </label>
  );
});

function usePasteSettings(
  { job }: Look,
  like: Like,
  { columns, hasHeading }: { readonly columns: readonly PastedColumn[]; readonly hasHeading: boolean },
  { renames, takesOtherUnit }: Yes,
): PasteSettings {
  return useMemo(() => {
    const isOnBall = like.kind === 'pin' && like.onBall !== null;
    return {
      columns,
      hasHeading,
      like: { ...like, label: null, length: null },
      takenWith: { instrument: job.settings.instrument, session: job.settings.session },
      taken: labelsOf(job.parts),
      plausible: {
        length: isOnBall ? PLAUSIBLE.lowerStack : PLAUSIBLE.pinLength,
        ball: PLAUSIBLE.diameter,
        spring: PLAUSIBLE.spring,
        diameter: PLAUSIBLE.diameter,
      },
      renames,
      takesOtherUnit,
    };
  }, [columns, hasHeading, like, job, renames, takesOtherUnit]);
}

function storeWords(summary: PasteSummary | null): string {
  const count = summary?.parts.length ?? 0;
  if (count === 0) return 'Nothing to put in yet';
  return count === 1 ? 'Put one part into the bag' : `Put ${count.toLocaleString('en')} parts into the bag`;
}

function Reading({
  progress,
  stop,
}: {
  readonly progress: Exclude<PasteProgress, { readonly kind: 'read' }>;
  readonly stop: () => void;
}) {
  const { done, of, kind } = progress;
  return (
    <div className="paste-reading">
      <p role="status">
        {kind === 'reading' ? 'Reading' : 'Stopped at'} row {done.toLocaleString('en')} of{' '}
        {of.toLocaleString('en')}
        {kind === 'stopped' ? '. The text stays here.' : ''}
      </p>
      <progress value={done} max={of} aria-label="Rows read" />
      {kind === 'reading' ? (
        <button type="button" className="button" onClick={stop}>
          Stop reading
        </button>
      ) : null}
    </div>
  );
}

/** What would be stored, what not and why, and the two questions that settle it for all rows. */
function Outcome({
  summary,
  room,
  yes,
  setYes,
}: {
  readonly summary: PasteSummary;
  readonly room: number;
  readonly yes: Yes;
  readonly setYes: (changes: Partial<Yes>) => void;
}) {
  const { parts, over, leftOut, takenLabels, otherUnits, unreadable } = summary;
  const rowsOf = (count: number) => (count === 1 ? 'One row' : `${count.toLocaleString('en')} rows`);
  return (
    <div className="paste-outcome">
      <p role="status">
        <strong>
          {parts.length === 1 ? 'One part' : `${parts.length.toLocaleString('en')} parts`} to put in
          {leftOut + over === 0 ? '' : `, ${(leftOut + over).toLocaleString('en')} left out`}.
        </strong>{' '}
        {unreadable === 0 ? '' : `${rowsOf(unreadable)} cannot be read as written. `}
        {over === 0
          ? ''
          : `The job has room for ${room.toLocaleString('en')} more: the last ${over.toLocaleString('en')} stay here.`}
      </p>
      {takenLabels > 0 || yes.renames ? (
        <label className="paste-yes">
          <input
            type="checkbox"
            checked={yes.renames}
            onChange={(event) => setYes({ renames: event.target.checked })}
          />
          {takenLabels > 0
            ? `${rowsOf(takenLabels)} with a label that is taken: put a number behind it, like A1-2`
            : 'Labels that were taken get a number behind them, like A1-2'}
        </label>
      ) : null}
      {otherUnits > 0 || yes.takesOtherUnit ? (
        <label className="paste-yes">
          <input
            type="checkbox"
            checked={yes.takesOtherUnit}
            onChange={(event) => setYes({ takesOtherUnit: event.target.checked })}
          />
          {otherUnits > 0
            ? `${rowsOf(otherUnits)} with a length that cannot be as it stands: take it as asked in its cell`
            : 'Lengths that could not be as they stood are taken as asked'}
        </label>
      ) : null}
    </div>
  );
}
