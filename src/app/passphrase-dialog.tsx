/** Asks for a passphrase: twice to lock, once to open. Says what happens before it is slow, and why something does not open. */
import { useEffect, useId, useRef, useState } from 'react';
import '../panels/shared/dialog.css';
import './passphrase-dialog.css';

export type PassphraseAsk = {
  readonly title: string;
  /** To lock: asked twice, with the warning that a lost passphrase is lost work. */
  readonly isNew: boolean;
  /** Does it; gives what is in the way, or nothing when it is done. */
  readonly run: (passphrase: string) => Promise<readonly string[]>;
};

/** Shorter ones are guessed. */
const LEAST_CHARACTERS = 10;

/** Locking takes much memory for a second. */
const FAILED =
  'The browser could not do it, perhaps for want of memory. Nothing was changed: close other pages and try again.';

export function PassphraseDialog({
  ask,
  onClose,
}: {
  readonly ask: PassphraseAsk;
  readonly onClose: () => void;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [first, setFirst] = useState('');
  const [second, setSecond] = useState('');
  const [isShown, setShown] = useState(false);
  const [isWorking, setWorking] = useState(false);
  const [told, setTold] = useState<readonly string[]>([]);
  const title = useId();
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    return () => element?.close();
  }, []);

  const submit = async () => {
    const wrong = problemOf(ask.isNew, first, second);
    if (wrong !== null) {
      setTold([wrong]);
      return;
    }
    setTold([]);
    setWorking(true);
    const inTheWay = await ask.run(first).catch(() => [FAILED]);
    setWorking(false);
    if (inTheWay.length === 0) onClose();
    else setTold(inTheWay);
  };
  const kind = isShown ? 'text' : 'password';
  return (
    <dialog ref={dialog} className="dialog passphrase" aria-labelledby={title} onClose={onClose}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void submit();
        }}
      >
        <h2 id={title}>{ask.title}</h2>
        {ask.isNew ? (
          <p>
            Whoever has the passphrase can read the job; without it nobody can, you included.{' '}
            <strong>A lost passphrase is lost work.</strong> A few plain words in a row are easy to keep and
            hard to guess.
          </p>
        ) : null}
        <Passphrase label="Passphrase" kind={kind} value={first} onChange={setFirst} isNew={ask.isNew} />
        {ask.isNew ? (
          <Passphrase label="Once more" kind={kind} value={second} onChange={setSecond} isNew />
        ) : null}
        <label className="passphrase-show">
          <input type="checkbox" checked={isShown} onChange={(event) => setShown(event.target.checked)} />{' '}
          Show it
        </label>
        <div role="alert">
          {told.map((each) => (
            <p key={each} className="passphrase-trouble">
              {each}
            </p>
          ))}
        </div>
        <p className="small quiet" role="status">
          {isWorking ? 'Working: this is slow on purpose, so that nobody can try many passphrases…' : ''}
        </p>
        <div className="dialog-buttons">
          <button type="submit" className="button" data-kind="main" disabled={isWorking}>
            {ask.isNew ? 'Lock' : 'Open'}
          </button>
          <button type="button" className="button" data-kind="quiet" onClick={onClose}>
            Cancel
          </button>
        </div>
      </form>
    </dialog>
  );
}

function problemOf(isNew: boolean, first: string, second: string): string | null {
  if (first === '') return 'Passphrase: type it first.';
  if (!isNew) return null;
  if (first.length < LEAST_CHARACTERS)
    return `Passphrase: ${first.length} characters are soon guessed; take ${LEAST_CHARACTERS} or more, for example four words.`;
  return first === second ? null : 'Once more: the two are not the same. Type both again, or show them.';
}

type PassphraseProps = {
  readonly label: string;
  readonly kind: 'text' | 'password';
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly isNew: boolean;
};

function Passphrase({ label, kind, value, onChange, isNew }: PassphraseProps) {
  return (
    <label className="passphrase-line">
      {label}
      <input
        type={kind}
        value={value}
        autoComplete={isNew ? 'new-password' : 'current-password'}
        spellCheck={false}
        autoCapitalize="none"
        onChange={(event) => onChange(event.target.value)}
      />
    </label>
  );
}
