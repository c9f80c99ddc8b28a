/** Everything about one part: ends, across, alone and on a ball, condition, where from and where it is; copied, taken out. */
import { useEffect, useRef } from 'react';
import {
  setDimpleMouth,
  setHeightOnBall,
  setPartCondition,
  setPartEnd,
  setPartFrom,
  setPartOriginal,
} from '../../model/edit/edit-parts.ts';
import { setPartLength } from '../../model/edit/edit-stack.ts';
import { copyPart } from '../../model/edit/loose-parts.ts';
import type { Look } from '../shared/look.ts';
import { useEdit, useServices } from '../shared/services.tsx';
import { type FieldSpec, PLAUSIBLE } from '../measure/field-spec.ts';
import { LengthField } from '../measure/length-field.tsx';
import { type BagRow, endsOf, rowWords } from './bag-rows.ts';
import { EndChoice } from './end-choice.tsx';
import { ConditionChoice, KIND_LABELS, OriginalChoice } from './like-questions.tsx';
import { placesOf } from './next-like.ts';
import { PartPicture } from './pin-picture.tsx';
import { PlainField } from './plain-field.tsx';
import { SpringQuestions } from './spring-questions.tsx';
import { WaistQuestions } from './waist-questions.tsx';
import '../shared/dialog.css';
import './part-dialog.css';

type PartDialogProps = {
  readonly look: Look;
  readonly row: BagRow;
  readonly onClose: () => void;
  readonly onRemove: (part: string) => void;
};

export function PartDialog({ look, row, onClose, onRemove }: PartDialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const edit = useEdit();
  const { newId } = useServices();
  const { part } = row;
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    return () => element?.close();
  }, []);
  const words = rowWords(look.job, row);
  return (
    <dialog ref={dialog} className="dialog part-dialog" aria-labelledby="part-title" onClose={onClose}>
      <div className="part-head">
        <PartPicture kind={part.kind} {...endsOf(part)} />
        <h2 id="part-title">
          {part.label} <span className="quiet">{KIND_LABELS[part.kind].toLowerCase()}</span>
        </h2>
      </div>
      {words === '' ? null : <p className="small quiet">{words}</p>}
      <div className="like-questions">
        {part.kind === 'pin' ? (
          <>
            <EndChoice
              which={0}
              value={endsOf(part).lower}
              onChoose={(name) =>
                edit(`${part.label}: lower end ${name}`, (job) => setPartEnd(job, part.id, 0, name))
              }
            />
            <EndChoice
              which={1}
              value={endsOf(part).upper}
              onChoose={(name) =>
                edit(`${part.label}: upper end ${name}`, (job) => setPartEnd(job, part.id, 1, name))
              }
            />
          </>
        ) : null}
        <div className="like-row">
          {lengthFields(row, newId).map(({ short, ...field }) => (
            <LengthField key={field.id} field={field} isLabelShown shortLabel={short} />
          ))}
        </div>
        {part.kind === 'pin' ? <WaistQuestions part={part} /> : null}
        {part.kind === 'spring' ? <SpringQuestions part={part} /> : null}
        <div className="like-row">
          <ConditionChoice
            value={part.condition ?? null}
            onChoose={(condition) =>
              edit(`${part.label}: ${condition ?? 'condition not said'}`, (job) =>
                setPartCondition(job, part.id, condition),
              )
            }
          />
          <OriginalChoice
            value={part.original}
            onChoose={(original) =>
              edit(`${part.label}: ${original ? 'original' : 'not original'}`, (job) =>
                setPartOriginal(job, part.id, original),
              )
            }
          />
          <PlainField
            label={`Where ${part.label} came from`}
            isLabelShown
            shortLabel="Where from"
            value={part.from ?? ''}
            offers={placesOf(look)}
            commit={(from) => {
              edit(`${part.label}: where from`, (job) => setPartFrom(job, part.id, from));
              return null;
            }}
          />
        </div>
      </div>
      <div className="dialog-buttons">
        <button type="button" className="button" data-kind="main" onClick={onClose}>
          Done
        </button>
        <button
          type="button"
          className="button"
          onClick={() => {
            edit(`${part.label} copied`, (job) => copyPart(job, part.id, newId));
            onClose();
          }}
        >
          Put in another like it
        </button>
        <button
          type="button"
          className="button part-out"
          onClick={() => {
            onClose();
            onRemove(part.id);
          }}
        >
          Take it out …
        </button>
      </div>
    </dialog>
  );
}

type ShortField = FieldSpec & { readonly short: string };

function lengthFields({ part, together }: BagRow, newId: () => string): ShortField[] {
  const own = (
    name: 'length' | 'diameter' | 'solid' | 'free',
    short: string,
    plausible: FieldSpec['plausible'],
    help: FieldSpec['help'],
  ): ShortField => ({
    id: `part/${part.id}/${name}`,
    label: `${short}, ${part.label}`,
    short,
    value: part[name],
    set: (job, value) => setPartLength(job, part.id, name, value),
    plausible,
    help,
  });
  if (part.kind === 'ball') return [own('diameter', 'Diameter', PLAUSIBLE.diameter, 'ball')];
  if (part.kind === 'spring')
    return [
      own('solid', 'Squeezed solid', PLAUSIBLE.spring, 'spring solid'),
      own('free', 'Free length', PLAUSIBLE.spring, 'spring free'),
    ];
  const ball = together?.parts[0];
  const lower = part.ends?.[0];
  return [
    own('length', 'Length alone', PLAUSIBLE.pinLength, 'pin length'),
    ...(together === null || ball === undefined
      ? []
      : [
          {
            id: `group/${together.id}/height`,
            label: `Standing on its ball, ${part.label}`,
            short: 'Standing on its ball',
            value: together.height,
            set: (job, value) => setHeightOnBall(job, part.id, ball, value, newId),
            plausible: PLAUSIBLE.lowerStack,
            help: 'ball and pin',
          } satisfies ShortField,
        ]),
    own('diameter', 'Across', PLAUSIBLE.diameter, 'pin diameter'),
    ...(lower?.kind === 'cup'
      ? [
          {
            id: `part/${part.id}/dimple`,
            label: `Across the dimple, ${part.label}`,
            short: 'Across the dimple',
            value: lower.mouthDiameter,
            set: (job, value) => setDimpleMouth(job, part.id, value),
            plausible: { fromMm: 0.2, toMm: 8 },
            help: 'pin diameter',
          } satisfies ShortField,
        ]
      : []),
  ];
}
