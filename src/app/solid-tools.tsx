/** What can be done with the solid view: standard views, how each kind of part is shown, where it is cut. */
import { formatLength } from '../model/units/format-length.ts';
import type { JobUnit } from '../model/units/length-unit.ts';
import { useView } from '../panels/shared/services.tsx';
import type { SceneHandle } from '../scene/scene-types.ts';
import type { StandardView } from '../scene/view-state.ts';
import type { Showing, ShownPart } from '../state/view-store.ts';

type NamedView = { readonly view: StandardView; readonly label: string };

/** At hand; the others wait in the menu. */
const VIEWS: readonly NamedView[] = [
  { view: 'section', label: 'Section' },
  { view: 'iso', label: 'Corner' },
];

const OTHER_VIEWS: readonly NamedView[] = [
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

/** What is wanted again and again, over the picture. */
export function SolidViews({ handle }: { readonly handle: SceneHandle | null }) {
  return (
    <div className="solid-row" role="group" aria-label="Look from">
      <Views views={VIEWS} handle={handle} />
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
  );
}

type SolidMoreProps = {
  readonly handle: SceneHandle | null;
  readonly unit: JobUnit;
  readonly projection: 'orthographic' | 'perspective';
  readonly onProjection: (projection: 'orthographic' | 'perspective') => void;
  readonly isCut: boolean;
  readonly onCut: (isCut: boolean) => void;
  /** mm. How far across the section plane can be moved either way. */
  readonly reach: number;
};

/** Everything else, under the picture, so that opening it takes nothing of it away. */
export function SolidMore(props: SolidMoreProps) {
  const { handle, projection, onProjection } = props;
  return (
    <details className="fold solid-more">
      <summary>
        <span className="fold-title">More</span>
        <span className="fold-summary quiet">other sides, parts, section plane</span>
      </summary>
      <div className="solid-details">
        <div className="solid-row" role="group" aria-label="Look from another side">
          <Views views={OTHER_VIEWS} handle={handle} />
        </div>
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
  );
}

function Views({
  views,
  handle,
}: {
  readonly views: readonly NamedView[];
  readonly handle: SceneHandle | null;
}) {
  return views.map(({ view, label }) => (
    <button
      key={view}
      type="button"
      className="button"
      disabled={handle === null}
      onClick={() => handle?.run({ kind: 'look from', view })}
    >
      {label}
    </button>
  ));
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

function Plane({ unit, isCut, onCut, reach }: SolidMoreProps) {
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
