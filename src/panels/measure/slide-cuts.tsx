/** Slides all cuts along the key: a slider to see it happen, which is one undo step when it is let go, and an amount. */
import { useState } from 'react';
import type { Job } from '../../model/schema/job-schema.ts';
import { formatOffset } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import { useServices } from '../shared/services.tsx';

type SlideCutsProps = {
  readonly unit: JobUnit;
  readonly onSlide: (byMm: number) => (job: Job) => Job;
};

/** mm. As far as a usual spacing either way. */
const FARTHEST_MM = 6.35;

export function SlideCuts({ unit, onSlide }: SlideCutsProps) {
  const { document } = useServices();
  const [byMm, setBy] = useState(0);
  const step = unit === 'in' ? 0.0127 : 0.01;
  const slide = (to: number) => {
    setBy(to);
    document.getState().preview(onSlide(to));
  };
  const letGo = () => {
    if (byMm !== 0) document.getState().commitPreview(`Cuts slid by ${formatOffset(byMm, unit)}`);
    setBy(0);
  };
  return (
    <div className="slide-cuts">
      <label className="slide-label">
        <span>Slide all cuts along</span>
        <input
          type="range"
          min={-FARTHEST_MM}
          max={FARTHEST_MM}
          step={step}
          value={byMm}
          aria-valuetext={`${formatOffset(byMm, unit)} ${unit}`}
          onChange={(event) => slide(Number(event.target.value))}
          onPointerUp={letGo}
          onKeyUp={(event) => {
            if (event.key === 'Enter') letGo();
          }}
          onBlur={letGo}
        />
      </label>
      <output className="number">{formatOffset(byMm, unit)}</output>
    </div>
  );
}
