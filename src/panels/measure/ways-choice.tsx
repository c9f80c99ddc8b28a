/** By which ways the height is measured: each adds a column; several can be given, and are compared. */
import { Choice } from '../shared/choice.tsx';
import type { HeightWay, StackWay } from './chamber-columns.ts';

type WaysChoiceProps = {
  readonly ways: ReadonlySet<HeightWay>;
  /** These hold readings: taking their column away would hide them. */
  readonly used: ReadonlySet<HeightWay>;
  readonly onChange: (ways: ReadonlySet<HeightWay>) => void;
  readonly stackWay: StackWay;
  readonly onStackWay: (way: StackWay) => void;
  readonly hasBalls: boolean;
};

const WAYS: readonly { readonly way: HeightWay; readonly label: string }[] = [
  { way: 'root depth', label: 'Root depth' },
  { way: 'over the ball', label: 'Over the ball' },
  { way: 'stands up by', label: 'Stands up by' },
  { way: 'known set', label: 'A set known to work' },
];

export function WaysChoice({ ways, used, onChange, stackWay, onStackWay, hasBalls }: WaysChoiceProps) {
  const toggle = (way: HeightWay) => {
    const next = new Set(ways);
    if (next.has(way)) next.delete(way);
    else next.add(way);
    onChange(next);
  };
  return (
    <details className="fold ways">
      <summary>
        <span className="fold-title">How it is measured</span>
        <span className="fold-summary quiet">
          {WAYS.filter(({ way }) => ways.has(way))
            .map(({ label }) => label.toLowerCase())
            .join(', ')}
        </span>
      </summary>
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
      </div>
    </details>
  );
}
