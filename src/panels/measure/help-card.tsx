/** How to measure what the focused field asks for: stays at the foot of the station, so that nothing jumps. */
import { lazy, Suspense, useEffect, useRef, useState } from 'react';
import { useView } from '../shared/services.tsx';
import { HELP, HELP_DRAWINGS, type HelpTopic } from './help-text.ts';
import './help-card.css';

const JawDrawing = lazy(async () => ({ default: (await import('./jaw-drawing.tsx')).JawDrawing }));

export function HelpCard() {
  const topic = useTopicUntilRelease();
  if (topic === null || !isTopic(topic)) return null;
  const { title, text } = HELP[topic];
  const kind = HELP_DRAWINGS[topic];
  return (
    <aside className="help-card" aria-label="How to measure it">
      <div className="help-drawing">
        <Suspense fallback={null}>
          <JawDrawing kind={kind} />
        </Suspense>
      </div>
      <div>
        <p className="help-title">{title}</p>
        <p className="small">{text}</p>
      </div>
    </aside>
  );
}

/**
 * What the focused field asks for; while a pointer is down, what the field asked for that had the focus before. A card that
 * went between press and release would let what is pressed slide away from under the finger, and the press would be lost.
 */
function useTopicUntilRelease(): string | null {
  const topic = useView((view) => view.focusedField);
  const [kept, setKept] = useState<string | null>(null);
  const before = useRef(topic);
  useEffect(() => {
    before.current = topic;
  }, [topic]);
  useEffect(() => {
    // In the capture phase: the press is known before the field loses the focus by it.
    const press = () => setKept(before.current);
    const release = () => setTimeout(() => setKept(null));
    window.addEventListener('pointerdown', press, true);
    window.addEventListener('pointerup', release);
    window.addEventListener('pointercancel', release);
    return () => {
      window.removeEventListener('pointerdown', press, true);
      window.removeEventListener('pointerup', release);
      window.removeEventListener('pointercancel', release);
    };
  }, []);
  return topic ?? kept;
}

function isTopic(name: string): name is HelpTopic {
  return Object.hasOwn(HELP, name);
}
