/** Where a prediction is made: one of a few, a length in any unit, or a place shown on a sketch of the line. */
import { useId, useState } from 'react';
import type { NumberStep, Prediction, Round, Step } from '../../model/learning/lesson.ts';
import { Choice } from '../shared/choice.tsx';
import { placeText, predictionText } from './prediction-words.ts';
import { TypedLength } from './typed-length.tsx';
import { useWords } from './words-context.ts';

type FieldProps = {
  readonly round: Round;
  readonly step: Step;
  readonly value: Prediction | null;
  readonly onPredict: (prediction: Prediction | null) => void;
};

export function PredictionField({ round, step, value, onPredict }: FieldProps) {
  const words = useWords();
  switch (step.kind) {
    case 'choose':
      return (
        <Choice
          question={words.common.yourPrediction}
          isQuestionHidden
          options={step.options.map((option) => ({
            value: option,
            label: predictionText(option, step, round, words),
          }))}
          value={typeof value === 'string' ? value : null}
          onChoose={onPredict}
        />
      );
    case 'length':
      return <LengthPrediction round={round} step={step} onPredict={onPredict} />;
    case 'place':
      return <PlacePrediction round={round} step={step} value={Number(value ?? 0)} onPredict={onPredict} />;
  }
}

type NumberFieldProps = {
  readonly round: Round;
  readonly step: NumberStep;
  readonly onPredict: (prediction: Prediction | null) => void;
};

function LengthPrediction({ round, step, onPredict }: NumberFieldProps) {
  const { common } = useWords();
  const [text, setText] = useState('');
  const unit = round.unit === 'in' ? common.unitIn : common.unitMm;
  return (
    <TypedLength
      label={common.lengthLabel}
      text={text}
      unit={round.unit}
      range={{ fromMm: step.range.from, toMm: step.range.to }}
      note={common.lengthNote.replace('{unit}', unit)}
      onText={(written, mm) => {
        setText(written);
        onPredict(mm);
      }}
    />
  );
}

/** mm. One step of the arrow keys: half a thousandth, or 0.01. */
const STEP_MM = { in: 0.0127, mm: 0.01 } as const;

function PlacePrediction({ round, step, value, onPredict }: NumberFieldProps & { readonly value: number }) {
  const id = useId();
  const words = useWords();
  const by = STEP_MM[round.unit];
  const most = Math.round(step.range.to / by);
  const steps = Math.round(value / by);
  const said = placeText(value, round, words);
  return (
    <div className="learn-place">
      <PlaceSketch share={steps / most} />
      <div className="learn-place-choice">
        <label className="choice-question" htmlFor={id}>
          {words.common.placeLabel}
        </label>
        <input
          id={id}
          className="learn-slider"
          type="range"
          min={-most}
          max={most}
          step={1}
          value={steps}
          aria-valuetext={said}
          onChange={(event) => onPredict(Number(event.target.value) * by)}
        />
        <output className="learn-place-said" htmlFor={id}>
          {said}
        </output>
      </div>
    </div>
  );
}

/** Not to scale: the line, the chamber, and the split where it was put. */
function PlaceSketch({ share }: { readonly share: number }) {
  const y = 60 - share * 44;
  return (
    <svg className="place-sketch" viewBox="0 0 96 120" aria-hidden="true">
      <path className="place-shell" d="M2 4H34V60H2ZM62 4H94V60H62Z" />
      <path className="place-plug" d="M2 60H34V116H2ZM62 60H94V116H62Z" />
      <path className="place-driver" d={`M36 4H60V${y - 0.8}H36Z`} />
      <path className="place-pin" d={`M36 ${y + 0.8}H60V116H36Z`} />
      <path className="place-line" d="M0 60H96" />
    </svg>
  );
}
