/** Rules that hold for every drawing: numbers, classes, hatching, colours, words. */
import { describe, expect, test } from 'vitest';
import { bagChart } from '../../src/drawing/bag-chart.ts';
import { closeUp, closeUpCaption } from '../../src/drawing/close-up.ts';
import { closeUpLarge } from '../../src/drawing/close-up-large.ts';
import { PALETTE } from '../../src/drawing/drawing-palette.ts';
import { fileStyle, pageStyle } from '../../src/drawing/drawing-style.ts';
import { endView } from '../../src/drawing/end-view.ts';
import { hatchFor } from '../../src/drawing/hatch-styles.ts';
import { JAW_DRAWING_KINDS, jawDrawing } from '../../src/drawing/jaw-placement.ts';
import { liftChart } from '../../src/drawing/lift-curve.ts';
import { longSection } from '../../src/drawing/long-section.ts';
import { type DrawingNode, node, toSvgText, withStyle } from '../../src/drawing/node.ts';
import { numberText, roughText } from '../../src/drawing/number-text.ts';
import { splitSentence, symbolOf } from '../../src/drawing/split-words.ts';
import { type CutRole, cutAlong } from '../../src/geometry/cut-parts.ts';
import { fromDegrees } from '../../src/model/radians.ts';
import { contrast } from '../support/contrast.ts';
import { expectWritten } from '../support/golden.ts';
import { sampleAssembly, sampleEvaluation, samplePose } from '../support/sample-assembly.ts';
import { everyNode, textBoxes } from '../support/svg-boxes.ts';

function everyDrawing(): DrawingNode[] {
  return [false, true].flatMap((hasSleeve) => {
    const assembly = sampleAssembly({
      hasSleeve,
      offsets: [0, 0.3, -0.4, 0.1, 0.06, -0.03],
      mouth: { kind: 'deburred along', size: 0.1 },
    });
    const home = samplePose(assembly);
    const evaluation = sampleEvaluation(assembly, home);
    const turned = { ...home, turns: new Map([['plug', fromDegrees(40)]]) };
    const poses = [home, samplePose(assembly, 13), samplePose(assembly, null), turned];
    return poses.flatMap((pose) => [
      longSection(assembly, pose, evaluation, {
        width: 900,
        unit: 'in',
        pickedChamber: 'chamber2',
        hatch: 'all',
      }),
      longSection(assembly, pose, null, { width: 340, unit: 'mm', planeOffset: 1.4 }),
      ...assembly.chambers.flatMap(({ id }) => [
        closeUp(assembly, pose, evaluation, {
          chamber: id,
          width: 150,
          windowHeight: 128,
          unit: 'in',
          mode: 'stretched',
        }),
        closeUp(assembly, pose, evaluation, { chamber: id, width: 150, windowHeight: 128, unit: 'mm' }),
      ]),
      closeUpLarge(assembly, pose, evaluation, {
        chamber: 'chamber2',
        width: 640,
        unit: 'in',
        contact: { x: 1, y: 9.3 },
      }),
      closeUpLarge(assembly, pose, evaluation, { chamber: 'chamber3', width: 340, unit: 'mm' }),
      endView(assembly, pose, evaluation, { chamber: 'chamber4', width: 420, unit: 'in' }),
      ...[
        liftChart(assembly, pose, { width: 500, height: 160, unit: 'in', pickedChamber: 'chamber2' }),
      ].filter((chart) => chart !== null),
    ]);
  });
}

const BAG = bagChart(
  [6.31, 6.4, 8.3],
  [
    {
      number: 1,
      from: 6.3,
      to: 6.5,
      best: 6.4,
      words: '2 in the bag',
      isEmpty: false,
      isPicked: true,
    },
    {
      number: 2,
      from: 7.4,
      to: 7.6,
      best: null,
      words: 'none; P07 is .03 too long',
      isEmpty: true,
      isPicked: false,
    },
    { number: 3, from: 8.3, to: 8.3, best: null, words: 'one in the bag', isEmpty: false, isPicked: false },
  ],
  { width: 480, unit: 'mm', what: 'bottom pin' },
);

const DRAWINGS = [...everyDrawing(), ...JAW_DRAWING_KINDS.map(jawDrawing), BAG];

