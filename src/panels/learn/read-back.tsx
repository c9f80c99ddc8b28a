/** Reads a saved file of the learner's back; what is kept already gives way only after a yes. */
import { useState } from 'react';
import { hasProgress, type ReadLearningFile, readLearningFile } from '../../state/learning-file.ts';
import { useServices } from '../shared/services.tsx';
import { useDesk } from './desk-context.ts';
import { FileChoice } from './file-choice.tsx';
import { countText } from './fill.ts';
import { useWords } from './words-context.ts';

type Found = Extract<ReadLearningFile, { type: 'learning' }>;

export function ReadBack({ onTold }: { readonly onTold: (words: string) => void }) {
  const { station, tongue } = useWords();
  const { kept } = station;
  const { store } = useDesk();
  const { preferences } = useServices();
  const [asked, setAsked] = useState<Found | null>(null);
  const putBack = ({ learning, seenLessons, lost }: Found) => {
    // The words stay in the language they are being read in.
    const { language } = store.getState();
    store.getState().set({ ...learning, language });
    preferences.getState().set({ seenLessons });
    setAsked(null);
    const told = [countText(learning.rounds.length, kept.back, tongue)];
    if (lost > 0) told.push(countText(lost, kept.lost, tongue));
    onTold(told.join(' '));
  };
  const take = (text: string) => {
    const read = readLearningFile(text);
    onTold('');
    setAsked(null);
    if (read.type === 'error') return kept.faults[read.fault];
    if (hasProgress(store.getState())) setAsked(read);
    else putBack(read);
    return '';
  };
  return (
    <>
      <FileChoice label={kept.read} onText={take} />
      {asked === null ? null : (
        <div className="learn-replace" role="group" aria-label={kept.replaceTitle}>
          <p role="status">
            {countText(store.getState().rounds.length, kept.replaces, tongue)}{' '}
            {countText(asked.learning.rounds.length, kept.inFile, tongue)}
          </p>
          <div className="question-buttons">
            <button type="button" className="button" data-kind="main" onClick={() => putBack(asked)}>
              {kept.yes}
            </button>
            <button
              type="button"
              className="button"
              onClick={() => {
                setAsked(null);
                onTold(kept.stays);
              }}
            >
              {kept.no}
            </button>
          </div>
        </div>
      )}
    </>
  );
}
