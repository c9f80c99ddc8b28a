/** Everything that was predicted on this device, as a sheet; and what is kept: saved as a file, read back, or forgotten. */
import { useState } from 'react';
import { learningFileText } from '../../state/learning-file.ts';
import { EMPTY_LEARNING } from '../../state/learning-store.ts';
import { useServices } from '../shared/services.tsx';
import { useDesk, useLearning } from './desk-context.ts';
import { fill } from './fill.ts';
import { LearnerSheet } from './learner-sheet.tsx';
import { ReadBack } from './read-back.tsx';
import { useWords } from './words-context.ts';

export function RecordPage() {
  const { station, paper, tongue } = useWords();
  const { store, save } = useDesk();
  const { preferences } = useServices();
  const rounds = useLearning((state) => state.rounds);
  const [told, setTold] = useState('');
  const saveAll = async () => {
    const { seenLessons } = preferences.getState();
    const saved = await save(learningFileText(store.getState(), seenLessons), station.pages.record);
    if (saved.type === 'cancelled') return;
    setTold(
      saved.type === 'saved'
        ? fill(station.files.saved, { name: saved.name }, { unit: 'in', tongue })
        : station.files.failed,
    );
  };
  const forget = () => {
    const { language } = store.getState();
    store.getState().set({ ...EMPTY_LEARNING, language });
    preferences.getState().set({ seenLessons: [] });
    setTold(station.kept.forgotten);
  };
  return (
    <article className="lesson" aria-labelledby="lesson">
      <h2 id="lesson">{station.pages.record}</h2>
      {rounds.length === 0 ? <p>{paper.nothing}</p> : <LearnerSheet rounds={rounds} />}
      <section className="learn-kept no-print">
        <h3>{station.kept.heading}</h3>
        <p className="quiet">{station.kept.lead}</p>
        <div className="question-buttons">
          <button type="button" className="button" onClick={() => void saveAll()}>
            {station.kept.save}
          </button>
          <button type="button" className="button" data-kind="quiet" onClick={forget}>
            {station.kept.forget}
          </button>
        </div>
        <ReadBack onTold={setTold} />
        <p className="small" role="status">
          {told}
        </p>
      </section>
    </article>
  );
}
