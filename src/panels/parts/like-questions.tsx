/** What the next parts are, question by question: kind, ends, across, alone or on a ball, how many, where from. */
import { useState } from 'react';
import { addParts, type NewPart } from '../../model/edit/loose-parts.ts';
import { nextLabel } from '../../model/edit/labels.ts';
import { lengthOf } from '../../model/measured/part-ends.ts';
import type { LengthValue } from '../../model/schema/leaf.ts';
import type { Part } from '../../model/schema/parts-schema.ts';
import { formatLength } from '../../model/units/format-length.ts';
import { type FieldSpec, PLAUSIBLE } from '../measure/field-spec.ts';
import { LengthField } from '../measure/length-field.tsx';
import { Choice } from '../shared/choice.tsx';
import type { Look } from '../shared/look.ts';
import { useEdit, useServices } from '../shared/services.tsx';
import { CountField } from './count-field.tsx';
import { EndChoice } from './end-choice.tsx';
import { ballsOf, type Like, placesOf, type SetLike } from './next-like.ts';
import { PartPicture } from './pin-picture.tsx';
import { PlainField } from './plain-field.tsx';

export type LikeProps = { readonly look: Look; readonly like: Like; readonly setLike: SetLike };

export function LikeQuestions({ look, like, setLike }: LikeProps) {
  return (
    <div className="like-questions">
      <div className="like-row">
        <Choice
          question="What is it?"
          options={(['pin', 'ball', 'spring'] as const).map((kind) => ({
            value: kind,
            label: KIND_LABELS[kind],
            picture: <PartPicture kind={kind} lower="dimpled" upper="domed" />,
          }))}
          value={like.kind}
          onChoose={(kind) => setLike({ kind, onBall: null })}
          note="Bottom pin, driver or master pin follows from where it is put."
        />
      </div>
      {like.kind === 'pin' ? <PinQuestions look={look} like={like} setLike={setLike} /> : null}
      <div className="like-row">
        <CountField
          label="How many alike"
          value={like.quantity}
          least={1}
          onCount={(quantity) => setLike({ quantity })}
        />
        <PlainField
          label="Where from"
          isLabelShown
          value={like.from}
          offers={placesOf(look)}
          commit={(from) => {
            setLike({ from: from.trim() });
            return null;
          }}
        />
      </div>
      <div className="like-row">
        <ConditionChoice value={like.condition ?? null} onChoose={(condition) => setLike({ condition })} />
        <OriginalChoice value={like.original} onChoose={(original) => setLike({ original })} />
      </div>
    </div>
  );
}

export const KIND_LABELS: Readonly<Record<Part['kind'], string>> = {
  pin: 'Pin',
  ball: 'Ball',
  spring: 'Spring',
};

function PinQuestions({ look, like, setLike }: LikeProps) {
  const across: FieldSpec = {
    id: 'part/next/diameter',
    label: 'Across the next pins',
    value: like.diameter ?? undefined,
    // Kept here until a part has it: the job stays as it is.
    set: (job, value) => {
      setLike({ diameter: value ?? null });
      return job;
    },
    plausible: PLAUSIBLE.diameter,
    help: 'pin diameter',
  };
  return (
    <>
      <EndChoice which={0} value={like.lower} onChoose={(lower) => setLike({ lower })} />
      <EndChoice which={1} value={like.upper} onChoose={(upper) => setLike({ upper })} />
      <div className="like-row">
        <LengthField field={across} isLabelShown shortLabel="Across" />
        <Measured look={look} like={like} setLike={setLike} />
      </div>
    </>
  );
}

