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
  'typed',
  'unit',
  'value',
];

/** Prints JSON data. Members that are undefined are left out. */
export function printJson(data: Printable): string {
  return `${print(data, 0)}\n`;
}

function print(value: Printable, indent: number): string {
  const line = oneLine(value, WIDTH - indent);
  if (line !== null || typeof value !== 'object' || value === null) return line ?? JSON.stringify(value);
  const inner = indent + 2;
  const members = isList(value)
    ? value.map((member) => print(member, inner))
    : orderedMembers(value).map(([name, member]) => `${JSON.stringify(name)}: ${print(member, inner)}`);
  const [open, close] = isList(value) ? ['[', ']'] : ['{', '}'];
  const separator = `,\n${' '.repeat(inner)}`;
  return `${open}\n${' '.repeat(inner)}${members.join(separator)}\n${' '.repeat(indent)}${close}`;
}

/** The value on one line, or null when that needs more than the room there is. Gives up as soon as it is too long. */
function oneLine(value: Printable, room: number): string | null {
  if (room < 0) return null;
  if (typeof value !== 'object' || value === null) {
    const text = JSON.stringify(value);
    return text.length <= room ? text : null;
  }
  const members: (readonly [string, Printable])[] = isList(value)
    ? value.map((member) => ['', member])
    : orderedMembers(value);
  let text = '';
  for (const [name, member] of members) {
    const lead = `${text === '' ? '' : ', '}${isList(value) ? '' : `${JSON.stringify(name)}: `}`;
    const rest = oneLine(member, room - text.length - lead.length - 2);
    if (rest === null) return null;
    text += lead + rest;
  }
  if (isList(value)) return `[${text}]`;
  return text === '' ? '{}' : `{ ${text} }`;
}

function orderedMembers(object: { readonly [name: string]: Printable | undefined }): [string, Printable][] {
  return Object.entries(object)
    .flatMap(([name, member]): [string, Printable][] => (member === undefined ? [] : [[name, member]]))
    .sort(([a], [b]) => rank(a) - rank(b) || (a < b ? -1 : 1));
}

function rank(name: string): number {
  const place = FIRST_NAMES.indexOf(name);
  return place < 0 ? FIRST_NAMES.length : place;
}

function isList(value: Printable): value is readonly Printable[] {
  return Array.isArray(value);
}
