/**
 * Writes data as JSON text that reads well and is the same for the same data: members in a fixed order, two blanks per
 * level, whatever fits on one line on one line, a line feed at the end.
 */

/** JSON data, in which a member that is undefined counts as absent. */
export type Printable =
  | null
  | boolean
  | number
  | string
  | readonly Printable[]
  | { readonly [name: string]: Printable | undefined };

/** Characters of a line. */
const WIDTH = 110;

/** What a reader looks for first comes first; all other members follow by name. */
const FIRST_NAMES: readonly string[] = [
  'format',
  'schemaVersion',
  'id',
  'revision',
  'title',
  'label',
  'kind',
  'role',
  'settings',
  'instruments',
  'sessions',
  'cylinders',
  'keys',
  'seatings',
  'parts',
  'groups',
  'plans',
  'intents',
  'benchResults',
  'note',
  'readings',
  'typed',
  'unit',
  'value',
];
const RANKS = new Map(FIRST_NAMES.map((name, i) => [name, i]));

/** Prints JSON data. Members that are undefined are left out. */
export function printJson(data: Printable): string {
  return `${new Printer().print(data, 0, 0)}\n`;
}

type Members = readonly (readonly [name: string, member: Printable])[];

class Printer {
  /** Members in order: each object is looked at several times, once for every line it might stand on. */
  private readonly ordered = new Map<object, Members>();

  /** Prints a value that stands after a lead of so many characters on a line indented so far. */
  print(value: Printable, indent: number, lead: number): string {
    // One character is left for the comma after it.
    const line = this.oneLine(value, WIDTH - 1 - indent - lead);
    if (line !== null || typeof value !== 'object' || value === null) return line ?? JSON.stringify(value);
    const inner = indent + 2;
    const members = isList(value)
      ? value.map((member) => this.print(member, inner, 0))
      : this.membersOf(value).map(([name, member]) => {
          const start = `${JSON.stringify(name)}: `;
          return start + this.print(member, inner, start.length);
        });
    const [open, close] = isList(value) ? ['[', ']'] : ['{', '}'];
    const separator = `,\n${' '.repeat(inner)}`;
    return `${open}\n${' '.repeat(inner)}${members.join(separator)}\n${' '.repeat(indent)}${close}`;
  }

  /** The value on one line, or null when that needs more than the room there is. Gives up as soon as it is too long. */
  private oneLine(value: Printable, room: number): string | null {
    if (room < 0) return null;
    if (typeof value !== 'object' || value === null) {
      const text = JSON.stringify(value);
      return text.length <= room ? text : null;
    }
    const members: Members = isList(value) ? value.map((member) => ['', member]) : this.membersOf(value);
    const brackets = isList(value) ? 2 : 4;
    let text = '';
    for (const [name, member] of members) {
      const lead = `${text === '' ? '' : ', '}${isList(value) ? '' : `${JSON.stringify(name)}: `}`;
      const rest = this.oneLine(member, room - text.length - lead.length - brackets);
      if (rest === null) return null;
      text += lead + rest;
    }
    if (isList(value)) return `[${text}]`;
    return text === '' ? '{}' : `{ ${text} }`;
  }

  private membersOf(object: { readonly [name: string]: Printable | undefined }): Members {
    const before = this.ordered.get(object);
    if (before !== undefined) return before;
    const members = Object.entries(object)
      .flatMap(([name, member]): [string, Printable][] => (member === undefined ? [] : [[name, member]]))
      .sort(([a], [b]) => rank(a) - rank(b) || (a < b ? -1 : 1));
    this.ordered.set(object, members);
    return members;
  }
}

function rank(name: string): number {
  return RANKS.get(name) ?? RANKS.size;
}

function isList(value: Printable): value is readonly Printable[] {
  return Array.isArray(value);
}
