/**
 * The next part: its length and Enter, and the one after it has the field. What it is stays as it was for the last one until
 * somebody says otherwise, so that a caliper that types fills a bag without another key.
 */
import { lazy, Suspense, useState } from 'react';
import { nextLabel } from '../../model/edit/labels.ts';
import { addParts, roomForParts } from '../../model/edit/loose-parts.ts';
import { lengthOf } from '../../model/measured/part-ends.ts';
import type { Part } from '../../model/schema/parts-schema.ts';
import { formatBoth } from '../../model/units/format-length.ts';
import { type FieldSpec, PLAUSIBLE } from '../measure/field-spec.ts';
import { LengthField } from '../measure/length-field.tsx';
import type { Look } from '../shared/look.ts';
import { useServices } from '../shared/services.tsx';
import { type Like, likeWords, type SetLike } from './next-like.ts';
import { PartPicture } from './pin-picture.tsx';
import './entry-card.css';

const LikeQuestions = lazy(async () => ({ default: (await import('./like-questions.tsx')).LikeQuestions }));

type EntryCardProps = {
  readonly look: Look;
  readonly like: Like;
  readonly setLike: SetLike;
  readonly isFirst: boolean;
  readonly onPaste: (text: string) => void;
};

const WHAT: Readonly<Record<Part['kind'], string>> = {
  pin: 'Length',
  ball: 'Diameter',
  spring: 'Squeezed solid',
};

export function EntryCard({ look, like, setLike, isFirst, onPaste }: EntryCardProps) {
  const [said, setSaid] = useState('');
  const [isOpen, setOpen] = useState(isFirst);
  const label = nextLabel(look.job.parts, like.kind);
  const room = roomForParts(look.job);
  const field = useNextField(look, like, label, setSaid);
  return (
    <section
      className="entry"
      aria-labelledby="entry-title"
      onPaste={(event) => {
        const text = event.clipboardData.getData('text');
        // A single value is the field's own business.
        if (!/[\t\r\n]/u.test(text.trim())) return;
        event.preventDefault();
        onPaste(text);
      }}
    >
      <h3 id="entry-title">
        Next part <span className="entry-label">{label}</span>
      </h3>
      {room === 0 ? (
        <p>
          This job holds as many parts as a job can. Take some out, or give parts that are alike a quantity.
        </p>
      ) : (
        <div className="entry-line">
          <PartPicture kind={like.kind} lower={like.lower} upper={like.upper} />
          <LengthField field={field} isLabelShown shortLabel={field.label.replace(`, ${label}`, '')} />
          <p className="small quiet entry-hint">
            Enter puts it into the bag.
            <button type="button" className="button" onClick={() => onPaste('')}>
              Paste from a spreadsheet
            </button>
          </p>
        </div>
      )}
      <output className="entry-said small">{said}</output>
      <details className="fold" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>
          <span className="fold-title">What it is</span>
          <span className="quiet small entry-like">{likeWords(like, look)}</span>
        </summary>
        {isOpen ? (
          <Suspense fallback={null}>
            <LikeQuestions look={look} like={like} setLike={setLike} />
          </Suspense>
        ) : null}
      </details>
    </section>
  );
}

/** The field whose value is the next part. It is empty again as soon as the part is in the bag. */
function useNextField(look: Look, like: Like, label: string, say: (words: string) => void): FieldSpec {
  const { newId } = useServices();
  const { unit } = look.job.settings;
  const isOnBall = like.kind === 'pin' && like.onBall !== null;
  const what = isOnBall ? 'Ball + pin together' : WHAT[like.kind];
  return {
    id: 'part/next/length',
    label: `${what}, ${label}`,
    step: `${label} added`,
    value: undefined,
    set: (job, value) => {
      if (value === undefined) return job;
      const isBall = like.kind === 'ball';
      say(`${label} is in the bag: ${formatBoth(lengthOf(value, 0), unit)}.`);
      return addParts(
        job,
        [
          {
            ...like,
            label: null,
            length: isBall ? null : value,
            diameter: isBall ? value : like.diameter,
            onBall: isOnBall ? like.onBall : null,
          },
        ],
        newId,
      );
    },
    plausible: isOnBall
      ? PLAUSIBLE.lowerStack
      : { pin: PLAUSIBLE.pinLength, ball: PLAUSIBLE.diameter, spring: PLAUSIBLE.spring }[like.kind],
    help: isOnBall
      ? 'ball and pin'
      : ({ pin: 'pin length', ball: 'ball', spring: 'spring solid' } as const)[like.kind],
  };
}
