import { useView } from '../shared/services.tsx';
import { unreadWords } from './unread-words.ts';

/** Inside the headline, so that it stays in sight with it and is read out with it. */
export function UnreadNote() {
  const unread = useView((view) => view.unread);
  return <span className="answer-unread">{unreadWords([...unread.values()])}</span>;
}
