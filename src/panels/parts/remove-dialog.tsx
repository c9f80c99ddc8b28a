import { useEffect, useRef } from 'react';
import '../shared/dialog.css';

type RemoveDialogProps = {
  readonly label: string;
  /** Where it is and what goes with it. */
  readonly sentences: readonly string[];
  readonly onYes: () => void;
  readonly onClose: () => void;
};

/** Asked before a part goes that is in use, or that readings hang on. */
export function RemoveDialog({ label, sentences, onYes, onClose }: RemoveDialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    return () => element?.close();
  }, []);
  return (
    <dialog ref={dialog} className="dialog" aria-labelledby="remove-title" onClose={onClose}>
      <h2 id="remove-title">Take {label} out of the job?</h2>
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p className="quiet">Undo brings all of it back.</p>
      <div className="dialog-buttons">
        <button type="button" className="button" data-kind="main" onClick={onClose}>
          Leave it
        </button>
        <button type="button" className="button" onClick={onYes}>
          Take it out
        </button>
      </div>
    </dialog>
  );
}
