/** The master pins of one chamber, as they lie in it: the top one first. Order, ends by picture, adding and taking out. */
import type { ChamberRow } from '../../model/edit/chamber-rows.ts';
import {
  addMasterPin,
  type MasterEnd,
  masterEndSeen,
  MOST_MASTER_PINS,
  moveMasterPin,
  removeMasterPin,
  setMasterEnd,
} from '../../model/edit/edit-master-pins.ts';
import { lengthOf } from '../../model/measured/part-ends.ts';
import type { Part } from '../../model/schema/parts-schema.ts';
import { formatLength } from '../../model/units/format-length.ts';
import { Choice } from '../shared/choice.tsx';
import type { Look } from '../shared/look.ts';
import { useEdit, useServices } from '../shared/services.tsx';
import { masterPinsUsed } from './chamber-columns.ts';
import { ShapePicture } from './shape-picture.tsx';
import './master-pins.css';

type MasterPinsProps = { readonly row: ChamberRow; readonly look: Look };

export function MasterPins({ row, look }: MasterPinsProps) {
  const edit = useEdit();
  const { newId } = useServices();
  const { parts, number, chamber } = row;
  const { plan } = look.selection;
  if (parts === null || parts.driver === null || !masterPinsUsed(look)) return null;
  const pins = parts.masterPins;
  const isFull = pins.length >= MOST_MASTER_PINS;
  return (
    <section className="master-pins" aria-label={`Master pins, chamber ${number}`}>
      <p className="choice-question">Master pins, the top one first</p>
      {pins.length === 0 ? <p className="quiet small">None in this chamber.</p> : null}
      <ol className="master-list" reversed>
        {[...pins].reverse().map((pin) => (
          <MasterPin key={pin.id} pin={pin} row={row} look={look} />
        ))}
      </ol>
      <button
        type="button"
        className="button"
        disabled={isFull}
        onClick={() =>
          edit(`A master pin more, chamber ${number}`, (job) =>
            addMasterPin(job, plan, chamber.id, undefined, newId),
          )
        }
      >
        Add a master pin on top
      </button>
    </section>
  );
}

function MasterPin({ pin, row, look }: MasterPinsProps & { readonly pin: Part }) {
  const edit = useEdit();
  const { plan } = look.selection;
  const { unit } = look.job.settings;
  const { number, chamber, parts } = row;
  const pins = parts?.masterPins ?? [];
  const at = pins.indexOf(pin);
  const name = pins.length > 1 ? `Master pin ${at + 1}` : 'Master pin';
  const move = (way: 'up' | 'down') => () =>
    edit(`${name}, chamber ${number}: one place ${way}`, (job) =>
      moveMasterPin(job, plan, chamber.id, pin.id, way),
    );
  return (
    <li className="master-pin">
      <div className="master-head">
        <strong>{name}</strong>
        <span className="number">
          {pin.length === undefined
            ? 'not measured yet'
            : formatLength(lengthOf(pin.length, 0), { unit, keepsPlaces: true, hasUnit: true })}
        </span>
        {pins.length < 2 ? null : (
          <>
            <button
              type="button"
              className="button"
              data-kind="quiet"
              aria-label={`${name}: one place up`}
              disabled={at === pins.length - 1}
              onClick={move('up')}
            >
              ↑
            </button>
            <button
              type="button"
              className="button"
              data-kind="quiet"
              aria-label={`${name}: one place down`}
              disabled={at === 0}
              onClick={move('down')}
            >
              ↓
            </button>
          </>
        )}
        <button
          type="button"
          className="button"
          data-kind="quiet"
          aria-label={`Take it out: ${name.toLowerCase()}`}
          onClick={() =>
            edit(`${name} out of chamber ${number}`, (job) => removeMasterPin(job, plan, chamber.id, pin.id))
          }
        >
          Take it out
        </button>
      </div>
      <div className="master-ends">
        <EndQuestion pin={pin} which="upper" question="Its top" />
        <EndQuestion pin={pin} which="lower" question="Its lower end" />
      </div>
    </li>
  );
}

type EndQuestionProps = { readonly pin: Part; readonly which: 'upper' | 'lower'; readonly question: string };

function EndQuestion({ pin, which, question }: EndQuestionProps) {
  const edit = useEdit();
  const seen = masterEndSeen(pin, which);
  const options: readonly { value: MasterEnd; label: string }[] = [
    { value: 'broken edge', label: 'Broken edge' },
    { value: 'sharp edge', label: 'Sharp edge' },
    { value: 'domed', label: 'Domed' },
  ];
  return (
    <Choice
      question={question}
      options={options.map((each) => ({
        ...each,
        picture: <EndPicture end={each.value} which={which} />,
      }))}
      value={seen}
      onChoose={(end) =>
        edit(`Master pin, ${question.toLowerCase()}: ${end}`, (job) => setMasterEnd(job, pin.id, which, end))
      }
      {...(seen === null && {
        note:
          which === 'upper' ? 'Until you choose: assumed domed.' : 'Until you choose: assumed a broken edge.',
      })}
    />
  );
}

function EndPicture({ end, which }: { readonly end: MasterEnd; readonly which: 'upper' | 'lower' }) {
  return (
    <span className={which === 'lower' ? 'is-turned-over' : undefined}>
      <ShapePicture name={`end ${end}`} />
    </span>
  );
}
