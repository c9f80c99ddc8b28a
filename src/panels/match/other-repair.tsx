/** The other repair, for a stack that stands high: take it off the cut. Told first, noted or done only when asked. */
import { useState } from 'react';
import { setCutOverBall, setCutRootDepth } from '../../model/edit/edit-key.ts';
import { addToDo } from '../../model/edit/edit-note.ts';
import { movedValue } from '../../model/edit/values.ts';
import { sayAmount } from '../../model/evaluate/say.ts';
import type { DeeperCut, NoCut } from '../../model/matching/deeper-cut.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { splitThatMatters, verdictWords } from '../answer/verdict-words.ts';
import type { Look } from '../shared/look.ts';
import { useEdit } from '../shared/services.tsx';
import { RunStatus } from './run-status.tsx';
import { useMatching } from './use-matching.ts';

export function OtherRepair({ look }: { readonly look: Look }) {
  const { key } = look.selection;
  const high = highChambers(look);
  if (key === null || high.length === 0) return null;
  return (
    <details className="fold other-repair">
      <summary>
        <span className="fold-title">Or take it off the key</span>
        <span className="quiet small">
          {high.length === 1 ? 'one stack stands high' : `${high.length} stacks stand high`}
        </span>
      </summary>
      <div className="other-repair-body">
        <p className="small">
          A deeper cut lets a stack down that stands too high.{' '}
          <strong>Cutting a key is not reversible:</strong> try another pin first, and keep an uncut copy.
        </p>
        {high.map(({ chamber, number, words }) => (
          <HighChamber
            key={chamber}
            look={look}
            cutKey={key}
            chamber={chamber}
            number={number}
            words={words}
          />
        ))}
      </div>
    </details>
  );
}

type HighChamberProps = {
  readonly look: Look;
  readonly cutKey: Id;
  readonly chamber: Id;
  readonly number: number;
  readonly words: string;
};

function HighChamber({ look, cutKey, chamber, number, words }: HighChamberProps) {
  const edit = useEdit();
  const { state, start, cancel, clear } = useMatching<'deeper cut'>();
  const [told, setTold] = useState<string | null>(null);
  const { job, selection } = look;
  const pair = { cylinder: selection.cylinder, key: cutKey, plan: selection.plan };
  const answer = state.type === 'done' && state.job === job ? state.answer : null;
  const ask = () => {
    setTold(null);
    start(job, { kind: 'deeper cut', selection: pair, chamber });
  };
  const note = (cut: DeeperCut) => {
    edit('Deeper cut noted', (now) => addToDo(now, sayPlanned(now, cutKey, number, cut)));
    clear();
    setTold('Noted as work to do. The key in this job is as it was.');
  };
  const apply = (cut: DeeperCut) => {
    edit(`Cut under chamber ${number} deeper`, (now) => withDeeperCut(now, cutKey, cut));
    clear();
    setTold('The cut has its new depth, as worked out: measure it, and write down what you read.');
  };
  return (
    <div className="high-chamber">
      <p>
        <strong>Chamber {number}</strong> {words}
        {answer === null ? (
          <button type="button" className="word-button" onClick={ask}>
            How much off its cut?
          </button>
        ) : null}
      </p>
      <RunStatus state={state} what="Looking at the cut" onCancel={cancel} />
      {answer === null ? null : <CutAnswer answer={answer} onNote={note} onApply={apply} />}
      <p className="small" role="status">
        {told}
      </p>
    </div>
  );
}

type CutAnswerProps = {
  readonly answer: DeeperCut | NoCut;
  readonly onNote: (cut: DeeperCut) => void;
  readonly onApply: (cut: DeeperCut) => void;
};

function CutAnswer({ answer, onNote, onApply }: CutAnswerProps) {
  const [isAsked, setAsked] = useState(false);
  if (!('cut' in answer)) return <p>{answer.message}</p>;
  return (
    <div className="cut-answer">
      <p role="status">{answer.message}</p>
      {answer.isClean ? null : (
        <p className="match-trouble">This repair harms another chamber or eats a flat: choose another pin.</p>
      )}
      {isAsked ? (
        <div className="cut-yes" role="group" aria-label="Is it cut?">
          <p>Only once the key really is cut. It cannot be put back on the metal.</p>
          <button type="button" className="button" data-kind="main" onClick={() => onApply(answer)}>
            Yes, it is cut
          </button>
          <button type="button" className="button" onClick={() => setAsked(false)}>
            Not yet
          </button>
        </div>
      ) : (
        <div className="cut-yes">
          <button type="button" className="button" onClick={() => onNote(answer)}>
            Note it as work to do
          </button>
          <button type="button" className="button" data-kind="quiet" onClick={() => setAsked(true)}>
            It is cut already…
          </button>
        </div>
      )}
    </div>
  );
}

function highChambers(
  look: Look,
): { readonly chamber: Id; readonly number: number; readonly words: string }[] {
  const { unit } = look.job.settings;
  return look.rows.rows.flatMap(({ chamber, number }) => {
    const result = look.chamberResults.get(chamber.id);
    const found = result === undefined ? null : splitThatMatters(result);
    if (result === undefined || found === null || !HIGH.has(found.verdict) || found.split.offset <= 0)
      return [];
    const { offset, verdict } = verdictWords(result, unit);
    return [{ chamber: chamber.id, number, words: `stands ${offset}: ${verdict}. ` }];
  });
}

const HIGH: ReadonlySet<string> = new Set(['too high', 'high, rubs', "can't say yet"]);

function sayPlanned(job: Job, key: Id, number: number, { takeOff }: DeeperCut): string {
  const name = job.keys.find(({ id }) => id === key)?.label ?? '';
  return `Take ${sayAmount(takeOff, job.settings.unit)} off the cut under chamber ${number} of ${name}, then measure it again.`;
}

/** The readings of the cut, moved by what was taken off: their doubts stay. */
function withDeeperCut(job: Job, key: Id, { cut: id, takeOff }: DeeperCut): Job {
  const cut = job.keys.find((each) => each.id === key)?.cuts.find((each) => each.id === id);
  if (cut === undefined) return job;
  const { rootDepth, overBall } = cut;
  const deeper =
    rootDepth === undefined ? job : setCutRootDepth(job, key, id, movedValue(rootDepth, -takeOff));
  if (overBall === undefined) return deeper;
  return setCutOverBall(deeper, key, id, movedValue(overBall.reading, -takeOff), overBall.ball);
}
