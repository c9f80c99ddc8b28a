/**
 * Stacks for a second line from cut numbers alone: what an old pinning sheet gives. Nothing here comes from or goes into the job,
 * but for the thinnest master pin; the stacks are drawn in section with their lengths.
 */
import { useState } from 'react';
import { numberStack } from '../../drawing/number-stack.ts';
import { type ReadNumbers, readNumbers } from '../../model/keying/numbers-plan.ts';
import { thresholdsOf } from '../../model/rest/thresholds.ts';
import { formatLength } from '../../model/units/format-length.ts';
import { DrawingSvg } from '../shared/drawing-svg.tsx';
import type { Look } from '../shared/look.ts';
import './keying.css';

/** px */
const WIDTH = 190;
const HEIGHT = 300;

const FIELDS = [
  ['first', 'Cuts of the keys at the first line', '5 3 7 2 4, 5 1 7 6 4'],
  ['second', 'Cuts of the key at the second line', '2 8 3 5 6'],
  ['offset', 'Between the lines, in increments', '10'],
  ['total', 'Whole stack, in increments', '23'],
  ['increment', 'One increment', '.0125'],
  ['bottomAtNone', 'Bottom pin of number 0', '.110'],
  ['topAtNone', 'Top pin of number 0', '.050'],
] as const;

type Texts = Record<(typeof FIELDS)[number][0], string>;
const NOTHING: Texts = {
  first: '',
  second: '',
  offset: '',
  total: '',
  increment: '',
  bottomAtNone: '',
  topAtNone: '',
};

export function StacksFromNumbers({ look }: { readonly look: Look }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="fold keying" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>
        <span className="fold-title">Stacks from cut numbers</span>
        <span className="fold-summary">for a second line, as an old pinning sheet gives them</span>
      </summary>
      {isOpen ? <Body look={look} /> : null}
    </details>
  );
}

function Body({ look }: { readonly look: Look }) {
  const [texts, setTexts] = useState(NOTHING);
  const { unit } = look.job.settings;
  const isAsked = texts.first.trim() !== '';
  const read: ReadNumbers | null = isAsked
    ? readNumbers(texts, unit, thresholdsOf(look.job).thinnestMasterPin)
    : null;
  return (
    <div className="keying-body">
      <p className="small quiet">
        Larger numbers are deeper cuts. One number for each chamber, in the order they sit; several keys
        parted by commas; a dash where the second line does not pass.
      </p>
      <div className="keying-fields">
        {FIELDS.map(([name, title, example]) => (
          <label key={name} className="keying-field">
            <span>{title}</span>
            <input
              className="keying-input"
              type="text"
              autoComplete="off"
              value={texts[name]}
              placeholder={example}
              onChange={({ target }) => setTexts({ ...texts, [name]: target.value })}
            />
          </label>
        ))}
      </div>
      <div role="status">
        {read === null ? null : read.type === 'error' ? (
          <p>{read.message}</p>
        ) : (
          <Stacks plan={read} unit={unit} />
        )}
      </div>
    </div>
  );
}

function Stacks({
  plan,
  unit,
}: {
  readonly plan: Extract<ReadNumbers, { type: 'plan' }>;
  readonly unit: 'in' | 'mm';
}) {
  const say = (mm: number) => formatLength(mm, { unit, keepsPlaces: true });
  return (
    <>
      <ul className="number-stacks">
        {plan.chambers.map((each, i) => (
          <li key={each.number}>
            {each.type === 'error' ? (
              <p className="small">
                Chamber {i + 1}: {each.message}
              </p>
            ) : (
              <>
                <DrawingSvg
                  drawing={numberStack(each.lengths, {
                    chamber: i + 1,
                    width: WIDTH,
                    height: HEIGHT,
                    firstLine: each.firstLine,
                    secondLine: each.secondLine,
                    say,
                  })}
                />
                <p className="visually-hidden">{each.words}</p>
                {each.lengths.thin.length === 0 ? null : (
                  <p className="small">
                    Too thin to keep: {each.lengths.thin.map(say).join(', ')}. It can tip over and jam.
                  </p>
                )}
              </>
            )}
          </li>
        ))}
      </ul>
      <p className="small quiet">
        In section, heights true to each other, {unit}. Anyone with these lengths can cut a key.
      </p>
    </>
  );
}
