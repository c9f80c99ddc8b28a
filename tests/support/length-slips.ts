/**
 * Spellings that must not be taken as they stand: slips that are asked back, and texts that are not lengths. Expected
 * amounts as in length-corpus.ts: whole steps of 1e-7 mm, from exact fractions, no code shared with src/.
 */
import {
  FROM_STEPS,
  isPlausible,
  JOB_UNITS,
  nearest,
  STEPS_PER_MM,
  withPoint,
  type AddSpelling,
} from './length-spelling.ts';

/** Slips that must be asked back: each with the choices a person is offered, in order. */
export function addAsks(add: AddSpelling): void {
  for (let number = 39; number <= 1500; number += 7) {
    const asThou = BigInt(number) * 254_000n;
    const choices = [asThou].filter(isPlausible);
    for (const jobUnit of JOB_UNITS) {
      // A mm number up to twice the longest is also offered as it stands (an odd lock); 88 and 1313 as 8 and 13 twice.
      const digits = String(number);
      const half = Number(digits.slice(0, digits.length / 2));
      const isTwice = jobUnit === 'mm' && digits === `${half}${half}`;
      const twiceSent = isTwice ? [BigInt(half) * STEPS_PER_MM] : [];
      const odd = jobUnit === 'mm' && number <= 76 ? [BigInt(number) * STEPS_PER_MM] : [];
      add(digits, jobUnit, {
        type: 'ask',
        reason: 'out-of-range',
        steps: [...choices, ...twiceSent, ...odd],
      });
      add(`${number} in`, jobUnit, { type: 'ask', reason: 'out-of-range', steps: choices });
      const twice = `${number}${number}`;
      // Sent twice, unless four digits are themselves a plausible number of thous.
      if (BigInt(twice) > 1500n) add(twice, jobUnit, { type: 'ask', reason: 'doubled', steps: choices });
    }
  }
  for (let thou = 101; thou <= 1500; thou += 37) {
    const text = withPoint(thou, 3);
    const steps = BigInt(thou) * 254_000n;
    const doubled = { type: 'ask', reason: 'doubled', steps: [steps] } as const;
    for (const join of ['', ' ', '\r\n', '\r', '\t', '\u0003\u0002'])
      add(`${text}${join}${text}`, 'in', doubled);
    add(`${text}${text} in`, 'mm', doubled);
    add(`${text} in${text} in`, 'mm', doubled);
    add(`+${text}+${text}`, 'in', doubled);
    // An inch number in a job in mm.
    const mm = BigInt(thou) * (STEPS_PER_MM / 1000n);
    const odd = mm >= FROM_STEPS / 2n && !isPlausible(mm) ? [mm] : [];
    if (!isPlausible(mm)) add(text, 'mm', { type: 'ask', reason: 'out-of-range', steps: [steps, ...odd] });
  }
  for (let hundredths = 310; hundredths <= 3810; hundredths += 70) {
    const steps = BigInt(hundredths) * 100_000n;
    const dotted = withPoint(hundredths, 2);
    const asThou = nearest(BigInt(hundredths) * 254_000n, 100n);
    const choices = [asThou, steps].filter(isPlausible);
    add(dotted, 'in', { type: 'ask', reason: 'out-of-range', steps: choices });
    add(dotted.replace('.', ','), 'in', { type: 'ask', reason: 'out-of-range', steps: choices });
  }
  for (let thousandths = 1001; thousandths <= 9999; thousandths += 173) {
    const text = withPoint(thousandths, 3).replace('.', ',');
    const asMm = BigInt(thousandths) * 10_000n;
    if (/,\d{3}$/.test(text)) add(text, 'mm', { type: 'ask', reason: 'ambiguous-comma', steps: [asMm] });
    add(`${text} mm`, 'in', { type: 'ask', reason: 'ambiguous-comma', steps: [asMm] });
    const asInch = BigInt(thousandths) * 254_000n;
    if (isPlausible(asInch)) {
      add(text, 'in', { type: 'ask', reason: 'ambiguous-comma', steps: [asInch] });
      add(`${text} thou`, 'in', { type: 'ask', reason: 'ambiguous-comma', steps: [asInch] });
    }
  }
}

const NOT_LENGTHS = [
  'abc',
  '1\t3/8',
  '.36\u00023',
  '⅜5',
  '30 3/8',
  'NaN',
  'nan',
  'Infinity',
  '-Infinity',
  'undefined',
  'null',
  '1e3',
  '3.63e-1',
  '1E+2',
  '0x1F',
  '1_000',
  '-.363',
  '\u2212.363',
  '\u2013.363',
  '-0.363 in',
  '-9.22 mm',
  '-0',
  '0',
  '.',
  ',',
  '-',
  '+',
  '=',
  '/',
  '"',
  'in',
  'mm',
  '...',
  '.3.6.3',
  '.363.',
  '1..2',
  '1,,2',
  '.363,',
  '1,23,4',
  '1.23.4',
  '23/0',
  '23/',
  '/64',
  '23//64',
  '23/64/2',
  '1.5/8',
  '3/.5',
  '1 11/8',
  '1 8/8',
  '.5 3/8',
  '1 3/8 5',
  '.363 .370',
  '.363\t.370',
  '.363\r\n.370',
  '0.3630.364',
  '.363;.370',
  '.363|',
  '(.363)',
  '.363*2',
  '.363 cm',
  '9.22 m',
  '12 ft',
  "5'",
  '1\'6"',
  '363 um',
  '363 µm',
  '20%',
  '$.363',
  '#363x',
  '.363 in mm',
  'in .363',
  'thou 363',
  '=.363+',
  '=.363++.002',
  '.363+',
  '.363 +',
  '+.363+.002',
  '-.002+.363',
  '=.363=.002',
  '=.1-.4',
  '.1 in - 9 mm',
  '.363 + 1 mm + 2 in',
  'about .3',
  '.363?',
  '~.363',
  '.36o',
  'O.363',
  'l.363',
  '.3 63',
  '0. 363',
  '\u221e',
  '²³',
  '①',
  '⅜⅝',
  '2\u00bd\u00bd',
  '💣',
  '\ud800',
  'e',
  '.e5',
  '1e',
  '9,22,mm',
  '00:12',
  '2024-01-05',
  '12.05.2024',
];
const NOTHING = ['', ' ', '\t', '\r\n', '\u00a0', '\u200b', '\ufeff', '\u0002\u0003', '   \r\n ', '\u3000'];

export function addRefusals(add: AddSpelling): void {
  for (const jobUnit of JOB_UNITS) {
    for (const text of NOT_LENGTHS) add(text, jobUnit, { type: 'error' });
    for (const text of NOTHING) add(text, jobUnit, { type: 'empty' });
    add('.1'.repeat(150), jobUnit, { type: 'error' });
    add('9'.repeat(199), jobUnit, { type: 'error' });
  }
}
