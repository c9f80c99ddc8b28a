/** Names of files, made from a job's title so that every file system takes them and nothing in them acts. */

/** Characters of the name before its ending; some file systems stop at 255 bytes, with four bytes to a character. */
const MOST_CHARACTERS = 60;
export const JOB_ENDING = '.shearsight.json';
const FALLBACK = 'job';

/** Not in names: separators and wildcards of any system, control characters, marks that turn the reading direction. */
const REFUSED = /[\\/:*?"<>|%#&{}$!'`@+=~^[\];,\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}]+/gu;
/** Device names that one system keeps for itself, whatever the ending. */
const DEVICES = /^(con|prn|aux|nul|com\d|lpt\d)$/iu;

/** Makes the file name for a job with this title. */
export function jobFileName(title: string): string {
  const plain = title
    .normalize('NFC')
    .replace(REFUSED, ' ')
    .replace(/[\s.]+/gu, ' ')
    .trim();
  const short = Array.from(plain).slice(0, MOST_CHARACTERS).join('').trim();
  const name = short.replace(/ /gu, '-');
  return `${name === '' || DEVICES.test(name) ? FALLBACK : name}${JOB_ENDING}`;
}
