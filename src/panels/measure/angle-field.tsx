/** A field for an angle in degrees. */
import { useState } from 'react';
import { parseAngle } from '../../model/units/parse-angle.ts';
import { useUnread } from '../shared/use-unread.ts';

export function AngleField({
  label,
  degrees,
  onCommit,
}: {
  readonly label: string;
  readonly degrees: number;
  readonly onCommit: (degrees: number) => void;
}) {
  const [draft, setDraft] = useState<string | null>(null);
  const [message, setMessage] = useState<string | null>(null);
  useUnread(message === null ? null : label, `${degrees}°`);
  const commit = () => {
    if (draft === null) return;
    const reading = parseAngle(draft);
    if (reading.type === 'error' || reading.type === 'ask') {
      setMessage(reading.message);
      return;
    }
    if (reading.type === 'angle' && reading.degrees > 0 && reading.degrees !== degrees)
      onCommit(reading.degrees);
    setDraft(null);
    setMessage(null);
  };
  return (
    <div className="length-field" data-trouble={message === null ? undefined : 'error'}>
      <label className="angle-label">
        <span className="length-label">{label}</span>
        <input
          className="length-input"
          type="text"
          autoComplete="off"
          value={draft ?? `${degrees}°`}
          aria-invalid={message !== null}
          onChange={(event) => setDraft(event.target.value)}
          onFocus={(event) => event.target.select()}
          onBlur={commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit();
            if (event.key === 'Escape') {
              setDraft(null);
              setMessage(null);
            }
          }}
        />
      </label>
      {message === null ? null : (
        <p className="length-trouble" role="status">
          {message} Until then {degrees}° counts.
        </p>
      )}
    </div>
  );
}
