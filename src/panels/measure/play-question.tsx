/** The play at a shear line: by a strip that just goes in, or by how it rattles; and where what turns lies in it. */
import { setLies, setRattle } from '../../model/edit/edit-cylinder.ts';
import { lengthOf } from '../../model/measured/part-ends.ts';
import { Choice } from '../shared/choice.tsx';
import type { Look } from '../shared/look.ts';
import { useEdit } from '../shared/services.tsx';
import { LengthField } from './length-field.tsx';
import { clearanceField } from './once-fields.ts';

type PlayQuestionProps = {
  readonly look: Look;
  /** Which line, inside to outside. */
  readonly lineIndex?: number;
};

export function PlayQuestion({ look, lineIndex = 0 }: PlayQuestionProps) {
  const edit = useEdit();
  const { cylinder } = look.selection;
  const line = look.bench.cylinder.lines[lineIndex];
  const field = clearanceField(look, lineIndex);
  const body = look.bench.cylinder.bodies[lineIndex]?.role ?? 'plug';
  const hasSleeve = look.assembly.lines.length > 1;
  if (line === undefined || field === null) return null;
  return (
    <div className="question-with-field">
      <LengthField
        field={field}
        isLabelShown
        shortLabel={hasSleeve ? field.label : 'Play: strip that just goes in'}
      />
      <Choice
        question={`or: does the ${body} rattle?`}
        options={[
          { value: 'tight', label: 'Tight' },
          { value: 'normal', label: 'Normal' },
          { value: 'loose', label: 'Loose' },
        ]}
        value={line.clearance.basis === 'assumed' ? rattleOf(lengthOf(line.clearance, 0)) : null}
        onChoose={(rattle) => edit(`Play: ${rattle}`, (job) => setRattle(job, cylinder, line.id, rattle))}
      />
      <Choice
        question={`The ${body} lies`}
        options={[
          { value: 'away from drivers', label: 'Pushed down' },
          { value: 'centred', label: 'In the middle' },
        ]}
        value={line.lies}
        onChoose={(lies) => edit(`The ${body} lies ${lies}`, (job) => setLies(job, cylinder, line.id, lies))}
      />
    </div>
  );
}

/** mm. Between the usual values of tight, normal and loose. */
function rattleOf(playMm: number): 'tight' | 'normal' | 'loose' {
  if (playMm < 0.076) return 'tight';
  return playMm < 0.127 ? 'normal' : 'loose';
}
