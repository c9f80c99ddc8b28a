/**
 * A ruler to lay a steel rule against: 50 mm above, 2 in below. Printers shrink pages to fit; when this measures right, the
 * scale stated beside a drawing holds. Sizes in millimetres of paper; inside, one unit is a tenth of a millimetre.
 */
import { MM_PER_INCH } from '../model/units/length-unit.ts';
import { label } from './label.ts';
import { type DrawingNode, group, node } from './node.ts';

const LONG_MM = 50;
const INCHES = 2;
/** Units of the drawing in a millimetre, and room around the ruler, mm. */
const FINE = 10;
const LEFT_MM = 4;
const WIDTH_MM = 64;
const HEIGHT_MM = 17;
const MIDDLE_MM = 8.5;

/** Draws the ruler. */
export function checkRuler(): DrawingNode {
  const millimetres = Array.from({ length: LONG_MM + 1 }, (_, mm) => ({
    x: mm,
    long: mm % 10 === 0 ? 3.4 : mm % 5 === 0 ? 2.4 : 1.5,
  }));
  const eighths = Array.from({ length: INCHES * 8 + 1 }, (_, i) => ({
    x: (i * MM_PER_INCH) / 8,
    long: i % 8 === 0 ? 3.4 : i % 4 === 0 ? 2.4 : 1.5,
  }));
  const ticks = (all: typeof millimetres, way: 1 | -1) =>
    all.map(({ x, long }) => `M${at(LEFT_MM + x)} ${at(MIDDLE_MM)}v${at(-way * long)}`).join('');
  const rail = `M${at(LEFT_MM)} ${at(MIDDLE_MM)}h${at(INCHES * MM_PER_INCH)}`;
  const size = 2.9 * FINE;
  const name = (text: string, x: number, y: number, anchor: 'start' | 'middle' | 'end') =>
    label(text, at(x), at(y), { size, anchor, className: 'text-soft' });
  return node(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${at(WIDTH_MM)} ${at(HEIGHT_MM)}`,
      width: `${WIDTH_MM}mm`,
      height: `${HEIGHT_MM}mm`,
      class: 'drawing check-ruler',
      role: 'img',
      'aria-label': 'Check ruler, 50 mm and 2 in',
    },
    [
      group('check-ruler-lines', [
        node('path', { class: 'thin', d: `${ticks(millimetres, 1)}${ticks(eighths, -1)}${rail}` }),
      ]),
      group('labels', [
        name('0', LEFT_MM, 3.6, 'middle'),
        name('50 mm', LEFT_MM + LONG_MM, 3.6, 'middle'),
        name('0', LEFT_MM, 15.6, 'middle'),
        name('2 in', LEFT_MM + INCHES * MM_PER_INCH, 15.6, 'middle'),
      ]),
    ],
  );
}

function at(mm: number): number {
  return Math.round(mm * FINE * 1e4) / 1e4;
}
