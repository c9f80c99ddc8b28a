/** A drawing's plain tree as elements of the page. */
import { createElement, type ReactElement } from 'react';
import type { DrawingNode } from '../../drawing/node.ts';
import './drawing.css';

/** SVG attributes that React spells in its own way. The others pass as they are. */
const REACT_NAMES: Readonly<Record<string, string>> = {
  class: 'className',
  'fill-rule': 'fillRule',
  'clip-path': 'clipPath',
  'clip-rule': 'clipRule',
  'font-size': 'fontSize',
  'stroke-width': 'strokeWidth',
  'stroke-dasharray': 'strokeDasharray',
  'text-anchor': 'textAnchor',
  'dominant-baseline': 'dominantBaseline',
  tabindex: 'tabIndex',
  'xml:space': 'xmlSpace',
};

/** Shows a drawing. `className` is added to its own; `isDecoration` takes its name away where words beside it say the same. */
export function DrawingSvg({
  drawing,
  className,
  isDecoration = false,
}: {
  readonly drawing: DrawingNode;
  readonly className?: string;
  readonly isDecoration?: boolean;
}) {
  const own = String(drawing.attributes['class'] ?? '');
  const attributes: Record<string, string | number> = {
    ...drawing.attributes,
    class: className === undefined ? own : `${own} ${className}`,
  };
  if (isDecoration) {
    delete attributes['role'];
    delete attributes['aria-label'];
    attributes['aria-hidden'] = 'true';
  }
  return element({ ...drawing, attributes }, 'drawing');
}

/** Nodes that come back as they were keep their elements, so that React passes over what did not move. */
const elements = new WeakMap<DrawingNode, ReactElement>();

function element(node: DrawingNode, key: string): ReactElement {
  const before = elements.get(node);
  if (before?.key === key) return before;
  const properties: Record<string, string | number> = { key };
  for (const [name, value] of Object.entries(node.attributes)) properties[REACT_NAMES[name] ?? name] = value;
  const children = node.children.map((child, i) =>
    typeof child === 'string' ? child : element(child, String(i)),
  );
  const made = createElement(node.tag, properties, ...children);
  elements.set(node, made);
  return made;
}
