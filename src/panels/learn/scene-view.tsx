/** One cylinder of a lesson on a bench of its own: in section, then the key goes in and the turn is tried, then close up. */
import { useEffect, useMemo, useState } from 'react';
import { withCaptions } from '../../drawing/captions.ts';
import { closeUpLarge } from '../../drawing/close-up-large.ts';
import { PRACTICE } from '../../model/learning/practice-job.ts';
import { readScene, type Scene } from '../../model/learning/scene.ts';
import { asRadians } from '../../model/radians.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import { LongSectionView } from '../section/long-section-view.tsx';
import { TurnView } from '../section/turn-view.tsx';
import { turnAttempt } from '../section/turn-words.ts';
import { homePose } from '../section/use-pose.ts';
import { useCaptions } from '../shared/captions-context.ts';
import { DrawingSvg } from '../shared/drawing-svg.tsx';
import { focusOf, type Look, lookAt } from '../shared/look.ts';
import { type MakePracticeBench, ServicesProvider, useServices, useView } from '../shared/services.tsx';
import { useWidth } from '../shared/use-width.ts';
import { sayAfter } from './scene-words.ts';
import { useWords } from './words-context.ts';

export type Phase = 'asked' | 'moving' | 'seen';
/** What moves just now. */
export type Motion = 'key' | 'turn';

type SceneViewProps = {
  readonly make: MakePracticeBench;
  readonly scene: Scene;
  readonly phase: Phase;
  readonly title: string | null;
  readonly unit: JobUnit;
  readonly onMotion?: (motion: Motion) => void;
  readonly onEnd?: () => void;
};

/** px. */
const MOST_HEIGHT = 300;
const CLOSE_UP_HEIGHT = 260;
/** rad. A plug that turns is left so far turned that it is seen. */
const LEFT_TURNED = asRadians(0.9);

export function SceneView({ make, scene, ...rest }: SceneViewProps) {
  const services = useServices();
  const bench = useMemo(() => make(scene.job, services), [make, scene.job, services]);
  return (
    <ServicesProvider value={bench}>
      <Stage scene={scene} {...rest} />
    </ServicesProvider>
  );
}

function Stage({ scene, phase, title, unit, onMotion, onEnd }: Omit<SceneViewProps, 'make'>) {
  const words = useWords();
  const look = lookAt(scene.job, PRACTICE);
  const isTurning = useView((view) => view.turn !== 0 || view.playing === 'turn');
  useMotion(scene, look, phase, onMotion, onEnd);
  return (
    <figure className="scene" data-phase={phase}>
      {title === null ? null : <h3 className="scene-title">{title}</h3>}
      <div className="scene-picture">
        {isTurning ? (
          <TurnView look={look} maxHeight={MOST_HEIGHT} />
        ) : (
          <LongSectionView look={look} maxHeight={MOST_HEIGHT} />
        )}
      </div>
      {phase !== 'seen' ? null : (
        <>
          {scene.tries === 'key out' ? null : <CloseUp scene={scene} look={look} unit={unit} />}
          <figcaption className="scene-said">
            {sayAfter(readScene(scene), words, unit).map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </figcaption>
        </>
      )}
    </figure>
  );
}

/** The stack at its line, key home and plug upright: where the figures are. */
function CloseUp({
  scene,
  look,
  unit,
}: {
  readonly scene: Scene;
  readonly look: Look;
  readonly unit: JobUnit;
}) {
  const [frame, width] = useWidth<HTMLDivElement>();
  const line = focusOf(look);
  const captions = useCaptions();
  const drawing = useMemo(
    () =>
      width === 0
        ? null
        : withCaptions(captions, () =>
            closeUpLarge(look.assembly, homePose(look), look.evaluation, {
              chamber: scene.chamber,
              ...(line !== null && { line }),
              width: Math.min(width, 620),
              maxHeight: CLOSE_UP_HEIGHT,
              unit,
            }),
          ),
    [look, scene.chamber, line, width, unit, captions],
  );
  return (
    <div ref={frame} className="scene-close-up">
      {drawing === null ? null : <DrawingSvg drawing={drawing} />}
    </div>
  );
}

/** Moves key and plug of this bench as the phase asks. */
function useMotion(
  scene: Scene,
  look: Look,
  phase: Phase,
  onMotion: SceneViewProps['onMotion'],
  onEnd: SceneViewProps['onEnd'],
): void {
  const { view } = useServices();
  // The functions of the first call are those of all: what they do does not change while a question stands.
  const [told] = useState({ onMotion, onEnd });
  useEffect(() => {
    const { key } = look.assembly;
    const now = view.getState();
    const seated = key?.seatedTravel ?? 0;
    const isKeyTried = scene.tries === 'key and turn';
    if (phase === 'asked' || !isKeyTried) now.moveKey(key?.outTravel ?? 0);
    if (phase === 'moving' && !isKeyTried) told.onEnd?.();
    if (phase === 'seen' && isKeyTried) {
      now.pickChamber(scene.chamber);
      now.moveKey(seated);
      const reach = turnAttempt(look, null)?.reach ?? 0;
      now.turnPlug(asRadians(Math.min(reach, LEFT_TURNED)));
    }
    if (phase !== 'moving' || !isKeyTried) return undefined;
    let motion: Motion = 'key';
    const stop = view.subscribe(({ playing }, before) => {
      if (playing !== 'nothing' || before.playing === 'nothing') return;
      if (motion === 'turn') {
        told.onEnd?.();
        return;
      }
      motion = 'turn';
      told.onMotion?.('turn');
      view.getState().play('turn');
    });
    told.onMotion?.('key');
    now.play('key in');
    return () => {
      stop();
      view.getState().play('nothing');
    };
  }, [scene, look, phase, view, told]);
}
