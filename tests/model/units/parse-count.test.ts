import { describe, expect, it } from 'vitest';
import { parseCount } from '../../../src/model/units/parse-count.ts';

const CHAMBERS = { from: 1, to: 12 };

describe('parseCount', () => {
  it('reads whole numbers', () => {
    for (const text of ['6', '06', '+6', ' 6 ', '６', '6\r\n', '٦']) {
      expect(parseCount(text, CHAMBERS), text).toMatchObject({ type: 'count', count: 6 });
    }
    expect(parseCount('1', CHAMBERS).type).toBe('count');
    expect(parseCount('12', CHAMBERS).type).toBe('count');
  });

  it('refuses everything else with one sentence', () => {
    for (const text of [
      '0',
      '13',
      '-6',
      '6.0',
      '6,0',
      '6.5',
      '1e1',
      'six',
      'NaN',
      '6 mm',
      '9'.repeat(300),
      '9'.repeat(150),
    ]) {
      expect(parseCount(text, CHAMBERS), text).toMatchObject({ type: 'error' });
    }
    expect(parseCount('six', CHAMBERS)).toMatchObject({
      message: '“six” is not a whole number from 1 to 12, like 6.',
    });
    expect(parseCount('', CHAMBERS)).toEqual({ type: 'empty' });
  });

  it('asks about one sent twice', () => {
    for (const text of ['66', '6 6', '6\r\n6', '1010']) {
      expect(parseCount(text, CHAMBERS), text).toMatchObject({ type: 'ask', reason: 'doubled' });
    }
    expect(parseCount('67', CHAMBERS).type).toBe('error');
  });
});
