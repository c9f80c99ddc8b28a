/**
 * A length as it is typed in Learn: any unit, read as it is written. What can be meant in several ways is asked; what cannot
 * be taken is told with an example; the text is never changed behind anybody's back.
 */
import { type KeyboardEvent, useId } from 'react';
import { formatLength } from '../../model/units/format-length.ts';
import type { LengthRange } from '../../model/units/length-sentences.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import { fill, givenText, inTongue, readTyped, type Ruler } from './fill.ts';
import { useWords } from './words-context.ts';

type TypedLengthProps = {
  readonly label: string;
  readonly text: string;
  readonly unit: JobUnit;
  readonly range: LengthRange;
  readonly note?: string;
  /** Zero and less are asked back otherwise. */
  readonly allowNegative?: boolean;
  readonly isReadOnly?: boolean;
  /** mm; null while it is no length. */
  readonly onText: (text: string, mm: number | null) => void;
  readonly onEnter?: (event: KeyboardEvent<HTMLInputElement>) => void;
};

/** mm; null for what is no length. */
export function typedMm(text: string, tongue: string, unit: JobUnit, range: LengthRange): number | null {
  const reading = readTyped(text, tongue, { unit, plausible: range });
  return reading.type === 'length' ? reading.mm : null;
}

export function TypedLength(props: TypedLengthProps) {
  const { label, text, unit, range, note = '', onText, onEnter } = props;
  const id = useId();
  const { station, tongue } = useWords();
  const ruler: Ruler = { unit, tongue };
  const reading = readTyped(text, tongue, { unit, plausible: range });
  const isWrong = reading.type === 'ask' || reading.type === 'error';
  const write = (written: string) => onText(written, typedMm(written, tongue, unit, range));
  const says = !isWrong
    ? note
    : reading.type === 'ask'
      ? fill(station.lengths.meant, { typed: reading.typed }, ruler)
      : fill(
          station.lengths.wrong,
          {
            typed: reading.typed,
            from: range.fromMm,
            to: range.toMm,
            example: givenText((range.fromMm + range.toMm) / 2, ruler),
          },
          ruler,
        );
  return (
    <div className="learn-length">
      <label className="learn-label" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        className="learn-input number"
        type="text"
        inputMode="text"
        autoComplete="off"
        spellCheck={false}
        size={9}
        value={text}
        readOnly={props.isReadOnly === true}
        aria-invalid={isWrong}
        aria-describedby={says === '' ? undefined : `${id}note`}
        onChange={(event) => write(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') onEnter?.(event);
        }}
      />
      {says === '' ? null : (
        <p className="choice-note" id={`${id}note`}>
          {says}
        </p>
      )}
      {reading.type !== 'ask' ? null : (
        <div className="learn-meant">
          {reading.choices.map(({ mm, says: choice }) => (
            <button
              key={choice}
              type="button"
              className="button"
              onClick={() => write(formatLength(mm, { unit, form: 'roundTrip' }))}
            >
              {inTongue(choice, tongue)}
            </button>
          ))}
        </div>
      )}
    </div>
  );
}
