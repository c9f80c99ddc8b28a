/** A field for a short text that is no length: read when the person is done, kept with a sentence when it cannot be. */
import { useId, useState } from 'react';
import './plain-field.css';

type PlainFieldProps = {
  readonly label: string;
  readonly value: string;
  /** Stores the text; a sentence when it cannot be. */
  readonly commit: (text: string) => string | null;
  readonly isLabelShown?: boolean;
  readonly shortLabel?: string;
  readonly inputMode?: 'numeric' | 'text';
  readonly size?: number;
  readonly maxLength?: number;
  /** Known texts, offered while writing. */
  readonly offers?: readonly string[];
};

export function PlainField(props: PlainFieldProps) {
  const { label, value, commit, isLabelShown = false, inputMode = 'text', size, maxLength = 400 } = props;
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const done = () => {
    if (draft === null || draft === value) {
      setDraft(null);
      setTrouble(null);
      return;
    }
    const said = commit(draft);
    setTrouble(said);
    if (said === null) setDraft(null);
  };
  const listId = props.offers === undefined ? undefined : `${id}offers`;
  return (
    <div className="plain-field" data-trouble={trouble !== null}>
      <label className={isLabelShown ? 'length-label' : 'visually-hidden'} htmlFor={id}>
        {isLabelShown && props.shortLabel !== undefined ? (
          <>
            <span aria-hidden="true">{props.shortLabel}</span>
            <span className="visually-hidden">{label}</span>
          </>
        ) : (
          label
        )}
      </label>
      <input
        id={id}
        className="plain-input"
        type="text"
        inputMode={inputMode}
        autoComplete="off"
        spellCheck={false}
        size={size}
        maxLength={maxLength}
        list={listId}
        value={draft ?? value}
        data-dirty={draft !== null}
        aria-invalid={trouble !== null}
        aria-describedby={trouble === null ? undefined : `${id}trouble`}
        onFocus={(event) => event.currentTarget.select()}
        onChange={(event) => {
          setDraft(event.target.value);
          setTrouble(null);
        }}
        onBlur={done}
        onKeyDown={(event) => {
          if (event.key === 'Enter') {
            event.preventDefault();
            done();
          }
          if (event.key === 'Escape' && draft !== null) {
            event.stopPropagation();
            setDraft(null);
            setTrouble(null);
          }
        }}
      />
      {props.offers === undefined ? null : (
        <datalist id={listId}>
          {props.offers.map((offer) => (
            <option key={offer} value={offer} />
          ))}
        </datalist>
      )}
      {trouble === null ? null : (
        <p className="plain-trouble" id={`${id}trouble`} role="status">
          {trouble}
        </p>
      )}
    </div>
  );
}
