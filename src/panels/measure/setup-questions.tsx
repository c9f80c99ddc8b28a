/** The first questions, in the order a person can answer them. */
import { useEffect, useRef } from 'react';
import { addChamber, FEWEST_CHAMBERS, MOST_CHAMBERS, removeChamber } from '../../model/edit/chamber-count.ts';
import { setNumbering } from '../../model/edit/edit-settings.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { Choice } from '../shared/choice.tsx';
import type { Look } from '../shared/look.ts';
import { useEdit, useServices } from '../shared/services.tsx';
import { KeySeatQuestion } from './key-seat-question.tsx';
import { LengthField } from './length-field.tsx';
import { plugField } from './once-fields.ts';
import { DriverEndQuestion, KeyFootQuestion, PinTopQuestion } from './shape-questions.tsx';

export function SetupQuestions({ look, cutKey }: { readonly look: Look; readonly cutKey: Id }) {
  const edit = useEdit();
  const plug = useRef<HTMLLIElement>(null);
  const wasNew = useRef(look.bench.cylinder.bodies[0]?.outerDiameter === undefined);
  useEffect(() => {
    // An empty job begins with the plug, unless the person has gone elsewhere while this was loading.
    const at = document.activeElement;
    const isElsewhere = at !== null && at !== document.body && at.checkVisibility();
    if (wasNew.current && !isElsewhere) plug.current?.querySelector('input')?.focus();
  }, []);
  const { job, selection } = look;
  const { numbering } = job.settings;
  return (
    <ol className="setup-questions">
      <li ref={plug} className="setup-row is-wide">
        <div className="setup-plug">
          <p className="choice-question">Plug, across the solid part</p>
          <LengthField field={plugField(look)} />
        </div>
        <ChamberCount look={look} cutKey={cutKey} />
      </li>
      <li className="is-wide">
        <KeySeatQuestion look={look} cutKey={cutKey} />
      </li>
      <li>
        <Choice
          question="Where is cut 1?"
          options={[
            { value: 'bow', label: 'At the bow' },
            { value: 'tip', label: 'At the tip' },
          ]}
          value={numbering}
          onChoose={(end) => edit(`Counted from the ${end}`, (before) => setNumbering(before, end))}
        />
      </li>
      <li>
        <KeyFootQuestion job={job} plan={selection.plan} />
      </li>
      <li>
        <PinTopQuestion job={job} plan={selection.plan} />
      </li>
      <li>
        <DriverEndQuestion job={job} plan={selection.plan} />
      </li>
    </ol>
  );
}

function ChamberCount({ look, cutKey }: { readonly look: Look; readonly cutKey: Id }) {
  const edit = useEdit();
  const { newId } = useServices();
  const count = look.bench.cylinder.chambers.length;
  const where = { ...look.selection, key: cutKey };
  return (
    <fieldset className="chamber-count">
      <legend className="choice-question">Chambers</legend>
      <button
        type="button"
        className="button"
        aria-label="One chamber less"
        disabled={count <= FEWEST_CHAMBERS}
        onClick={() => edit('One chamber less', (job) => removeChamber(job, where))}
      >
        −
      </button>
      <output className="chamber-count-number">{count}</output>
      <button
        type="button"
        className="button"
        aria-label="One chamber more"
        disabled={count >= MOST_CHAMBERS}
        onClick={() => edit('One chamber more', (job) => addChamber(job, where, newId))}
      >
        +
      </button>
    </fieldset>
  );
}
