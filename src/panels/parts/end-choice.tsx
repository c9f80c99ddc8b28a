import { type EndName, END_NAMES } from '../../model/edit/end-forms.ts';
import { Choice } from '../shared/choice.tsx';
import { EndPicture } from './pin-picture.tsx';

const LABELS: Readonly<Record<EndName, string>> = {
  domed: 'Domed',
  'broken edge': 'Flat, broken edge',
  'sharp edge': 'Flat, sharp edge',
  'rounded edge': 'Flat, rounded edge',
  dimpled: 'Dimpled',
  pointed: 'Pointed',
  rounded: 'Half round',
};

const ORDER: Readonly<Record<0 | 1, readonly EndName[]>> = {
  0: ['dimpled', 'pointed', 'rounded', 'broken edge', 'rounded edge', 'sharp edge'],
  1: ['domed', 'broken edge', 'rounded edge', 'sharp edge'],
};

/** The end of a pin by picture. A shape that is none of the usual ones for that end is offered once a part has it. */
export function EndChoice({
  which,
  value,
  onChoose,
}: {
  readonly which: 0 | 1;
  readonly value: EndName | null;
  readonly onChoose: (name: EndName) => void;
}) {
  const usual = ORDER[which];
  const names =
    value === null || usual.includes(value)
      ? usual
      : END_NAMES.filter((n) => usual.includes(n) || n === value);
  return (
    <Choice
      question={which === 0 ? 'Lower end, to the key' : 'Upper end, to the shear line'}
      options={names.map((name) => ({
        value: name,
        label: LABELS[name],
        picture: <EndPicture name={name} which={which} />,
      }))}
      value={value}
      onChoose={onChoose}
      {...(value === null && { note: 'Until you choose: not looked at.' })}
    />
  );
}

/** "dimpled below, domed above" */
export function endWords(lower: EndName | null, upper: EndName | null): string {
  const words = [
    lower === null ? '' : `${LABELS[lower].toLowerCase()} below`,
    upper === null ? '' : `${LABELS[upper].toLowerCase()} above`,
  ].filter((each) => each !== '');
  return words.length === 0 ? 'ends not looked at' : words.join(', ');
}
