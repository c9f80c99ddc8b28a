/** Which changes of the model are drawn, and what is said of the share that was noticed. */
import { describe, expect, test } from 'vitest';
import { filesToMutate, listMutants, sample } from '../../tools/mutant-list.ts';
import { sayScore, scoreOf, wilson } from '../../tools/mutant-score.ts';

describe('a sample', () => {
  const list = Array.from({ length: 20 }, (_, i) => i);

  test('is the same for the same seed, holds nothing twice, and keeps the order', () => {
    const drawn = sample(list, 7, 4);
    expect(sample(list, 7, 4)).toEqual(drawn);
    expect(sample(list, 7, 5)).not.toEqual(drawn);
    expect(new Set(drawn).size).toBe(7);
    expect([...drawn].sort((one, other) => one - other)).toEqual(drawn);
    expect(sample(list, 50, 4)).toEqual(list);
  });

  test('takes each as often as any other', () => {
    const times = list.map(() => 0);
    const draws = 4000;
    for (let seed = 1; seed <= draws; seed++) for (const i of sample(list, 5, seed)) times[i]! += 1;
    const expected = draws / 4;
    const spread = Math.sqrt(draws * (1 / 4) * (3 / 4));
    for (const count of times) expect(Math.abs(count - expected)).toBeLessThan(4.5 * spread);
  });
});

describe('the interval of a share', () => {
  // R. G. Newcombe, Statistics in Medicine 17 (1998) 857, table I, method 3. From memory.
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('of %i in %i is the published one', (noticed, counted, from, to) => {
    expect(wilson(noticed, counted)).toEqual([expect.closeTo(from, 4), expect.closeTo(to, 4)]);
  });

  test('ends where what was seen lies 1.96 standard deviations away', () => {
    for (const [noticed, counted] of [
      [850, 1000],
      [3, 11],
    ] as const)
      for (const end of wilson(noticed, counted)) {
        const spread = Math.sqrt((end * (1 - end)) / counted);
        expect(Math.abs(noticed / counted - end) / spread).toBeCloseTo(1.96, 3);
      }
  });

  test('counts a loop that never ends as noticed, and what no test reaches as missed', () => {
    const place = { line: 0, column: 0 };
    const mutant = { file: '', kind: '', from: place, to: place, original: '', replacement: '' };
    const outcomes = ['Killed', 'Timeout', 'Survived', 'NoCoverage', 'Ignored', 'RuntimeError'].map(
      (status) => ({ mutant, status }),
    );
    expect(scoreOf(outcomes)).toEqual({ noticed: 2, counted: 4, notCounted: 2 });
    expect(sayScore(scoreOf(outcomes))).toContain('2 of 4 noticed, 2 not counted');
  });
});

describe('the list of changes', () => {
  test('leaves out tables of data and texts of messages, and nothing else', async () => {
    const files = filesToMutate(['src/model/diagnosis', 'src/model/evaluate/say.ts']);
    expect(files).toContain('src/model/diagnosis/signs.ts');
    expect(files).not.toContain('src/model/diagnosis/symptoms-table.ts');
    const changes = await listMutants(['src/model/evaluate/say.ts']);
    const texts = changes.filter(({ kind }) => kind === 'StringLiteral').map(({ original }) => original);
    expect(texts).toContain("'pointed'");
    expect(texts.filter((text) => text.includes('sharp edge'))).toEqual([]);
    expect(changes.map(({ kind }) => kind)).toContain('ConditionalExpression');
  });
});