describe('numbers', () => {
  test('are written to four decimals without idle zeros, exponents or minus zero', () => {
    expect(numberText(1 / 3)).toBe('0.3333');
    expect(numberText(-0.00004)).toBe('0');
    expect(numberText(-0)).toBe('0');
    expect(numberText(1e-7)).toBe('0');
    expect(numberText(12345.6)).toBe('12345.6');
    expect(numberText(-2.50004)).toBe('-2.5');
    expect(roughText(0.1 + 0.2)).toBe('0.3');
    expect(() => numberText(Number.NaN)).toThrow('coordinate');
  });

  test('in drawings are never minus zero, exponents or missing', () => {
    for (const drawing of DRAWINGS) {
      const text = toSvgText(drawing);
      expect(text).not.toMatch(/(^|[^\d.])-0(?![.\d])/);
      expect(text).not.toMatch(/NaN|Infinity|undefined|null/);
      expect(text).not.toMatch(/\d\.\d{5,}/);
      expect(text).not.toMatch(/\de[-+]\d/);
    }
  });

  test('come out the same each time', () => {
    const again = everyDrawing().map(toSvgText);
    expect(DRAWINGS.slice(0, again.length).map(toSvgText)).toEqual(again);
  });
});

describe('the text of a drawing', () => {
  test('has one element a line and escapes what is not its own', () => {
    const text = toSvgText(
      node('svg', { class: 'a "b"' }, [node('text', { x: 1 }, ['1 < 2 & 3']), node('path', { d: 'M0 0' })]),
    );
    expect(text).toBe(
      '<svg class="a &quot;b&quot;">\n <text x="1">1 &lt; 2 &amp; 3</text>\n <path d="M0 0"/>\n</svg>\n',
    );
  });

  test('carries its style when it stands alone', () => {
    const drawing = jawDrawing('overBall');
    expect(toSvgText(withStyle(drawing, fileStyle('print')))).toContain('<style>.drawing path');
  });
});

describe('style', () => {
  test('knows every class that a drawing uses', () => {
    const css = fileStyle('paper');
    const plain = new Set([
      ...[
        'text',
        'fill',
        'part',
        'edge',
        'metal',
        'lines',
        'labels',
        'axes',
        'window',
        'outside',
        'measured',
      ],
      ...['is-solid', 'flag', 'frame', 'symbol', 'at-start', 'scale-bar', 'ladder', 'caliper', 'dimensions'],
      ...['chamber-number', 'range-lane', 'window-bracket', 'crossing', 'trace', 'crossing-symbol'],
    ]);
    const missing = new Set<string>();
    for (const { attributes } of DRAWINGS.flatMap(everyNode)) {
      for (const name of String(attributes['class'] ?? '').split(' ')) {
        const isKnown = css.includes(`.${name} `) || css.includes(`.${name}.`) || css.includes(`.${name},`);
        const isGroup =
          plain.has(name) || ['part-', 'verdict-', 'hatch-'].some((start) => name.startsWith(start));
        if (name !== '' && !name.startsWith('drawing') && name !== 'jaw-drawing' && !isKnown && !isGroup)
          missing.add(name);
      }
    }
    expect([...missing]).toEqual([]);
  });

  test('leaves no variable in a file of its own and no colour out of a page', () => {
    expect(fileStyle('slate')).not.toContain('var(');
    const page = pageStyle();
    for (const name of page.matchAll(/var\((--[\w-]+)\)/g)) expect(page).toContain(`${name[1] ?? ''}:`);
  });

  test('of pages stands in the style sheet that they load', () => {
    expectWritten('src/panels/shared/drawing.css', pageStyle());
  });

  test('has text at 4.5:1 and lines that carry meaning at 3:1, on paper, slate and print', () => {
    [0, 1, 2].forEach((theme) => {
      const sheet = PALETTE.sheet[theme]!;
      for (const ink of ['ink', 'ink-soft', 'line', 'turns', 'rubs', 'unsure', 'stops'] as const)
        expect(contrast(PALETTE[ink][theme]!, sheet), `${ink} ${theme}`).toBeGreaterThanOrEqual(4.5);
      for (const fill of [
        'shell',
        'plug',
        'sleeve',
        'key',
        'ball',
        'bottom-pin',
        'driver',
        'hollow',
      ] as const)
        expect(
          contrast(PALETTE.outline[theme]!, PALETTE[fill][theme]!),
          `${fill} ${theme}`,
        ).toBeGreaterThanOrEqual(3);
      expect(contrast(PALETTE.stops[theme]!, PALETTE['stops-wash'][theme]!)).toBeGreaterThanOrEqual(4.5);
      expect(contrast(PALETTE.unsure[theme]!, PALETTE['unsure-wash'][theme]!)).toBeGreaterThanOrEqual(4.5);
    });
  });
});

