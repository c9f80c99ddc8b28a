/** Whether a loose pin may be filed to fit, and by how much at most. Off until asked for. */
import { useId, useState } from 'react';
import { parseLength } from '../../model/units/parse-length.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';

/** The most that is usually filed off a crown, and the most that is ever sensible. Common practice, no source. mm. */
const USUAL_MOST_MM: Readonly<Record<JobUnit, number>> = { in: 0.127, mm: 0.12 };
const EVER_MM = 1.5;

type FilingChoiceProps = {
  readonly unit: JobUnit;
  /** mm; null: nothing is filed. */
  readonly mostFiled: number | null;
  readonly onChange: (mostFiled: number | null) => void;
};

export function FilingChoice({ unit, mostFiled, onChange }: FilingChoiceProps) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const isAllowed = mostFiled !== null;
  const commit = () => {
    if (draft === null) return;
    const reading = parseLength(draft, { unit, plausible: { fromMm: 0.01, toMm: EVER_MM } });
    if (reading.type === 'length' && reading.mm > 0 && reading.mm <= EVER_MM) {
      onChange(reading.mm);
      setDraft(null);
      setTrouble(null);
      return;
    }
    const example = unit === 'in' ? '.005' : '0.12';
    const message = reading.type === 'error' || reading.type === 'ask' ? reading.message : '';
    setTrouble(`${message} Write how much may be filed off at most, for example ${example}.`.trim());
  };
  return (
    <div className="filing">
      <label className="check-line">
        <input
          type="checkbox"
          checked={isAllowed}
          onChange={({ target }) => {
            onChange(target.checked ? USUAL_MOST_MM[unit] : null);
            setDraft(null);
            setTrouble(null);
          }}
        />
        <span>A loose pin's crown may be filed</span>
      </label>
      {isAllowed ? (
        <div className="filing-more">
          <label className="filing-most" htmlFor={id}>
            by at most, {unit}
          </label>
          <input
            id={id}
            className="length-input filing-input"
            type="text"
            autoComplete="off"
            size={7}
            value={draft ?? formatLength(mostFiled, { unit, keepsPlaces: true })}
            aria-invalid={trouble !== null}
            aria-describedby={`${id}care${trouble === null ? '' : ` ${id}trouble`}`}
            onChange={({ target }) => setDraft(target.value)}
            onBlur={commit}
            onKeyDown={({ key }) => {
              if (key === 'Enter') commit();
              if (key === 'Escape') {
                setDraft(null);
                setTrouble(null);
              }
            }}
          />
          {trouble === null ? null : (
            <p className="match-trouble" id={`${id}trouble`} role="status">
              {trouble}
            </p>
          )}
          <p className="small" id={`${id}care`}>
            <strong>File only a loose pin, never the plug or an original.</strong> What is filed off does not
            come back. Keep every original part, bagged by chamber.
          </p>
        </div>
      ) : null}
    </div>
  );
}
