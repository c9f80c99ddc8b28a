/**
 * Locked files and rows: opened by the passphrase only, damage told from a wrong passphrase. The fixtures were written by another
 * implementation of the age format, the reference one in Go (age 1.1.1); tools/age-fixtures.py makes them again. The
 * passphrase of both is "brass and steel".
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { newLock, openLock } from '../../../src/persist/locked/locked-codec.ts';
import { isLockedFile } from '../../../src/persist/locked/locked-mark.ts';
import { passphraseLock } from '../../../src/persist/locked/passphrase-lock.ts';
import { jobToText, readJobBytes } from '../../../src/persist/job-text.ts';
import { plainCodec } from '../../../src/persist/row-codec.ts';
import { buildJob } from '../../support/job-builder.ts';

const PASSPHRASE = 'brass and steel';
/** Quick: the tests are not about how hard a passphrase is to guess. */
const lock = passphraseLock(4);
const fixture = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../fixtures/locked/${name}`, import.meta.url)));
const bytesOf = (text: string) => new TextEncoder().encode(text);

describe('a locked file', () => {
  test('is told by its first bytes', async () => {
    expect(isLockedFile(await lock.seal(bytesOf('{}'), 'x'))).toBe(true);
    expect(isLockedFile(bytesOf('{"format":"shearsight-job"}'))).toBe(false);
    expect(isLockedFile(new Uint8Array())).toBe(false);
  });

  test('comes back the same', async () => {
    const text = jobToText(buildJob());
    const opened = await lock.open(await lock.seal(bytesOf(text), PASSPHRASE), PASSPHRASE);
    expect(opened.type === 'success' && new TextDecoder().decode(opened.bytes)).toBe(text);
  });

  test('holds nothing of the job in clear', async () => {
    const sealed = await lock.seal(bytesOf(jobToText(buildJob({ title: 'Vestry door' }))), PASSPHRASE);
    expect(Buffer.from(sealed).includes('Vestry')).toBe(false);
  });

  test('tells a wrong passphrase from damage', async () => {
    const sealed = await lock.seal(bytesOf('words'), PASSPHRASE);
    expect(await lock.open(sealed, 'steel and brass')).toEqual({ type: 'error', reason: 'wrong passphrase' });
    const damaged = sealed.slice();
    damaged[damaged.length - 3] = (damaged.at(-3) ?? 0) ^ 1;
    expect(await lock.open(damaged, PASSPHRASE)).toEqual({ type: 'error', reason: 'damaged' });
    expect(await lock.open(sealed.slice(0, 40), PASSPHRASE)).toEqual({ type: 'error', reason: 'damaged' });
  });

  test.each(['by-another-program.age', 'by-another-program-armoured.age'])(
    '%s of another implementation opens here',
    async (name) => {
      const bytes = fixture(name);
      expect(isLockedFile(bytes)).toBe(true);
      const opened = await lock.open(bytes, PASSPHRASE);
      const read = opened.type === 'success' ? readJobBytes(opened.bytes) : opened;
      expect(read.type).toBe('success');
      expect((await lock.open(bytes, 'wrong')).type).toBe('error');
    },
    60_000,
  );
});

describe('a locked row', () => {
  test('opens with its lock, and with the passphrase alone', async () => {
    const codec = await newLock(PASSPHRASE, lock);
    const row = await codec.encode('the job');
    expect(row.sealed).toBe(true);
    expect(await codec.decode(row)).toEqual({ type: 'success', text: 'the job' });
    const opened = await openLock(row.bytes, PASSPHRASE, lock);
    expect(opened.type === 'success' && (await opened.codec.decode(row))).toEqual({
      type: 'success',
      text: 'the job',
    });
    expect(await openLock(row.bytes, 'other', lock)).toEqual({ type: 'error', reason: 'wrong passphrase' });
  });

  test('stays shut for everybody else', async () => {
    const row = await (await newLock(PASSPHRASE, lock)).encode('the job');
    const other = await newLock(PASSPHRASE, lock);
    expect(await other.decode(row)).toEqual({ type: 'error', reason: 'locked' });
    expect(await plainCodec.decode(row)).toEqual({ type: 'error', reason: 'locked' });
  });

  test('tells damage wherever it is', async () => {
    const codec = await newLock(PASSPHRASE, lock);
    const row = await codec.encode('the job');
    for (let at = 0; at < row.bytes.length; at += 7) {
      const bytes = row.bytes.slice();
      bytes[at] = (bytes[at] ?? 0) ^ 4;
      expect((await codec.decode({ ...row, bytes })).type, `byte ${at}`).toBe('error');
    }
    for (const junk of [null, 3, {}, { sealed: true }, { sealed: true, bytes: new Uint8Array(5) }])
      expect((await codec.decode(junk)).type).toBe('error');
    expect((await openLock(new Uint8Array([1, 2, 3]), PASSPHRASE, lock)).type).toBe('error');
  });

  test('rows from before the job was locked can still be read', async () => {
    const codec = await newLock(PASSPHRASE, lock);
    expect(await codec.decode(await plainCodec.encode('older'))).toEqual({ type: 'success', text: 'older' });
  });
});
