/** The way Enter takes: down a column, then to the top of the next one. */

/**
 * Gives the place of the next field.
 *
 * @param columns column of each field, in the order they stand on the page
 * @param step 1 onwards, -1 back
 * @returns null at the end of the way
 */
export function nextInWalk(columns: readonly string[], at: number, step: 1 | -1): number | null {
  const order = [...new Set(columns)];
  const way = order.flatMap((column) => columns.flatMap((each, place) => (each === column ? [place] : [])));
  const next = way[way.indexOf(at) + step];
  return way.includes(at) && next !== undefined ? next : null;
}

/** Takes the focus to the next field of the walk this field belongs to; false at its end. */
export function walkOn(field: HTMLElement, step: 1 | -1): boolean {
  const walk = field.closest('[data-walk]');
  if (walk === null) return false;
  const fields = [...walk.querySelectorAll<HTMLElement>('[data-column]')];
  const columns = fields.map((each) => each.dataset['column'] ?? '');
  const next = nextInWalk(columns, fields.indexOf(field), step);
  const target = next === null ? undefined : fields[next];
  target?.focus();
  return target !== undefined;
}
