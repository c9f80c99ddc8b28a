/** What the bench says about one chamber, beside what is expected: it bounds the height as a go/no-go gauge does. */
import { benchOutcome, recordBench } from '../../model/edit/edit-bench.ts';
import { feltWith, setFelt } from '../../model/edit/edit-seating.ts';
import type { ChamberRow } from '../../model/edit/chamber-rows.ts';
import type { ChamberResult } from '../../model/evaluate/evaluation.ts';
import type { Item } from '../../model/schema/key-schema.ts';
import { Choice } from '../shared/choice.tsx';
import type { Look } from '../shared/look.ts';
import { useEdit, useServices } from '../shared/services.tsx';

type BenchTestsProps = {
  readonly row: ChamberRow;
  readonly look: Look;
  readonly result: ChamberResult;
};

const FELT = [
  { value: 'above', label: 'Above' },
  { value: 'level', label: 'Level' },
  { value: 'below', label: 'Below' },
  { value: 'none', label: 'Not tried' },
] as const;

const TURNED = [
  { value: 'turned', label: 'Turned' },
  { value: 'did not', label: 'Did not' },
  { value: 'none', label: 'Not tried' },
] as const;

export function BenchTests({ row, look, result }: BenchTestsProps) {
  const edit = useEdit();
  const { now } = useServices();
  const { cylinder, key, plan } = look.selection;
  const { parts, number } = row;
  if (parts === null || key === null || parts.lower.length === 0) return null;
  const chamber = row.chamber.id;
  const withDriver = parts.stack.items;
  const hasDriver = parts.driver !== null;

  const outcome = (items: readonly Item[]) => {
    const turned = benchOutcome(look.job, { plan, key, chamber, items });
    return turned === null ? 'none' : turned ? 'turned' : 'did not';
  };
  const record = (what: string, items: readonly Item[], answer: (typeof TURNED)[number]['value']) =>
    edit(`Chamber ${number}, ${what}: ${answer === 'none' ? 'not tried' : answer}`, (job) =>
      recordBench(job, { plan, key, chamber, items }, answer === 'none' ? null : answer === 'turned', now()),
    );
  return (
    <div className="bench-tests">
      <Choice
        question="By feel, thumb across the crest"
        options={FELT}
        value={feltWith(look.bench.seating, chamber, parts.lower) ?? 'none'}
        onChoose={(felt) =>
          edit(`Chamber ${number}, felt ${felt === 'none' ? 'taken back' : felt}`, (job) =>
            setFelt(job, { cylinder, key, chamber, items: parts.lower }, felt === 'none' ? null : felt),
          )
        }
      />
      <Choice
        question="Alone in the empty shell, no driver"
        options={TURNED}
        value={outcome(parts.lower)}
        onChoose={(answer) => record('no driver', parts.lower, answer)}
        {...noteOf(result.alone?.lowerStackOnly)}
      />
      {hasDriver ? (
        <Choice
          question="Alone, with its driver"
          options={TURNED}
          value={outcome(withDriver)}
          onChoose={(answer) => record('with its driver', withDriver, answer)}
          {...noteOf(result.alone?.withDriver)}
        />
      ) : null}
    </div>
  );
}

function noteOf(expected: string | undefined): { note: string } | Record<string, never> {
  return expected === undefined || expected === 'unknown' ? {} : { note: `Expected: ${expected}.` };
}
