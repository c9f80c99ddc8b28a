/** From what is seen at the bench back to what would explain it in this job, the likeliest first. */
import { useDeferredValue, useId, useState } from 'react';
import { diagnose, type Explanation, type Standing, symptomOf } from '../../model/diagnosis/diagnose.ts';
import { SYMPTOMS } from '../../model/diagnosis/symptoms-table.ts';
import type { VerdictSymbol } from '../answer/verdict-words.ts';
import type { Look } from '../shared/look.ts';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import { checkFacts } from './check-facts.ts';
import { ShowMe } from './show-me.tsx';

export function SymptomSearch({ look }: { readonly look: Look }) {
  const id = useId();
  const [seen, setSeen] = useState('');
  const { facts, findings } = checkFacts(useDeferredValue(look));
  const symptom = symptomOf(seen);
  const all = symptom === undefined ? [] : diagnose(symptom, facts, [...findings]);
  const told = all.filter(({ standing }) => standing !== 'not in your readings');
  const against = all.filter(({ standing }) => standing === 'not in your readings');
  return (
    <>
      <label className="symptom-label" htmlFor={id}>
        What do you see?
      </label>
      <select
        id={id}
        className="symptom-choice"
        value={seen}
        onChange={({ target }) => setSeen(target.value)}
      >
        <option value="">Choose…</option>
        {SYMPTOMS.map((each) => (
          <option key={each.id} value={each.id}>
            {each.seen}
          </option>
        ))}
      </select>
      <div aria-live="polite">
        {symptom === undefined ? null : (
          <>
            {told.length === 0 ? <p>Nothing in these readings explains it.</p> : null}
            <ol className="explanations">
              {told.map((each) => (
                <Item key={each.cause} explanation={each} />
              ))}
            </ol>
            {against.length === 0 ? null : <p className="small quiet">{againstText(against)}</p>}
          </>
        )}
      </div>
    </>
  );
}

/** The first words of each are enough. */
function againstText(against: readonly Explanation[]): string {
  const short = against.map(({ text }) => text.replace(/[.:].*$/u, ''));
  return `Your readings speak against: ${short.map((text) => text.charAt(0).toLowerCase() + text.slice(1)).join('; ')}.`;
}

const SYMBOLS: Readonly<Record<Standing, VerdictSymbol>> = {
  'your readings show it': 'stops',
  near: 'rubs',
  'not measured yet': 'unsure',
  'only looking tells': 'unsure',
  'not in your readings': 'none',
};

const WORDS: Readonly<Record<Standing, string>> = {
  'your readings show it': 'Your readings show it',
  near: 'Your readings come near it',
  'not measured yet': 'Not measured yet',
  'only looking tells': 'Only looking tells',
  'not in your readings': 'Not in your readings',
};

function Item({ explanation }: { readonly explanation: Explanation }) {
  const { text, standing, because, measure } = explanation;
  return (
    <li className="explanation">
      <p className="check-said" data-verdict={SYMBOLS[standing]}>
        <VerdictMark symbol={SYMBOLS[standing]} />
        <span>{WORDS[standing]}</span>
      </p>
      <p>{text}</p>
      {because.length === 0 ? null : (
        <ul className="check-list">
          {because.map(({ text: reason, show }) => (
            <li key={reason} className="check-line">
              <span>{reason}</span>
              {show === null ? null : <ShowMe show={show} about={reason} />}
            </li>
          ))}
        </ul>
      )}
      {measure === null ? null : <p className="small">{measure}</p>}
    </li>
  );
}
