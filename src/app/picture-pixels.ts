/** A drawing as a PNG at 300 dots to the inch, with the page's own typeface in it, looked at before it is handed out. */
import sans400 from '@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-400-normal.woff2?url';
import sans600 from '@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-600-normal.woff2?url';
import { fileStyle } from '../drawing/drawing-style.ts';
import { toSvgText, withStyle } from '../drawing/node.ts';
import type { PictureSheet } from '../drawing/picture-sheet.ts';

const DOTS_PER_MM = 300 / 25.4;
/** Tablets give no canvas beyond this many pixels, and do not say so. */
const MOST_PIXELS = 16_777_216;

/** The bytes as the browser writes them, or a sentence. */
export async function pngOfSheet(sheet: PictureSheet): Promise<Uint8Array | string> {
  const width = Math.round(sheet.widthMm * DOTS_PER_MM);
  const height = Math.round(sheet.heightMm * DOTS_PER_MM);
  if (width * height > MOST_PIXELS) return 'The picture is too large for one sheet. Save it as SVG instead.';
  const context = pixelContext(width, height);
  if (context === null) return 'This browser gives no canvas to draw the picture on. Save it as SVG instead.';
  await drawSheet(sheet, context);
  if (isBlank(context.getImageData(0, 0, width, height)))
    return 'The picture came out blank, so it was not saved. Save it as SVG instead.';
  const blob = await new Promise<Blob | null>((done) => context.canvas.toBlob(done, 'image/png'));
  return blob === null ? 'The browser wrote no picture. Save it as SVG instead.' : await bytesOf(blob);
}

/** A canvas to draw on and read from; null where the browser gives none. */
export function pixelContext(width: number, height: number): CanvasRenderingContext2D | null {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  return canvas.getContext('2d', { willReadFrequently: true });
}

/** Draws a sheet over the whole canvas. */
export async function drawSheet(sheet: PictureSheet, context: CanvasRenderingContext2D): Promise<void> {
  const { width, height } = context.canvas;
  const svg = toSvgText(withStyle(sheet.drawing, `${await faces()}\n${fileStyle('print')}`));
  const image = new Image(width, height);
  image.src = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    await image.decode();
    context.drawImage(image, 0, 0, width, height);
  } finally {
    URL.revokeObjectURL(image.src);
  }
}

let fetched: Promise<string> | null = null;

/** A picture in a file sees no typeface of the page: it carries its own. */
function faces(): Promise<string> {
  fetched ??= fetchFaces().catch((reason: unknown) => {
    fetched = null;
    throw reason;
  });
  return fetched;
}

async function fetchFaces(): Promise<string> {
  const [regular, strong] = await Promise.all([dataOf(sans400), dataOf(sans600)]);
  const face = (weight: number, data: string) =>
    `@font-face { font-family: 'Plex Sans'; font-weight: ${weight}; src: url("data:font/woff2;base64,${data}"); }`;
  return `${face(400, regular)}\n${face(600, strong)}`;
}

async function dataOf(address: string): Promise<string> {
  const bytes = new Uint8Array(await (await fetch(address)).arrayBuffer());
  return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
}

async function bytesOf(blob: Blob): Promise<Uint8Array> {
  return new Uint8Array(await blob.arrayBuffer());
}

/** Whether every pixel is the same. */
export function isBlank({ data }: ImageData): boolean {
  const pixels = new Uint32Array(data.buffer);
  return pixels.every((pixel) => pixel === pixels[0]);
}
