/** Pasted tables at their edges: which mark parts the cells, and what a column is taken for. */
import { describe, expect, test } from 'vitest';
import { guessColumns, separatorOf } from '../../../src/model/edit/pasted-columns.ts';

describe('what parts the cells', () => {
  test.each([
    ['a tab, wherever it is', 'a,b\nc,d\te', '\t'],
    ['a semicolon in every row', 'a;b\nc;d', ';'],
    ['no semicolon that one row has not', 'a;b\nc', '\t'],
    ['a comma where another row could be decimal', '9,22\nA,1', ','],
    ['no comma that one row has not', 'A,1\nB', '\t'],
    ['two commas in a row', '1,2,3', ','],
    ['two commas beside each other', '1,,3', ','],
    ['a comma before a blank', '9, 22', ','],
    ['a comma at the end', '9,', ','],
    ['a comma at the beginning', ',22', ','],
    ['a comma after letters', 'pin 1,22', ','],
    ['a comma before letters', '22,1 pin', ','],
    ['a comma before a mark of inches', '22,334"', ','],
    ['a comma after a number with a point', '.334,2', ','],
    ['a comma after a number that ends in its point', '3.,2', ','],
    ['a comma before a number with a point', '2,3.34', ','],
    ['a comma before a number that begins with its point', '2,.334', ','],
    ['no comma between digits alone', '2,334', '\t'],
    ['nothing, where only blanks are', ' \n \r\n\r ', '\t'],
    ['what the rows have, empty ones left out', 'a;b\n\n \nc;d\n', ';'],
    ['what the rows have, old ends of lines', 'a;b\rc;d', ';'],
    ['what the rows have, both ends of lines', 'a;b\r\nc;d', ';'],
  ])('%s', (_, text, separator) => {
    expect(separatorOf(text)).toBe(separator);
  });

  test('is told by the first fifty lines, and the first twenty thousand characters', () => {
    const rows = (count: number) => 'a;b\n'.repeat(count);
    expect(separatorOf(`${rows(50)}c`)).toBe(';');
    expect(separatorOf(`${rows(49)}c`)).toBe('\t');
    expect(separatorOf(`a;${'b'.repeat(19_997)}\nc`)).toBe(';');
    expect(separatorOf(`a;${'b'.repeat(19_996)}\nc`)).toBe('\t');
  });
});

const cellsOf = (text: string) => text.split('\n').map((row) => row.split('|'));
const guess = (text: string, unit: 'in' | 'mm' = 'in') => {
  const { hasHeading, columns } = guessColumns(cellsOf(text), unit);
  return `${hasHeading ? 'heading: ' : ''}${columns.map((column) => `${column.role} ${column.unit}`).join(', ')}`;
};

describe('what a column is taken for, by its heading', () => {
  test.each([
    ['Label', 'label'],
    ['no.', 'label'],
    ['#', 'label'],
    ['Bag', 'label'],
    ['Len (mm)', 'length'],
    ['Height [in]', 'length'],
    ['Ball + pin', 'length'],
    ['ball   and pin', 'length'],
    ['L"', 'length'],
    ['Ø', 'diameter'],
    ['Dia. mm', 'diameter'],
    ['how many', 'quantity'],
    ['Pcs', 'quantity'],
    ['Type', 'kind'],
    ['Came from', 'from'],
    ['State:', 'condition'],
    ['Length [measured twice]', 'length'],
    ['Length (a) b', null],
    ['colour', null],
  ])('%s', (heading, role) => {
    const [first] = guessColumns(
      [
        [heading, 'Qty'],
        ['x', '1'],
      ],
      'in',
    ).columns;
    expect(first?.role).toBe(role ?? 'nothing');
  });

  test.each([
    ['Length mm', 'mm'],
    ['Length (mm)', 'mm'],
    ['Length in millimetres', 'mm'],
    ['Length thou', 'thou'],
    ['Length [th]', 'thou'],
    ['Length mil', 'thou'],
    ['Length in', 'in'],
    ['inches: length', 'in'],
    ['Length "', 'in'],
    ['Length ″', 'in'],
    ['Thin length', null],
    ['Hammer length', null],
  ])('with its unit: %s', (heading, unit) => {
    const [first] = guessColumns(
      [
        [heading, 'Length'],
        ['1', '1'],
      ],
      'mm',
    ).columns;
    expect(first?.unit).toBe(unit ?? 'mm');
    const [other] = guessColumns(
      [
        [heading, 'Length'],
        ['1', '1'],
      ],
      'in',
    ).columns;
    expect(other?.unit).toBe(unit ?? 'in');
  });

  test.each([
    ['each role once', 'Length|Dia|Length\n1|2|3', 'heading: length in, diameter in, nothing in'],
    ['a number in the heading makes it none', 'Length|2\n.3|.4', 'label in, length in'],
    ['an empty cell in the heading does not', 'Length|\n.3|.4', 'heading: length in, nothing in'],
    ['a blank cell in the heading does not', 'Length| \n.3|.4', 'heading: length in, nothing in'],
    ['unknown words over numbers', 'Wert|Breite\n.3|.1\n.4|.1', 'heading: length in, diameter in'],
    ['unknown words over numbers and gaps', 'Wert|Ort\n.3|a\n|b\n.4|b', 'heading: length in, from in'],
    ['unknown words over blank cells', 'Wert\n.3\n \n.4', 'length in'],
    ['one word over texts is no heading', 'Wert|Ort\nx|a\ny|b', 'label in, nothing in'],
    ['one number among the words is none', 'Wert|1\n.3|2\n.4|3', 'length in, label in'],
    ['a word alone', 'Wert', 'label in'],
    ['an empty cell over numbers', '|x\n.3|a\n.4|b', 'length in, label in'],
    ['numbers alone', '.3\n.4', 'length in'],
    ['no row', '', 'nothing in'],
    [
      'hundreds under a heading with its unit',
      'Length mm|Dia\n334|115\n412|116',
      'heading: length mm, diameter thou',
    ],
    ['a short row', 'Length|Qty|From\n.3\n.4|2', 'heading: length in, quantity in, from in'],
  ])('%s', (_, text, said) => {
    expect(guess(text)).toBe(said);
  });

  test('of no table there is nothing', () => {
    expect(guessColumns([], 'in')).toEqual({ hasHeading: false, columns: [] });
  });
});

