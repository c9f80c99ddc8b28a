/**
 * Structural sharing: a changed job keeps every unchanged piece of the job before it, the very same object. Snapshots then
 * cost what changed, "nothing changed" is one comparison, and whatever is remembered per piece stays remembered.
 * Works on plain JSON data; members of lists are matched by `id` where they have one, by place otherwise. No lengths here.
 *
 * Written with plain loops: two hundred kept steps are compared whole when a job is opened.
 */

type Members = Readonly<Record<string, unknown>>;

/**
 * Gives data equal to `after`, built from the pieces of `before` that are equal. Gives `before` itself when nothing differs.
 * A member that is present but undefined counts as absent, as it does in a file.
 */
export function shareStructure<T>(before: unknown, after: T): T {
  return share(before, after) as T;
}

function share(before: unknown, after: unknown): unknown {
  if (Object.is(before, after) || !isObject(before) || !isObject(after)) return after;
  if (Array.isArray(after)) return Array.isArray(before) ? shareList(before, after) : after;
  return Array.isArray(before) ? after : shareMembers(before as Members, after as Members);
}

function shareList(before: readonly unknown[], after: readonly unknown[]): readonly unknown[] {
  let moved: Map<string, unknown> | null = null;
  let isSame = before.length === after.length;
  const shared = after.map((member, i) => {
    const id = idOf(member);
    let old = before[i];
    if (id !== undefined && idOf(old) !== id) {
      moved ??= membersById(before);
      old = moved.get(id);
    }
    const kept = share(old, member);
    isSame &&= Object.is(kept, before[i]);
    return kept;
  });
  return isSame ? before : shared;
}

function shareMembers(before: Members, after: Members): Members {
  const names = presentNames(after);
  let isSame = presentNames(before).length === names.length;
  const shared = names.map((name): [string, unknown] => {
    const old = Object.hasOwn(before, name) ? before[name] : undefined;
    const kept = share(old, after[name]);
    isSame &&= Object.is(kept, old);
    return [name, kept];
  });
  return isSame ? before : Object.fromEntries(shared);
}

function presentNames(members: Members): string[] {
  const names = Object.keys(members);
  return names.every((name) => members[name] !== undefined)
    ? names
    : names.filter((name) => members[name] !== undefined);
}

function membersById(list: readonly unknown[]): Map<string, unknown> {
  const byId = new Map<string, unknown>();
  for (const member of list) {
    const id = idOf(member);
    if (id !== undefined) byId.set(id, member);
  }
  return byId;
}

function idOf(member: unknown): string | undefined {
  const id = isObject(member) ? (member as Members)['id'] : undefined;
  return typeof id === 'string' ? id : undefined;
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
