/**
 * A drawing made ready to be handed out by itself: on a ground, with a caption that says which job it is, in which unit and
 * how good the numbers are, and its size in millimetres of paper. Laid out in CSS pixels.
 */
import { label, textWidth, wrapped } from './label.ts';
import { type DrawingNode, drawingRoot, group, node } from './node.ts';
import { numberText } from './number-text.ts';
import { PX_PER_MM } from './view.ts';

export type PictureCaption = {
  /** What is seen, strong. */
  readonly title: string;
  /** Job, unit, +-, what is left out: sentences that are never broken. */
  readonly lines: readonly string[];
};

export type PictureSheet = {
  readonly drawing: DrawingNode;
  readonly widthMm: number;
  readonly heightMm: number;
};

const PAD_PX = 18;
const TEXT_PX = 13;

/** Puts drawings under each other, or beside each other as far as there is room, over their caption. */
export function pictureSheet(
  drawings: readonly DrawingNode[],
  caption: PictureCaption,
  mostPx = 0,
): PictureSheet {
  const placed = laidOut(drawings, Math.max(mostPx, ...drawings.map((each) => sizeOf(each).width)));
  const least = Math.max(
    textWidth(caption.title, TEXT_PX, true),
    ...caption.lines.map((line) => textWidth(line, TEXT_PX * 0.92)),
  );
  const width = Math.max(placed.width, Math.min(least, 640)) + 2 * PAD_PX;
  const size = TEXT_PX * 0.92;
  const rows = wrapped(caption.lines, ' · ', width - 2 * PAD_PX, size);
  const top = PAD_PX + placed.height + TEXT_PX * 1.6;
  const height = top + rows.length * size * 1.45 + PAD_PX;
  const root = drawingRoot({ width, height }, caption.title, [
    node('path', { class: 'fill-sheet', d: `M0 0H${numberText(width)}V${numberText(height)}H0Z` }),
    ...placed.nodes,
    group('caption', [
      label(caption.title, PAD_PX, top - TEXT_PX * 0.3, { size: TEXT_PX, isStrong: true }),
      ...rows.map((text, i) =>
        label(text, PAD_PX, top + (i + 0.85) * size * 1.45, { size, className: 'text-soft' }),
      ),
    ]),
  ]);
  const [widthMm, heightMm] = [width / PX_PER_MM, height / PX_PER_MM];
  return {
    drawing: {
      ...root,
      attributes: {
        ...root.attributes,
        width: `${numberText(widthMm)}mm`,
        height: `${numberText(heightMm)}mm`,
      },
    },
    widthMm,
    heightMm,
  };
}

const GAP_PX = 16;

function laidOut(
  drawings: readonly DrawingNode[],
  most: number,
): { nodes: DrawingNode[]; width: number; height: number } {
  const nodes: DrawingNode[] = [];
  let [x, y, rowHeight, width] = [0, 0, 0, 0];
  for (const drawing of drawings) {
    const size = sizeOf(drawing);
    if (x > 0 && x + size.width > most + 0.5) {
      x = 0;
      y += rowHeight + GAP_PX;
      rowHeight = 0;
    }
    nodes.push(
      node(
        'g',
        { transform: `translate(${numberText(PAD_PX + x)} ${numberText(PAD_PX + y)})` },
        drawing.children,
      ),
    );
    width = Math.max(width, x + size.width);
    rowHeight = Math.max(rowHeight, size.height);
    x += size.width + GAP_PX;
  }
  return { nodes, width, height: y + rowHeight };
}

/** CSS px, from the view box: sizes may be written in mm. */
function sizeOf({ attributes }: DrawingNode): { width: number; height: number } {
  const [, , width = 0, height = 0] = String(attributes['viewBox']).split(' ').map(Number);
  return { width, height };
}
