/**
 * The style sheet of drawings, from the same class names whether a drawing stands in a page or in a file of its own.
 *
 * In a page, colours are custom properties that follow the page's colour scheme, so that switching the theme computes
 * nothing. In a file they are written out, because few programs that open an SVG know custom properties.
 */
import { type DrawingTheme, type Ink, PALETTE, paletteColour } from './drawing-palette.ts';
import { EDGE_PX } from './line-weights.ts';
import { numberText } from './number-text.ts';

/** Writes the sheet for pages: both themes and print. */
export function pageStyle(): string {
  const screen = inks().map((ink) => {
    const [paper, slate] = PALETTE[ink];
    return `  --drawing-${ink}: ${paper === slate ? paper : `light-dark(${paper}, ${slate})`};`;
  });
  const print = inks().map((ink) => `    --drawing-${ink}: ${paletteColour(ink, 'print')};`);
  return [
    '/* Written by tools from src/drawing/drawing-style.ts: change that file, not this one. */',
    '.drawing {',
    ...screen,
    '}',
    '@media print {',
    '  .drawing {',
    ...print,
    '  }',
    '}',
    ...rules((ink) => `var(--drawing-${ink})`),
    '',
  ].join('\n');
}

/** Writes the sheet for a drawing that stands alone, in one theme. */
export function fileStyle(theme: DrawingTheme): string {
  return [...rules((ink) => paletteColour(ink, theme)), ''].join('\n');
}

function inks(): Ink[] {
  return Object.keys(PALETTE) as Ink[];
}

type Colour = (ink: Ink) => string;

function rules(colour: Colour): string[] {
  return [...fillRules(colour), ...lineRules(colour), ...textRules(colour), ...verdictRules(colour)];
}

function rule(selectors: string, body: string): string {
  const scoped = selectors
    .split(',')
    .map((selector) => `.drawing ${selector.trim()}`)
    .join(', ');
  return `${scoped} { ${body} }`;
}

function fillRules(colour: Colour): string[] {
  const fills: readonly [string, Ink][] = [
    ['hollow', 'hollow'],
    ['sheet', 'sheet'],
    ['shell', 'shell'],
    ['plug', 'plug'],
    ['sleeve', 'sleeve'],
    ['retainer', 'retainer'],
    ['key', 'key'],
    ['ball', 'ball'],
    ['bottomPin', 'bottom-pin'],
    ['masterPin', 'master-pin'],
    ['driver', 'driver'],
    ['spring', 'spring'],
    ['spring-far', 'spring-far'],
  ];
  return [
    rule('path, .text', 'stroke: none'),
    ...fills.map(([name, ink]) => rule(`.fill-${name}`, `fill: ${colour(ink)}`)),
  ];
}

