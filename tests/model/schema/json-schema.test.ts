import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { jobSchema } from '../../../src/model/schema/job-schema.ts';
import { jobJsonSchema } from '../../../src/model/schema/json-schema.ts';
import { schemaLeaves } from '../../support/schema-leaves.ts';

type Node = { [name: string]: unknown };

/** Every leaf of the JSON Schema with the mark that counts for it: its own or the nearest one above. */
function markedLeaves(root: Node): Map<string, unknown> {
  const leaves = new Map<string, unknown>();
  const definitions = root['$defs'] as Record<string, Node>;
  const walk = (given: Node, path: string, above: unknown) => {
    const mark = given['restricted'] ?? above;
    const reference = given['$ref'];
    const name = typeof reference === 'string' ? reference.replace('#/$defs/', '') : '';
    const node = name === '' ? given : (definitions[name] ?? {});
    const { properties, items, prefixItems, additionalProperties, anyOf } = node;
    if (properties !== undefined) {
      for (const [name, child] of Object.entries(properties as Record<string, Node>))
        walk(child, path === '' ? name : `${path}.${name}`, mark);
    } else if (prefixItems !== undefined)
      (prefixItems as Node[]).forEach((child, i) => walk(child, `${path}[${i}]`, mark));
    else if (items !== undefined) walk(items as Node, `${path}[]`, mark);
    else if (typeof additionalProperties === 'object') walk(additionalProperties as Node, `${path}{}`, mark);
    else if (anyOf !== undefined)
      for (const option of anyOf as Node[]) {
        if (option['type'] !== 'null') walk(option, path, mark);
      }
    else leaves.set(path, mark);
  };
  walk(root, '', undefined);
  return leaves;
}

describe('jobJsonSchema', () => {
  it('is what lies in public/ (else run tools/write-schema.ts)', () => {
    const file = new URL('../../../public/shearsight-job.schema.json', import.meta.url);
    expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual(jobJsonSchema());
  });

  it('marks the same leaves as the schema itself', () => {
    const marked = markedLeaves(jobJsonSchema());
    const own = new Map(schemaLeaves(jobSchema).map(({ path, marks }) => [path, marks.at(-1)]));
    expect(own.size).toBeGreaterThan(400);
    expect(marked).toEqual(own);
  });

  it('allows no field that the schema does not know, and says the limits', () => {
    const schema = jobJsonSchema() as { properties: Record<string, Node>; additionalProperties: unknown };
    expect(schema.additionalProperties).toBe(false);
    expect(schema.properties['parts']).toMatchObject({ type: 'array', maxItems: 20000 });
    expect(schema.properties['schemaVersion']).toMatchObject({ const: 1 });
  });
});
