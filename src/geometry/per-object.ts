/**
 * Remembers what was worked out for an assembly (or any other fixed object) for as long as it is looked at. The functions
 * are pure, so remembering changes nothing but the time it takes.
 */
export function perObject<Key extends object, Result>(work: (key: Key) => Result): (key: Key) => Result {
  const known = new WeakMap<Key, { readonly result: Result }>();
  return (key) => {
    const before = known.get(key);
    if (before !== undefined) return before.result;
    const result = work(key);
    known.set(key, { result });
    return result;
  };
}
