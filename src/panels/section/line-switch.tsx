/** Which shear line the close-ups show: each with its own verdict, so that both are known at a glance. */
import { lineWords } from '../../drawing/split-words.ts';
import type { LineResult } from '../../model/evaluate/evaluation.ts';
import type { Id } from '../../model/schema/leaf.ts';
import type { VerdictSymbol } from '../answer/verdict-words.ts';
import type { Look } from '../shared/look.ts';
import { useView } from '../shared/services.tsx';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import './line-switch.css';

const SYMBOLS: Readonly<Record<LineResult['verdict'], VerdictSymbol>> = {
  turns: 'turns',
  'will not turn': 'stops',
  "can't say yet": 'unsure',
  unknown: 'none',
};

export function LineSwitch({ look, line }: { readonly look: Look; readonly line: Id | null }) {
  const pickLine = useView((view) => view.pickLine);
  const { lines } = look.evaluation;
  return (
    <div className="line-switch" role="group" aria-label="Close-ups at which shear line">
      {lines.map((each, i) => (
        <button
          key={each.line}
          type="button"
          className="line-choice"
          aria-pressed={each.line === line}
          onClick={() => pickLine(each.line)}
        >
          <span className="line-name">{capital(lineWords(i, lines.length))}</span>
          <span className="line-verdict">
            <VerdictMark symbol={SYMBOLS[each.verdict]} />
            {wordsOf(look, each)}
          </span>
        </button>
      ))}
    </div>
  );
}

/** "all five are at it", "held by 2 and 4". */
function wordsOf(look: Look, { verdict, blockedBy }: LineResult): string {
  const numbers = blockedBy.flatMap((id) => look.chamberResults.get(id)?.number ?? []).sort((a, b) => a - b);
  const isAll = numbers.length === look.evaluation.chambers.length && numbers.length > 1;
  const who = isAll ? 'every chamber' : numbers.join(', ');
  switch (verdict) {
    case 'turns':
      return 'turns';
    case 'will not turn':
      return `held by ${who}`;
    case "can't say yet":
      return `can't say yet: ${who}`;
    case 'unknown':
      return 'not measured yet';
  }
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
