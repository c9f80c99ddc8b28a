import { setBottomEdge } from '../../model/edit/edit-seating.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { Choice } from '../shared/choice.tsx';
import type { Look } from '../shared/look.ts';
import { useEdit } from '../shared/services.tsx';
import { LengthField } from './length-field.tsx';
import { metalUnderKeyField, rodField } from './once-fields.ts';
import { ShapePicture } from './shape-picture.tsx';

const ANSWERS = [
  { value: 'level', label: 'Level', picture: <ShapePicture name="key level" /> },
  { value: 'above', label: 'Above it', picture: <ShapePicture name="key above" /> },
  { value: 'unknown', label: "Don't know", picture: <ShapePicture name="key unknown" /> },
] as const;

/** Where the key sits. "Don't know" leads on: a rod reading, or "stands up by", does without it. */
export function KeySeatQuestion({ look, cutKey }: { readonly look: Look; readonly cutKey: Id }) {
  const edit = useEdit();
  const { cylinder } = look.selection;
  const edge = look.bench.seating?.bottomEdge ?? null;
  return (
    <>
      <Choice
        question="Is the key's bottom edge level with the underside of the plug?"
        options={ANSWERS}
        value={edge}
        onChoose={(answer) =>
          edit(`The key sits: ${answer === 'unknown' ? 'not known' : answer}`, (job) =>
            setBottomEdge(job, cylinder, cutKey, answer),
          )
        }
        {...noteFor(edge)}
      />
      {edge === 'above' || edge === 'unknown' ? (
        <div className="setup-row setup-seat" data-walk="seat">
          {edge === 'above' ? (
            <LengthField
              field={metalUnderKeyField(look, cutKey)}
              column="seat"
              isLabelShown
              shortLabel="Metal under the key"
            />
          ) : null}
          <LengthField
            field={rodField(look, cutKey)}
            column="seat"
            isLabelShown
            shortLabel={edge === 'above' ? 'or: rod, floor to crest' : 'Rod, floor to crest'}
          />
        </div>
      ) : null}
    </>
  );
}

function noteFor(edge: 'level' | 'above' | 'unknown' | null): { note: string } | Record<string, never> {
  if (edge === 'level') return { note: 'Assumed level to within what the eye sees; that counts in the ±.' };
  if (edge === null)
    return { note: 'Until it is answered, a wide guess counts, and the ± grows by it: the answer says so.' };
  if (edge === 'unknown')
    return { note: 'Then choose “Stands up by” below, or read a rod stood in a chamber: neither needs it.' };
  return {};
}
