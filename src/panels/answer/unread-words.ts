/** What is said with an answer while fields hold texts that are not read: the answer still stands on what was there before. */
import type { UnreadField } from '../../state/view-store.ts';
import { numberWord } from './list-words.ts';

/** Fields told one by one; the others are counted. */
const MOST_TOLD = 3;

/** "Not as typed: one field cannot be read. Root depth, cut 3 still counts as .2400 in." */
export function unreadWords(fields: readonly UnreadField[]): string {
  const count = fields.length === 1 ? 'one field' : `${numberWord(fields.length)} fields`;
  const told = fields
    .slice(0, MOST_TOLD)
    .map(({ label, counts }) =>
      counts === null ? `${label} counts as not entered` : `${label} still counts as ${counts}`,
    );
  const more = fields.length - told.length;
  const rest = more <= 0 ? [] : [`${numberWord(more)} more`];
  return `Not as typed: ${count} cannot be read. ${[...told, ...rest].join('; ')}.`;
}
