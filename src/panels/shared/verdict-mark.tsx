import type { VerdictSymbol } from '../answer/verdict-words.ts';
import { VERDICT_PATHS } from './verdict-paths.ts';
import './verdict-mark.css';

/** The verdict's symbol; what it means always stands beside it in words. */
export function VerdictMark({ symbol }: { readonly symbol: VerdictSymbol }) {
  if (symbol === 'none') return null;
  return (
    <svg className="verdict-mark" data-verdict={symbol} viewBox="0 0 14 14" aria-hidden="true">
      <path d={VERDICT_PATHS[symbol]} />
    </svg>
  );
}
