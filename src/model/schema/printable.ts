/**
 * Names out of a file, made fit for a sentence: a line break, a mark that turns the reading direction or half a character in them
 * would tear the sentence apart, and a long one would bury it. No lengths here.
 */
const MOST_CHARACTERS = 60;

/** Control characters, invisible marks, line and paragraph separators, halves of characters, characters without a meaning. */
const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}\p{Cn}]/gu;

/** Shows what cannot be printed as U+FFFD, and cuts what is longer than a line. */
export function printable(name: string): string {
  const characters = Array.from(name.slice(0, 4 * MOST_CHARACTERS).replace(UNPRINTABLE, '\uFFFD'));
  return characters.length <= MOST_CHARACTERS
    ? characters.join('')
    : `${characters.slice(0, MOST_CHARACTERS).join('')}…`;
}
