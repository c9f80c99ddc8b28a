/**
 * Planning a cylinder for several keys from their cuts: which keys, the lengths for each chamber, splits that could serve
 * several, what each key would then do, and one step that puts it into the plan.
 */
import { useDeferredValue, useId, useMemo, useState } from 'react';
import { keyOutcomes } from '../../model/keying/key-outcomes.ts';
import { type KeysPlan, planKeys } from '../../model/keying/plan-keys.ts';
import { putKeysPlan } from '../../model/keying/put-plan.ts';
import type { KeyAtLine } from '../../model/matching/two-key-options.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { formatLength } from '../../model/units/format-length.ts';
import { parseLength } from '../../model/units/parse-length.ts';
import { listWords, numberWord } from '../answer/list-words.ts';
import { type Look, lookAt } from '../shared/look.ts';
import { useEdit, useServices, useView } from '../shared/services.tsx';
import { FromBag } from './from-bag.tsx';
import { PlanOutcome } from './plan-outcome.tsx';
import { PlanTable } from './plan-table.tsx';
import { PlannedPicture } from './planned-picture.tsx';
import { wantsOf, type WantChoice, WantChoices } from './want-choices.tsx';
import './keying.css';
import './plan-keys.css';

export function PlanKeysSection({ look }: { readonly look: Look }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="fold keying" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>
        <span className="fold-title">Plan for several keys</span>
        <span className="fold-summary">bottom pins and master pins from the keys' cuts</span>
      </summary>
      {isOpen ? <Body look={look} /> : null}
    </details>
  );
}

function Body({ look }: { readonly look: Look }) {
  const settled = useDeferredValue(look);
  const { job, selection } = settled;
  const [choices, setChoices] = useState<ReadonlyMap<Id, WantChoice>>(new Map());
  const [merged, setMerged] = useState<readonly Id[]>([]);
  const [thinnest, setThinnest] = useState<number | null>(null);
  const wants = useMemo(() => wantsOf(settled, choices), [settled, choices]);
  const plan = useMemo(
    () => (wants.length < 2 ? null : planOf(settled, wants, merged, thinnest)),
    [settled, wants, merged, thinnest],
  );
  return (
    <div className="keying-body">
      <WantChoices
        look={settled}
        wants={wants}
        onChoose={(key, choice) => setChoices((now) => new Map(now).set(key, choice))}
      />
      {plan === null ? (
        <p className="quiet">
          {job.keys.length < 2
            ? 'There is one key in this job. Add another one, measure its cuts, and come back.'
            : 'Choose at least two keys.'}
        </p>
      ) : (
        <Planned
          key={selection.cylinder}
          look={settled}
          plan={plan}
          merged={merged}
          onMerged={setMerged}
          onThinnest={setThinnest}
        />
      )}
    </div>
  );
}

function planOf(
  { job, selection }: Look,
  wants: readonly KeyAtLine[],
  merged: readonly Id[],
  thinnest: number | null,
): KeysPlan {
  const { cylinder, plan } = selection;
  return planKeys(job, {
    cylinder,
    plan,
    wants,
    merged,
    ...(thinnest !== null && { thinnest }),
  });
}

type PlannedProps = {
  readonly look: Look;
  readonly plan: KeysPlan;
  readonly merged: readonly Id[];
  readonly onMerged: (merged: readonly Id[]) => void;
  readonly onThinnest: (mm: number | null) => void;
};