describe('what a column is taken for, by what is in it', () => {
  test.each([
    ['lengths, then diameters, then nothing', '.3|.1|.2\n.4|.1|.3', 'length in, diameter in, nothing in'],
    ['counted from one, and a length', '1|.3\n2|.4', 'label in, length in'],
    ['counted from seven', '7|.3\n8|.4\n9|.4', 'label in, length in'],
    ['whole numbers that do not count', '2|.3\n2|.4', 'quantity in, length in'],
    ['whole numbers alone', '334\n412', 'length thou'],
    ['counting alone', '1\n2\n3', 'length in'],
    ['one whole number is no counting', '1|.3', 'quantity in, length in'],
    ['counting and whole numbers', '1|334\n2|412', 'label in, length thou'],
    ['two columns of counting', '1|3\n2|4', 'length in, label in'],
    ['kinds', 'pin|.3\nBall|.1\nspring|.4', 'kind in, length in'],
    ['kinds by other words', 'top pin|.3\nDriver|.1', 'kind in, length in'],
    ['not all of them kinds', 'pin|.3\nnail|.1', 'label in, length in'],
    ['conditions', 'Good|.3\npoor|.1', 'condition in, length in'],
    ['not all of them conditions', 'good|.3\nshiny|.1', 'label in, length in'],
    ['texts that differ', 'A|.3\nB|.1', 'label in, length in'],
    ['one number among texts', '12|.3\nA|.4', 'label in, length in'],
    ['texts that are alike', 'barn|.3\nBarn|.1', 'from in, length in'],
    ['mostly lengths', '.3|A\n.4|B\nx|C', 'length in, label in'],
    ['half of them lengths', '.3|.1\nx|.2', 'label in, length in'],
    ['nothing in it', '|.3\n|.1', 'nothing in, length in'],
    ['fractions', '½|A\n⅛|B', 'length in, label in'],
    ['fractions after a blank', ' ½|A\n ¾|B', 'length in, label in'],
    ['a fraction within a text', 'x½|.3\ny½|.1', 'label in, length in'],
    ['signs, points and commas', '-.3\n+3\n=2\n,4\n−1', 'length in'],
    ['a whole number of six digits', '123456|.3\n123456|.4', 'quantity in, length in'],
    ['one of seven digits', '1234567|A\n1234567|B', 'length in, label in'],
    ['a number with something behind it', '12a|.3\n12b|.4', 'length in, diameter in'],
    ['hundreds with one figure behind', '298.5\n334', 'length thou'],
    ['tens', '98\n34', 'length thou'],
    ['thousands', '3340\n4120', 'length in'],
  ])('%s', (_, text, said) => {
    expect(guess(text)).toBe(said);
  });

  test('hundreds in a job in mm are mm', () => expect(guess('334\n412', 'mm')).toBe('length mm'));

  test('is told by the first two hundred rows', () => {
    const rows = (count: number) => Array.from({ length: count }, () => ['.3']);
    expect(
      guessColumns([...rows(120), ...Array.from({ length: 500 }, () => ['x'])], 'in').columns[0]?.role,
    ).toBe('length');
    const words = [['Wert'], ...rows(199), ['x']];
    expect(guessColumns(words, 'in').hasHeading).toBe(true);
    expect(guessColumns([['Wert'], ...rows(198), ['x']], 'in').hasHeading).toBe(false);
  });
});
