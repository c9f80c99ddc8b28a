import { expect, it } from 'vitest';
import { readSnapshotText, snapshotToText } from '../../src/persist/snapshot.ts';
import { buildJob } from '../support/job-builder.ts';

it('a step with a name longer than a name may be is read again, its name cut', () => {
  const name = `Where from: ${'a shed '.repeat(400)}`;
  const snapshot = { name, at: null, job: buildJob(), steps: [1], present: 0, dropped: 0 };
  const read = readSnapshotText(snapshotToText(snapshot, 1));
  expect(read.type === 'success' && read.snapshot.name).toBe(name.slice(0, 400));
});
