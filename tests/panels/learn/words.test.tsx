/** Words of the lessons: none is missing, none is hard-wired, and their figures are those of the picture. */
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import { closeUpLarge } from '../../../src/drawing/close-up-large.ts';
import { toSvgText } from '../../../src/drawing/node.ts';
import { answerOf, builtBy, roundOf } from '../../../src/model/learning/ask.ts';
import { setLink } from '../../../src/model/learning/lesson-set.ts';
import { practiceFileText } from '../../../src/model/learning/practice-file.ts';
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
import { GERMAN } from '../../../src/panels/learn/words/german/german.ts';
import { ENGLISH, type Words } from '../../../src/panels/learn/words/words.ts';
import { type Services, ServicesProvider } from '../../../src/panels/shared/services.tsx';
import { createLearningStore } from '../../../src/state/learning-store.ts';
import { createPreferencesStore } from '../../../src/state/preferences-store.ts';
import { createViewStore } from '../../../src/state/view-store.ts';
import { buildJob } from '../../support/job-builder.ts';
import { testServices } from '../../support/test-services.ts';
import { PSEUDO, unmarked } from './pseudo-words.ts';

/** What stands, and what is read out, on the page whose address the window has. */
function textsOn(words: Words): string[] {
  const job = buildJob();
  const services: Services = {
    ...testServices(job),
    preferences: createPreferencesStore({ seenLessons: ['deep-cut'] }),
  };
  const refused = () => Promise.reject(new Error('not asked for'));
  const desk: LearningDesk<Services> = {
    makeBench: (practised, given) => ({ ...given, view: createViewStore(practised) }),
    store: createLearningStore({
      name: 'J. Example',
      rounds: [
        {
          lesson: 'key-floor',
          seed: 3,
          unit: 'mm',
          toleranceMm: 0.02,
          answers: [{ step: 'how-long', prediction: 8 }],
        },
      ],
      careful: ['8.5', '8.5 ft', '8,51'],
      practice: practiceFileText({
        card: { label: 'P 7', unit: 'mm', chambers: 2 },
        sealed: '-----BEGIN AGE ENCRYPTED FILE-----\nYWdl\n-----END AGE ENCRYPTED FILE-----\n',
      }),
    }),
    save: refused,
    seal: refused,
    open: refused,
  };
  const page = renderToStaticMarkup(
    <ServicesProvider value={services}>
      <WordsProvider value={words}>
        <DeskProvider value={desk}>
          <LearnPages />
        </DeskProvider>
      </WordsProvider>
    </ServicesProvider>,
  );
  return [
    ...page.replace(/<[^>]+>/gu, '\n').split('\n'),
    ...[...page.matchAll(/(?:aria-label|aria-valuetext|title|placeholder)="([^"]*)"/gu)].map(
      ([, text]) => text ?? '',
    ),
  ];
}

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
  test.each([
    '#learn/ball-in-dimple/4711/in',
    '#learn/one-pin-ten-times',
    '#learn/practice-cylinder',
    '#learn/my-page',
    '#learn/for-teachers',
    '#learn/seal-a-cylinder',
    setLink({ lessons: ['deep-cut', 'key-floor'], seed: 3, unit: 'mm', toleranceMm: 0.02 }),
  ])('nothing on %s is hard-wired, and nothing of it is English in German', (address) => {
    vi.stubGlobal('window', { location: { hash: address, href: `http://localhost/${address}` } });
    const texts = textsOn(PSEUDO);
    const german = textsOn(GERMAN);
    vi.unstubAllGlobals();
    expect(texts.filter((text) => text.includes('⟦')).length).toBeGreaterThan(8);
    // Each language calls itself by its own name; what a person wrote stays as it is.
    const own = ['English', 'Deutsch', 'J. Example', 'P 7'];
    // Units are the same everywhere.
    const left = texts.map((text) => unmarked(text).replace(/^(?:mm|in)?(?:\((?:mm|in)\))?$/u, ''));
    expect(left.filter((text) => text !== '' && !own.map(unmarked).includes(text))).toEqual([]);
    expect(
      german.filter((text) => /\b(?:the|and|is|with|key|pin|driver|your|not|this)\b|\s\.\d/iu.test(text)),
    ).toEqual([]);
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
