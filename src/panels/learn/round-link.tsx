/** Which round this is, in which unit, and a link that brings it up again exactly, for whoever teaches. */
import { useState } from 'react';
import type { LessonLink } from '../../model/learning/lesson-link.ts';
import { Choice } from '../shared/choice.tsx';
import { fill } from './fill.ts';
import { useWords } from './words-context.ts';

type RoundLinkProps = { readonly link: LessonLink; readonly open: (link: LessonLink) => void };

export function RoundLink({ link, open }: RoundLinkProps) {
  const { common, tongue } = useWords();
  const [said, setSaid] = useState('');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(window.location.href);
      setSaid(common.copied);
    } catch {
      // A browser may refuse; the address bar says the same.
      setSaid(common.notCopied);
    }
  };
  return (
    <footer className="round-link">
      <span className="small quiet">
        {fill(common.round, { seed: String(link.seed) }, { unit: link.unit, tongue })}
      </span>
      <button type="button" className="link-button" onClick={() => void copy()}>
        {common.copyLink}
      </button>
      <span className="small quiet" role="status">
        {said}
      </span>
      <Choice
        question={common.unitChoice}
        isQuestionHidden
        value={link.unit}
        options={[
          { value: 'in', label: common.unitIn },
          { value: 'mm', label: common.unitMm },
        ]}
        onChoose={(unit) => open({ ...link, unit })}
      />
    </footer>
  );
}
