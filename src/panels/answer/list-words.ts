/** Small words: numbers, lists, one or several chambers. */

const NUMBER_WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** "six"; figures from eleven on. */
export function numberWord(count: number): string {
  return NUMBER_WORDS[count] ?? String(count);
}

/** "2", "2 and 5", "2, 4 and 5". */
export function listWords(items: readonly (string | number)[]): string {
  const words = items.map(String);
  const last = words.pop();
  if (last === undefined) return '';
  return words.length === 0 ? last : `${words.join(', ')} and ${last}`;
}

/** "Chamber 2", "Chambers 2 and 5". */
export function sayChambers(numbers: readonly number[]): string {
  return `${numbers.length === 1 ? 'Chamber' : 'Chambers'} ${listWords(numbers)}`;
}

/** With a capital first letter. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
