import { Choice } from '../shared/choice.tsx';
import type { HeightWay } from './chamber-columns.ts';
import { WAYS, type WaysChoiceProps } from './height-ways.ts';

export function WaysQuestions({
  ways,
  used,
  onChange,
  stackWay,
  onStackWay,
  master,
  hasBalls,
}: WaysChoiceProps) {
  const toggle = (way: HeightWay) => {
    const next = new Set(ways);
    if (next.has(way)) next.delete(way);
    else next.add(way);
    onChange(next);
  };
  return (
    <div className="ways-body">
      <fieldset className="choice">
        <legend className="choice-question">The height the key calls for, by one or several of</legend>
        <div className="choice-options">
          {WAYS.map(({ way, label }) => (
            <label key={way} className="choice-option">
              <input
                className="choice-input"
                type="checkbox"
                checked={ways.has(way)}
                disabled={used.has(way)}
                onChange={() => toggle(way)}
              />
              <span>{label}</span>
            </label>
          ))}
        </div>
      </fieldset>
      {hasBalls ? (
        <Choice
          question="Ball and bottom pin"
          options={[
            { value: 'together', label: 'Measured together' },
            { value: 'apart', label: 'Each by itself' },
          ]}
          value={stackWay}
          onChoose={onStackWay}
        />
      ) : null}
      <Choice
        question="Master pins, between bottom pin and driver"
        options={[
          { value: 'no', label: 'None' },
          { value: 'yes', label: 'There are some' },
        ]}
        value={master.asks ? 'yes' : 'no'}
        onChoose={(answer) => master.onChange(answer === 'yes')}
        {...(master.isUsed && { note: 'Empty a field of the column to take a master pin out.' })}
      />
    </div>
  );
}
