/**
 * Copies parsed JSON into objects that hold nothing but their own members, so that a name in a hostile file can never reach
 * what every object inherits. Names that mean something to every object are refused, never dropped in silence; so are ids
 * spelled like one, as ids become names of members. Long lists are refused before anything looks at their members.
 */
import type { Problem } from '../model/schema/problem.ts';
import type { JsonObject, JsonValue } from './migrations/migration.ts';

/** Members of a list or object: as many as the longest list of a job may have. */
const MOST_MEMBERS = 20_000;
/** Values altogether: a job with every list full and every value once read again has fewer. */
const MOST_VALUES = 3_000_000;

export type InertCopy =
  | { readonly type: 'success'; readonly value: JsonValue }
  | { readonly type: 'error'; readonly problem: Problem };

const INHERITED: ReadonlySet<string> = new Set([
  'prototype',
  ...Object.getOwnPropertyNames(Object.prototype),
]);

/** Copies; the first thing refused ends it. Expects data from JSON.parse whose depth was already checked. */
export function inertCopy(parsed: unknown): InertCopy {
  let values = 0;
  const copy = (value: unknown, place: string): JsonValue => {
    values += 1;
    if (values > MOST_VALUES) refuse('file', 'holds more values than any job could.');
    if (Array.isArray(value)) {
      if (value.length > MOST_MEMBERS) refuse(place, `has more than ${MOST_MEMBERS} members.`);
      return value.map((member, i) => copy(member, `${place} ${i + 1}`));
    }
    if (typeof value === 'object' && value !== null) return copyObject(value, place);
    if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return value;
    return null;
  };
  const copyObject = (object: object, place: string): JsonObject => {
    const members = Object.entries(object);
    if (members.length > MOST_MEMBERS) refuse(place, `has more than ${MOST_MEMBERS} fields.`);
    return Object.fromEntries(
      members.map(([name, member]) => {
        if (INHERITED.has(name)) refuse(place, `has a field that no job may have: ${name}.`);
        if (name === 'id' && INHERITED.has(String(member)))
          refuse(place, `has an id that no job may have: ${String(member)}.`);
        return [name, copy(member, place === 'file' ? name : `${place} › ${name}`)];
      }),
    );
  };
  try {
    return { type: 'success', value: copy(parsed, 'file') };
  } catch (error) {
    if (error instanceof Refusal) return { type: 'error', problem: error.problem };
    throw error;
  }
}

class Refusal extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.message);
    this.problem = problem;
  }
}

function refuse(field: string, message: string): never {
  throw new Refusal({ field, message });
}
