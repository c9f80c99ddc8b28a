/** Which lessons a set has and in which order: two lists, moved between with buttons. */
import { useRef } from 'react';
import { LESSON_IDS, type LessonId } from '../../model/learning/lesson.ts';
import { fill } from './fill.ts';
import { useWords } from './words-context.ts';

type SetLessonsProps = {
  readonly lessons: readonly LessonId[];
  readonly onChange: (lessons: readonly LessonId[]) => void;
};

export function SetLessons({ lessons, onChange }: SetLessonsProps) {
  const words = useWords();
  const { teach, tongue } = words;
  const lists = useRef<HTMLDivElement>(null);
  const others = LESSON_IDS.filter((id) => !lessons.includes(id));
  const name = (text: string, id: LessonId) =>
    fill(text, { title: words.lessons[id].title }, { unit: 'in', tongue });
  const change = (next: readonly LessonId[]) => {
    onChange(next);
    // A button that is gone must not leave the focus nowhere.
    queueMicrotask(() => {
      if (document.activeElement === document.body) lists.current?.focus();
    });
  };
  return (
    <div className="teach-lists" ref={lists} tabIndex={-1} role="group" aria-label={teach.heading}>
      <section>
        <h3>{teach.chosen}</h3>
        {lessons.length === 0 ? <p role="status">{teach.noneChosen}</p> : null}
        <ol className="teach-chosen">
          {lessons.map((id, i) => (
            <li key={id}>
              <span className="lesson-number number">{i + 1}</span>
              <span className="teach-title">{words.lessons[id].title}</span>
              <Move
                sign="↑"
                name={name(teach.earlier, id)}
                isOff={i === 0}
                onMove={() => change(moved(lessons, i, -1))}
              />
              <Move
                sign="↓"
                name={name(teach.later, id)}
                isOff={i === lessons.length - 1}
                onMove={() => change(moved(lessons, i, 1))}
              />
              <Move
                sign="−"
                name={name(teach.remove, id)}
                onMove={() => change(lessons.filter((each) => each !== id))}
              />
            </li>
          ))}
        </ol>
      </section>
      <section>
        <h3>{teach.others}</h3>
        <ul className="teach-chosen">
          {others.map((id) => (
            <li key={id}>
              <span className="teach-title">{words.lessons[id].title}</span>
              <Move sign="+" name={name(teach.add, id)} onMove={() => change([...lessons, id])} />
            </li>
          ))}
        </ul>
      </section>
    </div>
  );
}

function moved(lessons: readonly LessonId[], at: number, by: -1 | 1): readonly LessonId[] {
  const without = lessons.filter((_, i) => i !== at);
  const taken = lessons.slice(at, at + 1);
  return [...without.slice(0, at + by), ...taken, ...without.slice(at + by)];
}

type MoveProps = {
  readonly sign: string;
  readonly name: string;
  readonly isOff?: boolean;
  readonly onMove: () => void;
};

function Move({ sign, name, isOff = false, onMove }: MoveProps) {
  return (
    <button
      type="button"
      className="button teach-move"
      aria-label={name}
      title={name}
      aria-disabled={isOff}
      onClick={() => {
        if (!isOff) onMove();
      }}
    >
      <span aria-hidden="true">{sign}</span>
    </button>
  );
}
