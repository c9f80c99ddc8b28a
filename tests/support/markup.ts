/**
 * Markup read into plain elements: SVG that drawings write, and pages that React writes. Shares no code with src. And what of
 * a page is read out: hidden branches left out, names in place of what they name.
 */
export type MarkupElement = {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly MarkupElement[];
  /** Its own text, and text and elements in their order. */
  readonly text: string;
  readonly nodes: readonly (MarkupElement | string)[];
};

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"' };

function unescaped(text: string): string {
  return text.replace(/&(?:#x([0-9a-f]+)|(\w+));/gi, (_, code: string | undefined, name: string) =>
    code === undefined ? (ENTITIES[name] ?? '?') : String.fromCodePoint(parseInt(code, 16)),
  );
}

/** Reads well-formed markup of one element, without comments. */
export function parseMarkup(markup: string): MarkupElement {
  type Open = {
    tag: string;
    attributes: Record<string, string>;
    children: MarkupElement[];
    text: string;
    nodes: (MarkupElement | string)[];
  };
  const root: Open = { tag: '', attributes: {}, children: [], text: '', nodes: [] };
  const open: Open[] = [root];
  for (const [, closing, tag, attributes, own, text] of markup.matchAll(
    /<(\/?)([\w-]+)((?:\s+[\w:-]+="[^"]*")*)\s*(\/?)>|([^<]+)/g,
  )) {
    const current = open.at(-1)!;
    if (text !== undefined) {
      current.text += unescaped(text);
      current.nodes.push(unescaped(text));
    } else if (closing === '/') {
      open.pop();
      if (current.tag !== tag) throw new Error(`</${tag ?? ''}> closes <${current.tag}>`);
    } else {
      const pairs = [...(attributes ?? '').matchAll(/([\w:-]+)="([^"]*)"/g)];
      const made: Open = {
        tag: tag ?? '',
        attributes: Object.fromEntries(
          pairs.map(([, name = '', value = '']) => [name, unescaped(value)] as const),
        ),
        children: [],
        text: '',
        nodes: [],
      };
      current.children.push(made);
      current.nodes.push(made);
      if (own !== '/') open.push(made);
    }
  }
  const [first] = root.children;
  if (first === undefined || open.length !== 1) throw new Error('not one whole element');
  return first;
}

/** Every element, outside in. */
export function allElements(element: MarkupElement): MarkupElement[] {
  return [element, ...element.children.flatMap(allElements)];
}

export function hasClass({ attributes }: MarkupElement, name: string): boolean {
  return (attributes['class'] ?? '').split(' ').includes(name);
}

/** What is read out of an element: the name of what has one, else its text. What is hidden says nothing. */
export function spokenText(element: MarkupElement): string {
  return pieces(element).join(' ').replace(/\s+/g, ' ').trim();
}

function pieces(element: MarkupElement): string[] {
  const { attributes, tag, nodes } = element;
  if (attributes['aria-hidden'] === 'true' || tag === 'style') return [];
  // A picture is its name; so is a control that has one.
  const name = attributes['aria-label'];
  const isNamed = attributes['role'] === 'img' || ['button', 'input', 'a'].includes(tag);
  if (name !== undefined && isNamed) return [name];
  return nodes.flatMap((each) => (typeof each === 'string' ? [each] : pieces(each)));
}
