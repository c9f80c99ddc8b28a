/** What is worth knowing beside the verdicts, the gravest first; notes wait behind a fold. */
import { useDeferredValue } from 'react';
import type { Finding } from '../../model/evaluate/evaluation.ts';
import type { VerdictSymbol } from '../answer/verdict-words.ts';
import type { Look } from '../shared/look.ts';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import { lessonLink } from '../../model/learning/lesson-link.ts';
import { lessonOf } from '../../model/learning/finding-lessons.ts';
import { useJob } from '../shared/services.tsx';
import { checkFacts } from './check-facts.ts';
import { ShowMe } from './show-me.tsx';

const SYMBOLS: Readonly<Record<Finding['severity'], VerdictSymbol>> = {
  stops: 'stops',
  warns: 'unsure',
  notes: 'none',
};
const WORDS: Readonly<Record<Finding['severity'], string>> = {
  stops: 'Will not work',
  warns: 'Look at this',
  notes: '',
};

export function FindingsList({ look }: { readonly look: Look }) {
  const { findings } = checkFacts(useDeferredValue(look));
  const [grave, notes] = [true, false].map((isGrave) =>
    findings.filter(({ severity }) => (severity !== 'notes') === isGrave),
  );
  if (findings.length === 0) return null;
  return (
    <section className="findings" aria-labelledby="worth-knowing">
      <h2 id="worth-knowing">Worth knowing</h2>
      <Items findings={grave ?? []} />
      {notes === undefined || notes.length === 0 ? null : grave?.length === 0 ? (
        <Items findings={notes} />
      ) : (
        <details className="fold">
          <summary>
            {notes.length === 1 ? 'One more that does no harm' : `${notes.length} more that do no harm`}
          </summary>
          <Items findings={notes} />
        </details>
      )}
    </section>
  );
}

function Items({ findings }: { readonly findings: readonly Finding[] }) {
  return (
    <ul>
      {findings.map(({ code, severity, message, show }) => (
        <li key={`${code} ${message}`} className="finding" data-severity={severity}>
          <VerdictMark symbol={SYMBOLS[severity]} />
          <p>
            {WORDS[severity] === '' ? null : <strong className="finding-word">{WORDS[severity]}. </strong>}
            {message}
          </p>
          <span className="finding-links">
            <ExplainThis code={code} about={message} />
            {show === undefined ? null : <ShowMe show={show} about={message} />}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** The lesson behind a finding, where there is one. */
function ExplainThis({ code, about }: { readonly code: string; readonly about: string }) {
  const { unit } = useJob().settings;
  const lesson = lessonOf(code);
  if (lesson === null) return null;
  return (
    <a
      className="link-button explain-link"
      href={lessonLink({ lesson, seed: 1, unit })}
      aria-label={`Explain this: ${about}`}
    >
      Explain this
    </a>
  );
}
