/** Where both lines are clear, friction decides which turns: the person may hold the one or the other. */
import type { TurnAttempt } from '../../model/turning/turn-attempt.ts';
import type { Look } from '../shared/look.ts';
import { useView } from '../shared/services.tsx';

export function TurnChoice({ look, attempt }: { readonly look: Look; readonly attempt: TurnAttempt }) {
  const pickLine = useView((view) => view.pickLine);
  return (
    <div className="picture-switch" role="group" aria-label="What turns">
      {look.assembly.lines.map((line, i) => (
        <button
          key={line.id}
          type="button"
          className="button"
          aria-pressed={attempt.line === line.id}
          onClick={() => pickLine(line.id)}
        >
          {i === 0 ? 'Plug alone' : 'Plug and sleeve'}
        </button>
      ))}
    </div>
  );
}
