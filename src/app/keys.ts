/** Every key that does something beyond what browsers do with it, by where it works. Only the first kind can be turned off. */

export type KeyLine = readonly [keys: string, what: string];

export const KEYS: readonly { readonly where: string; readonly keys: readonly KeyLine[] }[] = [
  {
    where: 'Everywhere',
    keys: [
      ['Ctrl Z', 'undo'],
      ['Ctrl Shift Z', 'redo; Ctrl Y too'],
    ],
  },
  {
    where: 'In a field for a length',
    keys: [
      ['Enter', 'take it, on to the next'],
      ['Shift Enter', 'take it, back to the one before'],
      ['↑ ↓', 'take it, along the column'],
      ['Esc', 'what stood there before'],
    ],
  },
  {
    where: 'On the slider of the key',
    keys: [
      ['← →', 'a quarter of a millimetre'],
      ['PgUp PgDn', 'ten times as far'],
    ],
  },
  {
    where: 'In the solid view, once it has the focus',
    keys: [
      ['← → ↑ ↓', 'walk around it'],
      ['Shift ←', 'push it aside, each way'],
      ['+ −', 'nearer, farther'],
      ['0', 'all of it'],
      ['1 … 8', 'section, front, back, left, top, bottom, corner, right'],
    ],
  },
];
