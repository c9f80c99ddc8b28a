/** How to measure what the focused field asks for: stays at the foot of the station, so that nothing jumps. */
import { lazy, Suspense } from 'react';
import { useView } from '../shared/services.tsx';
import { HELP, HELP_DRAWINGS, type HelpTopic } from './help-text.ts';
import './help-card.css';

const JawDrawing = lazy(async () => ({ default: (await import('./jaw-drawing.tsx')).JawDrawing }));

export function HelpCard() {
  const topic = useView((view) => view.focusedField);
  if (topic === null || !isTopic(topic)) return null;
  const { title, text } = HELP[topic];
  const kind = HELP_DRAWINGS[topic];
  return (
    <aside className="help-card" aria-label="How to measure it">
      {kind === undefined ? null : (
        <div className="help-drawing">
          <Suspense fallback={null}>
            <JawDrawing kind={kind} />
          </Suspense>
        </div>
      )}
      <div>
        <p className="help-title">{title}</p>
        <p className="small">{text}</p>
      </div>
    </aside>
  );
}

function isTopic(name: string): name is HelpTopic {
  return Object.hasOwn(HELP, name);
}
