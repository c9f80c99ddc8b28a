import { useDocument } from '../panels/shared/services.tsx';

/** Undo and redo, each with the name of the step it takes. */
export function UndoButtons() {
  const undo = useDocument((state) => state.undo);
  const redo = useDocument((state) => state.redo);
  const { entries, present } = useDocument((state) => state.history);
  const last = present > 0 ? entries[present]?.name : undefined;
  const next = entries[present + 1]?.name;
  return (
    <>
      <StepButton
        what="Undo"
        step={last}
        keys="Ctrl+Z"
        onClick={undo}
        path="M4 9h9a4 4 0 0 1 0 8h-3M4 9l4-4M4 9l4 4"
      />
      <StepButton
        what="Redo"
        step={next}
        keys="Ctrl+Shift+Z"
        onClick={redo}
        path="M16 9H7a4 4 0 0 0 0 8h3M16 9l-4-4M16 9l-4 4"
      />
    </>
  );
}

type StepButtonProps = {
  readonly what: string;
  readonly step: string | undefined;
  readonly keys: string;
  readonly onClick: () => void;
  readonly path: string;
};

function StepButton({ what, step, keys, onClick, path }: StepButtonProps) {
  return (
    <button
      type="button"
      className="button icon-button"
      data-kind="quiet"
      disabled={step === undefined}
      aria-label={step === undefined ? what : `${what}: ${step}`}
      title={step === undefined ? `Nothing to ${what.toLowerCase()}` : `${what}: ${step} (${keys})`}
      onClick={onClick}
    >
      <svg viewBox="0 0 20 20" aria-hidden="true" className="icon">
        <path d={path} />
      </svg>
    </button>
  );
}
