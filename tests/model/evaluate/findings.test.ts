/** What the first picture tells beside its verdicts: of which chamber, of which field, and with which figure. Inches. */
import { describe, expect, test } from 'vitest';
import type { FindingCode } from '../../../src/model/findings/finding-codes.ts';
import { lookAt } from '../../support/cylinder-h.ts';
import { FINDING_CASES, soundJob } from '../../support/finding-cases.ts';
import { changed } from '../../support/job-builder.ts';
import { inches } from '../../support/values.ts';

describe('beside the verdicts', () => {
  test('nothing is told of a sound job', () => {
    expect(lookAt(soundJob()).evaluation.findings).toEqual([]);
  });

  test.each<[FindingCode, 'warns' | 'notes', readonly number[], readonly string[], string]>([
    // the sides of the wide neighbour come down over the middle of this cut
    ['neighbour-eats-cut', 'warns', [], ['root depth'], 'its root is .006 in deeper at the middle'],
    // (.0663 - .064) / 2: a ball of 5/32 in sides of 45 degrees wants a flat of .0647
    [
      'rides-on-sides',
      'notes',
      [1, 2, 3, 4, 5, 6],
      ['root flat', 'cut angle', 'cut position'],
      '.0005 in above',
    ],
    // .4 - .066 against .337
    ['routes-disagree', 'warns', [1], ['stands up by'], 'stands up by and subtraction differ by .003 in'],
    ['thin-master-pin', 'warns', [1], ['master pin'], 'chamber 1 is .0195 in long'],
    // .3706 - .369
    ['readings-spread', 'warns', [], ['root depth'], 'differ by .0015 in'],
    // .7501 - .748
    ['plug-readings-spread', 'warns', [], ['plug diameter'], 'differ by .002 in'],
  ])('%s %s chambers %j, by %j: %s', (code, severity, chambers, fields, figure) => {
    const [fires, doesNot] = FINDING_CASES[code]();
    const { evaluation, assembly } = lookAt(fires);
    const told = evaluation.findings.filter((each) => each.code === code);
    const numbers = told.flatMap((each) =>
      each.chambers.map((id) => assembly.chambers.find((chamber) => chamber.id === id)?.number),
    );
    expect(numbers).toEqual(chambers);
    expect(told.length).toBe(Math.max(1, chambers.length));
    for (const each of told) {
      expect(each).toMatchObject({ severity, fields });
      expect(each.message).toContain(figure);
    }
    expect(lookAt(doesNot).evaluation.findings.map((each) => each.code)).not.toContain(code);
  });

  test('a reading left out widens no spread, and one reading has none', () => {
    const spread = changed(soundJob(), ({ cylinders, keys }) => {
      cylinders[0]!.bodies[0]!.outerDiameter = inches(0.748, 0.76);
      keys[0]!.cuts[2]!.rootDepth = inches(0.333, 0.35);
    });
    const codes = (job: typeof spread) => lookAt(job).evaluation.findings.map(({ code }) => code);
    expect(codes(spread)).toEqual(expect.arrayContaining(['plug-readings-spread', 'readings-spread']));
    const left = changed(spread, ({ cylinders, keys }) => {
      cylinders[0]!.bodies[0]!.outerDiameter!.readings[1]!.left = 'out';
      keys[0]!.cuts[2]!.rootDepth!.readings[1]!.left = 'out';
    });
    expect(codes(left)).toEqual([]);
  });
});
