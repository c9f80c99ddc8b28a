/**
 * What a PDF holds, read by pdf.js (Apache-2.0): its text, and the sizes of what is drawn, in millimetres of paper. A point is
 * 1/72 in. Paths come with their own transforms, which are followed here (PDF 32000-1:2008, 8.3).
 */
import { getDocument, OPS, Util } from 'pdfjs-dist/legacy/build/pdf.mjs';

const MM_PER_POINT = 25.4 / 72;

export type PdfPage = {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly text: string;
  /** Boxes of drawn paths. */
  readonly paths: readonly { readonly widthMm: number; readonly heightMm: number }[];
  /** Pictures made of pixels. */
  readonly images: number;
};

type Matrix = [number, number, number, number, number, number];

/** Reads all pages. */
export async function readPdf(bytes: Uint8Array): Promise<PdfPage[]> {
  const loading = getDocument({ data: Uint8Array.from(bytes), verbosity: 0 });
  const document = await loading.promise;
  const pages: PdfPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { items } = await page.getTextContent();
    const text = items.map((item) => ('str' in item ? item.str + (item.hasEOL ? ' ' : '') : '')).join('');
    const list = await page.getOperatorList();
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
    pages.push({
      widthMm: (right - left) * MM_PER_POINT,
      heightMm: (top - bottom) * MM_PER_POINT,
      text: text.replaceAll(/\s+/g, ' '),
      ...drawn(list.fnArray, list.argsArray as unknown[][]),
    });
  }
  await loading.destroy();
  return pages;
}

function drawn(operators: readonly number[], operands: readonly unknown[][]) {
  const kept: Matrix[] = [];
  const paths: { widthMm: number; heightMm: number }[] = [];
  let [now, images]: [Matrix, number] = [[1, 0, 0, 1, 0, 0], 0];
  operators.forEach((operator, i) => {
    const args = operands[i] ?? [];
    switch (operator) {
      case OPS.save:
        kept.push(now);
        return;
      case OPS.restore:
        now = kept.pop() ?? now;
        return;
      case OPS.transform:
        now = Util.transform(now, args) as Matrix;
        return;
      case OPS.paintImageXObject:
      case OPS.paintInlineImageXObject:
        images += 1;
        return;
      case OPS.constructPath: {
        const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = Object.values((args[2] ?? {}) as Record<string, number>);
        const [a, b, c, d] = now;
        const [across, up] = [x1 - x0, y1 - y0];
        paths.push({
          widthMm: (Math.abs(a * across) + Math.abs(c * up)) * MM_PER_POINT,
          heightMm: (Math.abs(b * across) + Math.abs(d * up)) * MM_PER_POINT,
        });
        return;
      }
      default:
        return;
    }
  });
  return { paths, images };
}