function lineRules(colour: Colour): string[] {
  const px = (weight: keyof typeof EDGE_PX): string => numberText(EDGE_PX[weight]);
  const line = (ink: Ink, weight: keyof typeof EDGE_PX, more = ''): string =>
    `fill: none; stroke: ${colour(ink)}; stroke-width: ${px(weight)}${more}`;
  const round = '; stroke-linejoin: round; stroke-linecap: butt';
  return [
    rule('.edge-wide', line('outline', 'wide', round)),
    rule('.edge-medium', line('outline', 'medium', round)),
    rule('.edge-narrow', line('outline', 'narrow', round)),
    rule('.edge-fine', line('outline', 'fine', round)),
    rule('.behind', line('ink-soft', 'fine')),
    rule('.hatch', line('part-hatch', 'fine')),
    rule('.hatch-shell', `stroke: ${colour('shell-hatch')}`),
    rule('.hatch-plug', `stroke: ${colour('plug-hatch')}`),
    rule('.hatch-sleeve', `stroke: ${colour('sleeve-hatch')}`),
    rule('.shear-line', line('line', 'narrow', '; stroke-dasharray: 12 3 2 3')),
    rule('.shear-crest', line('line', 'narrow')),
    rule('.shear-line.is-other', `stroke-width: ${px('fine')}; opacity: 0.93; stroke-dasharray: 2 4`),
    rule('.crossing', `fill: ${colour('stops-wash')}; fill-opacity: 0.55`),
    rule('.crossing-hatch', line('ink-soft', 'fine')),
    rule('.uncertainty', `fill: none; stroke: ${colour('ink')}; stroke-width: ${numberText(1.3)}`),
    rule(
      '.uncertainty-ground',
      `fill: none; stroke: ${colour('hollow')}; stroke-width: ${numberText(3.6)}; stroke-opacity: 0.7`,
    ),
    rule('.symbol-ground', `fill: ${colour('sheet')}; stroke: none`),
    rule('.uncertainty-band', `fill: ${colour('ink')}; fill-opacity: 0.1`),
    rule('.window-spine', `fill: none; stroke: ${colour('ink')}; stroke-width: ${numberText(1.6)}`),
    rule('.window-empty', line('stops', 'medium', '; stroke-dasharray: 3 2')),
    rule('.contact-ring', `fill: none; stroke: ${colour('stops')}; stroke-width: ${numberText(1.4)}`),
    rule('.break-ground', `fill: none; stroke: ${colour('sheet')}; stroke-width: ${numberText(4)}`),
    rule('.centre-line', line('ink-soft', 'fine', '; stroke-dasharray: 12 3 2 3')),
    rule('.thin', line('ink', 'narrow')),
    rule('.faint', line('rule', 'narrow')),
    rule('.frame', line('ink', 'narrow')),
    rule('.frame-picked', line('ink', 'wide')),
    rule('.dimension', line('ink', 'narrow')),
    rule('.extension', line('ink-soft', 'fine')),
    rule('.pick', line('ink', 'narrow')),
    rule('.ring', line('ink', 'narrow')),
    rule('.leader', line('ink', 'narrow')),
    rule('.arrow', `fill: ${colour('ink')}`),
    rule('.text-on-metal', `paint-order: stroke; stroke: ${colour('sheet')}; stroke-width: ${numberText(3)}`),
    rule('.bar', `stroke: ${colour('ink')}; stroke-width: ${px('fine')}`),
    rule('.bar-full', `fill: ${colour('ink')}`),
    rule('.bar-empty', `fill: ${colour('sheet')}`),
    rule(
      '.range-band',
      `fill: ${colour('bottom-pin')}; stroke: ${colour('outline')}; stroke-width: ${px('fine')}`,
    ),
    rule('.range-band.is-empty', `fill: ${colour('hollow')}; stroke-dasharray: 4 2.5`),
    rule('.range-about', line('ink', 'medium', '; stroke-dasharray: 3 2')),
    rule('.range-ticks', line('ink', 'medium')),
    rule('.range-best', `fill: ${colour('ink')}`),
    rule('.bag-columns', `fill: ${colour('ink-soft')}`),
    rule('.trace-picked', line('ink', 'medium', '; stroke-linejoin: round')),
    rule('.trace-pale', line('ink-soft', 'fine', '; stroke-opacity: 0.7')),
    rule('.travel', line('line', 'narrow')),
    rule('.travel-dot', `fill: ${colour('line')}`),
    rule(
      '.tool',
      `fill: ${colour('tool')}; stroke: ${colour('outline')}; stroke-width: ${px('narrow')}; stroke-linejoin: round`,
    ),
    rule('.strip', `fill: none; stroke: ${colour('line')}; stroke-width: ${numberText(2.4)}`),
    rule('.measured-line', line('line', 'medium')),
    rule('.measured .arrow', `fill: ${colour('line')}`),
    rule('.look-here', `fill: none; stroke: ${colour('line')}; stroke-width: ${px('medium')}`),
    rule(
      '.symbol',
      `fill: none; stroke-width: ${numberText(1.8)}; stroke-linecap: round; stroke-linejoin: round`,
    ),
  ];
}

function textRules(colour: Colour): string[] {
  const family = "'Plex Sans', 'IBM Plex Sans', system-ui, sans-serif";
  return [
    rule('.text', `fill: ${colour('ink')}; font-family: ${family}; font-variant-numeric: tabular-nums`),
    rule('.text-strong', 'font-weight: 600'),
    rule('.text-soft', `fill: ${colour('ink-soft')}`),
    rule('.text-line', `fill: ${colour('line')}`),
    rule('.at-middle', 'text-anchor: middle'),
    rule('.at-end', 'text-anchor: end'),
  ];
}

function verdictRules(colour: Colour): string[] {
  const verdicts = ['turns', 'rubs', 'unsure', 'stops'] as const;
  const strokes = ['symbol', 'ring', 'leader'];
  return [
    ...verdicts.flatMap((verdict) => [
      rule(`.text.verdict-${verdict}`, `fill: ${colour(verdict)}`),
      rule(
        [...strokes, ...(verdict === 'turns' ? [] : ['crossing-hatch'])]
          .map((name) => `.${name}.verdict-${verdict}`)
          .join(', '),
        `stroke: ${colour(verdict)}`,
      ),
    ]),
    rule('.flag-box', `fill: ${colour('sheet')}; stroke: ${colour('ink')}; stroke-width: ${numberText(1)}`),
    rule('.flag.verdict-stops .flag-box', `fill: ${colour('stops-wash')}; stroke: ${colour('stops')}`),
    rule('.flag.verdict-unsure .flag-box', `fill: ${colour('unsure-wash')}; stroke: ${colour('unsure')}`),
  ];
}
