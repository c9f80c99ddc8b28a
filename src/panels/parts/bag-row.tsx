import { setHeightOnBall, setPartLabel, setPartQuantity } from '../../model/edit/edit-parts.ts';
import { setPartLength } from '../../model/edit/edit-stack.ts';
import { labelTrouble } from '../../model/edit/labels.ts';
import type { Look } from '../shared/look.ts';
import { useEdit, useServices } from '../shared/services.tsx';
import { type FieldSpec, PLAUSIBLE } from '../measure/field-spec.ts';
import { LengthField } from '../measure/length-field.tsx';
import type { RowPlace } from './bag-list.tsx';
import { type BagRow, endsOf, rowWords } from './bag-rows.ts';
import { CountField } from './count-field.tsx';
import { PartPicture } from './pin-picture.tsx';
import { PlainField } from './plain-field.tsx';

type BagRowProps = {
  readonly look: Look;
  readonly row: BagRow;
  readonly place: RowPlace;
  /** Texts that are not stored yet, of fields that scrolled out of sight. */
  readonly kept: Map<string, string>;
  readonly onOpen: (part: string) => void;
};

/** One part in one line: label, picture, its length, how many, and the rest in words. */
export function BagRowView({ look, row, place, kept, onOpen }: BagRowProps) {
  const edit = useEdit();
  const { part } = row;
  const field = useReadingField(row, kept);
  return (
    <div
      className="bag-row"
      role="row"
      aria-rowindex={place.index}
      data-folded={place.isFolded}
      style={{ top: place.top, height: place.height }}
    >
      <div role="rowheader" className="bag-label">
        <PlainField
          label={`Label of ${part.label}`}
          value={part.label}
          maxLength={200}
          commit={(text) => {
            const trouble = labelTrouble(look.job.parts, part.id, text);
            if (trouble === null)
              edit(`${part.label} is now ${text.trim()}`, (job) => setPartLabel(job, part.id, text));
            return trouble;
          }}
        />
      </div>
      <div role="cell" className="bag-picture">
        <PartPicture kind={part.kind} {...endsOf(part)} />
      </div>
      <div role="cell" className="bag-length">
        <LengthField key={field.id} field={field} column="bag" />
      </div>
      <div role="cell" className="bag-quantity">
        <span aria-hidden="true" className="quiet">
          ×
        </span>
        <CountField
          label={`How many of ${part.label}`}
          isLabelShown={false}
          value={part.quantity}
          least={0}
          onCount={(quantity) =>
            edit(`${part.label}: ${quantity} of it`, (job) => setPartQuantity(job, part.id, quantity))
          }
        />
      </div>
      <div role="cell" className="bag-words">
        {rowWords(look.job, row)}
      </div>
      <div role="cell" className="bag-end">
        <button
          type="button"
          className="button bag-more"
          data-kind="quiet"
          aria-label={`${part.label}: more`}
          onClick={() => onOpen(part.id)}
        >
          <span aria-hidden="true">···</span>
        </button>
      </div>
    </div>
  );
}

/** The one figure of a part that its row shows: as it was measured. */
function useReadingField(row: BagRow, kept: Map<string, string>): FieldSpec {
  const { newId } = useServices();
  const { part, together } = row;
  const ball = together?.parts[0];
  if (together !== null && ball !== undefined)
    return {
      id: `group/${together.id}/height`,
      label: `${part.label} standing on its ball`,
      value: together.height,
      set: (job, value) => setHeightOnBall(job, part.id, ball, value, newId),
      plausible: PLAUSIBLE.lowerStack,
      help: 'ball and pin',
      kept,
    };
  const name = ({ pin: 'length', ball: 'diameter', spring: 'solid' } as const)[part.kind];
  return {
    id: `part/${part.id}/${name}`,
    label: `${{ pin: 'Length', ball: 'Diameter', spring: 'Squeezed solid' }[part.kind]} of ${part.label}`,
    value: part[name],
    set: (job, value) => setPartLength(job, part.id, name, value),
    plausible: { pin: PLAUSIBLE.pinLength, ball: PLAUSIBLE.diameter, spring: PLAUSIBLE.spring }[part.kind],
    help: ({ pin: 'pin length', ball: 'ball', spring: 'spring solid' } as const)[part.kind],
    kept,
  };
}
