import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import {
  type FileDialogs,
  openJobFile,
  readChosenFile,
  saveAllJobs,
  saveJobFile,
  saveLockedFile,
} from '../../src/persist/job-file.ts';
import { allJobsToText } from '../../src/persist/all-jobs.ts';
import { jobFileName } from '../../src/persist/job-file-name.ts';
import { jobToText, MOST_BYTES } from '../../src/persist/job-text.ts';
import { buildJob, changed } from '../support/job-builder.ts';

const job = buildJob({ title: 'Boathouse' });
const text = jobToText(job);

/** A file on disk behind a handle; what is written can be changed on the way. */
class DiskFile {
  content = '';
  written = 0;
  readonly handle: FileSystemFileHandle;
  constructor(name: string, onDisk: (text: string) => string = (given) => given) {
    this.onDisk = onDisk;
    const getFile = () => Promise.resolve(new File([this.content], name));
    this.handle = { kind: 'file', name, getFile } as unknown as FileSystemFileHandle;
  }
  readonly onDisk: (text: string) => string;
  async write(blob: Blob): Promise<void> {
    this.written += 1;
    this.content = this.onDisk(await blob.text());
  }
}

const refuse = (name: string) => () => Promise.reject(new DOMException('no', name));
const none: FileDialogs = { fileOpen: refuse('AbortError'), fileSave: refuse('AbortError') };

function savingTo(file: DiskFile | null): { dialogs: FileDialogs; asked: string[] } {
  const asked: string[] = [];
  const fileSave: FileDialogs['fileSave'] = async (blob, options, handle) => {
    if (handle == null) asked.push((Array.isArray(options) ? options[0] : options)?.fileName ?? '');
    await file?.write(blob as Blob);
    return file?.handle ?? null;
  };
  return { dialogs: { ...none, fileSave }, asked };
}

const opening = (file: File): FileDialogs => ({ ...none, fileOpen: (() => Promise.resolve(file)) as never });

describe('saving to a file', () => {
  it('writes the job, reads it back, and says that it is the same', async () => {
    const file = new DiskFile('My boathouse.json');
    const { dialogs, asked } = savingTo(file);
    expect(await saveJobFile(job, null, dialogs)).toEqual({
      type: 'success',
      name: 'My boathouse.json',
      handle: file.handle,
      isVerified: true,
    });
    expect([asked, file.content]).toEqual([['Boathouse.shearsight.json'], text]);
  });

  it('writes to the same file again without asking', async () => {
    const file = new DiskFile('b.json');
    const { dialogs, asked } = savingTo(file);
    await saveJobFile(job, file.handle, dialogs);
    expect([asked, file.written]).toEqual([[], 1]);
  });

  it('does not claim to have verified a download', async () => {
    const { dialogs } = savingTo(null);
    expect(await saveJobFile(job, null, dialogs)).toMatchObject({
      name: 'Boathouse.shearsight.json',
      handle: null,
      isVerified: false,
    });
  });

  it('says so when the disk has written something else', async () => {
    const { dialogs } = savingTo(new DiskFile('b.json', (given) => given.slice(0, -9)));
    expect(await saveJobFile(job, null, dialogs)).toEqual({
      type: 'error',
      problems: [
        {
          field: 'file',
          message: 'The file was written, but what was read back differs. Save it elsewhere.',
        },
      ],
    });
  });

  it('offers no file that could not be opened again', async () => {
    const file = new DiskFile('b.json');
    const broken = changed(job, (copy) => {
      copy.keys = [];
    });
    expect(await saveJobFile(broken, null, savingTo(file).dialogs)).toMatchObject({ type: 'error' });
    expect(file.written).toBe(0);
  });

  it.each([
    ['cancelled', 'AbortError', { type: 'cancelled' }],
    ['refused by the system', 'NotAllowedError', { type: 'error', problems: [{ field: 'file' }] }],
  ])('tells what happened when it is %s', async (_, name, outcome) => {
    expect(await saveJobFile(job, null, { ...none, fileSave: refuse(name) })).toMatchObject(outcome);
  });
});

describe('saving other files', () => {
  it('a locked job: its bytes, under a name that ends in .age', async () => {
    const file = new DiskFile('Back-gate.age');
    const { dialogs } = savingTo(file);
    expect(await saveLockedFile(new Uint8Array([1, 2, 3]), 'Back gate', dialogs)).toMatchObject({
      type: 'success',
      isVerified: true,
    });
  });

  it('all jobs: reads back the same, tells when it does not', async () => {
    const { dialogs, asked } = savingTo(new DiskFile('all.json'));
    expect(await saveAllJobs([job], '2026-01-31', dialogs)).toMatchObject({
      type: 'success',
      isVerified: true,
    });
    expect(asked).toEqual(['all-jobs-2026-01-31.shearsight.json']);
    const cut = savingTo(new DiskFile('all.json', (given) => given.slice(0, -9)));
    expect(await saveAllJobs([job], '2026-01-31', cut.dialogs)).toMatchObject({ type: 'error' });
  });
});

