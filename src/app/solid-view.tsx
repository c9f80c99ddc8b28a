/** The solid view wired to the stores: what is looked at, where key and plug stand, what is shown and where it is cut. */
import { useMemo, useState } from 'react';
import { poseOf } from '../panels/section/use-pose.ts';
import type { Look } from '../panels/shared/look.ts';
import { focusOf, useLook } from '../panels/shared/look.ts';
import { usePreference, useServices, useView } from '../panels/shared/services.tsx';
import { useMedia } from '../panels/shared/use-media.ts';
import { verdictWords } from '../panels/answer/verdict-words.ts';
import { PAPER_THEME, SLATE_THEME } from '../scene/scene-theme.ts';
import type { PartVisibility, PoseSource, SceneHandle, SceneMark } from '../scene/scene-types.ts';
import { SceneView } from '../scene/scene-view.tsx';
import { axisPlane } from '../solids/section-plane.ts';
import type { Showing, ViewStore } from '../state/view-store.ts';
import { startWorker } from './own-worker.ts';
import { SolidPicture } from './solid-picture.tsx';
import { SolidMore, SolidViews } from './solid-tools.tsx';
import './solid-view.css';

export function SolidView() {
  const look = useLook();
  return look === null ? null : <Solid look={look} />;
}

function Solid({ look }: { readonly look: Look }) {
  const { view } = useServices();
  const theme = useTheme();
  const showing = useView((state) => state.showing);
  const sectionOffset = useView((state) => state.sectionOffset);
  const [projection, setProjection] = useState<'orthographic' | 'perspective'>('orthographic');
  const [isCut, setIsCut] = useState(true);
  const [handle, setHandle] = useState<SceneHandle | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const pose = useMemo(() => poseSource(look, view), [look, view]);
  const plane = useMemo(() => (isCut ? axisPlane('x', sectionOffset) : null), [isCut, sectionOffset]);
  const isHome = useView(({ travel }) => travel - (look.assembly.key?.seatedTravel ?? Infinity) < 1e-3);
  const marks = useMemo(() => marksOf(look, isHome), [look, isHome]);
  return (
    <div className="solid-view">
      <SolidViews handle={handle} />
      {trouble === null ? null : (
        <p className="solid-trouble" role="status">
          {trouble}
        </p>
      )}
      <div className="solid-canvas">
        <SceneView
          assembly={look.assembly}
          pose={pose}
          theme={theme}
          visibility={visibilityOf(showing)}
          plane={plane}
          projection={projection}
          marks={marks}
          label="Solid view of the cylinder"
          description="Arrow keys turn the view, with Shift they move it, plus and minus zoom, 1 to 8 are the standard views, 0 fits it in. The table holds every number."
          createWorker={startWorker}
          onReady={setHandle}
          onFailure={({ sentence }) => setTrouble(sentence)}
        />
      </div>
      <SolidPicture handle={handle} look={look} />
      <SolidMore
        handle={handle}
        unit={look.job.settings.unit}
        projection={projection}
        onProjection={setProjection}
        isCut={isCut}
        onCut={setIsCut}
        reach={look.assembly.lines.at(-1)?.radius ?? 1}
      />
    </div>
  );
}

function useTheme(): typeof PAPER_THEME {
  const theme = usePreference((state) => state.theme);
  const isDark = useMedia('(prefers-color-scheme: dark)');
  return theme === 'slate' || (theme === 'system' && isDark) ? SLATE_THEME : PAPER_THEME;
}

/** The pose of now, asked for by the view itself: nothing of React runs per frame. */
function poseSource(look: Look, view: ViewStore): PoseSource {
  return {
    subscribe: (onChange) =>
      view.subscribe((now, before) => {
        const isMoved = now.travel !== before.travel || now.turn !== before.turn;
        if (isMoved || now.playing !== before.playing || now.pickedLine !== before.pickedLine) onChange();
      }),
    poseAt: () => {
      const { travel, turn, pickedLine } = view.getState();
      return poseOf(look, travel, turn, pickedLine);
    },
    isRunning: () => view.getState().playing !== 'nothing',
  };
}

const APPEARANCE = {
  show: 'shown',
  'see through': 'see-through',
  'pulled apart': 'pulled apart',
  hide: 'hidden',
} as const satisfies Record<Showing, string>;

function visibilityOf(showing: Readonly<Record<string, Showing>>): PartVisibility {
  return Object.fromEntries(Object.entries(showing).map(([part, how]) => [part, APPEARANCE[how]]));
}

/**
 * Chamber numbers over the chambers, and, with the key fully in, a flag on the first that holds the lock, at the line that
 * matters: the same as in the drawing.
 */
function marksOf(look: Look, isHome: boolean): SceneMark[] {
  const { assembly, evaluation, chamberResults, job } = look;
  const focus = focusOf(look);
  const lineIndex = Math.max(
    0,
    evaluation.lines.findIndex(({ line }) => line === focus),
  );
  const line = evaluation.lines[lineIndex];
  const holding = isHome && line?.verdict === 'will not turn' ? line.blockedBy[0] : undefined;
  return assembly.chambers.flatMap((chamber): SceneMark[] => {
    const number: SceneMark = {
      id: `number ${chamber.id}`,
      at: [0, chamber.capY * 1.12, chamber.z],
      text: String(chamber.number),
      kind: 'chamber',
    };
    const result = chamberResults.get(chamber.id);
    const words =
      chamber.id === holding && result !== undefined
        ? verdictWords(result, job.settings.unit, line?.line)
        : null;
    if (words === null) return [number];
    const { radius = 0, innerAxisY = 0 } = assembly.lines[lineIndex] ?? {};
    const crest = radius + innerAxisY;
    return [
      number,
      { id: `flag ${chamber.id}`, at: [0, crest, chamber.z], text: words.offset, kind: 'flag' },
    ];
  });
}
