/** How to measure what the focused field asks for: stays at the foot of the station, so that nothing jumps. */
import { useView } from '../shared/services.tsx';
import { HELP, type HelpTopic } from './help-text.ts';
import './help-card.css';

export function HelpCard() {
  const topic = useView((view) => view.focusedField);
  if (topic === null || !isTopic(topic)) return null;
  const { title, text } = HELP[topic];
  return (
    <aside className="help-card" aria-label="How to measure it">
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
