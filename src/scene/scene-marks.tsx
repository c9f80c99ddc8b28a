/** The marks over the picture, as one SVG element that takes no clicks. */
import { useLayoutEffect, useRef } from 'react';
import { known } from '../model/assert.ts';
import type { MarkPlacer } from './mark-placer.ts';
import type { SceneTheme } from './scene-theme.ts';
import type { SceneMark } from './scene-types.ts';
import styles from './scene-view.module.css';

export type SceneMarksProps = {
  readonly marks: readonly SceneMark[];
  readonly theme: SceneTheme;
  readonly placer: MarkPlacer;
  readonly onMoved: () => void;
};

export function SceneMarks({ marks, theme, placer, onMoved }: SceneMarksProps) {
  const elements = useRef(new Map<string, SVGGElement>());

  useLayoutEffect(() => {
    placer.setMarks(
      marks.map(({ id, at, kind }) => ({
        id,
        at,
        kind,
        element: known(elements.current.get(id), `element of mark ${id}`),
      })),
    );
    onMoved();
    return () => placer.setMarks([]);
  }, [marks, placer, onMoved]);

  return (
    <svg className={styles['marks']}>
      {marks.map((mark) => (
        <g
          key={mark.id}
          data-mark={mark.kind}
          ref={(element) => {
            if (element) elements.current.set(mark.id, element);
            else elements.current.delete(mark.id);
          }}
        >
          {mark.kind === 'chamber' ? (
            <ChamberMark text={mark.text} theme={theme} />
          ) : (
            <FlagMark text={mark.text} theme={theme} />
          )}
        </g>
      ))}
    </svg>
  );
}

type MarkProps = { readonly text: string; readonly theme: SceneTheme };

function ChamberMark({ text, theme }: MarkProps) {
  return (
    <text className={styles['chamber']} textAnchor="middle" dy="-6" fill={theme.text}>
      {text}
    </text>
  );
}

/** CSS pixels a letter needs on average in the flag's size; the box is a little wide rather than too narrow. */
const LETTER = 7.6;

function FlagMark({ text, theme: { flag, background } }: MarkProps) {
  const width = text.length * LETTER + 14;
  return (
    <>
      <line stroke={flag} strokeWidth="1.25" data-leader="" x1="0" y1="0" x2="0" y2="-20" />
      <circle fill={flag} r="2.5" />
      <g data-lift="">
        <rect
          stroke={flag}
          strokeWidth="1.5"
          fill={background}
          x={-width / 2}
          y="-42"
          width={width}
          height="22"
        />
        <text className={styles['flag']} textAnchor="middle" y="-26.5" fill={flag}>
          {text}
        </text>
      </g>
    </>
  );
}
