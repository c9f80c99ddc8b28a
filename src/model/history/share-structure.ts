/**
 * Structural sharing: a changed job keeps every unchanged piece of the job before it, the very same object. Snapshots then
 * cost what changed, "nothing changed" is one comparison, and whatever is remembered per piece stays remembered.
 * Works on plain JSON data; members of lists are matched by `id` where they have one, by place otherwise. No lengths here.
 */

/**
 * Gives data equal to `after`, built from the pieces of `before` that are equal. Gives `before` itself when nothing differs.
 * A member that is present but undefined counts as absent, as it does in a file.
 */
export function shareStructure<T>(before: unknown, after: T): T {
  return share(before, after) as T;
}

function share(before: unknown, after: unknown): unknown {
  if (Object.is(before, after)) return before;
  if (!isObject(before) || !isObject(after)) return after;
  if (Array.isArray(before) && Array.isArray(after)) return shareList(before, after);
  if (Array.isArray(before) || Array.isArray(after)) return after;
  return shareObject(before, after);
}

function shareList(before: readonly unknown[], after: readonly unknown[]): readonly unknown[] {
  const byId = new Map<unknown, unknown>();
  for (const member of before) {
    const id = idOf(member);
    if (id !== undefined) byId.set(id, member);
  }
  const shared = after.map((member, i) => {
    const id = idOf(member);
    return share(id === undefined ? before[i] : byId.get(id), member);
  });
  const isSame = before.length === after.length && shared.every((member, i) => Object.is(member, before[i]));
  return isSame ? before : shared;
}

function shareObject(before: object, after: object): object {
  const old = new Map<string, unknown>(presentMembers(before));
  const members = presentMembers(after);
  const shared = members.map(([name, member]): [string, unknown] => [name, share(old.get(name), member)]);
  const isSame =
    old.size === shared.length &&
    shared.every(([name, member]) => old.has(name) && Object.is(old.get(name), member));
  return isSame ? before : Object.fromEntries(shared);
}

function presentMembers(object: object): [string, unknown][] {
  return Object.entries(object).filter(([, member]) => member !== undefined);
}

function idOf(member: unknown): string | undefined {
  return isObject(member) && 'id' in member && typeof member.id === 'string' ? member.id : undefined;
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
