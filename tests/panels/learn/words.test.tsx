/** Words of the lessons: none is missing, none is hard-wired, and their figures are those of the picture. */
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { closeUpLarge } from '../../../src/drawing/close-up-large.ts';
import { toSvgText } from '../../../src/drawing/node.ts';
import { answerOf, builtBy, roundOf } from '../../../src/model/learning/ask.ts';
import { LESSON_IDS } from '../../../src/model/learning/lesson.ts';
import { readScene, type Scene } from '../../../src/model/learning/scene.ts';
import { poseAt } from '../../../src/model/assembly/pose-at.ts';
import { fill } from '../../../src/panels/learn/fill.ts';
import { DeskProvider } from '../../../src/panels/learn/desk-context.ts';
import type { LearningDesk } from '../../../src/panels/learn/learning-desk.ts';
import { LearnPages } from '../../../src/panels/learn/learn-station.tsx';
import { askText, predictionText } from '../../../src/panels/learn/prediction-words.ts';
import { sayAfter, sayBefore } from '../../../src/panels/learn/scene-words.ts';
import { WordsProvider } from '../../../src/panels/learn/words-context.ts';
import { ENGLISH } from '../../../src/panels/learn/words/words.ts';
import { type Services, ServicesProvider } from '../../../src/panels/shared/services.tsx';
import { createDocumentStore } from '../../../src/state/document-store.ts';
import { createLearningStore } from '../../../src/state/learning-store.ts';
import { createPreferencesStore } from '../../../src/state/preferences-store.ts';
import { createViewStore } from '../../../src/state/view-store.ts';
import { buildJob } from '../../support/job-builder.ts';
import { PSEUDO, unmarked } from './pseudo-words.ts';

const SEEDS = [1, 2, 5, 8];
const rounds = LESSON_IDS.flatMap((lesson) =>
  SEEDS.map((seed) => roundOf(lesson, seed, seed % 2 ? 'in' : 'mm')),
);

describe('every question', () => {
  test('has words for itself, its options and its reason, with every figure in its place', () => {
    for (const round of rounds)
      for (const step of round.steps) {
        const words = ENGLISH.lessons[round.lesson].steps[step.id];
        expect(words, `${round.lesson} ${step.id}`).toBeDefined();
        const texts = [
          fill(words?.ask ?? '', step.given, { unit: round.unit, tongue: 'en' }),
          fill(words?.why ?? '', step.given, { unit: round.unit, tongue: 'en' }),
          ...(step.kind === 'choose'
            ? step.options.map((option) => predictionText(option, step, round, ENGLISH))
            : []),
        ];
        for (const text of texts) expect(text, `${round.lesson} ${step.id}`).not.toMatch(/[{}]|NaN|^$/u);
        if (step.kind === 'choose')
          expect(Object.keys(words?.options ?? {}).sort()).toEqual([...step.options].sort());
      }
  });

  test('has no words too many: every one is used by some round', () => {
    const many = Array.from({ length: 24 }, (_, i) => i * 37);
    for (const lesson of LESSON_IDS) {
      if (lesson === 'which-part') continue;
      const used = new Set(many.flatMap((seed) => roundOf(lesson, seed, 'in').steps.map(({ id }) => id)));
      expect([...used].sort()).toEqual(Object.keys(ENGLISH.lessons[lesson].steps).sort());
    }
  });
});

describe('in marks, for whoever translates', () => {
  test('nothing on the station is hard-wired', () => {
    const job = buildJob();
    const services: Services = {
      document: createDocumentStore(job),
      view: createViewStore(job),
      preferences: createPreferencesStore({ seenLessons: ['deep-cut'] }),
      newId: () => 'id-1',
      now: () => '2026-01-01T00:00:00Z',
      startMyCylinder: () => undefined,
      isExample: () => false,
      matching: () => Promise.reject(new Error('not asked for')),
      noteFiles: () => Promise.reject(new Error('not asked for')),
      learning: () => Promise.reject(new Error('not asked for')),
      SolidView: null,
    };
    const desk: LearningDesk<Services> = {
      makeBench: (practised, given) => ({ ...given, view: createViewStore(practised) }),
      store: createLearningStore(),
      save: () => Promise.reject(new Error('not asked for')),
      seal: () => Promise.reject(new Error('not asked for')),
      open: () => Promise.reject(new Error('not asked for')),
    };
    const page = renderToStaticMarkup(
      <ServicesProvider value={services}>
        <WordsProvider value={PSEUDO}>
          <DeskProvider value={desk}>
            <LearnPages />
          </DeskProvider>
        </WordsProvider>
      </ServicesProvider>,
    );
    const texts = [
      ...page.replace(/<[^>]+>/gu, '\n').split('\n'),
      ...[...page.matchAll(/aria-(?:label|valuetext)="([^"]*)"/gu)].map(([, text]) => text ?? ''),
    ];
    expect(texts.filter((text) => text.includes('⟦')).length).toBeGreaterThan(20);
    // Each language calls itself by its own name.
    expect(texts.map(unmarked).filter((left) => left !== '')).toEqual(['English', 'Deutsch']);
  });

  test('nothing that is said of a cylinder is hard-wired, units aside', () => {
    for (const round of rounds)
      for (const step of round.steps) {
        const reading = readScene(step.truth);
        const said = [
          sayBefore(reading, PSEUDO, round.unit),
          ...sayAfter(reading, PSEUDO, round.unit),
          askText(round, step, PSEUDO),
          predictionText(answerOf(step), step, round, PSEUDO),
        ];
        for (const text of said) expect(unmarked(text).replace(/^(?:in|mm)$/u, ''), text).toBe('');
      }
  });
});

test('the offsets that are said are those written in the picture', () => {
  let compared = 0;
  for (const round of rounds)
    for (const step of round.steps) {
      const wrong = step.kind === 'choose' ? (step.options[1] ?? '') : Number(answerOf(step)) + 0.3;
      for (const scene of [step.truth, builtBy(step, wrong)]) {
        if (scene.tries === 'key out') continue;
        compared += compareWithPicture(scene, round.unit);
      }
    }
  expect(compared).toBeGreaterThan(60);
});

/** Compares the chamber that is drawn at the inner line; gives the number of amounts compared. */
function compareWithPicture(scene: Scene, unit: 'in' | 'mm'): number {
  const reading = readScene(scene);
  const { assembly, evaluation } = reading;
  const pose = poseAt(assembly, { travel: assembly.key?.seatedTravel ?? 0 });
  const picture = toSvgText(
    closeUpLarge(assembly, pose, evaluation, { chamber: scene.chamber, width: 900, maxHeight: 300, unit }),
  );
  const at = assembly.chambers.findIndex(({ id }) => id === scene.chamber);
  const said = sayAfter(reading, ENGLISH, unit)[at * assembly.lines.length] ?? '';
  const amount = /(\d*\.\d+) (?:in|mm) (?:low|high)/u.exec(said)?.[1];
  if (amount === undefined) {
    expect(picture, said).toContain('>level<');
    return 0;
  }
  const way = said.includes(' low') ? 'low' : 'high';
  expect(picture, said).toMatch(
    new RegExp(`${way}[^<]* ${amount.replace('.', '\\.')}\\b|${way} ${amount.replace('.', '\\.')}`, 'u'),
  );
  return 1;
}
