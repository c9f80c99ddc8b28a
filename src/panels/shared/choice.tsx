/** A question with a few answers, one tap each: radio buttons that look like the parts of one strip, or like pictures. */
import { type ReactNode, useId } from 'react';
import './choice.css';

export type ChoiceOption<T extends string> = {
  readonly value: T;
  readonly label: string;
  readonly picture?: ReactNode;
};

type ChoiceProps<T extends string> = {
  readonly question: ReactNode;
  readonly options: readonly ChoiceOption<T>[];
  /** Null: not answered. */
  readonly value: T | null;
  readonly onChoose: (value: T) => void;
  /** Said under the question while nothing is chosen, or always. */
  readonly note?: ReactNode;
  readonly isQuestionHidden?: boolean;
};

export function Choice<T extends string>({
  question,
  options,
  value,
  onChoose,
  note,
  isQuestionHidden = false,
}: ChoiceProps<T>) {
  const name = useId();
  const noteId = `${name}note`;
  const hasPictures = options.some((option) => option.picture !== undefined);
  return (
    <fieldset className="choice" aria-describedby={note === undefined ? undefined : noteId}>
      <legend className={isQuestionHidden ? 'visually-hidden' : 'choice-question'}>{question}</legend>
      <div className="choice-options" data-pictures={hasPictures}>
        {options.map((option) => (
          <label key={option.value} className="choice-option">
            <input
              className="choice-input"
              type="radio"
              name={name}
              checked={option.value === value}
              onChange={() => onChoose(option.value)}
            />
            {option.picture}
            <span>{option.label}</span>
          </label>
        ))}
      </div>
      {note === undefined ? null : (
        <p className="choice-note" id={noteId}>
          {note}
        </p>
      )}
    </fieldset>
  );
}