/** Alone, or standing on a ball: then the reading is of both, and belongs to both. */
function Measured({ look, like, setLike }: LikeProps) {
  const [isOnBall, setOnBall] = useState(like.onBall !== null);
  const { loose, inUse } = ballsOf(look);
  const { unit } = look.job.settings;
  const name = (ball: Part) => {
    const size =
      ball.diameter === undefined ? 'not measured' : formatLength(lengthOf(ball.diameter, 0), { unit });
    return `${ball.label}, ${size}`;
  };
  const [isNew, setNew] = useState(loose.length === 0);
  const known = [...loose, ...inUse];
  return (
    <>
      <Choice
        question="Measured"
        options={[
          { value: 'alone', label: 'Alone' },
          { value: 'on a ball', label: 'Standing on a ball' },
        ]}
        value={isOnBall ? 'on a ball' : 'alone'}
        onChoose={(way) => {
          setOnBall(way === 'on a ball');
          setLike({ onBall: way === 'alone' ? null : (loose[0]?.id ?? null) });
        }}
      />
      {isOnBall && known.length > 0 ? (
        <label className="ball-select">
          <span className="length-label">The ball under it</span>
          <select
            value={isNew && like.onBall === null ? '' : (like.onBall ?? '')}
            onChange={(event) => {
              const id = event.target.value;
              setNew(id === '');
              setLike({ onBall: id === '' ? null : id });
            }}
          >
            <option value="">another ball …</option>
            {loose.map((ball) => (
              <option key={ball.id} value={ball.id}>
                {name(ball)}
              </option>
            ))}
            {inUse.map((ball) => (
              <option key={ball.id} value={ball.id}>
                {name(ball)}, in the cylinder
              </option>
            ))}
          </select>
        </label>
      ) : null}
      {isOnBall && like.onBall === null ? (
        <NewBall look={look} onBall={(onBall) => setLike({ onBall })} />
      ) : null}
    </>
  );
}

/** Puts the ball into the bag that pins were measured on, with how many there are like it. */
function NewBall({ look, onBall }: { readonly look: Look; readonly onBall: (id: string) => void }) {
  const edit = useEdit();
  const { newId } = useServices();
  const [diameter, setDiameter] = useState<LengthValue | null>(null);
  const [quantity, setQuantity] = useState(Math.max(1, look.rows.rows.length));
  const label = nextLabel(look.job.parts, 'ball');
  const field: FieldSpec = {
    id: 'part/next/ball',
    label: `Diameter of the ball ${label}`,
    value: diameter ?? undefined,
    set: (job, value) => {
      setDiameter(value ?? null);
      return job;
    },
    plausible: PLAUSIBLE.diameter,
    help: 'ball',
  };
  const store = () => {
    if (diameter === null) return;
    const id = newId();
    const ball: NewPart = {
      kind: 'ball',
      label: null,
      length: null,
      onBall: null,
      diameter,
      lower: null,
      upper: null,
      quantity,
      from: '',
      original: false,
      condition: null,
    };
    edit(`${label} added`, (job) => addParts(job, [ball], () => id));
    onBall(id);
  };
  return (
    <div className="new-ball">
      <LengthField field={field} isLabelShown shortLabel="Its diameter" />
      <CountField label="How many like it" value={quantity} least={1} onCount={setQuantity} />
      <button type="button" className="button" disabled={diameter === null} onClick={store}>
        Put {label} into the bag
      </button>
    </div>
  );
}

export function ConditionChoice({
  value,
  onChoose,
}: {
  readonly value: Part['condition'] | null;
  readonly onChoose: (condition: NonNullable<Part['condition']> | null) => void;
}) {
  return (
    <Choice
      question="Condition"
      options={[
        { value: 'good', label: 'Good' },
        { value: 'fair', label: 'Fair' },
        { value: 'poor', label: 'Poor' },
        { value: 'unsaid', label: 'Not said' },
      ]}
      value={value ?? 'unsaid'}
      onChoose={(word) => onChoose(word === 'unsaid' ? null : word)}
    />
  );
}

export function OriginalChoice({
  value,
  onChoose,
}: {
  readonly value: boolean;
  readonly onChoose: (original: boolean) => void;
}) {
  return (
    <Choice
      question="Original part of a cylinder?"
      options={[
        { value: 'no', label: 'No' },
        { value: 'yes', label: 'Yes, never filed' },
      ]}
      value={value ? 'yes' : 'no'}
      onChoose={(word) => onChoose(word === 'yes')}
    />
  );
}
