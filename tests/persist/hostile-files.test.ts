import { isDeepStrictEqual } from 'node:util';
import { describe, expect, it } from 'vitest';
import { parseJob } from '../../src/model/schema/parse-job.ts';
import { jobToText, type ReadJob, readJobText } from '../../src/persist/job-text.ts';
import { createDocumentStore } from '../../src/state/document-store.ts';
import { buildJob } from '../support/job-builder.ts';
import { mutateText, seeded } from '../support/mutate-text.ts';

/** In groups of forty, so that a failure names few seeds. SHEARSIGHT_FILES=100000 is the long form. */
const FILES = Number(process.env['SHEARSIGHT_FILES'] ?? 20_000);
const GROUP = 40;

/** What would tear a sentence apart: line breaks, control characters, marks that turn the reading direction. */
const TORN = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u;

describe(`${FILES} damaged files`, () => {
  it(
    'each end in a job that is sound or in sentences, with nothing changed by a refusal',
    () => {
      const inherited = Object.getOwnPropertyNames(Object.prototype);
      // Small, as the time goes with the length; laid out by a person's eye and by a machine's.
      const valid = [
        jobToText(buildJob({ chambers: 1 })),
        JSON.stringify(
          buildJob({ chambers: [{ ball: 0.109, lowerStack: 0.19, masterPins: [0.03], restDepth: 0.1 }] }),
        ),
      ];
      const store = createDocumentStore(buildJob({ title: 'On the bench' }));
      const before = store.getState();
      const counts = { loaded: 0, refused: 0 };
      for (let group = 0; group < FILES / GROUP; group++) {
        const wrong: string[] = [];
        for (let seed = group * GROUP; seed < (group + 1) * GROUP; seed++) {
          const random = seeded(seed);
          let text = valid[seed % valid.length] ?? '';
          const times = 1 + Math.floor(random() * 3);
          for (let i = 0; i < times; i++) text = mutateText(text, random);
          const read = readJobText(text);
          counts[read.type === 'success' ? 'loaded' : 'refused'] += 1;
          wrong.push(...faultsIn(read, text).map((fault) => `seed ${seed}: ${fault}`));
        }
        expect(wrong, `group ${group}`).toEqual([]);
        expect(Object.getOwnPropertyNames(Object.prototype), `group ${group}`).toEqual(inherited);
        expect(({} as { polluted?: unknown }).polluted, `group ${group}`).toBeUndefined();
      }
      expect(store.getState()).toBe(before);
      // The damage is neither always fatal nor always harmless, or the test would prove little.
      expect(counts.loaded).toBeGreaterThan(FILES / 50);
      expect(counts.refused).toBeGreaterThan(FILES / 4);
    },
    120_000 + 10 * FILES,
  );
});

/** What is wrong with what came of a damaged text: a job that is not sound, or a refusal without sentences. */
function faultsIn(read: ReadJob, text: string): string[] {
  if (read.type === 'success') {
    const again = readJobText(jobToText(read.job));
    return [
      ...(parseJob(read.job).type === 'success' ? [] : ['loaded, but not sound']),
      ...(isDeepStrictEqual(again, { ...read, migratedFrom: null })
        ? []
        : ['loaded, but not kept by a file']),
    ];
  }
  const { raw, problems } = read;
  return [
    ...(raw === text ? [] : ['refused, and the text was not kept']),
    ...(problems.length > 0 ? [] : ['refused without a word']),
    ...problems
      .filter(({ field, message }) => field === '' || TORN.test(field + message) || !/^\S.*\.$/.test(message))
      .map(({ field, message }) => `no sentence: ${field}: ${message}`),
  ];
}
