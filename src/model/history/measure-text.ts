/**
 * How long a piece of plain JSON data is as text, remembered per piece: history shares its pieces, so measuring one more
 * snapshot costs what changed in it. Characters, no lengths in mm.
 */
const measured = new WeakMap<object, number>();

/** Measures the characters of `JSON.stringify(data)` without making the text. */
export function measureText(data: unknown): number {
  if (typeof data !== 'object' || data === null) return data === undefined ? 0 : JSON.stringify(data).length;
  const before = measured.get(data);
  if (before !== undefined) return before;
  const length = Array.isArray(data) ? listLength(data) : objectLength(data);
  measured.set(data, length);
  return length;
}

function listLength(list: readonly unknown[]): number {
  const members = list.reduce<number>((sum, member) => sum + measureText(member), 0);
  return 2 + members + Math.max(0, list.length - 1);
}

function objectLength(object: object): number {
  const members = Object.entries(object).filter(([, member]) => member !== undefined);
  const texts = members.reduce(
    (sum, [name, member]) => sum + JSON.stringify(name).length + 1 + measureText(member),
    0,
  );
  return 2 + texts + Math.max(0, members.length - 1);
}
