/**
 * Signs that are no finding of their own, in jobs where they are so by a known amount. Cylinder H turns from -.0077 to +.0040 in each
 * chamber (tests/model/evaluate/cylinder-h.test.ts); a stack that is longer by so much stands higher by so much. Inches.
 */
import { describe, expect, test } from 'vitest';
import { type SignName, signsOf } from '../../../src/model/diagnosis/signs.ts';
import { gatherFacts } from '../../../src/model/findings/facts.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { lookAt } from '../../support/cylinder-h.ts';
import { soundJob } from '../../support/finding-cases.ts';
import { changed } from '../../support/job-builder.ts';
import { inches } from '../../support/values.ts';

const ROOTS = [0.369, 0.421, 0.333, 0.393, 0.453, 0.303] as const;

/** The sound job with stacks that are longer by so much, by chamber. */
function stacks(by: Readonly<Record<number, number>>): Job {
  return changed(soundJob(), ({ groups }) => {
    for (const [chamber, more] of Object.entries(by)) {
      const i = Number(chamber) - 1;
      groups[i]!.height = inches(Math.round((0.706 - ROOTS[i]! + more) * 1e5) / 1e5);
    }
  });
}

function factsOf(job: Job) {
  const { bench, assembly, evaluation } = lookAt(job);
  return gatherFacts(bench, assembly, evaluation);
}

const texts = (job: Job, name: SignName) => signsOf(factsOf(job), name).map(({ text }) => text);

const HIGH = 'Chamber 2 is too high, .006 in outside where it turns.';
const LOW = 'Chamber 5 is too low, .005 in outside where it turns.';

describe('signs', () => {
  test('tell chambers that are off, by how far they are outside their window', () => {
    const job = stacks({ 2: 0.01, 5: -0.0127 });
    expect(texts(job, 'chambers off')).toEqual([HIGH, LOW]);
    expect(texts(job, 'chambers high')).toEqual([HIGH]);
    expect(texts(job, 'chambers low')).toEqual([LOW]);
    expect(texts(job, 'one chamber off')).toEqual([]);
    expect(texts(stacks({ 2: 0.01 }), 'one chamber off')).toEqual([HIGH]);
    expect(texts(soundJob(), 'chambers off')).toEqual([]);
    const [first] = signsOf(factsOf(job), 'chambers off');
    const { assembly } = lookAt(job);
    expect(first).toMatchObject({
      standing: 'found',
      show: { travel: 0, chamber: assembly.chambers[1]?.id, view: 'close-up' },
    });
  });

  test('call near what the readings cannot tell, with their ±', () => {
    const unsure = (by: Readonly<Record<number, number>>) =>
      changed(stacks(by), ({ instruments }) => {
        for (const each of instruments) each.maxPermissibleErrorMm = 0.005;
      });
    const [near, ...others] = signsOf(factsOf(unsure({ 3: 0.0041 })), 'chambers off');
    expect(others).toEqual([]);
    expect(near?.standing).toBe('near');
    expect(near?.text).toMatch(/^Chamber 3 lies near a limit; its offset is good to about ±\.00\d+ in\.$/u);
    expect(texts(unsure({ 3: 0.0041 }), 'chambers high')).toHaveLength(1);
    expect(texts(unsure({ 3: 0.0041 }), 'chambers low')).toEqual([]);
    expect(texts(unsure({ 3: -0.0078 }), 'chambers low')).toHaveLength(1);
    expect(texts(unsure({ 3: -0.0078 }), 'chambers high')).toEqual([]);
  });

  test('tell the one that has the least to spare', () => {
    // .0077 - .0047 at the low end, .0040 everywhere else; and then .0040 - .0020 at the high one
    expect(texts(stacks({ 4: -0.0047 }), 'little to spare')).toEqual([
      'Chamber 4 has the least to spare: .003 in.',
    ]);
    expect(texts(stacks({ 4: -0.0047, 6: 0.002 }), 'little to spare')).toEqual([
      'Chamber 6 has the least to spare: .002 in.',
    ]);
  });

  test('tell a spring that is nearly solid at the worst place', () => {
    // room of the spring of chamber 3 as the peak passes: .202; squeezed solid .186
    const spring = (solid: number) =>
      changed(soundJob(), ({ parts }) => {
        parts.find(({ label }) => label === 'spring 3')!.solid = inches(solid);
      });
    const text = (by: string) => `The spring of chamber 3 is ${by} in from solid at the worst place.`;
    expect(texts(spring(0.186), 'tight spring')).toContain(text('.016'));
    expect(texts(spring(0.183), 'tight spring')).toContain(text('.019'));
    expect(texts(spring(0.181), 'tight spring').join(' ')).not.toContain('chamber 3');
    expect(texts(spring(0.203), 'tight spring').join(' ')).not.toContain('chamber 3');
  });

  test('tell how much slack a waist at the line leaves', () => {
    const job = changed(soundJob(), ({ parts }) => {
      const waist = { from: inches(0.05), length: inches(0.21), diameter: inches(0.115) };
      parts.find(({ label }) => label === 'driver 4')!.waist = { kind: 'spool', ...waist };
    });
    // (.160 - .115) / .374 rad
    expect(texts(job, 'a waist at the line')).toEqual([
      'The spool of chamber 4 stands at the line with its waist: up to 7° of slack.',
    ]);
    expect(texts(soundJob(), 'a waist at the line')).toEqual([]);
  });

  test('tell what does not lock with the key out: found when nothing does', () => {
    const without = (chambers: readonly number[]) =>
      changed(soundJob(), ({ plans }) => {
        for (const chamber of chambers) plans[0]!.stacks[chamber - 1]!.items.splice(2, 1);
      });
    const [some] = signsOf(factsOf(without([2, 5])), 'does not lock');
    expect(some).toMatchObject({
      standing: 'near',
      text: 'Chambers that do not lock with the key out: 2, 5; the others hold.',
    });
    const [all] = signsOf(factsOf(without([1, 2, 3, 4, 5, 6])), 'does not lock');
    expect(all).toMatchObject({ standing: 'found', text: 'No chamber locks with the key out.' });
    expect(signsOf(factsOf(soundJob()), 'does not lock')).toEqual([]);
  });

  test('count the chambers with master pins', () => {
    const withPins = (chambers: readonly number[]) =>
      changed(soundJob(), ({ plans, parts }) => {
        for (const chamber of chambers) {
          const driver = parts.find(({ label }) => label === `driver ${chamber}`)!;
          parts.push({ ...driver, id: `master-${chamber}`, label: '', length: inches(0.03) });
          plans[0]!.stacks[chamber - 1]!.items.splice(2, 0, { part: `master-${chamber}` });
        }
      });
    expect(texts(withPins([]), 'master pins')).toEqual([]);
    expect(texts(withPins([2]), 'master pins')[0]).toMatch(/^One chamber has/u);
    expect(texts(withPins([2, 3, 6]), 'master pins')[0]).toMatch(/^3 chambers have/u);
  });
});
