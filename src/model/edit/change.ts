/** Small steps of every edit: nothing is changed in place, and what did not change stays the same object. */
import { assert } from '../assert.ts';
import type { Id } from '../schema/leaf.ts';

type OptionalName<T> = { [Name in keyof T]-?: undefined extends T[Name] ? Name : never }[keyof T];

/** Changes the one item of a list that has this id. It must be there. */
export function changeById<T extends { readonly id: Id }>(
  list: readonly T[],
  id: Id,
  change: (item: T) => T,
): T[] {
  assert(
    list.some((item) => item.id === id),
    `nothing with the id ${id} in this list`,
  );
  return list.map((item) => (item.id === id ? change(item) : item));
}

/** Sets an optional field, or takes it away when the value is undefined. */
export function withOptional<T extends object, Name extends OptionalName<T>>(
  item: T,
  name: Name,
  value: T[Name] | undefined,
): T {
  if (value !== undefined) return { ...item, [name]: value };
  if (!(name in item)) return item;
  return Object.fromEntries(Object.entries(item).filter(([key]) => key !== name)) as T;
}

/** Tells whether two lists hold the same ids in the same order. */
export function sameIds(left: readonly Id[], right: readonly Id[]): boolean {
  return left.length === right.length && left.every((id, i) => id === right[i]);
}

/** A record without one of its entries. */
export function withoutEntry<T>(record: Readonly<Record<string, T>>, name: string): Record<string, T> {
  return Object.fromEntries(Object.entries(record).filter(([key]) => key !== name));
}
