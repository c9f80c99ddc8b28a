/**
 * A field for a length: plain text, read when the person is done (Enter, Tab, or going elsewhere). What can be
 * understood in several ways is asked, never guessed; a wrong text is kept to be mended; Escape brings the old one back.
 * Enter goes on down the column, so that a caliper that types a value and Enter needs no other key.
 */
import { type FocusEvent, type KeyboardEvent, useId, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { type LengthChoice, type LengthReading, parseLength } from '../../model/units/parse-length.ts';
import type { JobUnit, LengthUnit } from '../../model/units/length-unit.ts';
import { useServices, useEdit, useJob, usePreference, useView } from '../shared/services.tsx';
import { useUnread } from '../shared/use-unread.ts';
import { countsText, echoOf, shownText } from './field-text.ts';
import { type FieldSpec, takenValue } from './field-spec.ts';
import { walkOn } from './field-walk.ts';
import './length-field.css';

type LengthFieldProps = {
  readonly field: FieldSpec;
  /** The column Enter walks down; a field alone has none. */
  readonly column?: string;
  readonly isLabelShown?: boolean;
  /** Shown in place of the label in the field's own name. */
  readonly shortLabel?: string;
  readonly placeholder?: string;
  /** The same field stands elsewhere as well: that one keeps what cannot be read yet. */
  readonly isSecond?: boolean;
};

/** A question that nobody sees is no question. Called once for each that comes. */
const bringIntoSight = (element: HTMLElement | null) => element?.scrollIntoView({ block: 'nearest' });

type Trouble =
  | {
      readonly kind: 'ask';
      readonly message: string;
      readonly choices: readonly LengthChoice[];
      readonly typed: string;
    }
  | { readonly kind: 'error'; readonly message: string };

/** A caliper may send Return and line feed: a second Enter this soon, with nothing between, is the same one. ms. */
const SAME_ENTER_MS = 120;

/** When the last Enter came, wherever it came; long ago once something else was typed. */
let lastEnter = -Infinity;

export function LengthField({
  field,
  column,
  isLabelShown = false,
  shortLabel,
  placeholder,
  isSecond = false,
}: LengthFieldProps) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const { unit } = useJob().settings;
  const isCaliper = usePreference((preferences) => preferences.caliper === 'on');
  const focusField = useView((view) => view.focusField);
  const entry = useEntry(field, unit, isSecond);
  const { trouble } = entry;
  const counts = countsText(field.value, unit);
  useUnread(trouble === null ? null : field.label, counts);

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    const { key, timeStamp } = event;
    if (key === 'Escape' && entry.isDirty) {
      event.stopPropagation();
      // All of it selected again, so that the next reading overwrites.
      flushSync(entry.restore);
      event.currentTarget.select();
    } else if (key === 'Enter' && !event.ctrlKey && !event.altKey) {
      event.preventDefault();
      if (timeStamp - lastEnter < SAME_ENTER_MS) return;
      lastEnter = timeStamp;
      if (!entry.enter()) event.currentTarget.select();
      else if (!walkOn(event.currentTarget, event.shiftKey ? -1 : 1)) event.currentTarget.select();
    } else if ((key === 'ArrowDown' || key === 'ArrowUp') && column !== undefined && !event.shiftKey) {
      if (entry.commit() && walkOn(event.currentTarget, key === 'ArrowUp' ? -1 : 1)) event.preventDefault();
    }
  };
  const onFocus = (event: FocusEvent<HTMLInputElement>) => {
    event.currentTarget.select();
    focusField(field.help);
  };
  const onBlur = () => {
    entry.commit();
    focusField(null);
  };
  const choose = (choice: LengthChoice) => {
    entry.choose(choice);
    const element = input.current;
    if (element !== null && !walkOn(element, 1)) element.focus();
  };

  const isAssumed = field.value?.basis === 'assumed';
  return (
    <div className="length-field" data-trouble={trouble?.kind} data-assumed={isAssumed}>
      <label className={isLabelShown ? 'length-label' : 'visually-hidden'} htmlFor={id}>
        {isLabelShown && shortLabel !== undefined ? (
          <>
            <span aria-hidden="true">{shortLabel}</span>
            <span className="visually-hidden">{field.label}</span>
          </>
        ) : (
          field.label
        )}
      </label>
      <input
        ref={input}
        id={id}
        className="length-input"
        type="text"
        inputMode={isCaliper ? 'none' : 'text'}
        autoComplete="off"
        autoCorrect="off"
        autoCapitalize="off"
        spellCheck={false}
        enterKeyHint="next"
        size={7}
        placeholder={isAssumed ? entry.assumedText : placeholder}
        value={entry.text}
        data-field={field.id}
        data-column={column}
        data-dirty={entry.isDirty}
        aria-invalid={trouble !== null}
        aria-describedby={`${id}echo${trouble === null ? '' : ` ${id}trouble`}`}
        onChange={(event) => {
          lastEnter = -Infinity;
          entry.write(event.target.value);
        }}
        onKeyDown={onKeyDown}
        onFocus={onFocus}
        onBlur={onBlur}
      />
      <span className="length-echo" id={`${id}echo`}>
        {entry.echo}
      </span>
      {trouble === null ? null : (
        <div className="length-trouble" id={`${id}trouble`} role="status" ref={bringIntoSight}>
          <p>{trouble.message}</p>
          {counts === null ? null : (
            <p>
              Until then <span className="length-counts">{counts}</span> counts.
            </p>
          )}
          {trouble.kind === 'ask' ? (
            <div className="length-choices">
              {trouble.choices.map((choice, i) => (
                <button
                  key={choice.says}
                  type="button"
                  className="button"
                  data-kind={i === 0 ? 'main' : undefined}
                  onClick={() => choose(choice)}
                >
                  {choice.says}
                </button>
              ))}
            </div>
          ) : null}
        </div>
      )}
    </div>
  );
}

