/**
 * Is there a sleeve around the plug? Asked off the usual path, since few cylinders have one. Where there is one: its size,
 * its play, its chambers, and which line this key is meant to turn.
 */
import { setChamberDiameter } from '../../model/edit/edit-cylinder.ts';
import {
  addSleeve,
  removeSleeve,
  setSleeveDiameter,
  setSleeveMouths,
  sleeveDiameter,
  type SleeveMouth,
  sleeveMouthsSeen,
  sleeveOf,
} from '../../model/edit/edit-sleeve.ts';
import { setIntent } from '../../model/keying/intent.ts';
import { lengthOf } from '../../model/measured/part-ends.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { formatLength } from '../../model/units/format-length.ts';
import { Choice } from '../shared/choice.tsx';
import type { Look } from '../shared/look.ts';
import { useEdit, useServices } from '../shared/services.tsx';
import { type FieldSpec, PLAUSIBLE } from './field-spec.ts';
import { LengthField } from './length-field.tsx';
import { PlayQuestion } from './play-question.tsx';
import { ShapePicture } from './shape-picture.tsx';

export function SleeveBlock({ look, cutKey }: { readonly look: Look; readonly cutKey: Id }) {
  const edit = useEdit();
  const { newId } = useServices();
  const { cylinder } = look.selection;
  const hasSleeve = sleeveOf(look.bench.cylinder) !== null;
  return (
    <details className="fold">
      <summary>
        <h2 className="fold-title">Sleeve around the plug</h2>
        <span className="fold-summary quiet">{sleeveSummary(look)}</span>
      </summary>
      <div className="fold-body">
        <Choice
          question="Is there a sleeve (master ring) around the plug?"
          options={[
            { value: 'no', label: 'No sleeve', picture: <ShapePicture name="round plug" /> },
            { value: 'yes', label: 'A sleeve', picture: <ShapePicture name="round sleeve" /> },
          ]}
          value={hasSleeve ? 'yes' : 'no'}
          onChoose={(answer) =>
            answer === 'yes'
              ? edit('A sleeve around the plug', (job) => addSleeve(job, cylinder, newId))
              : edit('Sleeve taken away', (job) => removeSleeve(job, cylinder))
          }
          note={hasSleeve ? GOES_WITH_IT : WHAT_IT_IS}
        />
        {hasSleeve ? <SleeveFields look={look} cutKey={cutKey} /> : null}
      </div>
    </details>
  );
}

const WHAT_IT_IS =
  'A second round between plug and shell, with a shear line inside and one outside. One key can turn the plug alone, ' +
  'another plug and sleeve together.';
const GOES_WITH_IT =
  'Without it go its size, its play, the sizes of its chambers, and which keys are meant for the outer line. Pins stay ' +
  'where they are. Undo brings all of it back.';

function sleeveSummary({ bench, job }: Look): string {
  if (sleeveOf(bench.cylinder) === null) return 'none';
  const diameter = sleeveDiameter(bench.cylinder);
  if (diameter === undefined) return 'not measured yet';
  const text = formatLength(lengthOf(diameter, 0), { unit: job.settings.unit, keepsPlaces: true });
  return `${text} across${diameter.basis === 'assumed' ? ', assumed' : ''}`;
}

function SleeveFields({ look, cutKey }: { readonly look: Look; readonly cutKey: Id }) {
  const fields = [sleeveField(look), chamberField(look)];
  return (
    <>
      <div className="field-grid" data-walk="sleeve">
        {fields.map((field) =>
          field === null ? null : <LengthField key={field.id} field={field} column="sleeve" isLabelShown />,
        )}
      </div>
      <PlayQuestion look={look} lineIndex={0} />
      <PlayQuestion look={look} lineIndex={1} />
      <div className="question-with-field">
        <MouthQuestion look={look} which="innerMouth" question="Edges of its chambers, towards the plug" />
        <MouthQuestion look={look} which="outerMouth" question="Edges of its chambers, towards the shell" />
      </div>
      <MeantQuestion look={look} cutKey={cutKey} />
    </>
  );
}

function sleeveField({ bench, selection }: Look): FieldSpec {
  const sleeve = sleeveOf(bench.cylinder);
  return {
    id: `body/${sleeve?.id ?? ''}/outerDiameter`,
    label: 'Sleeve, across the outside',
    value: sleeveDiameter(bench.cylinder),
    set: (job, value) => setSleeveDiameter(job, selection.cylinder, value),
    plausible: PLAUSIBLE.sleeveDiameter,
    help: 'sleeve',
  };
}

function chamberField({ bench, rows, selection }: Look): FieldSpec | null {
  const sleeve = sleeveOf(bench.cylinder)?.id ?? '';
  const holes = rows.rows[0]?.chamber.holes ?? [];
  const own = holes.find((hole) => hole.body === sleeve);
  if (own === undefined) return null;
  return {
    id: `chamber/all/holeDiameter/${sleeve}`,
    label: "Sleeve's chambers, across",
    value: own.diameter,
    set: (job, value) => setChamberDiameter(job, selection.cylinder, sleeve, value),
    plausible: PLAUSIBLE.diameter,
    help: 'sleeve chambers',
  };
}

type MouthQuestionProps = { readonly look: Look; readonly which: SleeveMouth; readonly question: string };

function MouthQuestion({ look, which, question }: MouthQuestionProps) {
  const edit = useEdit();
  const { cylinder } = look.selection;
  const seen = sleeveMouthsSeen(look.bench.cylinder, which);
  return (
    <Choice
      question={question}
      options={[
        { value: 'sharp', label: 'Sharp' },
        { value: 'deburred along', label: 'Broken' },
        { value: 'countersunk', label: 'Countersunk' },
      ]}
      value={seen}
      onChoose={(kind) => edit(`${question}: ${kind}`, (job) => setSleeveMouths(job, cylinder, which, kind))}
      {...(seen === null && { note: 'Until you choose: assumed sharp.' })}
    />
  );
}

function MeantQuestion({ look, cutKey }: { readonly look: Look; readonly cutKey: Id }) {
  const edit = useEdit();
  const { cylinder } = look.selection;
  const [inner, outer] = look.bench.cylinder.lines.map(({ id }) =>
    look.job.intents.some(
      (each) => each.key === cutKey && each.cylinder === cylinder && each.line === id && each.turns,
    ),
  );
  const meant =
    inner === true ? (outer === true ? 'either' : 'plug') : outer === true ? 'together' : 'unsaid';
  const name = look.bench.key?.label ?? 'This key';
  return (
    <Choice
      question={`${name} is meant to turn`}
      options={[
        { value: 'plug', label: 'The plug alone' },
        { value: 'together', label: 'Plug and sleeve' },
        { value: 'either', label: 'Either' },
        { value: 'unsaid', label: 'Not known' },
      ]}
      value={meant}
      onChoose={(answer) =>
        edit('What the key is meant to turn', (job) =>
          setIntent(job, { key: cutKey, cylinder }, answer === 'unsaid' ? null : answer),
        )
      }
    />
  );
}
