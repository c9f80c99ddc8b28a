/** Learn in German: no text is missing, none is left English, figures stand where they stood, numbers and counts are German. */
import { expect, describe, test } from 'vitest';
import { withCaptions } from '../../../src/drawing/captions.ts';
import { closeUpLarge } from '../../../src/drawing/close-up-large.ts';
import { endView } from '../../../src/drawing/end-view.ts';
import { longSection } from '../../../src/drawing/long-section.ts';
import { type DrawingNode, toSvgText } from '../../../src/drawing/node.ts';
import { poseAt } from '../../../src/model/assembly/pose-at.ts';
import { answerOf, builtBy, roundOf } from '../../../src/model/learning/ask.ts';
import { LESSON_IDS } from '../../../src/model/learning/lesson.ts';
import { readScene, type Scene } from '../../../src/model/learning/scene.ts';
import { asRadians } from '../../../src/model/radians.ts';
import {
  countText,
  fill,
  givenText,
  inTongue,
  readTyped,
  signedLength,
} from '../../../src/panels/learn/fill.ts';
import { askText, predictionText, whyText } from '../../../src/panels/learn/prediction-words.ts';
import { sayAfter, sayBefore } from '../../../src/panels/learn/scene-words.ts';
import { captionsOf } from '../../../src/panels/learn/words/caption-table.ts';
import {
  GERMAN_CAPTION_TABLE,
  GERMAN_CAPTIONS,
} from '../../../src/panels/learn/words/german/german-captions.ts';
import { GERMAN } from '../../../src/panels/learn/words/german/german.ts';
import { ENGLISH } from '../../../src/panels/learn/words/words.ts';

const rounds = LESSON_IDS.flatMap((lesson) =>
  [1, 2].map((seed) => roundOf(lesson, seed, seed % 2 ? 'in' : 'mm')),
);

/** Texts by their place in the tree. */
function textsOf(tree: unknown, place = ''): ReadonlyMap<string, string> {
  if (typeof tree === 'string') return new Map([[place, tree]]);
  if (typeof tree !== 'object' || tree === null) return new Map();
  return new Map(Object.entries(tree).flatMap(([name, child]) => [...textsOf(child, `${place}/${name}`)]));
}

const english = textsOf(ENGLISH);
const german = textsOf(GERMAN);

/** The same in both languages, and rightly so. */
const SAME = ['/common/between', '/teach/link', '/paper/name', '/lessons/deep-cut/given'];

describe('every text', () => {
  test('of one language is in the other', () => {
    expect([...german.keys()].sort()).toEqual([...english.keys()].sort());
    expect(german.size).toBeGreaterThan(300);
  });

  test('has the figures of the English one', () => {
    const figures = (text: string | undefined) => [...new Set((text ?? '').match(/\{[\w-]+\}/gu))].sort();
    for (const [place, text] of english) expect(figures(german.get(place)), place).toEqual(figures(text));
  });

  test('says something else than the English one, in German words', () => {
    const left = [...german].filter(
      ([place, text]) => text === english.get(place) && /[a-z]{2}/iu.test(text.replace(/\{[\w-]+\}/gu, '')),
    );
    expect(left.map(([place]) => place).filter((place) => !SAME.includes(place))).toEqual([]);
    // Words that English cannot do without, and German does not have.
    const foreign = /\b(?:the|and|of|is|are|with|key|pin|driver|which|your|not|from|how|this|it)\b/iu;
    const inWords = (texts: ReadonlyMap<string, string>) =>
      [...texts.values()].filter((text) => foreign.test(text.replace(/\{[\w-]+\}/gu, '')));
    expect(inWords(english).length).toBeGreaterThan(200);
    expect(inWords(german)).toEqual([]);
  });
});

describe('numbers', () => {
  const ruler = { unit: 'in', tongue: 'de' } as const;

  test('have the comma that Intl gives the language, and a zero before it', () => {
    expect(givenText(8.5598, ruler)).toBe('0,337 in');
    expect(givenText(8.56, { unit: 'mm', tongue: 'de' })).toBe('8,56 mm');
    expect(signedLength(-0.0127, ruler)).toBe('−0,0005 in');
    expect(inTongue('0.5°', 'de')).toBe(`${new Intl.NumberFormat('de').format(0.5)}°`);
    expect(givenText(8.5598, { unit: 'in', tongue: 'en' })).toBe('.337 in');
  });

  test('are read with comma and with point', () => {
    const read = (text: string) => readTyped(text, 'de', { unit: 'mm', plausible: { fromMm: 1, toMm: 20 } });
    for (const text of ['8,496', '8.496', '8,496 mm', '0,33449 in'])
      expect(read(text)).toMatchObject({ type: 'length', mm: expect.closeTo(8.496, 3) as number });
    expect(read('8,49,6').type).not.toBe('length');
  });

  test('counts take the form that the language asks for', () => {
    expect(countText(1, GERMAN.teach.inSet, 'de')).toBe('Eine Reihe mit 1 Lektion');
    expect(countText(3, GERMAN.teach.inSet, 'de')).toBe('Eine Reihe mit 3 Lektionen');
    expect(countText(0, GERMAN.ten.more, 'de')).toBe('Noch 0 Lesungen.');
    expect(countText(1, ENGLISH.ten.more, 'en')).toBe('1 reading to go.');
  });
});

