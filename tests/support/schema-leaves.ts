/** Walks the job file's schema to its leaves, telling for each what it was classified as on the way. */
import type * as z from 'zod/mini';
import { confidentiality } from '../../src/model/schema/leaf.ts';

export type SchemaLeaf = {
  /** `keys[].cuts[].rootDepth.readings[].typed`; `{}` stands for any member of a record. */
  readonly path: string;
  /** Every mark met from the root down to the leaf. */
  readonly marks: readonly boolean[];
};

/** Lists the leaves below a schema. An unknown kind of schema throws, so that nothing is passed over. */
export function schemaLeaves(
  schema: z.core.$ZodType,
  path = '',
  above: readonly boolean[] = [],
): readonly SchemaLeaf[] {
  const mark = confidentiality.get(schema)?.restricted;
  const marks = mark === undefined ? above : [...above, mark];
  const { def } = (schema as z.core.$ZodTypes)._zod;
  const below = (child: z.core.$ZodType, step: string) => schemaLeaves(child, path + step, marks);
  if (def.type === 'object') {
    return Object.entries(def.shape).flatMap(([name, child]) =>
      below(child, path === '' ? name : `.${name}`),
    );
  }
  if (def.type === 'array') return below(def.element, '[]');
  if (def.type === 'tuple') return def.items.flatMap((item, i) => below(item, `[${i}]`));
  if (def.type === 'record') return below(def.valueType, '{}');
  if (def.type === 'optional' || def.type === 'nullable') return below(def.innerType, '');
  if (def.type === 'union') return def.options.flatMap((option) => below(option, ''));
  if (LEAVES.has(def.type)) return [{ path, marks }];
  throw new Error(`the walk does not know ${def.type} at ${path}`);
}

const LEAVES: ReadonlySet<string> = new Set(['string', 'number', 'boolean', 'enum', 'literal']);
