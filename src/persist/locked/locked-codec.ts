/**
 * Rows of a locked job. A passphrase is slow on purpose, so it locks a key once, and the key locks each row:
 *
 *    'S' 'H' 'L'  1  | length of the locked key, 4 bytes, high first | the key, under the passphrase | the row, under the key
 *
 * Both parts are age files. Each row carries the locked key, so that any of them can be opened with the passphrase alone.
 * Inside is the same frame as that of a plain row, so that any damage shows.
 */
import { Decrypter, Encrypter, generateX25519Identity, identityToRecipient } from 'age-encryption';
import { frameText, plainCodec, type RowCodec, unframeText } from '../row-codec.ts';
import { sameBytes } from '../stored-row.ts';
import type { PassphraseLock, Unlocked } from './passphrase-lock.ts';

const MARK = [0x53, 0x48, 0x4c, 1] as const;
const HEAD_BYTES = 8;

/** Makes a new key, locks it with a passphrase, and gives the codec of a job that is locked with it. */
export async function newLock(passphrase: string, lock: PassphraseLock): Promise<RowCodec> {
  const identity = await generateX25519Identity();
  const lockedKey = await lock.seal(new TextEncoder().encode(identity), passphrase);
  return lockedCodec(identity, lockedKey);
}

export type OpenedLock =
  | { readonly type: 'success'; readonly codec: RowCodec }
  | Extract<Unlocked, { type: 'error' }>;

/** Opens the lock of a stored row. */
export async function openLock(
  bytes: Uint8Array,
  passphrase: string,
  lock: PassphraseLock,
): Promise<OpenedLock> {
  const parts = partsOf(bytes);
  if (parts === null) return { type: 'error', reason: 'damaged' };
  const opened = await lock.open(parts.lockedKey, passphrase);
  if (opened.type === 'error') return opened;
  const identity = new TextDecoder().decode(opened.bytes);
  return { type: 'success', codec: await lockedCodec(identity, parts.lockedKey) };
}

async function lockedCodec(identity: string, lockedKey: Uint8Array): Promise<RowCodec> {
  const recipient = await identityToRecipient(identity);
  return {
    encode: async (text) => {
      const encrypter = new Encrypter();
      encrypter.addRecipient(recipient);
      const row = await encrypter.encrypt(frameText(text));
      return { sealed: true, bytes: joined(lockedKey, row) };
    },
    decode: async (row) => {
      if (typeof row !== 'object' || row === null) return { type: 'error', reason: 'damaged' };
      const { sealed, bytes } = row as { sealed?: unknown; bytes?: unknown };
      // A job that was locked later has older rows that are not.
      if (sealed !== true) return plainCodec.decode(row);
      const parts = bytes instanceof Uint8Array ? partsOf(bytes) : null;
      if (parts === null) return { type: 'error', reason: 'damaged' };
      if (!sameBytes(parts.lockedKey, lockedKey)) return { type: 'error', reason: 'locked' };
      const text = await openRow(parts.row, identity);
      return text === null ? { type: 'error', reason: 'damaged' } : { type: 'success', text };
    },
  };
}

async function openRow(row: Uint8Array, identity: string): Promise<string | null> {
  const decrypter = new Decrypter();
  decrypter.addIdentity(identity);
  try {
    return unframeText(await decrypter.decrypt(row));
  } catch {
    return null;
  }
}

function joined(lockedKey: Uint8Array, row: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(HEAD_BYTES + lockedKey.length + row.length);
  bytes.set(MARK, 0);
  new DataView(bytes.buffer).setUint32(4, lockedKey.length);
  bytes.set(lockedKey, HEAD_BYTES);
  bytes.set(row, HEAD_BYTES + lockedKey.length);
  return bytes;
}

function partsOf(bytes: Uint8Array): { lockedKey: Uint8Array; row: Uint8Array } | null {
  if (bytes.length < HEAD_BYTES || MARK.some((byte, i) => bytes[i] !== byte)) return null;
  const length = new DataView(bytes.buffer, bytes.byteOffset).getUint32(4);
  if (length === 0 || HEAD_BYTES + length >= bytes.length) return null;
  return {
    lockedKey: bytes.slice(HEAD_BYTES, HEAD_BYTES + length),
    row: bytes.slice(HEAD_BYTES + length),
  };
}
