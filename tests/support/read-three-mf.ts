/**
 * Reads a 3MF package with a zip reader (zip.js, BSD-3-Clause) and an XML reader (fast-xml-parser, MIT) that have nothing to do
 * with its writer. 3MF Core Specification 1.3.
 */
import { Uint8ArrayReader, Uint8ArrayWriter, ZipReader } from '@zip.js/zip.js';
import { XMLParser } from 'fast-xml-parser';

export type ReadObject = {
  readonly name: string;
  readonly positions: number[];
  readonly triangles: number[];
};
export type ReadPackage = {
  readonly names: readonly string[];
  /** As the zip file says; Date of each entry. */
  readonly dates: readonly Date[];
  readonly unit: string;
  readonly title: string;
  readonly objects: readonly ReadObject[];
  /** Attributes of every item of the build. */
  readonly items: readonly Readonly<Record<string, string>>[];
  readonly contentTypes: string;
  readonly relationships: string;
};

type Model = {
  readonly model: {
    readonly '@unit': string;
    readonly metadata: { readonly '#text': string };
    readonly resources: { readonly object: readonly ObjectElement[] };
    readonly build: { readonly item: readonly Record<string, string>[] };
  };
};
type ObjectElement = {
  readonly '@name': string;
  readonly mesh: {
    readonly vertices: { readonly vertex: readonly Record<'@x' | '@y' | '@z', string>[] };
    readonly triangles: { readonly triangle: readonly Record<'@v1' | '@v2' | '@v3', string>[] };
  };
};

export async function readThreeMf(bytes: Uint8Array): Promise<ReadPackage> {
  const reader = new ZipReader(new Uint8ArrayReader(bytes), { useWebWorkers: false, checkSignature: true });
  const entries = await reader.getEntries();
  const texts = new Map<string, string>();
  for (const entry of entries) {
    if (entry.directory) continue;
    texts.set(entry.filename, new TextDecoder().decode(await entry.getData(new Uint8ArrayWriter())));
  }
  const parser = new XMLParser({
    ignoreAttributes: false,
    attributeNamePrefix: '@',
    parseTagValue: false,
    isArray: (name) => ['object', 'item', 'vertex', 'triangle'].includes(name),
  });
  const { model } = parser.parse(texts.get('3D/3dmodel.model') ?? '') as Model;
  return {
    names: entries.map(({ filename }) => filename),
    dates: entries.map(({ lastModDate }) => lastModDate),
    unit: model['@unit'],
    title: model.metadata['#text'],
    objects: model.resources.object.map((each) => ({
      name: each['@name'],
      positions: each.mesh.vertices.vertex.flatMap((v) => [
        Number(v['@x']),
        Number(v['@y']),
        Number(v['@z']),
      ]),
      triangles: each.mesh.triangles.triangle.flatMap((t) => [
        Number(t['@v1']),
        Number(t['@v2']),
        Number(t['@v3']),
      ]),
    })),
    items: model.build.item,
    contentTypes: texts.get('[Content_Types].xml') ?? '',
    relationships: texts.get('_rels/.rels') ?? '',
  };
}

/** The box around points. */
export function boxAround(positions: ArrayLike<number>): { low: number[]; high: number[]; size: number[] } {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i++) {
    low[i % 3] = Math.min(low[i % 3]!, positions[i]!);
    high[i % 3] = Math.max(high[i % 3]!, positions[i]!);
  }
  return { low, high, size: high.map((value, i) => value - low[i]!) };
}
