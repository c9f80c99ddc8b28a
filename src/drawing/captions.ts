/**
 * The language of captions. Drawings are made with English words; who wants others hands over what says them, for as long
 * as one drawing is made. Drawing is done in one go, so nothing else is drawn meanwhile; widths are those of the words said.
 */
export type Captions = (english: string) => string;

const ENGLISH: Captions = (english) => english;

let captions = ENGLISH;

/** Says a caption in the language that the drawing is made in. */
export function said(english: string): string {
  return captions(english);
}

/** Makes a drawing whose captions are said by `own`; null leaves them English. */
export function withCaptions<T>(own: Captions | null, draw: () => T): T {
  const before = captions;
  captions = own ?? ENGLISH;
  try {
    return draw();
  } finally {
    captions = before;
  }
}
