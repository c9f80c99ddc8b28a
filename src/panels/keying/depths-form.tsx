/** The depths keys of this job are cut to: four figures, kept in the job in one step. */
import { type SyntheticEvent, useId, useState } from 'react';
import {
  type DepthsResult,
  depthTableOf,
  evenSteps,
  MOST_STEPS,
  setDepthTable,
} from '../../model/keying/depth-table.ts';
import type { DepthTable } from '../../model/keying/operating-keys.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import { parseCount } from '../../model/units/parse-count.ts';
import { parseLength } from '../../model/units/parse-length.ts';
import { useEdit, useJob } from '../shared/services.tsx';

type Texts = {
  readonly first: string;
  readonly step: string;
  readonly count: string;
  readonly largest: string;
};

export function DepthsForm() {
  const job = useJob();
  const edit = useEdit();
  const { unit } = job.settings;
  const kept = depthTableOf(job);
  const shown = textsOf(kept, unit);
  const [draft, setDraft] = useState<Texts | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const message = useId();
  const texts = draft ?? shown;
  const write = (change: Partial<Texts>) => {
    setDraft({ ...texts, ...change });
    setTrouble(null);
  };
  const store = (name: string, change: (job: Job) => Job) => {
    edit(name, change);
    setDraft(null);
    setTrouble(null);
  };
  const onSubmit = (event: SyntheticEvent) => {
    event.preventDefault();
    const read = readTexts(texts, unit);
    if (read.type === 'error') setTrouble(read.message);
    else store('Depths of the keys', (now) => setDepthTable(now, read.table));
  };
  const field = (name: keyof Texts, label: string, placeholder: string) => (
    <label className="keying-field">
      <span>{label}</span>
      <input
        className="keying-input"
        type="text"
        inputMode="decimal"
        autoComplete="off"
        value={texts[name]}
        placeholder={placeholder}
        aria-describedby={trouble === null ? undefined : message}
        onChange={({ target }) => write({ [name]: target.value })}
      />
    </label>
  );
  return (
    <form className="depths-form" onSubmit={onSubmit} aria-label="Depths of the keys">
      <div className="keying-fields">
        {field('first', 'Shallowest root depth', unit === 'in' ? '.310' : '7.9')}
        {field('step', 'Next one deeper by', unit === 'in' ? '.015' : '0.4')}
        {field('count', 'How many depths', '10')}
        {field('largest', 'Neighbours differ by at most', 'any')}
      </div>
      <div className="keying-buttons">
        <button type="submit" className="button" data-kind={kept === null ? 'main' : undefined}>
          Count the keys
        </button>
        {kept === null ? null : (
          <button
            type="button"
            className="button"
            data-kind="quiet"
            onClick={() => store('Depths of the keys taken away', (now) => setDepthTable(now, null))}
          >
            Without a table
          </button>
        )}
      </div>
      <p className="keying-trouble" id={message} role="status">
        {trouble}
      </p>
    </form>
  );
}

function textsOf(table: DepthTable | null, unit: JobUnit): Texts {
  if (table === null) return { first: '', step: '', count: '', largest: '' };
  const { rootDepths, largestStep } = table;
  const [first = 0, second] = rootDepths;
  const say = (mm: number) => formatLength(mm, { unit, keepsPlaces: true });
  return {
    first: say(first),
    step: second === undefined ? '' : say(first - second),
    count: String(rootDepths.length),
    largest: largestStep === null ? '' : String(largestStep),
  };
}

function readTexts({ first, step, count, largest }: Texts, unit: JobUnit): DepthsResult {
  const firstMm = parseLength(first, { unit });
  if (firstMm.type !== 'length')
    return wrong(
      `Shallowest root depth: ${said(first)} is no length, for example ${unit === 'in' ? '.310' : '7.9'}.`,
    );
  const stepMm = parseLength(step, { unit });
  if (stepMm.type !== 'length')
    return wrong(
      `Next one deeper by: ${said(step)} is no length, for example ${unit === 'in' ? '.015' : '0.4'}.`,
    );
  const steps = parseCount(count, { to: MOST_STEPS });
  if (steps.type !== 'count')
    return wrong(
      `How many depths: ${said(count)} is no whole number from 1 to ${MOST_STEPS}, for example 10.`,
    );
  const limit = parseCount(largest, { from: 0, to: MOST_STEPS });
  if (limit.type !== 'count' && limit.type !== 'empty')
    return wrong(
      `Neighbours differ by at most: ${said(largest)} is no whole number, for example 7, or nothing.`,
    );
  const largestStep = limit.type === 'count' ? limit.count : null;
  return evenSteps({ first: firstMm.mm, step: stepMm.mm, count: steps.count, largestStep });
}

function said(text: string): string {
  return text.trim() === '' ? 'nothing' : `"${text.trim()}"`;
}

function wrong(message: string): DepthsResult {
  return { type: 'error', message };
}
