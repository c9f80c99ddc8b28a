/**
 * Pictures of the view. The browser throws a drawn frame away at the end of the task it was drawn in, so drawing and reading
 * happen in one step without a pause between them.
 */
import { type Camera, type Scene, Vector2, type WebGLRenderer } from 'three';

export type CaptureOptions = {
  /** Pixels of the picture. */
  readonly width: number;
  readonly height: number;
};

/** Draws at the asked size, reads it at once, and puts the view back as it was. */
export function capturePixels(
  renderer: WebGLRenderer,
  scene: Scene,
  prepare: (size: { readonly width: number; readonly height: number }) => Camera,
  options: CaptureOptions,
): ImageData {
  const size = renderer.getSize(new Vector2());
  const ratio = renderer.getPixelRatio();
  const canvas = document.createElement('canvas');
  canvas.width = options.width;
  canvas.height = options.height;
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('This browser gives no canvas to copy the picture to.');
  try {
    renderer.setPixelRatio(1);
    renderer.setSize(options.width, options.height, false);
    renderer.render(scene, prepare(options));
    context.drawImage(renderer.domElement, 0, 0);
  } finally {
    renderer.setPixelRatio(ratio);
    renderer.setSize(size.x, size.y, false);
  }
  return context.getImageData(0, 0, options.width, options.height);
}

/** Packs pixels as a PNG file. */
export async function pngOf(pixels: ImageData): Promise<Blob> {
  const canvas = document.createElement('canvas');
  canvas.width = pixels.width;
  canvas.height = pixels.height;
  canvas.getContext('2d')?.putImageData(pixels, 0, 0);
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => {
      if (blob) resolve(blob);
      else reject(new Error('The picture could not be packed as PNG.'));
    }, 'image/png');
  });
}

/** Whether every pixel is the same: a picture that is not worth handing out. */
export function isBlank({ data }: ImageData): boolean {
  for (let i = 4; i < data.length; i++) if (data[i] !== data[i - 4]) return false;
  return true;
}
