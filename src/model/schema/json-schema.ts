/**
 * The shape of a job file as JSON Schema (draft 2020-12), for everybody who reads or writes job files without this program.
 * `restricted` marks what a key could be cut from; the mark counts for everything below it. What needs the whole file to be
 * said (ids that exist, lines between neighbours) is not in it: see check-references.ts.
 */
import * as z from 'zod/mini';
import { jobSchema } from './job-schema.ts';
import { angleSchema, confidentiality, lengthSchema } from './leaf.ts';

const DESCRIPTION =
  'What was measured of pin tumbler cylinders, keys and parts. Lengths are millimetres, angles degrees; `typed` is what was typed. `restricted` says, for everything below it, whether a key could be cut from it.';

/** Makes the JSON Schema of a job file. */
export function jobJsonSchema(): Record<string, unknown> {
  const { $schema, ...shape } = z.toJSONSchema(jobSchema, {
    metadata: confidentiality,
    target: 'draft-2020-12',
  });
  const definitions = { length: plainSchema(lengthSchema()), angle: plainSchema(angleSchema()) };
  const names = new Map(Object.entries(definitions).map(([name, schema]) => [JSON.stringify(schema), name]));
  return {
    $schema,
    title: 'Shearsight job',
    description: DESCRIPTION,
    ...members(referring(shape, names)),
    $defs: definitions,
  };
}

function plainSchema(schema: z.ZodMiniType): Record<string, unknown> {
  return members(
    Object.fromEntries(Object.entries(z.toJSONSchema(schema)).filter(([name]) => name !== '$schema')),
  );
}

/** Puts a reference in place of each definition, which stands in a hundred places otherwise; its mark stays there. */
function referring(node: unknown, names: ReadonlyMap<string, string>): unknown {
  if (Array.isArray(node)) return node.map((member) => referring(member, names));
  if (typeof node !== 'object' || node === null) return node;
  const { restricted: mark, ...rest } = members(node);
  const name = names.get(JSON.stringify(rest));
  const marked = mark === undefined ? {} : { restricted: mark };
  if (name !== undefined) return { $ref: `#/$defs/${name}`, ...marked };
  return Object.fromEntries(
    Object.entries({ ...rest, ...marked }).map(([member, child]) => [member, referring(child, names)]),
  );
}

function members(object: unknown): Record<string, unknown> {
  return typeof object === 'object' && object !== null ? Object.fromEntries(Object.entries(object)) : {};
}
