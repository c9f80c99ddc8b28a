/** What the parts of a cylinder are called where they are handed out: by kind and chamber, never by a length or a label. */
import type { Assembly } from '../model/assembly/assembly.ts';
import { bodyPartKey, type CutRole, keyPartKey, stackPartKey } from './cut-parts.ts';

export type NamedPart = {
  /** As in cut-parts.ts. */
  readonly partKey: string;
  readonly role: CutRole | 'spring';
  /** "chamber 2 bottom pin" */
  readonly name: string;
};

const NAMES: Readonly<Record<NamedPart['role'], string>> = {
  plug: 'plug',
  sleeve: 'sleeve',
  shell: 'shell',
  retainer: 'retaining ring',
  key: 'key',
  ball: 'ball',
  bottomPin: 'bottom pin',
  masterPin: 'master pin',
  driver: 'driver',
  spring: 'spring',
};

/** Lists the parts: bodies from the outside in, their rings, the key, then stack by stack from the bottom. */
export function namedParts(assembly: Assembly): NamedPart[] {
  const { bodies, lines, key } = assembly;
  const named = (partKey: string, role: NamedPart['role'], name = NAMES[role]): NamedPart => ({
    partKey,
    role,
    name,
  });
  return [
    ...bodies.map(({ id, role }) => named(bodyPartKey(id), role)).reverse(),
    ...lines.map(({ id }, i) =>
      named(
        `retainer ${id}`,
        'retainer',
        lines.length === 1 ? NAMES.retainer : `${NAMES.retainer} of the ${i === 0 ? 'plug' : 'sleeve'}`,
      ),
    ),
    ...(key === null ? [] : [named(keyPartKey(key.id), 'key')]),
    ...assembly.chambers.flatMap(({ id, number, closed }) => {
      const stack = closed ? undefined : assembly.stacks.find(({ chamber }) => chamber === id);
      const parts = stack?.parts ?? [];
      return parts.map(({ role }, place) => {
        const alike = parts.filter((each) => each.role === role);
        const count = parts.slice(0, place + 1).filter((each) => each.role === role).length;
        const which = alike.length > 1 ? ` ${count}` : '';
        return named(stackPartKey(id, place), role, `chamber ${number} ${NAMES[role]}${which}`);
      });
    }),
  ];
}
