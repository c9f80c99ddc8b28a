/**
 * A job inside a picture of it, so that the picture opens again as the job: in a PNG as a text chunk, in an SVG as metadata.
 * The bytes are those of a job file. Whoever gets such a picture can cut the key; it is only made when asked for.
 */
import type { Job } from '../model/schema/job-schema.ts';
import { checksum } from './checksum.ts';
import { jobToText } from './job-text.ts';
import {
  internationalText,
  isPng,
  physicalSize,
  type PngChunk,
  readChunks,
  textUnder,
  writeChunks,
} from './png-chunks.ts';

const KEYWORD = 'Shearsight job';
/** 300 dots to the inch. */
export const PIXELS_PER_METRE = 11811;

export type PictureWords = { readonly title: string; readonly description: string };

/** Gives a PNG as the browser wrote it its size on paper and its words, and the job only if there is one to put in. */
export function finishPng(
  bytes: Uint8Array,
  words: PictureWords,
  job: Job | null,
): Uint8Array<ArrayBuffer> | null {
  const chunks = readChunks(bytes);
  const [head, ...rest] = chunks ?? [];
  if (head === undefined) return null;
  const own = rest.filter(
    ({ type }) => type !== 'pHYs' && type !== 'iTXt' && type !== 'tEXt' && type !== 'tIME',
  );
  const inside: PngChunk[] = job === null ? [] : [internationalText(KEYWORD, jobToText(job))];
  return writeChunks([
    head,
    physicalSize(PIXELS_PER_METRE),
    internationalText('Title', words.title),
    internationalText('Description', words.description),
    ...inside,
    ...own,
  ]);
}

/** Gives an SVG text the job as metadata, after its first tag. */
export function finishSvg(svg: string, job: Job | null): string {
  if (job === null) return svg;
  const bytes = new TextEncoder().encode(jobToText(job));
  const end = svg.indexOf('>') + 1;
  const data = `<metadata><shearsight-job xmlns="urn:shearsight:job" encoding="base64" checksum="${checksum(bytes)}">${toBase64(bytes)}</shearsight-job></metadata>`;
  return `${svg.slice(0, end)}\n ${data}${svg.slice(end)}`;
}

export type PictureData =
  /** No picture at all. */
  | { readonly type: 'not a picture' }
  | { readonly type: 'no job' }
  | { readonly type: 'damaged' }
  | { readonly type: 'job'; readonly bytes: Uint8Array };

/** Looks for a job in the bytes of a picture. */
export function jobBytesIn(bytes: Uint8Array): PictureData {
  if (isPng(bytes)) {
    const chunks = readChunks(bytes);
    if (chunks === null) return { type: 'damaged' };
    const found = chunks.map((chunk) => textUnder(KEYWORD, chunk)).find((text) => text !== null);
    return found === undefined ? { type: 'no job' } : { type: 'job', bytes: found };
  }
  const start = new TextDecoder('latin1').decode(bytes.subarray(0, 1000));
  if (isOtherPicture(bytes, start)) return { type: 'no job' };
  return /<svg[\s>]/u.test(start) ? inSvg(new TextDecoder('utf-8').decode(bytes)) : { type: 'not a picture' };
}

const METADATA = /<shearsight-job [^>]*?checksum="(\d{1,10})"[^>]*>([A-Za-z0-9+/=\s]*)<\/shearsight-job>/u;

function inSvg(text: string): PictureData {
  const [, told, data] = METADATA.exec(text) ?? [];
  if (data === undefined) return text.includes('<shearsight-job') ? { type: 'damaged' } : { type: 'no job' };
  const bytes = fromBase64(data);
  return bytes === null || checksum(bytes) !== Number(told) ? { type: 'damaged' } : { type: 'job', bytes };
}

/** JPEG, GIF, WebP and PDF: what pictures come back as from programs that make them smaller. */
function isOtherPicture(bytes: Uint8Array, start: string): boolean {
  return (
    (bytes[0] === 0xff && bytes[1] === 0xd8) ||
    start.startsWith('GIF8') ||
    start.startsWith('RIFF') ||
    start.startsWith('%PDF')
  );
}

/** Bytes at a time: more at once would be more arguments than a call can have. */
const STRETCH = 0x6000;

function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += STRETCH)
    text += btoa(String.fromCharCode(...bytes.subarray(at, at + STRETCH)));
  return text;
}

function fromBase64(text: string): Uint8Array | null {
  try {
    return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  } catch {
    return null;
  }
}
