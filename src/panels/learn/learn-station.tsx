/** The station Learn: how stack height works, by predicting and then seeing. Nothing in it touches the person's job. */
import { useEffect, useState } from 'react';
import { LANGUAGES, type Language } from '../../state/learning-store.ts';
import { CaptionsProvider } from '../shared/captions-context.ts';
import { Choice } from '../shared/choice.tsx';
import { type Services, useServices } from '../shared/services.tsx';
import { DeskProvider, useDesk, useLearning } from './desk-context.ts';
import type { LearningDesk } from './learning-desk.ts';
import { LessonList } from './lesson-list.tsx';
import { BrokenSet, SetPage } from './set-page.tsx';
import { PracticePage } from './practice-page.tsx';
import { RecordPage } from './record-page.tsx';
import { SealPage } from './seal-page.tsx';
import { SingleLesson } from './single-lesson.tsx';
import { TeachPage } from './teach-page.tsx';
import { TenPage } from './ten-page.tsx';
import { type Page, usePage } from './use-page.ts';
import { useWords, WordsProvider } from './words-context.ts';
import { ENGLISH, type Words } from './words/words.ts';
import './learn.css';
import './learn-paper.css';

export function LearnStation() {
  const { learning } = useServices();
  const [desk, setDesk] = useState<LearningDesk<Services> | null>(null);
  useEffect(() => {
    let isWanted = true;
    void learning().then((loaded) => {
      if (isWanted) setDesk(loaded);
    });
    return () => {
      isWanted = false;
    };
  }, [learning]);
  if (desk === null) return <div className="station learn" aria-busy="true" />;
  return (
    <DeskProvider value={desk}>
      <InLanguage />
    </DeskProvider>
  );
}

/** English comes with the station, other languages when they are asked for. */
function InLanguage() {
  const language = useLearning((state) => state.language);
  const [words, setWords] = useState<Words | null>(language === 'en' ? ENGLISH : null);
  useEffect(() => {
    let isWanted = true;
    void loadWords(language).then((loaded) => {
      if (isWanted) setWords(loaded);
    });
    return () => {
      isWanted = false;
    };
  }, [language]);
  if (words === null) return <div className="station learn" aria-busy="true" />;
  return (
    <WordsProvider value={words}>
      <CaptionsProvider value={words.captions}>
        <LearnPages />
      </CaptionsProvider>
    </WordsProvider>
  );
}

async function loadWords(language: Language): Promise<Words> {
  return language === 'en' ? ENGLISH : (await import('./words/german/german.ts')).GERMAN;
}

export function LearnPages() {
  const { page, open, lesson } = usePage();
  const { common, tongue } = useWords();
  return (
    <div className="station learn" lang={tongue}>
      <header className="learn-head">
        <div>
          <h2>{common.heading}</h2>
          <p className="quiet">{common.lead}</p>
        </div>
        <LanguageChoice />
      </header>
      {page.kind === 'set' ? null : <LessonList page={page} lesson={lesson} open={open} />}
      <PageView page={page} open={open} />
    </div>
  );
}

function PageView({ page, open }: { readonly page: Page; readonly open: (page: Page) => void }) {
  switch (page.kind) {
    case 'lesson': {
      const { lesson, seed, unit } = page.link;
      return (
        <SingleLesson
          key={`${lesson} ${seed} ${unit}`}
          link={page.link}
          open={(link) => open({ kind: 'lesson', link })}
        />
      );
    }
    case 'set':
      return <SetPage key={JSON.stringify(page.set)} set={page.set} open={open} />;
    case 'broken set':
      return <BrokenSet fault={page.fault} />;
    case 'ten':
      return <TenPage />;
    case 'practice':
      return <PracticePage />;
    case 'record':
      return <RecordPage />;
    case 'teach':
      return <TeachPage open={open} />;
    case 'seal':
      return <SealPage open={open} />;
  }
}

/** In their own words, whatever language is on. */
const NAMES: Readonly<Record<Language, string>> = { en: 'English', de: 'Deutsch' };

function LanguageChoice() {
  const { station } = useWords();
  const { store } = useDesk();
  const language = useLearning((state) => state.language);
  return (
    <Choice
      question={station.language}
      isQuestionHidden
      value={language}
      options={LANGUAGES.map((value) => ({ value, label: NAMES[value] }))}
      onChoose={(chosen) => store.getState().set({ language: chosen })}
    />
  );
}
