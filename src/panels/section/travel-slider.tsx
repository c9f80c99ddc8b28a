/** The key's travel: drag it, step it with the arrow keys, or let it run. Right is fully in. */
import type { Look } from '../shared/look.ts';
import { useView } from '../shared/services.tsx';
import { keyWords } from './key-words.ts';

type TravelSliderProps = {
  readonly look: Look;
  readonly way: { readonly seatedTravel: number; readonly outTravel: number };
};

/** mm. One step of the arrow keys. */
const STEP_MM = 0.25;

export function TravelSlider({ look, way }: TravelSliderProps) {
  const travel = useView((view) => view.travel);
  const isTurned = useView((view) => Math.abs(view.turn) > 1e-6);
  const moveKey = useView((view) => view.moveKey);
  const { seatedTravel: seated, outTravel: out } = way;
  const { unit } = look.job.settings;
  const length = out - seated;
  const place = Math.min(length, Math.max(0, out - travel));
  const words = keyWords(travel, { seated, out }, unit);
  // Where a chamber passes the tip, seen from the slider's left end.
  const marks = look.assembly.chambers.map((chamber) => ({
    id: chamber.id,
    share: Math.min(1, Math.max(0, chamber.z / Math.max(length, 1e-6))),
  }));
  return (
    <div className="travel">
      <div className="travel-track">
        <svg className="travel-line" aria-hidden="true" preserveAspectRatio="none" viewBox="0 0 1000 12">
          <path d="M0 6H1000" />
          {marks.map(({ id, share }) => (
            <path key={id} d={`M${(share * 1000).toFixed(1)} 1V11`} />
          ))}
        </svg>
        <input
          type="range"
          aria-label="Key, how far in"
          aria-valuetext={words}
          min={0}
          max={length}
          step="any"
          value={place}
          disabled={isTurned}
          onChange={(event) => moveKey(out - Number(event.target.value))}
          onKeyDown={(event) => {
            const by = stepOf(event.key);
            if (by === null) return;
            event.preventDefault();
            moveKey(Math.min(out, Math.max(seated, travel - by)));
          }}
        />
      </div>
      <div className="travel-ends small quiet">
        <span>key out</span>
        <span>{words}</span>
        <span>fully in</span>
      </div>
    </div>
  );
}

function stepOf(key: string): number | null {
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return STEP_MM;
    case 'ArrowLeft':
    case 'ArrowDown':
      return -STEP_MM;
    case 'PageUp':
      return 10 * STEP_MM;
    case 'PageDown':
      return -10 * STEP_MM;
    default:
      return null;
  }
}
