/** The key going in as a short clip: drawn picture by picture, encoded by the browser, written by webm-file.ts. */
import type { PictureSheet } from '../drawing/picture-sheet.ts';
import { type Clip, type ClipFrame, webmFile } from '../persist/webm-file.ts';
import { drawSheet, isBlank, pixelContext } from './picture-pixels.ts';

export type MadeClip =
  | { readonly type: 'success'; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly type: 'error'; readonly sentence: string };

const WAY_SECONDS = 4;
/** How long the key is seen fully in. */
const HOME_SECONDS = 1;
const FRAMES_PER_SECOND = 12;
/** A frame that can be jumped to, every so many. */
const KEY_EVERY = 24;
const WIDTH_PX = 800;
const BITS_PER_SECOND = 3_000_000;

const CODECS: readonly { readonly name: string; readonly codec: Clip['codec'] }[] = [
  { name: 'vp8', codec: 'V_VP8' },
  { name: 'vp09.00.31.08', codec: 'V_VP9' },
];

/** Draws and encodes the clip; a sentence where the browser cannot. */
export async function clipOf(frameAt: (share: number) => PictureSheet): Promise<MadeClip> {
  const first = frameAt(0);
  const [width, height] = [WIDTH_PX, even((WIDTH_PX * first.heightMm) / first.widthMm)];
  const settings = await settingsFor(width, height);
  const context = pixelContext(width, height);
  if (settings === null || context === null)
    return failed('This browser writes no clips; here is a strip of pictures.');
  const frames: ClipFrame[] = [];
  const troubles: string[] = [];
  const encoder = new VideoEncoder({
    output: (chunk) => frames.push(frameOf(chunk)),
    error: ({ message }) => troubles.push(message),
  });
  encoder.configure(settings.config);
  const steps = WAY_SECONDS * FRAMES_PER_SECOND;
  // The last one again at the very end: players hold what they have until then.
  const places = [
    ...Array.from({ length: steps + 1 }, (_, i) => i),
    steps + HOME_SECONDS * FRAMES_PER_SECOND - 1,
  ];
  try {
    for (const [i, place] of places.entries()) {
      if (troubles.length > 0) break;
      if (place <= steps) await drawSheet(frameAt(place / steps), context);
      if (i === 0 && isBlank(context.getImageData(0, 0, width, height)))
        return failed('The clip came out blank, so it was not saved; here is a strip of pictures.');
      const frame = new VideoFrame(context.canvas, {
        timestamp: microseconds(place),
        duration: microseconds(1),
      });
      encoder.encode(frame, { keyFrame: i % KEY_EVERY === 0 });
      frame.close();
    }
    await encoder.flush();
  } catch (reason) {
    troubles.push(reason instanceof Error ? reason.message : String(reason));
  } finally {
    if (encoder.state !== 'closed') encoder.close();
  }
  if (troubles.length > 0 || frames.length !== places.length)
    return failed('The browser could not write the clip; here is a strip of pictures.');
  const milliseconds = (WAY_SECONDS + HOME_SECONDS) * 1000;
  const clip: Clip = { codec: settings.codec, width, height, milliseconds, frames };
  return { type: 'success', bytes: webmFile(clip) };
}

async function settingsFor(
  width: number,
  height: number,
): Promise<{ readonly codec: Clip['codec']; readonly config: VideoEncoderConfig } | null> {
  if (typeof VideoEncoder === 'undefined') return null;
  for (const { name, codec } of CODECS) {
    const config: VideoEncoderConfig = {
      codec: name,
      width,
      height,
      bitrate: BITS_PER_SECOND,
      framerate: FRAMES_PER_SECOND,
      latencyMode: 'realtime',
    };
    const { supported } = await VideoEncoder.isConfigSupported(config).catch(() => ({ supported: false }));
    if (supported === true) return { codec, config };
  }
  return null;
}

function frameOf(chunk: EncodedVideoChunk): ClipFrame {
  const bytes = new Uint8Array(chunk.byteLength);
  chunk.copyTo(bytes);
  return { bytes, milliseconds: Math.round(chunk.timestamp / 1000), isKey: chunk.type === 'key' };
}

function microseconds(frame: number): number {
  return Math.round((frame * 1_000_000) / FRAMES_PER_SECOND);
}

function even(pixels: number): number {
  return 2 * Math.round(pixels / 2);
}

function failed(sentence: string): MadeClip {
  return { type: 'error', sentence };
}
