/** What can be done with the solid view: standard views, how each kind of part is shown, where it is cut. */
import { formatLength } from '../model/units/format-length.ts';
import type { JobUnit } from '../model/units/length-unit.ts';
import { useView } from '../panels/shared/services.tsx';
import type { SceneHandle } from '../scene/scene-types.ts';
import type { StandardView } from '../scene/view-state.ts';
import type { Showing, ShownPart } from '../state/view-store.ts';

const VIEWS: readonly { readonly view: StandardView; readonly label: string }[] = [
  { view: 'section', label: 'Section' },
  { view: 'iso', label: 'Corner' },
  { view: 'front', label: 'Front' },
  { view: 'back', label: 'Back' },
  { view: 'left', label: 'Left' },
  { view: 'right', label: 'Right' },
  { view: 'top', label: 'Top' },
  { view: 'bottom', label: 'Bottom' },
];

const PARTS: readonly { readonly part: ShownPart; readonly label: string }[] = [
  { part: 'shell', label: 'Shell' },
  { part: 'sleeve', label: 'Sleeve' },
  { part: 'plug', label: 'Plug' },
  { part: 'key', label: 'Key' },
  { part: 'ball', label: 'Balls' },
  { part: 'bottomPin', label: 'Bottom pins' },
  { part: 'masterPin', label: 'Master pins' },
  { part: 'driver', label: 'Drivers' },
  { part: 'spring', label: 'Springs' },
];

const SHOWINGS: readonly Showing[] = ['show', 'see through', 'pulled apart', 'hide'];

type SolidToolsProps = {
  readonly handle: SceneHandle | null;
  readonly unit: JobUnit;
  readonly projection: 'orthographic' | 'perspective';
  readonly onProjection: (projection: 'orthographic' | 'perspective') => void;
  readonly isCut: boolean;
  readonly onCut: (isCut: boolean) => void;
  /** mm. How far across the section plane can be moved either way. */
  readonly reach: number;
};

export function SolidTools(props: SolidToolsProps) {
  const { handle, projection, onProjection } = props;
  return (
    <div className="solid-tools">
      <div className="solid-row" role="group" aria-label="Look from">
        {VIEWS.map(({ view, label }) => (
          <button
            key={view}
            type="button"
            className="button"
            disabled={handle === null}
            onClick={() => handle?.run({ kind: 'look from', view })}
          >
            {label}
          </button>
        ))}
        <button
          type="button"
          className="button"
          disabled={handle === null}
          onClick={() => handle?.run({ kind: 'fit' })}
        >
          Fit in
        </button>
        <Zoom handle={handle} />
      </div>
      <details className="fold">
        <summary>
          <span className="fold-title">Parts and section plane</span>
        </summary>
        <div className="solid-details">
          <Showings />
          <Plane {...props} />
          <label className="solid-check">
            <input
              type="checkbox"
              checked={projection === 'perspective'}
              onChange={({ target }) => onProjection(target.checked ? 'perspective' : 'orthographic')}
            />
            Perspective
          </label>
        </div>
      </details>
    </div>
  );
}

function Zoom({ handle }: { readonly handle: SceneHandle | null }) {
  const zoom = (factor: number) => () => handle?.run({ kind: 'zoom', factor });
  return (
    <>
      <button
        type="button"
        className="button"
        aria-label="Zoom in"
        disabled={handle === null}
        onClick={zoom(1.25)}
      >
        +
      </button>
      <button
        type="button"
        className="button"
        aria-label="Zoom out"
        disabled={handle === null}
        onClick={zoom(0.8)}
      >
        −
      </button>
    </>
  );
}

function Showings() {
  const showing = useView((view) => view.showing);
  const setShowing = useView((view) => view.setShowing);
  return (
    <div className="solid-showings">
      {PARTS.map(({ part, label }) => (
        <label key={part} className="solid-showing">
          <span>{label}</span>
          <select value={showing[part]} onChange={({ target }) => setShowing(part, target.value as Showing)}>
            {SHOWINGS.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
      ))}
    </div>
  );
}

function Plane({ unit, isCut, onCut, reach }: SolidToolsProps) {
  const offset = useView((view) => view.sectionOffset);
  const moveSection = useView((view) => view.moveSection);
  return (
    <div className="solid-plane">
      <label className="solid-check">
        <input type="checkbox" checked={isCut} onChange={({ target }) => onCut(target.checked)} />
        Cut open
      </label>
      <label className="solid-slide">
        <span>Section plane, across</span>
        <input
          type="range"
          min={-reach}
          max={reach}
          step={reach / 100}
          value={offset}
          disabled={!isCut}
          onChange={({ target }) => moveSection(Number(target.value))}
        />
        <output>{formatLength(offset, { unit, hasUnit: true })}</output>
      </label>
      <button
        type="button"
        className="button"
        disabled={!isCut || offset === 0}
        onClick={() => moveSection(0)}
      >
        Through the axis
      </button>
    </div>
  );
}
