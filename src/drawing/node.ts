/**
 * A drawing as a plain tree of SVG elements, and its text. Panels turn the tree into elements of the page; files, golden
 * tests and the page's first picture use the text. Coordinates are CSS pixels, x to the right, y down.
 */
import { said } from './captions.ts';
import { numberText } from './number-text.ts';

export type DrawingNode = {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (DrawingNode | string)[];
};

export function node(
  tag: string,
  attributes: Readonly<Record<string, string | number>>,
  children: readonly (DrawingNode | string)[] = [],
): DrawingNode {
  return { tag, attributes, children };
}

/** Groups nodes under a class; data attributes say what the group shows. */
export function group(
  className: string,
  children: readonly DrawingNode[],
  data: Readonly<Record<string, string | number>> = {},
): DrawingNode {
  return node('g', { class: className, ...data }, children);
}

/** Wraps a finished drawing. `label` is what a screen reader says it is. */
export function drawingRoot(
  size: { readonly width: number; readonly height: number },
  label: string,
  children: readonly DrawingNode[],
  className = '',
): DrawingNode {
  const { width, height } = size;
  const attributes = {
    xmlns: 'http://www.w3.org/2000/svg',
    viewBox: `0 0 ${numberText(width)} ${numberText(height)}`,
    width,
    height,
    class: className === '' ? 'drawing' : `drawing ${className}`,
    role: 'img',
    'aria-label': said(label),
  };
  return node('svg', attributes, children);
}

/** Writes a tree as SVG text: the same tree always gives the same text, one element a line, four decimals. */
export function toSvgText(root: DrawingNode): string {
  return `${elementLines(root, '').join('\n')}\n`;
}

/** Adds a style sheet to a finished drawing, for files that stand alone. */
export function withStyle(root: DrawingNode, css: string): DrawingNode {
  return { ...root, children: [node('style', {}, [css]), ...root.children] };
}

function elementLines(element: DrawingNode, indent: string): string[] {
  const { tag, children } = element;
  const open = `${indent}<${tag}${attributesText(element)}`;
  if (children.length === 0) return [`${open}/>`];
  if (children.every((child) => typeof child === 'string'))
    return [`${open}>${children.map(escapeText).join('')}</${tag}>`];
  const inner = children.flatMap((child) =>
    typeof child === 'string' ? [`${indent} ${escapeText(child)}`] : elementLines(child, `${indent} `),
  );
  return [`${open}>`, ...inner, `${indent}</${tag}>`];
}

function attributesText({ attributes }: DrawingNode): string {
  return Object.entries(attributes)
    .map(([name, value]) => ` ${name}="${typeof value === 'number' ? numberText(value) : escapeText(value)}"`)
    .join('');
}

function escapeText(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
