/**
 * Where the texts of a drawing are: boxes from their attributes alone, measured with the font's own widths. Texts inside
 * inner SVGs (windows) count where they are shown.
 */
import { type Box, boxesOverlap, labelBox, type TextAnchor } from '../../src/drawing/label.ts';
import type { DrawingNode } from '../../src/drawing/node.ts';

export type TextBox = Box & { readonly text: string };

/** Lists every text of a drawing with its box. */
export function textBoxes(root: DrawingNode): TextBox[] {
  return everyNode(root)
    .filter(({ tag }) => tag === 'text')
    .map((node) => {
      const text = node.children.filter((child) => typeof child === 'string').join('');
      const classes = String(node.attributes['class']).split(' ');
      const anchor = (['middle', 'end'] as const).find((each) => classes.includes(`at-${each}`));
      const style = {
        size: Number(node.attributes['font-size']),
        isStrong: classes.includes('text-strong'),
        anchor: anchor ?? ('start' as TextAnchor),
      };
      const [x, y] = [Number(node.attributes['x']), Number(node.attributes['y'])];
      const box = labelBox(text, x, y, style);
      return {
        text,
        ...(String(node.attributes['transform']).startsWith('rotate(-90') ? stoodUp(box, x, y) : box),
      };
    });
}

/** A text that is read from the right: turned a quarter about its own place. */
function stoodUp({ left, right, top, bottom }: Box, x: number, y: number): Box {
  return { left: x + top - y, right: x + bottom - y, top: y - (right - x), bottom: y - (left - x) };
}

/** Names every pair of texts that overlap, and every text that leaves the drawing. */
export function textFaults(root: DrawingNode): string[] {
  const boxes = textBoxes(root);
  const width = Number(root.attributes['width']);
  const height = Number(root.attributes['height']);
  const outside = boxes
    .filter(({ left, right, top, bottom }) => left < 0 || right > width || top < 0 || bottom > height)
    .map(({ text }) => `"${text}" leaves the drawing`);
  const pairs = boxes.flatMap((one, i) =>
    boxes
      .slice(i + 1)
      .filter((other) => boxesOverlap(one, other))
      .map((other) => `"${one.text}" overlaps "${other.text}"`),
  );
  return [...outside, ...pairs];
}

/** Every element of a drawing, outside in. */
export function everyNode(root: DrawingNode): DrawingNode[] {
  return [root, ...root.children.flatMap((child) => (typeof child === 'string' ? [] : everyNode(child)))];
}

/** Explicit points of a path's data, in order. */
export function pathPoints(d: string): { x: number; y: number }[] {
  const points: { x: number; y: number }[] = [];
  for (const [, command, text] of d.matchAll(/([MLAQ])([^MLAQZ]*)/g)) {
    const numbers = (text ?? '').trim().split(/\s+/).map(Number);
    const [x, y] = command === 'A' ? numbers.slice(5) : numbers.slice(-2);
    points.push({ x: x!, y: y! });
  }
  return points;
}
