/** Each key of the job: what it does in this cylinder, what holds it, and what it is meant to do. */
import { setIntent } from '../../model/keying/intent.ts';
import type { Crossing, KeyOutcome, Turning } from '../../model/keying/key-outcomes.ts';
import { sayChambers, sayOutcome } from '../../model/keying/say-turning.ts';
import type { VerdictSymbol } from '../answer/verdict-words.ts';
import type { Look } from '../shared/look.ts';
import { useEdit, useView } from '../shared/services.tsx';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import { listWords } from '../answer/list-words.ts';

type KeyRowsProps = {
  readonly look: Look;
  readonly outcomes: readonly KeyOutcome[];
  readonly crossings: readonly Crossing[];
};

export function KeyRows({ look, outcomes, crossings }: KeyRowsProps) {
  const { keys } = look.job;
  if (keys.length === 0) return <p>This job has no key yet.</p>;
  return (
    <>
      <ul className="key-rows">
        {keys.map(({ id, label }) => {
          const outcome = outcomes.find(({ key }) => key === id) ?? null;
          return <KeyRow key={id} look={look} id={id} label={label} outcome={outcome} />;
        })}
      </ul>
      <div role="status">
        {crossings.map(({ key, line, meantFor }) => (
          <p key={`${key} ${line}`} className="key-crossing">
            <VerdictMark symbol="stops" />
            <span>{crossingWords(look, { key, line, meantFor })}</span>
          </p>
        ))}
      </div>
    </>
  );
}

type KeyRowProps = {
  readonly look: Look;
  readonly id: string;
  readonly label: string;
  readonly outcome: KeyOutcome | null;
};

function KeyRow({ look, id, label, outcome }: KeyRowProps) {
  const edit = useEdit();
  const pick = useView((view) => view.pickKey);
  const { cylinder } = look.selection;
  const hasSleeve = look.evaluation.lines.length > 1;
  const isPicked = look.selection.key === id;
  const choose = (meant: Turning | null) =>
    edit(`What ${label} is meant to do`, (job) => setIntent(job, { key: id, cylinder }, meant));
  return (
    <li className="key-row" data-picked={isPicked}>
      <button type="button" className="keying-link key-name" aria-pressed={isPicked} onClick={() => pick(id)}>
        {label}
      </button>
      <p className="key-does">
        <VerdictMark symbol={symbolOf(outcome)} />
        <span>
          {outcome === null ? 'has not been in this cylinder yet' : sayOutcome(outcome)}
          <Holding outcome={outcome} hasSleeve={hasSleeve} />
        </span>
      </p>
      <label className="key-meant">
        <span>is meant to</span>
        <select
          className="keying-select"
          aria-label={`What ${label} is meant to do`}
          value={outcome?.meant ?? ''}
          onChange={({ target }) => choose(meantOf(target.value))}
        >
          <option value="">– not said –</option>
          {meanings(hasSleeve).map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
        <Agreement outcome={outcome} />
      </label>
    </li>
  );
}

/** The chambers that hold a line, where that is worth saying: the line the key is meant for, else any that it does not turn. */
function Holding({
  outcome,
  hasSleeve,
}: {
  readonly outcome: KeyOutcome | null;
  readonly hasSleeve: boolean;
}) {
  if (outcome === null || outcome.isMixed) return null;
  if (outcome.does !== 'nothing' && outcome.does !== null) return null;
  const held = outcome.heldBy.filter(({ chambers }, i) => chambers.length > 0 && isWorthSaying(outcome, i));
  return held.map(({ line, chambers }) => {
    const place = hasSleeve ? ` at the ${lineName(outcome, line)} line` : '';
    return (
      <span
        key={line}
        className="quiet small"
      >{`${held.length > 0 ? '; ' : ''}held by ${sayChambers(chambers)}${place}`}</span>
    );
  });
}

function isWorthSaying({ meant }: KeyOutcome, lineIndex: number): boolean {
  if (meant === null || meant === 'either' || meant === 'nothing') return true;
  return meant === (lineIndex === 0 ? 'plug' : 'together');
}

function lineName({ lines }: KeyOutcome, line: string): string {
  return lines[0]?.line === line ? 'inner' : 'outer';
}

function Agreement({ outcome }: { readonly outcome: KeyOutcome | null }) {
  if (outcome?.isAsMeant == null) return null;
  return outcome.isAsMeant ? (
    <span className="key-agrees">and does</span>
  ) : (
    <strong className="key-differs">and does not</strong>
  );
}

function symbolOf(outcome: KeyOutcome | null): VerdictSymbol {
  if (outcome === null || (outcome.does === null && outcome.probably === null)) return 'none';
  if (outcome.does === null) return 'unsure';
  return outcome.does === 'nothing' ? 'stops' : 'turns';
}

function meanings(hasSleeve: boolean): readonly (readonly [Turning, string])[] {
  if (!hasSleeve)
    return [
      ['plug', 'turn the plug'],
      ['nothing', 'turn nothing'],
    ];
  return [
    ['plug', 'turn the plug alone'],
    ['together', 'turn plug and sleeve together'],
    ['either', 'turn either'],
    ['nothing', 'turn nothing'],
  ];
}

function meantOf(value: string): Turning | null {
  return value === 'plug' || value === 'together' || value === 'either' || value === 'nothing' ? value : null;
}

function crossingWords({ job, evaluation }: Look, { key, line, meantFor }: Crossing): string {
  const label = (id: string) => job.keys.find((each) => each.id === id)?.label ?? 'a key';
  const what =
    evaluation.lines.length > 1 && evaluation.lines[0]?.line !== line ? 'plug and sleeve' : 'the plug';
  const others = meantFor.map(label);
  if (others.length === 0) return `${label(key)} turns ${what}, and is not meant to.`;
  return `${label(key)} crosses ${listWords(others)}: it turns ${what} too, and is not meant to.`;
}
