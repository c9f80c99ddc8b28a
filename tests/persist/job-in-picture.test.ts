import { fc, test } from '@fast-check/vitest';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { readChosenFile } from '../../src/persist/job-file.ts';
import { finishPng, finishSvg, jobBytesIn, PIXELS_PER_METRE } from '../../src/persist/job-in-picture.ts';
import { jobToText } from '../../src/persist/job-text.ts';
import { isPng, readChunks, writeChunks } from '../../src/persist/png-chunks.ts';
import { toSvgText } from '../../src/drawing/node.ts';
import { type PictureKind, pictureOf, pictureSource } from '../../src/panels/note/note-pictures.ts';
import { lookAt } from '../../src/panels/shared/look.ts';
import { buildJob, changed } from '../support/job-builder.ts';
import { jobCount } from '../support/near-line-jobs.ts';
import { randomJob } from '../support/random-job.ts';
import { sameOffsets } from '../support/same-offsets.ts';

const WORDS = { title: 'Boathouse: long section, 2.5:1', description: 'Job 7. Numbers in inches, ±.0026' };
const SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 4">\n <path d="M0 0H4"/>\n</svg>\n';

/** A picture as another program writes it. */
function plainPng(): Uint8Array {
  const png = new PNG({ width: 5, height: 3 });
  for (let i = 0; i < png.data.length; i++) png.data[i] = (i * 37) % 256;
  return new Uint8Array(PNG.sync.write(png));
}

const KINDS: readonly PictureKind[] = ['section', 'dimensions', 'close-ups', 'chamber', 'across'];
/** SEEDED_JOBS=200 is the long form. */
const JOBS = jobCount(20);
/** ms, for the long form on a busy machine. */
const PATIENCE = 120_000 + 6_000 * JOBS;

const jobOf = (seed: number): Job =>
  changed(
    randomJob(buildJob({ chambers: 1 + (seed % 3), title: `Job ${seed} ▲ "<&>" \u0000` }), seed, 1),
    (job) => {
      job.note.restricted = { toDo: `Chamber 1:\n${'é'.repeat(seed % 40)} ]]> </metadata>` };
    },
  );

const opened = async (bytes: Uint8Array, name: string) =>
  readChosenFile(new File([bytes.slice()], name), null);

describe('a picture with its job inside', () => {
  it(
    'opens again as the same job, PNG and SVG',
    async () => {
      for (let seed = 0; seed < 2 * JOBS; seed++) {
        const job = jobOf(seed);
        const files = [finishPng(plainPng(), WORDS, job)!, new TextEncoder().encode(finishSvg(SVG, job))];
        for (const [i, bytes] of files.entries()) {
          const back = await opened(bytes, i === 0 ? 'a.png' : 'a.svg');
          expect(back, `seed ${seed}`).toMatchObject({ type: 'opened', result: { type: 'success' } });
          const read = back.type === 'opened' && back.result.type === 'success' ? back.result.job : null;
          expect(read === null ? '' : await hashOf(jobToText(read)), `seed ${seed}`).toBe(
            await hashOf(jobToText(job)),
          );
        }
      }
    },
    PATIENCE,
  );

  it('is a good PNG to another program, with the same pixels, 300 dots to the inch', () => {
    const before = PNG.sync.read(Buffer.from(plainPng()));
    const bytes = finishPng(plainPng(), WORDS, buildJob())!;
    const after = PNG.sync.read(Buffer.from(bytes), { checkCRC: true });
    expect(after.data.equals(before.data)).toBe(true);
    // pHYs, PNG 3rd edition 11.3.4.3: both ways, unit metre. 300 / 0.0254 = 11811.02.
    const at = Buffer.from(bytes).indexOf('pHYs');
    const view = Buffer.from(bytes);
    expect([view.readUInt32BE(at + 4), view.readUInt32BE(at + 8), view[at + 12]]).toEqual([11811, 11811, 1]);
    expect(PIXELS_PER_METRE).toBe(11811);
    expect(Buffer.from(bytes).includes(Buffer.from(WORDS.description, 'utf8'))).toBe(true);
  });
});