describe('hatching', () => {
  /** What can touch what: bodies their neighbours, the stack its neighbours, the key what rides on it. */
  const TOUCHING: readonly (readonly [CutRole, CutRole])[] = [
    ['plug', 'shell'],
    ['plug', 'sleeve'],
    ['sleeve', 'shell'],
    ['retainer', 'plug'],
    ['retainer', 'sleeve'],
    ['retainer', 'shell'],
    ['key', 'plug'],
    ['key', 'ball'],
    ['key', 'bottomPin'],
    ['ball', 'bottomPin'],
    ['ball', 'plug'],
    ['bottomPin', 'masterPin'],
    ['bottomPin', 'driver'],
    ['masterPin', 'masterPin'],
    ['masterPin', 'driver'],
    ...(['bottomPin', 'masterPin', 'driver'] as const).flatMap((part) =>
      (['plug', 'sleeve', 'shell'] as const).map((body) => [part, body] as const),
    ),
  ];

  test('of parts that touch never shares angle and pitch', () => {
    for (const [one, other] of TOUCHING) {
      for (let place = 0; place < 6; place++) {
        const [a, b] = [hatchFor(one, place, 'all'), hatchFor(other, place + 1, 'all')];
        expect(a).not.toBeNull();
        expect(a).not.toEqual(b);
      }
    }
  });

  test('is left out on pins, balls and key as draughting has it, and everywhere when asked', () => {
    expect(hatchFor('driver', 2, 'bodies')).toBeNull();
    expect(hatchFor('key', 0, 'bodies')).toBeNull();
    expect(hatchFor('shell', 0, 'bodies')).not.toBeNull();
    expect(hatchFor('shell', 0, 'none')).toBeNull();
  });
});

describe('words and symbols', () => {
  test('never call high good', () => {
    expect(symbolOf('high, rubs')).toBe('rubs');
    expect(symbolOf('too high')).toBe('stops');
    for (const drawing of DRAWINGS) {
      for (const text of everyNode(drawing).filter(({ tag }) => tag === 'text')) {
        const says = text.children.filter((child) => typeof child === 'string').join('');
        if (says.includes('high') && !says.startsWith('height') && !says.startsWith('highest'))
          expect(String(text.attributes['class'])).not.toContain('verdict-turns');
      }
    }
  });

  test('say amount and verdict in one go', () => {
    expect(splitSentence(0.24, 'too high', 'in')).toBe('too high .0095');
    expect(splitSentence(-0.025, 'low, turns', 'mm')).toBe('low 0.03, turns');
    expect(splitSentence(0.06, "can't say yet", 'in')).toBe("high .0025, can't say yet");
    expect(splitSentence(0.004, 'level', 'in')).toBe('level');
    expect(splitSentence(-0.001, 'low, turns', 'in')).toBe('level');
  });

  test('state scale, stretch and ± on every close-up', () => {
    const assembly = sampleAssembly();
    const pose = samplePose(assembly);
    const evaluation = sampleEvaluation(assembly, pose);
    const look = { chamber: 'chamber1', width: 160, windowHeight: 128, unit: 'in' } as const;
    const said = (drawing: DrawingNode): string =>
      textBoxes(drawing)
        .map(({ text }) => text)
        .join(' ');
    const stretched = said(closeUp(assembly, pose, evaluation, { ...look, mode: 'stretched' }));
    expect(stretched).toMatch(/Height ×10.*width ×1.*angles not true.*bar: ±\.0015 in/);
    expect(said(closeUp(assembly, pose, evaluation, look))).toMatch(/50:1.*True proportions/);
    expect(closeUpCaption(assembly, pose, evaluation, { unit: 'in', mode: 'stretched' })).toBe(
      'End views, looking along the plug: height ×10, width ×1, angles not true · bar: good to about ±.0015 in',
    );
  });
});

describe('flat sections', () => {
  test('are the cut faces and nothing else', () => {
    const assembly = sampleAssembly({ hasSleeve: true });
    const pose = samplePose(assembly);
    for (const planeOffset of [0, 0.7, 2.5]) {
      const drawing = longSection(assembly, pose, null, {
        width: 800,
        unit: 'in',
        planeOffset,
        flatColours: () => '#123456',
      });
      const inside = everyNode(drawing).slice(1);
      expect(inside.every(({ tag }) => tag === 'path')).toBe(true);
      expect(inside.map(({ attributes }) => attributes['data-part'])).toEqual(
        cutAlong(assembly, pose, planeOffset).map(({ partKey }) => partKey),
      );
      expect(
        inside.every(
          ({ attributes }) => attributes['fill'] === '#123456' && attributes['class'] === undefined,
        ),
      ).toBe(true);
    }
  });
});

describe('jaw drawings', () => {
  test('each say in words what they show, and no two the same', () => {
    const words = JAW_DRAWING_KINDS.map((kind) => String(jawDrawing(kind).attributes['aria-label']));
    expect(new Set(words).size).toBe(JAW_DRAWING_KINDS.length);
    expect(words.every((text) => text.length > 12)).toBe(true);
    const pictures = JAW_DRAWING_KINDS.map((kind) =>
      toSvgText(jawDrawing(kind)).replace(/aria-label="[^"]*"/, ''),
    );
    expect(new Set(pictures).size).toBe(JAW_DRAWING_KINDS.length);
  });
});
