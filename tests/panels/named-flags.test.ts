/** The chamber that the answer names is the one with a flag; others that are open too step back. In seeded jobs near the line. */
import { expect, test } from 'vitest';
import { longSection } from '../../src/drawing/long-section.ts';
import type { DrawingNode } from '../../src/drawing/node.ts';
import { poseAt } from '../../src/model/assembly/pose-at.ts';
import { answerOf } from '../../src/panels/answer/answer-of.ts';
import { lookAt } from '../../src/panels/shared/look.ts';
import { nearLineJob } from '../support/near-line-jobs.ts';

const JOBS = 60;

/** Numbers of the chambers that a headline names: "Chamber 5 is probably too high", "Chambers 2 and 3 probably hold". */
function namedIn(headline: string): number[] | null {
  const named = /^Chambers? ([\d, and]+) /u.exec(headline)?.[1];
  return named === undefined ? null : named.match(/\d+/gu)!.map(Number);
}

function flagsIn(node: DrawingNode): DrawingNode[] {
  const isFlag = node.tag === 'g' && /^flag(?: |$)/u.test(String(node.attributes['class'] ?? ''));
  const own = isFlag ? [node] : [];
  return [...own, ...node.children.flatMap((child) => (typeof child === 'string' ? [] : flagsIn(child)))];
}

test('a boxed flag for each chamber the headline names, and for no other', () => {
  let [compared, quiet] = [0, 0];
  for (let seed = 0; seed < JOBS; seed++) {
    const { job, selection } = nearLineJob(seed);
    const look = lookAt(job, selection);
    const named = namedIn(answerOf(look).headline);
    if (named === null || look.evaluation.lines.length > 1) continue;
    const { assembly, evaluation } = look;
    const pose = poseAt(assembly, { travel: assembly.key?.seatedTravel ?? 0 });
    const flags = flagsIn(longSection(assembly, pose, evaluation, { width: 700, unit: job.settings.unit }));
    const numberOf = (flag: DrawingNode) =>
      assembly.chambers.find(({ id }) => id === flag.attributes['data-chamber'])?.number ?? 0;
    const boxed = flags.filter((flag) => flag.attributes['class'] !== 'flag').map(numberOf);
    expect(boxed.sort(), answerOf(look).headline).toEqual([...named].sort());
    compared += 1;
    quiet += flags.length - boxed.length;
  }
  expect(compared).toBeGreaterThan(5);
  expect(quiet).toBeGreaterThan(0);
});
