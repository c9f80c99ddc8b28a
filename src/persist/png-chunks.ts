/**
 * The chunks of a PNG file (PNG 3rd edition, W3C 2025, 5.3): after eight fixed bytes, each chunk is its length, a type of
 * four letters, its data and a CRC-32 of type and data. Numbers have the most significant byte first.
 */
import { checksum } from './checksum.ts';

export type PngChunk = { readonly type: string; readonly data: Uint8Array };

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** Length, type and checksum. */
const FRAME_BYTES = 12;

/** Says whether bytes start as a PNG file does. */
export function isPng(bytes: Uint8Array): boolean {
  return SIGNATURE.every((byte, i) => bytes[i] === byte);
}

/** Reads the chunks of a file; null when it is cut off, or a chunk is damaged. */
export function readChunks(bytes: Uint8Array): PngChunk[] | null {
  if (!isPng(bytes)) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const chunks: PngChunk[] = [];
  let at = SIGNATURE.length;
  while (at + FRAME_BYTES <= bytes.length) {
    const length = view.getUint32(at);
    const end = at + FRAME_BYTES + length;
    if (end > bytes.length) return null;
    const named = bytes.subarray(at + 4, end - 4);
    if (checksum(named) !== view.getUint32(end - 4)) return null;
    const type = String.fromCharCode(...named.subarray(0, 4));
    chunks.push({ type, data: named.subarray(4) });
    if (type === 'IEND') return chunks;
    at = end;
  }
  return null;
}

/** Writes chunks as a file. */
export function writeChunks(chunks: readonly PngChunk[]): Uint8Array<ArrayBuffer> {
  const size = chunks.reduce((sum, { data }) => sum + FRAME_BYTES + data.length, SIGNATURE.length);
  const bytes = new Uint8Array(size);
  const view = new DataView(bytes.buffer);
  bytes.set(SIGNATURE);
  let at = SIGNATURE.length;
  for (const { type, data } of chunks) {
    const end = at + FRAME_BYTES + data.length;
    view.setUint32(at, data.length);
    bytes.set(asciiBytes(type), at + 4);
    bytes.set(data, at + 8);
    view.setUint32(end - 4, checksum(bytes.subarray(at + 4, end - 4)));
    at = end;
  }
  return bytes;
}

/** How many pixels stand on a metre of paper, the same both ways. */
export function physicalSize(pixelsPerMetre: number): PngChunk {
  const data = new Uint8Array(9);
  const view = new DataView(data.buffer);
  view.setUint32(0, pixelsPerMetre);
  view.setUint32(4, pixelsPerMetre);
  data[8] = 1;
  return { type: 'pHYs', data };
}

/** A text of any characters under a keyword of plain letters, not squeezed. */
export function internationalText(keyword: string, text: string): PngChunk {
  const name = asciiBytes(keyword);
  const words = new TextEncoder().encode(text);
  // After the keyword: its end, not compressed, method 0, no language, no translated keyword.
  const data = new Uint8Array(name.length + 5 + words.length);
  data.set(name);
  data.set(words, name.length + 5);
  return { type: 'iTXt', data };
}

/** The bytes of the text under a keyword; null for another chunk, or one that is squeezed. */
export function textUnder(keyword: string, { type, data }: PngChunk): Uint8Array | null {
  const name = asciiBytes(keyword);
  if (type !== 'iTXt' || !name.every((byte, i) => data[i] === byte) || data[name.length] !== 0) return null;
  if (data[name.length + 1] !== 0) return null;
  const language = data.indexOf(0, name.length + 3);
  const translated = language < 0 ? -1 : data.indexOf(0, language + 1);
  return translated < 0 ? null : data.subarray(translated + 1);
}

function asciiBytes(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}
