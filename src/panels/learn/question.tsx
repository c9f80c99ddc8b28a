/** One question of a round: the cylinder in section, a prediction locked in, the turn tried, the difference, the reason. */
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { answerOf, builtBy, comesTrue } from '../../model/learning/ask.ts';
import type { Prediction, Round, Step } from '../../model/learning/lesson.ts';
import { readScene } from '../../model/learning/scene.ts';
import type { MakePracticeBench } from '../shared/services.tsx';
import { fill, lengthText } from './fill.ts';
import { PredictionField } from './prediction-field.tsx';
import { askText, predictionText, whyText } from './prediction-words.ts';
import { type Motion, type Phase, SceneView } from './scene-view.tsx';
import { sayAfter, sayBefore } from './scene-words.ts';
import { useWords } from './words-context.ts';

type QuestionProps = {
  readonly round: Round;
  readonly step: Step;
  readonly make: MakePracticeBench | null;
  /** When the reveal is over. */
  readonly onSeen: (prediction: Prediction | null) => void;
  /** What can follow, shown when it was seen. */
  readonly next: ReactNode;
};

export function Question({ round, step, make, onSeen, next }: QuestionProps) {
  const words = useWords();
  const { common } = words;
  const { unit } = round;
  const ruler = { unit, tongue: words.tongue };
  const [prediction, setPrediction] = useState<Prediction | null>(step.kind === 'place' ? 0 : null);
  const [phase, setPhase] = useState<Phase>('asked');
  const [motion, setMotion] = useState<Motion>('key');
  const [lacks, setLacks] = useState(false);
  const end = (made = prediction) => {
    setPhase('seen');
    onSeen(made);
  };
  const start = (made: Prediction | null) => {
    setPrediction(made);
    setLacks(false);
    setPhase('moving');
    if (step.truth.tries === 'key out') end(made);
  };
  const isWrong = phase !== 'asked' && prediction !== null && !comesTrue(step, prediction);
  const own = isWrong ? builtBy(step, prediction) : null;
  return (
    <section className="question" aria-labelledby="question">
      <h3 className="question-ask" id="question" tabIndex={-1}>
        {askText(round, step, words)}
      </h3>
      {phase === 'asked' ? (
        <form
          className="question-form"
          onSubmit={(event) => {
            event.preventDefault();
            if (prediction === null) setLacks(true);
            else start(prediction);
          }}
        >
          <PredictionField round={round} step={step} value={prediction} onPredict={setPrediction} />
          <p className="question-lacks" role="status">
            {lacks && prediction === null
              ? step.kind === 'length'
                ? common.nothingTyped
                : common.nothingYet
              : ''}
          </p>
          <div className="question-buttons">
            <button type="submit" className="button" data-kind="start">
              {common.lock}
            </button>
            <button type="button" className="button" data-kind="quiet" onClick={() => start(null)}>
              {common.skip}
            </button>
          </div>
        </form>
      ) : (
        <div className="question-form">
          <p className="question-made">
            {prediction === null
              ? common.notPredicted
              : fill(common.predicted, { what: predictionText(prediction, step, round, words) }, ruler)}
          </p>
          {phase === 'moving' ? (
            <button type="button" className="button" autoFocus onClick={() => end()}>
              {common.showEnd}
            </button>
          ) : (
            <Result round={round} step={step} prediction={prediction} />
          )}
        </div>
      )}
      <div className="scenes" data-count={own === null ? 1 : 2}>
        {make === null || own === null ? null : (
          <SceneView key="own" make={make} scene={own} phase={phase} title={common.yours} unit={unit} />
        )}
        {make === null ? (
          <div className="scene-place" />
        ) : (
          <SceneView
            key="truth"
            make={make}
            scene={step.truth}
            phase={phase}
            title={own === null ? null : common.asItIs}
            unit={unit}
            onMotion={setMotion}
            onEnd={() => end()}
          />
        )}
      </div>
      <p className="visually-hidden" role="status">
        {liveText()}
      </p>
      {phase === 'seen' ? (
        <>
          <div className="question-why">
            <h3>{common.why}</h3>
            <p>{whyText(round, step, words)}</p>
          </div>
          {next}
        </>
      ) : null}
    </section>
  );

  /** What the picture shows, for those who do not see it. */
  function liveText(): string {
    if (phase === 'asked') return sayBefore(readScene(step.truth), words, unit);
    if (phase === 'moving') return motion === 'key' ? common.keyGoingIn : common.turning;
    const said = (title: string, scene: typeof step.truth) =>
      `${title}: ${sayAfter(readScene(scene), words, unit).join(' ')}`;
    return [...(own === null ? [] : [said(common.yours, own)]), said(common.asItIs, step.truth)].join(' ');
  }
}

/** What was predicted against what happens; where the focus goes when it was seen. */
function Result({
  round,
  step,
  prediction,
}: {
  readonly round: Round;
  readonly step: Step;
  readonly prediction: Prediction | null;
}) {
  const words = useWords();
  const { common } = words;
  const ruler = { unit: round.unit, tongue: words.tongue };
  const place = useRef<HTMLParagraphElement>(null);
  useEffect(() => place.current?.focus({ preventScroll: true }), []);
  const answer = answerOf(step);
  const what = predictionText(answer, step, round, words);
  const isTrue = prediction !== null && comesTrue(step, prediction);
  const off =
    step.kind === 'choose' || prediction === null || isTrue
      ? ''
      : fill(common.youExpected, { by: lengthText(Number(prediction) - Number(answer), ruler) }, ruler);
  return (
    <p className="question-result" ref={place} tabIndex={-1}>
      {isTrue ? common.isSo : fill(prediction === null ? common.happens : common.isNot, { what }, ruler)}{' '}
      {off}
    </p>
  );
}
