/** The cylinders and keys of a job: their names, another one, one less. Each step can be undone. */
import { useEffect, useId, useRef, useState } from 'react';
import {
  addCylinder,
  addCylinderLike,
  removeCylinder,
  renameCylinder,
  sayCylinderGoes,
} from '../../model/edit/edit-cylinders.ts';
import { addKey, removeKey, renameKey, sayKeyGoes } from '../../model/edit/edit-keys.ts';
import type { Look } from '../shared/look.ts';
import { useEdit, useServices } from '../shared/services.tsx';
import { freeName } from './plan-names.ts';
import '../shared/dialog.css';

type DialogProps = { readonly look: Look; readonly onClose: () => void };

export function CylindersAndKeys({ look, onClose }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    return () => element?.close();
  }, []);
  return (
    <dialog ref={dialog} className="dialog" aria-labelledby="bench-things" onClose={onClose}>
      <h2 id="bench-things">Cylinders and keys of this job</h2>
      <p className="quiet small">
        What was measured stays with its cylinder, its key, or the two together. Each step here can be undone.
      </p>
      <Cylinders look={look} />
      <Keys look={look} />
      <div className="dialog-buttons">
        <button type="button" className="button" data-kind="main" onClick={onClose}>
          Done
        </button>
      </div>
    </dialog>
  );
}

function Cylinders({ look: { job, selection, bench } }: { readonly look: Look }) {
  const { newId, view, document } = useServices();
  const edit = useEdit();
  const add = (isLike: boolean) => {
    const name = freeName('Cylinder', job.cylinders);
    const added = isLike
      ? addCylinderLike(job, selection.cylinder, name, newId)
      : addCylinder(job, name, bench.cylinder.chambers.length, newId);
    edit('Another cylinder', () => added.job);
    view.getState().pickCylinder(document.getState().job, added.id);
  };
  const isFull = job.cylinders.length >= MOST_OF_EACH;
  return (
    <>
      <h3 className="bench-things-title">Cylinders</h3>
      <ul className="bench-things">
        {job.cylinders.map(({ id, label, chambers }) => (
          <Thing
            key={id}
            what="Cylinder"
            label={label}
            size={chambers.length === 1 ? '1 chamber' : `${chambers.length} chambers`}
            onRename={(name) => edit('Cylinder renamed', (now) => renameCylinder(now, id, name))}
            goes={job.cylinders.length < 2 ? null : () => sayCylinderGoes(job, id)}
            onRemove={() => edit('Cylinder taken away', (now) => removeCylinder(now, id))}
          />
        ))}
      </ul>
      <div className="bench-add">
        <button type="button" className="button" disabled={isFull} onClick={() => add(false)}>
          Another cylinder
        </button>
        <button type="button" className="button" disabled={isFull} onClick={() => add(true)}>
          One like {bench.cylinder.label}
        </button>
      </div>
    </>
  );
}

function Keys({ look: { job, selection } }: { readonly look: Look }) {
  const { newId, view } = useServices();
  const edit = useEdit();
  const add = () => {
    const added = addKey(job, selection.cylinder, freeName('Key', job.keys), newId);
    edit('Another key', () => added.job);
    view.getState().pickKey(added.id);
  };
  return (
    <>
      <h3 className="bench-things-title">Keys</h3>
      <ul className="bench-things">
        {job.keys.map(({ id, label, cuts }) => (
          <Thing
            key={id}
            what="Key"
            label={label}
            size={cuts.length === 1 ? '1 cut' : `${cuts.length} cuts`}
            onRename={(name) => edit('Key renamed', (now) => renameKey(now, id, name))}
            goes={job.keys.length < 2 ? null : () => sayKeyGoes(job, id)}
            onRemove={() => edit('Key taken away', (now) => removeKey(now, id))}
          />
        ))}
      </ul>
      <div className="bench-add">
        <button type="button" className="button" disabled={job.keys.length >= MOST_OF_EACH} onClick={add}>
          Another key
        </button>
      </div>
    </>
  );
}

/** As many as a job file holds. */
const MOST_OF_EACH = 200;

type ThingProps = {
  readonly what: 'Cylinder' | 'Key';
  readonly label: string;
  readonly size: string;
  readonly onRename: (name: string) => void;
  /** What goes with it; null for the last one, which stays. */
  readonly goes: (() => string) | null;
  readonly onRemove: () => void;
};

function Thing({ what, label, size, onRename, goes, onRemove }: ThingProps) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const [question, setQuestion] = useState<string | null>(null);
  const keep = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (question !== null) keep.current?.focus();
  }, [question]);
  const commit = () => {
    const name = draft?.trim() ?? '';
    if (name !== '' && name !== label) onRename(name);
    setDraft(null);
  };
  return (
    <li className="bench-thing">
      <label className="visually-hidden" htmlFor={id}>
        Name of {what.toLowerCase()} {label}
      </label>
      <input
        id={id}
        className="bench-thing-name"
        type="text"
        maxLength={80}
        autoComplete="off"
        value={draft ?? label}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit();
          if (event.key === 'Escape' && draft !== null) {
            event.preventDefault();
            setDraft(null);
          }
        }}
      />
      <span className="quiet small">{size}</span>
      {goes === null ? (
        <span className="quiet small">stays: the only one</span>
      ) : (
        <button
          type="button"
          className="button"
          data-kind="quiet"
          aria-label={`Take away… ${label}`}
          onClick={() => setQuestion(goes())}
        >
          Take away…
        </button>
      )}
      {question === null ? null : (
        <div className="bench-thing-removal" role="group" aria-label={`Take ${label} away?`}>
          <p>{question}</p>
          <button type="button" className="button" data-kind="main" onClick={onRemove}>
            Take it away
          </button>
          <button ref={keep} type="button" className="button" onClick={() => setQuestion(null)}>
            Keep it
          </button>
        </div>
      )}
    </li>
  );
}
