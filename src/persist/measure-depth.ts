/** How deep JSON text nests, found without reading it: a hostile text must not get as far as a reader that recurses. */

const QUOTE = 34;
const BACKSLASH = 92;
const OPENERS: ReadonlySet<number> = new Set([91, 123]);
const CLOSERS: ReadonlySet<number> = new Set([93, 125]);

/** Measures the deepest nesting of lists and objects in JSON text; brackets within strings do not count. */
export function measureDepth(text: string): number {
  let depth = 0;
  let deepest = 0;
  let isInString = false;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (isInString) {
      if (code === BACKSLASH) i += 1;
      else if (code === QUOTE) isInString = false;
    } else if (code === QUOTE) isInString = true;
    else if (OPENERS.has(code)) {
      depth += 1;
      if (depth > deepest) deepest = depth;
    } else if (CLOSERS.has(code)) depth -= 1;
  }
  return deepest;
}
