/** Asked once for the cylinder, and only when it comes to it: play, turn, sizes across, the key's blade, the instrument. */
import { setTurn } from '../../model/edit/edit-cylinder.ts';
import { lengthOf } from '../../model/measured/part-ends.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { formatLength } from '../../model/units/format-length.ts';
import { Choice } from '../shared/choice.tsx';
import type { Look } from '../shared/look.ts';
import { useEdit } from '../shared/services.tsx';
import { AngleField } from './angle-field.tsx';
import { CaliperFields } from './caliper-fields.tsx';
import { LengthField } from './length-field.tsx';
import { capDepthField, diameterFields, keyFields, shopRuleField } from './once-fields.ts';
import { PlayQuestion } from './play-question.tsx';
import './once-block.css';

export function OnceBlock({ look, cutKey }: { readonly look: Look; readonly cutKey: Id }) {
  return (
    <details className="fold">
      <summary>
        <h2 className="fold-title">Once for the cylinder</h2>
        <span className="fold-summary quiet">{onceSummary(look)}</span>
      </summary>
      <div className="fold-body">
        {look.assembly.lines.length > 1 ? null : <PlayQuestion look={look} />}
        <TurnQuestion look={look} />
        <div className="field-grid" data-walk="across">
          {diameterFields(look).map((field) => (
            <LengthField key={field.id} field={field} column="across" isLabelShown />
          ))}
          <LengthField field={capDepthField(look)} column="across" isLabelShown />
          <LengthField field={shopRuleField(look)} column="across" isLabelShown />
        </div>
        <h3>The key</h3>
        <div className="field-grid" data-walk="key">
          {keyFields(look, cutKey).map((field) => (
            <LengthField key={field.id} field={field} column="key" isLabelShown />
          ))}
        </div>
        <h3>The caliper</h3>
        <CaliperFields look={look} />
      </div>
    </details>
  );
}

function onceSummary({ bench, job }: Look): string {
  const play = bench.cylinder.lines[0]?.clearance;
  const { unit } = job.settings;
  const turn = bench.cylinder.turn.angle.readings[0]?.value ?? 360;
  const angle = turn >= 360 ? 'a full turn' : `${turn}°`;
  if (play === undefined) return angle;
  const text = formatLength(lengthOf(play, 0), { unit, keepsPlaces: true });
  return `play ${text}${play.basis === 'assumed' ? ' assumed' : ''}, turns ${angle}`;
}

function TurnQuestion({ look }: { readonly look: Look }) {
  const edit = useEdit();
  const { cylinder } = look.selection;
  const { angle, ways } = look.bench.cylinder.turn;
  const degrees = angle.readings[0]?.value ?? 360;
  return (
    <div className="question-with-field">
      <AngleField
        label="Turns how far"
        degrees={degrees}
        onCommit={(to) => edit(`Turns ${to}°`, (job) => setTurn(job, cylinder, to, ways))}
      />
      <Choice
        question="Which ways"
        options={[
          { value: 'both', label: 'Both ways' },
          { value: 'one', label: 'One way' },
        ]}
        value={ways}
        onChoose={(to) =>
          edit(`Turns ${to} way${to === 'both' ? 's' : ''}`, (job) => setTurn(job, cylinder, degrees, to))
        }
      />
    </div>
  );
}
