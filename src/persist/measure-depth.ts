/** How deep JSON text nests, found without reading it: a hostile text must not get as far as a reader that recurses. */

const QUOTE = 34;
const BACKSLASH = 92;
const [OPEN_LIST, CLOSE_LIST, OPEN_OBJECT, CLOSE_OBJECT] = [91, 93, 123, 125] as const;

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
    else if (code === OPEN_LIST || code === OPEN_OBJECT) {
      depth += 1;
      if (depth > deepest) deepest = depth;
    } else if (code === CLOSE_LIST || code === CLOSE_OBJECT) depth -= 1;
  }
  return deepest;
}