describe('opening a file', () => {
  it('gives the job and the file it came from', async () => {
    const opened = await openJobFile(opening(new File([text], 'b.json')));
    expect(opened).toEqual({
      type: 'opened',
      name: 'b.json',
      handle: null,
      result: { type: 'success', job, migratedFrom: null },
    });
  });

  it('gives the sentences and the text of a file that is no job', async () => {
    const opened = await openJobFile(opening(new File(['<html>'], 'b.json')));
    expect(opened).toMatchObject({ type: 'opened', result: { type: 'error', raw: '<html>' } });
  });

  it('does not read a file that is too large', async () => {
    const large = { size: MOST_BYTES + 1, arrayBuffer: () => Promise.reject(new Error('was read')) };
    expect(await readChosenFile(large as unknown as File, null)).toMatchObject({
      type: 'opened',
      result: { type: 'error', reason: 'too large' },
    });
  });

  it('tells a locked file, and keeps its bytes', async () => {
    const opened = await openJobFile(opening(new File(['age-encryption.org/v1\n-> scrypt'], 'b.age')));
    expect(opened).toMatchObject({ type: 'locked', name: 'b.age' });
  });

  it('opens all jobs of one file; one that cannot be read is told and keeps none out', async () => {
    const other = { ...buildJob(), id: 'other' };
    const all = allJobsToText([job, other]);
    expect(await openJobFile(opening(new File([all], 'all.json')))).toEqual({
      type: 'all',
      jobs: [job, other],
      problems: [],
    });
    const data = JSON.parse(all) as { jobs: { title: unknown }[] };
    if (data.jobs[1] !== undefined) data.jobs[1].title = 7;
    const opened = await openJobFile(opening(new File([JSON.stringify(data)], 'all.json')));
    expect(opened).toMatchObject({ type: 'all', jobs: [job], problems: [{ field: 'job 2, title' }] });
  });

  it.each(['{"format":"shearsight-jobs"}', '["shearsight-jobs"]', '{"format":"shearsight-jobs","jobs":{}}'])(
    '%s is not a file of jobs',
    async (words) => {
      const opened = await openJobFile(opening(new File([words], 'all.json')));
      expect(opened).toMatchObject({ type: 'opened', result: { type: 'error' } });
    },
  );

  it.each([
    ['cancelled', 'AbortError', { type: 'cancelled' }],
    ['gone', 'NotFoundError', { type: 'error', problems: [{ field: 'file' }] }],
  ])('tells what happened when it is %s', async (_, name, outcome) => {
    expect(await openJobFile({ ...none, fileOpen: refuse(name) })).toMatchObject(outcome);
  });
});

describe('the name of a job file', () => {
  it.each([
    ['Boathouse', 'Boathouse.shearsight.json'],
    ['Öl-Türe  No. 3', 'Öl-Türe-No-3.shearsight.json'],
    ['../../etc/passwd', 'etc-passwd.shearsight.json'],
    ['C:\\temp\\x|y', 'C-temp-x-y.shearsight.json'],
    ['=cmd()', 'cmd().shearsight.json'],
    ['a\u202egnp.exe', 'a-gnp-exe.shearsight.json'],
    ['<b>bold</b>', 'b-bold-b.shearsight.json'],
    ['', 'job.shearsight.json'],
    [' . ', 'job.shearsight.json'],
    ['NUL', 'job.shearsight.json'],
    ['鍵 その一', '鍵-その一.shearsight.json'],
    ['x'.repeat(500), `${'x'.repeat(60)}.shearsight.json`],
  ])('made from %j is %s', (title, name) => {
    expect(jobFileName(title)).toBe(name);
  });

  test.prop([fc.string({ unit: 'binary', maxLength: 200 })], { numRuns: 2000 })(
    'fits every file system, whatever the title',
    (title) => {
      const name = jobFileName(title);
      expect(name).toMatch(/^[^\s.][^\\/:*?"<>|\p{Cc}\p{Cf}\s]*\.shearsight\.json$/u);
      expect(new TextEncoder().encode(name).length).toBeLessThanOrEqual(255);
    },
  );
});
