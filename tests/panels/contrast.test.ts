/**
 * Contrast of everything that is drawn or written, in every theme, from the tokens and the palette: text at 4.5:1, lines, symbols and
 * edges of fields that carry meaning at 3:1 (WCAG 2.2, 1.4.3 and 1.4.11). Hatching is left out: the outline, at 3:1, is what parts metal.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Ink, PALETTE } from '../../src/drawing/drawing-palette.ts';
import { fileStyle } from '../../src/drawing/drawing-style.ts';
import { contrast, laidOver } from '../support/contrast.ts';
import { recordFigure } from '../support/figure.ts';

type Pair = { readonly what: string; readonly ratio: number; readonly least: number };

const TEXT = 4.5;
const MARK = 3;
const THEMES = ['paper', 'slate', 'print'] as const;

const css = readFileSync('src/panels/tokens.css', 'utf8');
const tokens = new Map(
  [...css.matchAll(/--([\w-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)].map(
    ([, name, light, dark]) => [name ?? '', [light ?? '', dark ?? '']],
  ),
);

function token(name: string, theme: number): string {
  const colour = tokens.get(name)?.[theme];
  if (colour === undefined) throw new Error(`no token --${name}`);
  return colour;
}

const GROUNDS = ['paper', 'sheet', 'field', 'pressed', 'accent-wash'];

function controlPairs(): Pair[] {
  const on = (inks: readonly string[], grounds: readonly string[], least: number): Pair[] =>
    [0, 1].flatMap((theme) =>
      inks.flatMap((ink) =>
        grounds.map((ground) => ({
          what: `--${ink} on --${ground}, ${THEMES[theme] ?? ''}`,
          ratio: contrast(token(ink, theme), token(ground, theme)),
          least,
        })),
      ),
    );
  return [
    ...on(['ink', 'ink-soft', 'accent', 'good', 'unsure', 'stop'], GROUNDS, TEXT),
    ...on(['ink-on-fill'], ['ink', 'ink-soft', 'accent'], TEXT),
    ...on(['rule-field', 'rule-strong'], ['paper', 'sheet', 'field', 'pressed'], MARK),
  ];
}

const METAL: readonly Ink[] = [
  'shell',
  'plug',
  'sleeve',
  'key',
  'ball',
  'bottom-pin',
  'master-pin',
  'driver',
  'tool',
];
const VERDICTS: readonly Ink[] = ['turns', 'rubs', 'unsure', 'stops'];

/** How much of a colour a class of the drawings lets be seen. */
function opacityOf(name: string): number {
  const rule =
    new RegExp(`\\.drawing \\.${name.replaceAll('.', '\\.')} \\{([^}]*)\\}`).exec(fileStyle('paper'))?.[1] ??
    '';
  const opacity = /(?:^|[ -])opacity: ([\d.]+)/.exec(rule)?.[1];
  if (opacity === undefined) throw new Error(`.${name} has no opacity`);
  return Number(opacity);
}

function drawingPairs(): Pair[] {
  const pairs: Pair[] = [];
  THEMES.forEach((name, theme) => {
    const ink = (which: Ink): string => PALETTE[which][theme]!;
    const add = (what: string, one: string, other: string, least: number): void => {
      pairs.push({ what: `${what}, ${name}`, ratio: contrast(one, other), least });
    };
    for (const text of ['ink', 'ink-soft', 'line', ...VERDICTS] as const)
      add(`text ${text}`, ink(text), ink('sheet'), TEXT);
    for (const text of VERDICTS)
      for (const wash of ['stops-wash', 'unsure-wash'] as const)
        add(`${text} on ${wash}`, ink(text), ink(wash), TEXT);
    for (const metal of [...METAL, 'hollow', 'sheet'] as const) {
      add(`outline of ${metal}`, ink('outline'), ink(metal), MARK);
      add(`the ± over ${metal}`, ink('ink'), ink(metal), MARK);
    }
    // The line runs along plug, sleeve and shell; over the stacks it is left out.
    for (const ground of ['plug', 'sleeve', 'shell', 'hollow', 'sheet'] as const) {
      add(`shear line over ${ground}`, ink('line'), ink(ground), MARK);
      const other = laidOver(ink('line'), ink(ground), opacityOf('shear-line.is-other'));
      add(`other shear line over ${ground}`, other, ink(ground), MARK);
    }
    const pale = laidOver(ink('ink-soft'), ink('sheet'), opacityOf('trace-pale'));
    add('pale lift curves', pale, ink('sheet'), MARK);
    add('retainer beside shell', ink('retainer'), ink('shell'), MARK);
    add('retainer beside plug', ink('retainer'), ink('plug'), MARK);
    add('spring', ink('spring'), ink('hollow'), MARK);
    // Metal that would have to pass through metal: hatched both ways in the colour of the verdict, on a wash over the part.
    for (const verdict of ['rubs', 'unsure', 'stops'] as const)
      for (const part of ['bottom-pin', 'master-pin', 'driver', 'ball'] as const) {
        const ground = laidOver(ink('stops-wash'), ink(part), opacityOf('crossing'));
        add(`${verdict} crossing ${part}`, ink(verdict), ground, MARK);
      }
  });
  return pairs;
}

describe('contrast', () => {
  test.each([
    ['controls and text', controlPairs],
    ['drawings', drawingPairs],
  ])('of %s is enough in every theme', (what, pairs) => {
    const all = pairs();
    const tooLittle = all.filter(({ ratio, least }) => ratio < least);
    const spare = Math.min(...all.map(({ ratio, least }) => ratio / least));
    recordFigure({
      what: `contrast of ${what}: the least, against what is asked`,
      measured: spare,
      unit: '×',
      aim: { atLeast: 1 },
      note: `${all.length} pairs; text 4.5:1, marks 3:1`,
    });
    expect(tooLittle.map((pair) => `${pair.what}: ${pair.ratio.toFixed(2)}`)).toEqual([]);
    expect(all.length).toBeGreaterThan(50);
  });
});
