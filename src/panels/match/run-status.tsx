import type { MatchingState } from './use-matching.ts';

type RunStatusProps = {
  readonly state: MatchingState<unknown>;
  /** "Choosing parts" */
  readonly what: string;
  readonly onCancel: () => void;
};

/** How far a reckoning is, with a way to stop it; what went wrong. What is over in a moment shows nothing. */
export function RunStatus({ state, what, onCancel }: RunStatusProps) {
  return (
    <div className="run-status" role="status">
      {state.type === 'running' && state.isLong ? (
        <>
          <div className="run-line">
            <span>
              {what}
              {state.progress === null ? '…' : `: ${wordsOf(state.progress)}`}
            </span>
            <progress
              aria-label={what}
              max={state.progress?.of ?? undefined}
              value={state.progress?.of == null ? undefined : state.progress.done}
            />
            <button type="button" className="button" onClick={onCancel}>
              Cancel
            </button>
          </div>
          {state.slower === null ? null : <p className="small quiet">{state.slower}</p>}
        </>
      ) : null}
      {state.type === 'cancelled' ? <p className="quiet">Stopped. Nothing was changed.</p> : null}
      {state.type === 'failed' ? <p className="match-trouble">{state.message}</p> : null}
    </div>
  );
}

function wordsOf({ done, of }: { readonly done: number; readonly of: number | null }): string {
  return of === null ? `${done} cases looked at` : `${done} of ${of}`;
}
