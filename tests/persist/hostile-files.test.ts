import { describe, expect, it } from 'vitest';
import { parseJob } from '../../src/model/schema/parse-job.ts';
import { jobToText, readJobText } from '../../src/persist/job-text.ts';
import { createDocumentStore } from '../../src/state/document-store.ts';
import { buildJob } from '../support/job-builder.ts';
import { mutateText, seeded } from '../support/mutate-text.ts';

/** In groups of forty, so that a failure names few seeds. SHEARSIGHT_FILES=100000 is the long form. */
const FILES = Number(process.env['SHEARSIGHT_FILES'] ?? 20_000);
const GROUP = 40;

describe(`${FILES} damaged files`, () => {
  it(
    'each end in a job that is sound or in sentences, with nothing changed by a refusal',
    () => {
      const inherited = Object.getOwnPropertyNames(Object.prototype);
      const valid = [
        jobToText(buildJob({ chambers: 2 })),
        JSON.stringify(
          buildJob({ chambers: [{ ball: 0.109, lowerStack: 0.19, masterPins: [0.03], restDepth: 0.1 }] }),
        ),
      ];
      const store = createDocumentStore(buildJob({ title: 'On the bench' }));
      const before = store.getState();
      const counts = { loaded: 0, refused: 0 };
      for (let group = 0; group < FILES / GROUP; group++) {
        for (let seed = group * GROUP; seed < (group + 1) * GROUP; seed++) {
          const random = seeded(seed);
          let text = valid[seed % valid.length] ?? '';
          const times = 1 + Math.floor(random() * 3);
          for (let i = 0; i < times; i++) text = mutateText(text, random);
          const read = readJobText(text);
          if (read.type === 'success') {
            counts.loaded += 1;
            expect(parseJob(read.job).type, `seed ${seed}`).toBe('success');
            expect(readJobText(jobToText(read.job)), `seed ${seed}`).toEqual({ ...read, migratedFrom: null });
          } else {
            counts.refused += 1;
            expect(read.raw, `seed ${seed}`).toBe(text);
            expect(read.problems.length, `seed ${seed}`).toBeGreaterThan(0);
            for (const { field, message } of read.problems)
              expect(field !== '' && /^\S.*\.$/.test(message), `seed ${seed}: ${field}: ${message}`).toBe(
                true,
              );
          }
        }
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
