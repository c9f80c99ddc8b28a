/**
 * Text into the bytes of a stored row and back. The plain codec frames the text so that any damage shows:
 *
 *    'S' 'H' 'J'  1   | checksum of the rest, 4 bytes, high first | UTF-8 text
 *
 * A codec for locked jobs seals the same frame and marks its rows as sealed; the rules of saving do not change for it.
 */
import { checksum } from './checksum.ts';
import type { StoredRow } from './stored-row.ts';

export type OpenedRow =
  | { readonly type: 'success'; readonly text: string }
  /** Locked: sealed, and this codec has no key for it. */
  | { readonly type: 'error'; readonly reason: 'damaged' | 'locked' };

export type RowCodec = {
  readonly encode: (text: string) => Promise<Pick<StoredRow, 'sealed' | 'bytes'>>;
  /** Takes whatever lay in storage; never throws. */
  readonly decode: (row: unknown) => Promise<OpenedRow>;
};

const MARK = [0x53, 0x48, 0x4a, 1] as const;
const HEAD_BYTES = 8;

/** Stores text as it is, not locked. */
export const plainCodec: RowCodec = {
  encode: (text) => Promise.resolve({ sealed: false, bytes: frameText(text) }),
  decode: (row) => Promise.resolve(openRow(row)),
};

/** Frames text with a mark and a checksum. */
export function frameText(text: string): Uint8Array {
  const body = new TextEncoder().encode(text);
  const bytes = new Uint8Array(HEAD_BYTES + body.length);
  bytes.set(MARK, 0);
  new DataView(bytes.buffer).setUint32(4, checksum(body));
  bytes.set(body, HEAD_BYTES);
  return bytes;
}

/** Takes text out of its frame; null when anything about it is damaged. */
export function unframeText(bytes: Uint8Array): string | null {
  if (bytes.length < HEAD_BYTES || MARK.some((byte, i) => bytes[i] !== byte)) return null;
  const body = bytes.subarray(HEAD_BYTES);
  if (new DataView(bytes.buffer, bytes.byteOffset).getUint32(4) !== checksum(body)) return null;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(body);
  } catch {
    return null;
  }
}

function openRow(row: unknown): OpenedRow {
  if (typeof row !== 'object' || row === null) return { type: 'error', reason: 'damaged' };
  const { sealed, bytes } = row as { sealed?: unknown; bytes?: unknown };
  if (sealed === true) return { type: 'error', reason: 'locked' };
  const text = bytes instanceof Uint8Array ? unframeText(bytes) : null;
  return text === null ? { type: 'error', reason: 'damaged' } : { type: 'success', text };
}