test('what is asked, predicted, seen and explained is German through and through', () => {
  for (const round of rounds)
    for (const step of round.steps) {
      const reading = readScene(step.truth);
      const texts = [
        askText(round, step, GERMAN),
        whyText(round, step, GERMAN),
        predictionText(answerOf(step), step, round, GERMAN),
        sayBefore(reading, GERMAN, round.unit),
        ...sayAfter(reading, GERMAN, round.unit),
      ];
      for (const text of texts) {
        expect(text).not.toMatch(/[{}]|NaN|\d\.\d|\s\.\d/u);
        expect(text).not.toMatch(/\b(?:the|is|pin|key|driver|low|high)\b/u);
      }
    }
});

describe('captions of pictures', () => {
  test('are all in the table, in every lesson, whatever is answered', () => {
    const unknown = new Set<string>();
    const captions = captionsOf(GERMAN_CAPTION_TABLE, 'de', (caption) => unknown.add(caption));
    let drawn = 0;
    for (const round of rounds)
      for (const step of round.steps) {
        const wrong = step.kind === 'choose' ? (step.options[1] ?? '') : Number(answerOf(step)) + 0.3;
        for (const scene of [step.truth, builtBy(step, wrong)])
          for (const picture of picturesOf(scene, round.unit)) {
            const node = withCaptions(captions, picture);
            expect(wordsOf(node).join(' ')).not.toMatch(
              /\d\.\d|\b(?:line|Chamber|section|plug|driver|split)\b/u,
            );
            drawn += 1;
          }
      }
    expect(drawn).toBeGreaterThan(200);
    expect([...unknown]).toEqual([]);
  });

  test('are English again as soon as the drawing is done, even when it fails', () => {
    const [round] = rounds;
    const [picture] = picturesOf(round?.steps[0]?.truth ?? fail(), 'in');
    const plain = toSvgText((picture ?? fail)());
    expect(toSvgText(withCaptions(GERMAN_CAPTIONS, picture ?? fail))).not.toBe(plain);
    expect(() => withCaptions(GERMAN_CAPTIONS, fail)).toThrow('nothing there');
    expect(toSvgText((picture ?? fail)())).toBe(plain);
  });

  test('keep their figures', () => {
    expect(GERMAN_CAPTIONS('too high .0095')).toBe('zu hoch 0,0095');
    expect(GERMAN_CAPTIONS('low .0040, turns')).toBe('tief 0,0040, dreht');
    expect(GERMAN_CAPTIONS('highest +.0040 · no touch .0010 · lowest −.0080')).toBe(
      'höchstens +0,0040 · ohne Berührung 0,0010 · mindestens −0,0080',
    );
    expect(
      GERMAN_CAPTIONS('Chamber 1 at the shear line, enlarged, in inches: too low .0220; highest +.0040'),
    ).toBe('Kammer 1 an der Scherlinie, vergrößert, in Zoll: zu tief 0,0220; höchstens +0,0040');
    expect(GERMAN_CAPTIONS('key, to the ball .3797')).toBe('Schlüssel bis zur Kugel 0,3797');
    expect(GERMAN_CAPTIONS('Chamber 2, looking in from the front, true proportions, plug turned 52°')).toBe(
      'Kammer 2, von vorn gesehen, unverzerrt, Kern um 52° gedreht',
    );
  });
});

test('a text with a figure that is not there stays as it is, in any language', () => {
  expect(fill('{by} zu hoch', {}, { unit: 'mm', tongue: 'de' })).toBe('{by} zu hoch');
});

function picturesOf(scene: Scene, unit: 'in' | 'mm'): (() => DrawingNode)[] {
  const { assembly, evaluation } = readScene(scene);
  const { key } = assembly;
  const home = poseAt(assembly, { travel: key?.seatedTravel ?? 0 });
  const out = poseAt(assembly, { travel: key?.outTravel ?? 0 });
  const turned = poseAt(assembly, {
    travel: key?.seatedTravel ?? 0,
    turns: new Map([[assembly.bodies[0]?.id ?? '', asRadians(0.5)]]),
  });
  const { chamber } = scene;
  const wide = { width: 620, maxHeight: 300, unit };
  return [
    () => closeUpLarge(assembly, home, evaluation, { ...wide, chamber }),
    () => longSection(assembly, home, evaluation, { ...wide, pickedChamber: chamber }),
    () => longSection(assembly, out, evaluation, { ...wide, width: 320 }),
    () => endView(assembly, turned, evaluation, { ...wide, chamber }),
    () => endView(assembly, home, evaluation, { ...wide, width: 900, chamber }),
  ];
}

function wordsOf(node: DrawingNode): string[] {
  const label = node.attributes['aria-label'];
  return [
    ...(label === undefined ? [] : [String(label)]),
    ...node.children.flatMap((child) => (typeof child === 'string' ? [child] : wordsOf(child))),
  ];
}

function fail(): never {
  throw new Error('nothing there');
}
