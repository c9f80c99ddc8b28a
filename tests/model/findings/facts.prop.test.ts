/** Drivers, way, findings, diagnosis and load sheet of random valid jobs, and of jobs laid out another way round. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { diagnose } from '../../../src/model/diagnosis/diagnose.ts';
import { SYMPTOMS } from '../../../src/model/diagnosis/symptoms-table.ts';
import { allFindings } from '../../../src/model/findings/all-findings.ts';
import { gatherFacts } from '../../../src/model/findings/facts.ts';
import { loadSheet } from '../../../src/model/load-sheet/load-sheet.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { thresholdsOf } from '../../../src/model/rest/thresholds.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { lookAt } from '../../support/cylinder-h.ts';
import { FINDING_CASES } from '../../support/finding-cases.ts';
import { changed } from '../../support/job-builder.ts';
import { randomJob } from '../../support/random-job.ts';
import { inches, statedInches } from '../../support/values.ts';

const file = new URL('../../../public/examples/lighthouse.json', import.meta.url);
const example = JSON.parse(readFileSync(file, 'utf8')) as Job;

function factsOf(job: Job) {
  const { bench, assembly, evaluation } = lookAt(job);
  return gatherFacts(bench, assembly, evaluation);
}

/** Everything that is told, without what it was worked out from. */
function told(job: Job) {
  const facts = factsOf(job);
  const { rest, way, play, loading } = facts;
  const findings = allFindings(facts);
  const explained = SYMPTOMS.map((symptom) => diagnose(symptom, facts, findings));
  return { rest, way, play, loading, findings, explained, sheet: loadSheet(facts) };
}

function notNumbers(node: unknown, path = ''): string[] {
  if (typeof node === 'number') return Number.isFinite(node) ? [] : [`${path}: ${node}`];
  if (typeof node === 'string') return /NaN|Infinity|undefined/u.test(node) ? [`${path}: ${node}`] : [];
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([name, child]) => notNumbers(child, `${path}.${name}`));
}

/** More is known than in the example: springs by their wire, end play, slot, thresholds. */
function fuller(job: Job): Job {
  return changed(job, (copy) => {
    copy.cylinders[0]!.endPlay = statedInches(0.003);
    copy.cylinders[0]!.keywayWidth = statedInches(0.08);
    copy.settings.thresholds = { driverEngagement: statedInches(0.02), depthStep: statedInches(0.015) };
    copy.parts.forEach((part) => {
      if (part.kind !== 'spring') return;
      Object.assign(part, { coils: 14, coilEnds: 'closed', wire: statedInches(0.014), shearModulusGPa: 41 });
    });
  });
}

describe('of random valid jobs', () => {
  test.each([0, 0.3, 1])('at wildness %f never throws, never tells a number that is none', (wildness) => {
    for (let seed = 1; seed <= 20; seed++) {
      const job = randomJob(fuller(example), seed + wildness * 1e6, wildness);
      const parsed = parseJob(JSON.parse(JSON.stringify(job)));
      if (parsed.type === 'error') throw new Error(`seed ${seed}: ${JSON.stringify(parsed.problems[0])}`);
      expect(notNumbers(told(parsed.job)), `seed ${seed}, wildness ${wildness}`).toEqual([]);
    }
  });

  test('a longest driver never leaves its spring less than the margin, a shortest one stands across', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const job = randomJob(fuller(example), seed, 0);
      const { driverEngagement } = thresholdsOf(job);
      const [first] = factsOf(job).rest.chambers;
      const { shortest, longest } = first!.driver;
      if (shortest === null || longest === null) continue;
      const id = job.plans[0]!.stacks.find(({ chamber }) => chamber === first!.chamber)!.items[2]!.part;
      const withLength = (mm: number) =>
        factsOf(
          changed(job, (copy) => {
            const part = copy.parts.find((each) => each.id === id)!;
            part.length = {
              ...inches(1),
              readings: [{ ...inches(1).readings[0]!, value: mm, instrument: null }],
            };
          }),
        ).rest.chambers[0]!;
      expect(withLength(longest).spring?.toSpare, `seed ${seed}`).toBeCloseTo(0.254, 9);
      const least = withLength(shortest).atLines[0];
      if (least?.state === 'driver across')
        expect(least.engaged, `seed ${seed}`).toBeCloseTo(driverEngagement, 9);
    }
  });
});

/** Numbers to a millionth; of equally steep sides, rounding decides which is told. */
function rounded(node: unknown): unknown {
  if (typeof node === 'number') return Math.round(node * 1e6) / 1e6 + 0;
  if (typeof node !== 'object' || node === null) return node;
  if (Array.isArray(node)) return node.map(rounded);
  const entries = Object.entries(node).filter(([name]) => !('canClimb' in node && name === 'travel'));
  return Object.fromEntries(entries.map(([name, child]) => [name, rounded(child)]));
}

describe('laid out the other way round', () => {
  const jobs = [
    ...Array.from({ length: 4 }, (_, i) => randomJob(fuller(example), i + 1, 0.2)),
    ...Object.values(FINDING_CASES)
      .filter((_, i) => i % 5 === 0)
      .map((make) => make()[0]),
  ];

  test('a mirror image, left for right, tells the same', () => {
    let aside = 0;
    for (const job of jobs) {
      const lopsided = (side: number) =>
        changed(job, (copy) =>
          copy.cylinders[0]!.chambers.forEach((chamber, i) =>
            chamber.holes.forEach((hole) => (hole.sideways = statedInches(side * 0.001 * (i + 1)))),
          ),
        );
      expect(rounded(told(lopsided(-1)))).toEqual(rounded(told(lopsided(1))));
      aside += 1;
    }
    expect(aside).toBe(jobs.length);
  });

  test('lists in another order tell the same', () => {
    for (const job of jobs) {
      const backwards = changed(job, (copy) => {
        copy.cylinders[0]!.chambers.reverse();
        copy.keys[0]!.cuts.reverse();
        copy.parts.reverse();
        copy.groups.reverse();
        copy.plans[0]!.stacks.reverse();
      });
      const [one, other] = [told(job), told(backwards)];
      expect(rounded(other.rest)).toEqual(rounded(one.rest));
      expect(rounded(other.way)).toEqual(rounded(one.way));
      expect(rounded(other.sheet)).toEqual(rounded(one.sheet));
      const words = (all: typeof one) => all.findings.map(({ message }) => message).sort();
      expect(words(other)).toEqual(words(one));
    }
  });

  test('counted from the tip, only the numbers turn round', () => {
    for (const job of jobs) {
      const [one, other] = (['bow', 'tip'] as const).map((numbering) =>
        told(changed(job, (copy) => (copy.settings.numbering = numbering))),
      );
      const count = job.cylinders[0]!.chambers.length;
      const turned = one!.rest.chambers.map((each) => ({ ...each, number: count + 1 - each.number }));
      expect(rounded(other!.rest.chambers)).toEqual(rounded(turned));
      expect(other!.findings.map(({ code }) => code)).toEqual(one!.findings.map(({ code }) => code));
    }
  });
});
