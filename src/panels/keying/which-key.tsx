/**
 * Which key turns what: each key against what it is meant to do, keys that cross, and how many others would operate. Worked out
 * while it is open, after what is more urgent.
 */
import { useDeferredValue, useMemo, useState } from 'react';
import { crossings, keyOutcomes } from '../../model/keying/key-outcomes.ts';
import { type Look, lookAt } from '../shared/look.ts';
import { KeyCountsPart } from './key-counts.tsx';
import { KeyRows } from './key-rows.tsx';
import './keying.css';

export function WhichKey({ look }: { readonly look: Look }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="fold keying" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>
        <span className="fold-title">Which key turns what</span>
        <span className="fold-summary">and how many others would</span>
      </summary>
      {isOpen ? <Body look={look} /> : null}
    </details>
  );
}

function Body({ look }: { readonly look: Look }) {
  const settled = useDeferredValue(look);
  const { job, selection } = settled;
  const outcomes = useMemo(
    () => keyOutcomes(job, selection, (each) => lookAt(job, each).evaluation),
    [job, selection],
  );
  return (
    <div className="keying-body">
      <KeyRows look={settled} outcomes={outcomes} crossings={crossings(outcomes)} />
      <KeyCountsPart look={settled} outcomes={outcomes} />
    </div>
  );
}
