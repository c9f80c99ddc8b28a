/**
 * The solid view: the same section as the drawing, to be turned, moved, looked through and pulled apart. Everything comes by
 * props; one canvas serves for the whole session. It draws only when something has changed.
 */
import { Canvas, useThree } from '@react-three/fiber';
import { useEffect, useEffectEvent, useId, useRef, useState } from 'react';
import { AnimationDriver, currentPose } from './animation-driver.tsx';
import { CameraRig } from './camera-rig.tsx';
import { probeWebgl } from './probe-webgl.ts';
import { SceneBoundary } from './scene-boundary.tsx';
import { SceneController } from './scene-controller.ts';
import { SceneMarks } from './scene-marks.tsx';
import type { SceneViewProps } from './scene-types.ts';
import styles from './scene-view.module.css';
import { commandForKey } from './view-keys.ts';
import { listenToPointer } from './view-pointer.ts';

/** Pixel ratios: sharp where the card is fast, coarse where the processor has to draw. */
const FAST_RATIO: [number, number] = [1, 2];
const SLOW_RATIO = 0.75;

const GL_OPTIONS = { antialias: true, alpha: false, stencil: false } as const;

const NO_MARKS: NonNullable<SceneViewProps['marks']> = [];
const ALL_SHOWN: NonNullable<SceneViewProps['visibility']> = {};

export function SceneView(props: SceneViewProps) {
  const verdict = probeWebgl();
  if (!verdict.isAvailable) return <RefusedView {...props} sentence={verdict.sentence} />;
  const onError = (reason: string): void =>
    props.onFailure?.({
      code: 'render',
      sentence: `The solid view ran into an error (${reason}). The drawing shows the same section.`,
    });
  return (
    <SceneBoundary onError={onError}>
      <LiveView {...props} isSlow={verdict.isSlow} />
    </SceneBoundary>
  );
}

function RefusedView({ onFailure, sentence, label }: SceneViewProps & { readonly sentence: string }) {
  const fail = useEffectEvent(() => onFailure?.({ code: 'no-webgl', sentence }));
  useEffect(() => fail(), []);
  return (
    <p className={styles['notice']} role="status" aria-label={label}>
      {sentence}
    </p>
  );
}

function LiveView(props: SceneViewProps & { readonly isSlow: boolean }) {
  const { theme, pose, projection, isSlow, label, description } = props;
  const describedBy = useId();
  const frame = useRef<HTMLDivElement>(null);
  const [isRestoring, setIsRestoring] = useState(false);
  const [controller] = useState(() => new SceneController(props));

  useProps(controller, props);

  useEffect(() => {
    const element = frame.current;
    return element ? listenToPointer(element, controller.view, controller.pointerSettings) : undefined;
  }, [controller]);

  return (
    <div
      ref={frame}
      className={styles['view']}
      role="application"
      tabIndex={0}
      aria-label={label}
      aria-describedby={description === undefined ? undefined : describedBy}
      aria-keyshortcuts="1 2 3 4 5 6 7 8 0 + - ArrowLeft ArrowRight ArrowUp ArrowDown"
      onKeyDown={(event) => {
        const command = commandForKey(event);
        if (command === null) return;
        event.preventDefault();
        controller.view.run(command);
      }}
    >
      <Canvas
        className={styles['canvas'] ?? ''}
        frameloop="demand"
        flat
        dpr={isSlow ? SLOW_RATIO : FAST_RATIO}
        gl={GL_OPTIONS}
        onCreated={(state) => controller.attach(state, isSlow, setIsRestoring)}
      >
        <color attach="background" args={[theme.background]} />
        <AnimationDriver model={controller.model} pose={pose} />
        <CameraRig
          view={controller.view}
          model={controller.model}
          projection={projection}
          marks={controller.placer}
        />
        <primitive object={controller.model.root} />
        <RedrawOn value={theme} />
      </Canvas>
      <SceneMarks
        marks={props.marks ?? NO_MARKS}
        theme={theme}
        placer={controller.placer}
        onMoved={controller.redraw}
      />
      {description === undefined ? null : (
        <p id={describedBy} className={styles['described']}>
          {description}
        </p>
      )}
      {isRestoring ? (
        <p className={styles['notice']} role="status">
          The picture is being restored.
        </p>
      ) : null}
    </div>
  );
}

/** Draws once more when something outside the scene's objects has changed. */
function RedrawOn({ value }: { readonly value: unknown }): null {
  const invalidate = useThree((state) => state.invalidate);
  useEffect(() => invalidate(), [value, invalidate]);
  return null;
}

/** Hands each prop to the model when it changes, and starts and stops it with the component. */
function useProps(controller: SceneController, props: SceneViewProps): void {
  const { assembly, plane, theme, pose } = props;
  const { model, view } = controller;
  const visibility = props.visibility ?? ALL_SHOWN;
  const hatching = props.hatching ?? 'bodies';
  const setAssembly = useEffectEvent(() => model.setAssembly(assembly, currentPose(pose)));

  useEffect(() => controller.setCallbacks(props));
  useEffect(() => {
    controller.start();
    return () => controller.stop();
  }, [controller]);
  useEffect(() => {
    view.setPlane(plane);
    model.setPlane(plane);
  }, [model, view, plane]);
  useEffect(() => model.setTheme(theme, hatching), [model, theme, hatching]);
  useEffect(() => setAssembly(), [assembly]);
  useEffect(() => model.setVisibility(visibility), [model, visibility]);
}
