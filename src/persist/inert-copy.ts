/**
 * Copies parsed JSON into objects that hold nothing but their own members, so that a name in a hostile file can never reach
 * what every object inherits. Names that mean something to every object are refused, never dropped in silence; so are ids
 * spelled like one, as ids become names of members. Long lists are refused before anything looks at their members.
 */
import { printable } from '../model/schema/printable.ts';
import type { Problem } from '../model/schema/problem.ts';
import type { JsonObject, JsonValue } from './migrations/migration.ts';

/** Members of a list or object: as many as the longest list of a job may have. */
const MOST_MEMBERS = 20_000;
/** Values altogether: a job with every list full and every value once read again has fewer. */
const MOST_VALUES = 3_000_000;

export type InertCopy =
  | { readonly type: 'success'; readonly value: JsonValue }
  | { readonly type: 'error'; readonly problem: Problem };

const INHERITED: ReadonlySet<string> = new Set(Object.getOwnPropertyNames(Object.prototype));

/** Copies; the first thing refused ends it. Expects data from JSON.parse whose depth was already checked. */
export function inertCopy(parsed: unknown): InertCopy {
  const copier = new Copier();
  try {
    return { type: 'success', value: copier.copy(parsed) };
  } catch (error) {
    if (error instanceof Refusal) return { type: 'error', problem: copier.told(error.message) };
    throw error;
  }
}

class Copier {
  private values = 0;
  /** Where the copying is: names of members, and numbers of members of lists. */
  private readonly path: (string | number)[] = [];

  copy(value: unknown): JsonValue {
    this.values += 1;
    if (this.values > MOST_VALUES) throw new Refusal('holds more values than any job could.');
    if (Array.isArray(value)) return this.copyList(value);
    if (typeof value === 'object' && value !== null) return this.copyObject(value);
    if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return value;
    return null;
  }

  /** A problem at the place where the copying stopped: `parts 3 › length`. */
  told(message: string): Problem {
    let field = '';
    for (const step of this.path) {
      if (typeof step === 'number') field += ` ${step + 1}`;
      else field += `${field === '' ? '' : ' › '}${printable(step)}`;
    }
    return { field: field.trim() === '' ? 'file' : field.trim(), message };
  }

  private copyList(list: readonly unknown[]): readonly JsonValue[] {
    if (list.length > MOST_MEMBERS) throw new Refusal(`has more than ${MOST_MEMBERS} members.`);
    return list.map((member, i) => this.copyAt(i, member));
  }

  private copyObject(object: object): JsonObject {
    const members = Object.entries(object);
    if (members.length > MOST_MEMBERS) throw new Refusal(`has more than ${MOST_MEMBERS} fields.`);
    return Object.fromEntries(
      members.map(([name, member]): [string, JsonValue] => {
        if (INHERITED.has(name)) throw new Refusal(`has a field that no job may have: ${name}.`);
        if (name === 'id' && INHERITED.has(String(member)))
          throw new Refusal(`has an id that no job may have: ${String(member)}.`);
        return [name, this.copyAt(name, member)];
      }),
    );
  }

  private copyAt(step: string | number, value: unknown): JsonValue {
    this.path.push(step);
    const copied = this.copy(value);
    this.path.pop();
    return copied;
  }
}

class Refusal extends Error {}