function Planned({ look, plan, merged, onMerged, onThinnest }: PlannedProps) {
  const { newId, view } = useServices();
  const edit = useEdit();
  const [isPut, setPut] = useState(false);
  const picked = useView((state) => state.pickedChamber);
  const preview = useMemo(() => putKeysPlan(look.job, plan, previewIds()), [look.job, plan]);
  const selection = useMemo(
    () => ({ ...look.selection, plan: preview.plan }),
    [look.selection, preview.plan],
  );
  const outcomes = useMemo(
    () => keyOutcomes(preview.job, selection, (each) => lookAt(preview.job, each).evaluation),
    [preview, selection],
  );
  const isReady = plan.chambers.some(({ isLocked, problem }) => !isLocked && problem === null);
  const shown = plan.chambers.find(({ chamber }) => chamber === picked) ?? plan.chambers[0];
  const put = () => {
    let landed = plan.plan;
    edit(`Planned for ${numberWord(plan.wants.length)} keys`, (job) => {
      const done = putKeysPlan(job, plan, newId);
      landed = done.plan;
      return done.job;
    });
    view.getState().pickPlan(landed);
    setPut(true);
  };
  return (
    <>
      <Guessed look={look} plan={plan} />
      <ThinnestField look={look} plan={plan} onThinnest={onThinnest} />
      <div className="planned">
        <PlanTable
          look={look}
          plan={plan}
          picked={shown?.chamber ?? null}
          onMerge={(chamber, isMerged) =>
            onMerged(isMerged ? [...merged, chamber] : merged.filter((each) => each !== chamber))
          }
        />
        {shown === undefined || shown.problem !== null ? null : (
          <PlannedPicture look={lookAt(preview.job, selection)} chamber={shown.chamber} />
        )}
      </div>
      <PlanOutcome look={look} preview={lookAt(preview.job, selection)} plan={plan} outcomes={outcomes} />
      <div className="keying-buttons">
        <button type="button" className="button" data-kind="main" disabled={!isReady} onClick={put}>
          Put this in the plan
        </button>
      </div>
      <p className="keying-done" role="status">
        {isPut ? 'In the plan, as parts to make or find. Check shows what turns; Undo takes it back.' : null}
      </p>
      <FromBag look={look} plan={plan} />
    </>
  );
}

/** Without the metal under the key, its heights stand on a guess: said before any length. */
function Guessed({ look, plan }: { readonly look: Look; readonly plan: KeysPlan }) {
  if (plan.guessed.length === 0) return null;
  const labels = look.job.keys.filter(({ id }) => plan.guessed.includes(id)).map(({ label }) => label);
  return (
    <p className="plan-problem" role="status">
      The metal under the key is a guess for {listWords(labels)}, and with it every length below: measure it
      in this plug first.
    </p>
  );
}

/** Ids of a job that is only looked at. */
function previewIds(): () => Id {
  let count = 0;
  return () => `not-put-yet-${(count += 1)}`;
}

type ThinnestFieldProps = {
  readonly look: Look;
  readonly plan: KeysPlan;
  readonly onThinnest: (mm: number | null) => void;
};

function ThinnestField({ look, plan, onThinnest }: ThinnestFieldProps) {
  const { unit } = look.job.settings;
  const [text, setText] = useState<string | null>(null);
  const message = useId();
  const shown = formatLength(plan.thinnest, { unit });
  const read = text === null || text.trim() === '' ? null : parseLength(text, { unit });
  const isWrong = read !== null && (read.type !== 'length' || read.mm < 0);
  return (
    <div className="thinnest">
      <label className="keying-field">
        <span>Master pins no thinner than</span>
        <input
          className="keying-input"
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={text ?? shown}
          aria-invalid={isWrong}
          aria-describedby={message}
          onFocus={({ target }) => target.select()}
          onChange={({ target }) => {
            setText(target.value);
            const typed = parseLength(target.value, { unit });
            if (typed.type === 'length' && typed.mm >= 0) onThinnest(typed.mm);
            if (typed.type === 'empty') onThinnest(null);
          }}
          onBlur={() => {
            if (!isWrong) setText(null);
          }}
        />
      </label>
      <p className="keying-trouble" id={message} role="status">
        {isWrong ? `"${text ?? ''}" is no thickness, for example ${unit === 'in' ? '.020' : '0.5'}.` : null}
      </p>
    </div>
  );
}
