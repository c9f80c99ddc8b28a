import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { buildAssembly } from '../../../src/model/assembly/build-assembly.ts';
import { poseAt } from '../../../src/model/assembly/pose-at.ts';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import { firstSelection } from '../../../src/model/measured/selection.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { randomJob } from '../../support/random-job.ts';

const file = new URL('../../../public/examples/lighthouse.json', import.meta.url);
const example = JSON.parse(readFileSync(file, 'utf8')) as Job;

/** Lists where a result holds a number that is none. */
function notNumbers(node: unknown, path = ''): string[] {
  if (typeof node === 'number') return Number.isFinite(node) ? [] : [`${path}: ${node}`];
  if (node instanceof Map) return notNumbers([...node.entries()], path);
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([name, child]) => notNumbers(child, `${path}.${name}`));
}

function check(seed: number, wildness: number): void {
  const job = randomJob(example, seed, wildness);
  const parsed = parseJob(JSON.parse(JSON.stringify(job)));
  if (parsed.type === 'error') throw new Error(`seed ${seed}: ${JSON.stringify(parsed.problems[0])}`);
  const selection = firstSelection(parsed.job);
  if (selection === null) throw new Error('no selection');
  const evaluation = evaluate(parsed.job, selection);
  expect(notNumbers(evaluation), `seed ${seed}`).toEqual([]);
  const assembly = buildAssembly(parsed.job, selection);
  const { key } = assembly;
  const travels = key === null ? [null] : [0, key.outTravel / 3, key.outTravel];
  for (const travel of travels) {
    const pose = poseAt(assembly, { travel });
    expect(notNumbers(pose.stacks), `seed ${seed}, travel ${travel ?? 'none'}`).toEqual([]);
    const gaps = pose.stacks.flatMap((stack) =>
      stack.parts.slice(1).filter((posed, i) => posed.y > (stack.parts[i]?.topY ?? 0) + 1e-9),
    );
    expect(gaps, `a gap that is none, seed ${seed}`).toEqual([]);
  }
  for (const chamber of evaluation.chambers) {
    for (const split of chamber.splits) {
      const { lowest, highest } = split.window;
      expect(lowest <= highest || split.verdict === 'never turns', `seed ${seed}`).toBe(true);
      if (split.verdict === 'level') expect(split.offset, `seed ${seed}`).toBeLessThanOrEqual(highest + 1e-9);
    }
    if (chamber.useFrom !== null && chamber.useTo !== null)
      expect(chamber.useFrom).toBeLessThanOrEqual(chamber.useTo);
  }
}

describe('evaluating random valid jobs', () => {
  test.each([0, 0.3, 1])('at wildness %f never throws, never gives a number that is none', (wildness) => {
    for (let seed = 1; seed <= 400; seed++) check(seed + wildness * 1e6, wildness);
  });
});