type Entry = {
  readonly text: string;
  readonly echo: string;
  readonly assumedText: string;
  readonly isDirty: boolean;
  readonly trouble: Trouble | null;
  readonly write: (text: string) => void;
  readonly restore: () => void;
  /** Reads what was written; false when something is left to be answered or mended. */
  readonly commit: () => boolean;
  /** The same on Enter, which also takes the first choice of a question. */
  readonly enter: () => boolean;
  readonly choose: (choice: LengthChoice) => void;
};

/** What is being written in a field, until it is a value of the job. */
function useEntry(field: FieldSpec, unit: JobUnit, isSecond: boolean): Entry {
  const { document, drafts } = useServices();
  const edit = useEdit();
  const job = useJob().id;
  // A text that is not read yet outlives its field: whoever comes back to the station finds it to be mended.
  const kept = isSecond ? undefined : (field.kept ?? drafts);
  const keptAs = `${job} ${field.id}`;
  const [draft, setDraft] = useState<string | null>(() => kept?.get(keptAs) ?? null);
  const [trouble, setTrouble] = useState<Trouble | null>(() => (draft === null ? null : troubleOf(draft)));
  // Leaving the field follows Enter at once, before anything is drawn anew: what was stored must not be read again.
  const latest = useRef({ draft, trouble });
  const shown = shownText(field.value, unit);

  const become = (next: { draft: string | null; trouble: Trouble | null }) => {
    latest.current = next;
    if (next.draft === null) kept?.delete(keptAs);
    else kept?.set(keptAs, next.draft);
    setDraft(next.draft);
    setTrouble(next.trouble);
  };
  const done = () => {
    become({ draft: null, trouble: null });
    return true;
  };
  const store = (reading: { mm: number; unit: LengthUnit; typed: string }) => {
    const value = takenValue(document.getState().job, reading);
    edit(field.step ?? field.label, (job) => field.set(job, value));
    return done();
  };
  const commit = (): boolean => {
    const { draft: written } = latest.current;
    if (written === null || written === shown) return done();
    const reading = read(written);
    switch (reading.type) {
      case 'empty':
        if (shown !== '') edit(`${field.label} taken away`, (job) => field.set(job, undefined));
        return done();
      case 'length':
        return store(reading);
      case 'ask':
      case 'error':
        become({ draft: written, trouble: troubleOf(written) });
        return false;
    }
  };
  const choose = ({ mm, unit: chosen }: LengthChoice) =>
    store({ mm, unit: chosen, typed: latest.current.draft ?? '' });
  const enter = (): boolean => {
    const asked = latest.current.trouble;
    const [first] = asked?.kind === 'ask' && asked.typed === latest.current.draft ? asked.choices : [];
    return first === undefined ? commit() : choose(first);
  };
  const live = draft === null || draft === shown ? null : read(draft);
  return {
    text: draft ?? shown,
    echo: echoOf(field.value, live, unit),
    assumedText: shownText(field.value, unit, true),
    isDirty: draft !== null || trouble !== null,
    trouble,
    write: (text) => become({ draft: text, trouble: null }),
    restore: () => {
      done();
    },
    commit,
    enter,
    choose,
  };

  function read(text: string): LengthReading {
    return parseLength(text, { unit, plausible: field.plausible, allowNegative: field.isSigned === true });
  }
  function troubleOf(text: string): Trouble | null {
    const reading = read(text);
    if (reading.type === 'ask') return { kind: 'ask', ...reading, typed: text };
    return reading.type === 'error' ? { kind: 'error', message: reading.message } : null;
  }
}
