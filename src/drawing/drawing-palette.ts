/**
 * Colours of drawings: paper by day, slate by night, and print. Metals are calm tints that say what a thing is made of,
 * never how big it is. Grounds and inks are those of the pages the drawings lie on. Text is at least 4.5:1 on its
 * ground, lines that carry meaning at least 3:1 (a test measures).
 */
export type DrawingTheme = 'paper' | 'slate' | 'print';

export type Ink =
  | 'sheet'
  | 'ink'
  | 'outline'
  | 'ink-soft'
  | 'rule'
  | 'hollow'
  | 'line'
  | 'shell'
  | 'shell-hatch'
  | 'plug'
  | 'plug-hatch'
  | 'sleeve'
  | 'sleeve-hatch'
  | 'retainer'
  | 'key'
  | 'ball'
  | 'bottom-pin'
  | 'master-pin'
  | 'driver'
  | 'part-hatch'
  | 'spring'
  | 'spring-far'
  | 'tool'
  | 'turns'
  | 'rubs'
  | 'unsure'
  | 'stops'
  | 'stops-wash'
  | 'unsure-wash';

/** paper, slate, print */
export const PALETTE: Readonly<Record<Ink, readonly [paper: string, slate: string, print: string]>> = {
  sheet: ['#fcfaf4', '#20242a', '#ffffff'],
  ink: ['#1d2227', '#ece8dd', '#000000'],
  outline: ['#1d2227', '#d6d2c7', '#000000'],
  'ink-soft': ['#575b5f', '#a9aeb3', '#333333'],
  rule: ['#b9b3a4', '#4a5159', '#999999'],
  hollow: ['#ffffff', '#111417', '#ffffff'],
  line: ['#b2341a', '#ff8a66', '#a01c10'],
  shell: ['#f0e6c8', '#453c26', '#f6f2e4'],
  'shell-hatch': ['#c6b483', '#7a6a3c', '#a39a80'],
  plug: ['#e3d2a2', '#62532b', '#ece5cd'],
  'plug-hatch': ['#b39c5e', '#a18a4b', '#8d8366'],
  sleeve: ['#e6cdb4', '#5c4534', '#f0e4da'],
  'sleeve-hatch': ['#b98f6c', '#9a7657', '#97826f'],
  retainer: ['#3a4046', '#c9cdd0', '#222222'],
  key: ['#c3ccd3', '#46515b', '#e3e7ea'],
  ball: ['#d3dae1', '#67737f', '#eceff2'],
  'bottom-pin': ['#f8f1dc', '#7d6f40', '#fbf8ee'],
  'master-pin': ['#efdfb6', '#7a6a3a', '#f3ead0'],
  driver: ['#dfe3e9', '#5b6672', '#f0f2f4'],
  'part-hatch': ['#9aa3ab', '#97a1aa', '#999999'],
  spring: ['#1d2227', '#ece8dd', '#000000'],
  'spring-far': ['#e4e7ea', '#3b434b', '#ffffff'],
  tool: ['#eceae4', '#31373e', '#f4f4f2'],
  turns: ['#1c6a46', '#7fd3a8', '#14533a'],
  rubs: ['#8a4a10', '#f0a96a', '#6b3a0c'],
  unsure: ['#775000', '#e9bf66', '#5c3e00'],
  stops: ['#a3211a', '#ff9687', '#8c150f'],
  'stops-wash': ['#fdf1ec', '#33221f', '#ffffff'],
  'unsure-wash': ['#fbf5e4', '#2f2a1d', '#ffffff'],
};

const THEMES: readonly DrawingTheme[] = ['paper', 'slate', 'print'];

/** Gives a colour in a theme. */
export function paletteColour(ink: Ink, theme: DrawingTheme): string {
  return PALETTE[ink][THEMES.indexOf(theme)] ?? PALETTE[ink][0];
}