describe('each picture of a note', () => {
  it(
    'opens again as its job with the tick, and holds nothing of it without',
    async () => {
      for (let seed = 0; seed < JOBS; seed++) {
        const job = changed(sameOffsets(seed)[0], (copy) => {
          copy.note.restricted = { toDo: `Chamber 1 ${'é'.repeat(seed % 40)} ]]> </metadata>` };
        });
        const look = lookAt(job, { cylinder: 'cylinder', key: 'key', plan: 'plan' });
        const kind = KINDS[seed % KINDS.length]!;
        const svg = toSvgText(pictureOf(kind, 'chamber-1', pictureSource(look, false)).drawing);
        const back = await opened(new TextEncoder().encode(finishSvg(svg, job)), 'a.svg');
        const read = back.type === 'opened' && back.result.type === 'success' ? back.result.job : null;
        expect(read === null ? '' : await hashOf(jobToText(read)), `${kind}, seed ${seed}`).toBe(
          await hashOf(jobToText(job)),
        );
        const plain = finishSvg(svg, null);
        const told = finishPng(plainPng(), WORDS, null)!;
        for (const text of [plain, Buffer.from(told).toString('latin1')])
          for (const piece of [
            'shearsight-job',
            'Shearsight job',
            '"readings"',
            'bottom-pin-1',
            'Chamber 1 é',
          ])
            expect(text.includes(piece), `${kind}, seed ${seed}: ${piece}`).toBe(false);
        expect(await opened(new TextEncoder().encode(plain), 'a.svg')).toMatchObject({ type: 'error' });
      }
    },
    PATIENCE,
  );
});

describe('a picture without', () => {
  it('holds no bytes of the job', () => {
    for (let seed = 0; seed < 10; seed++) {
      const job = jobOf(seed);
      const png = finishPng(plainPng(), WORDS, null)!;
      const svg = finishSvg(SVG, null);
      expect(png).toEqual(finishPng(plainPng(), WORDS, null));
      expect(svg).toBe(SVG);
      for (const text of [Buffer.from(png).toString('latin1'), svg]) {
        expect(text.includes('shearsight-job')).toBe(false);
        expect(text.includes(job.keys[0]!.cuts[0]!.id)).toBe(false);
      }
    }
  });

  it.each([
    ['a PNG', () => finishPng(plainPng(), WORDS, null)!],
    ['a PNG of another program', plainPng],
    ['an SVG', () => new TextEncoder().encode(SVG)],
    ['a JPEG', () => new Uint8Array([0xff, 0xd8, 0xff, 0xe0])],
  ])('%s says that it holds no job', async (_, make) => {
    expect(await opened(make(), 'a')).toEqual({
      type: 'error',
      problems: [{ field: 'file', message: expect.stringMatching(/^This picture holds no job\./) as string }],
    });
  });

  it('a damaged one says so', async () => {
    const png = finishPng(plainPng(), WORDS, buildJob())!;
    const svg = new TextEncoder().encode(finishSvg(SVG, buildJob()).replace('eyAi', 'eyBi'));
    for (const bytes of [png.slice(0, -20), flipped(png, 300), svg]) {
      const back = await opened(bytes, 'a');
      expect(back).toMatchObject({ type: 'error' });
      expect(back.type === 'error' ? back.problems[0]?.message : '').toContain('damaged');
    }
  });

  it('a job file is no picture', () => {
    expect(jobBytesIn(new TextEncoder().encode(jobToText(buildJob())))).toEqual({ type: 'not a picture' });
  });
});

describe('chunks', () => {
  test.prop([fc.uint8Array({ maxLength: 400 })])('of any bytes: read, or refused, never a crash', (bytes) => {
    const png = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, ...bytes]);
    expect(isPng(png)).toBe(true);
    const chunks = readChunks(png);
    if (chunks !== null) expect(writeChunks(chunks).length).toBeLessThanOrEqual(png.length);
    expect(['damaged', 'no job', 'job']).toContain(jobBytesIn(png).type);
  });
});

async function hashOf(text: string): Promise<string> {
  const hash = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return Buffer.from(hash).toString('hex');
}

function flipped(bytes: Uint8Array, at: number): Uint8Array {
  const copy = bytes.slice();
  copy[at] = (copy[at] ?? 0) ^ 1;
  return copy;
}
