/**
 * Writes binary glTF 2.0 (ISO/IEC 12113:2022): a head, a JSON chunk that says what is in the second chunk, and the numbers
 * themselves, each list starting at a multiple of four bytes; little-endian. Only what the insertion needs.
 */
const FLOAT = 5126;
const UINT = 5125;
const VERTICES = 34962;
const INDICES = 34963;
const MAGIC = 0x46546c67;
const JSON_CHUNK = 0x4e4f534a;
const BINARY_CHUNK = 0x004e4942;
const HEAD_BYTES = 12;
const CHUNK_HEAD_BYTES = 8;

type ListKind = 'SCALAR' | 'VEC3';
const WIDTHS: Readonly<Record<ListKind, number>> = { SCALAR: 1, VEC3: 3 };

/** Collects lists of numbers and gives each its place. */
export class GlbLists {
  readonly #lists: Uint8Array[] = [];
  readonly #accessors: object[] = [];
  readonly #views: object[] = [];
  #length = 0;

  /** Floats; `target` for those that the graphics card takes as corners. Gives the accessor. */
  floats(list: Float32Array, kind: ListKind, target?: 'corners'): number {
    const view = this.#view(list, target === undefined ? undefined : VERTICES);
    const width = WIDTHS[kind];
    const range = rangeOf(list, width);
    return this.#accessor({
      bufferView: view,
      componentType: FLOAT,
      count: list.length / width,
      type: kind,
      ...range,
    });
  }

  indices(list: Uint32Array): number {
    const view = this.#view(list, INDICES);
    return this.#accessor({ bufferView: view, componentType: UINT, count: list.length, type: 'SCALAR' });
  }

  /** Writes the file around everything collected. */
  finish(content: Readonly<Record<string, unknown>>): Uint8Array {
    const document = {
      ...content,
      buffers: [{ byteLength: this.#length }],
      bufferViews: this.#views,
      accessors: this.#accessors,
    };
    const json = padded(new TextEncoder().encode(JSON.stringify(document)), 0x20);
    const total = HEAD_BYTES + 2 * CHUNK_HEAD_BYTES + json.length + this.#length;
    const bytes = new Uint8Array(total);
    const view = new DataView(bytes.buffer);
    [MAGIC, 2, total, json.length, JSON_CHUNK].forEach((value, i) => view.setUint32(4 * i, value, true));
    bytes.set(json, HEAD_BYTES + CHUNK_HEAD_BYTES);
    let at = HEAD_BYTES + CHUNK_HEAD_BYTES + json.length;
    view.setUint32(at, this.#length, true);
    view.setUint32(at + 4, BINARY_CHUNK, true);
    at += CHUNK_HEAD_BYTES;
    for (const list of this.#lists) {
      bytes.set(list, at);
      at += list.length;
    }
    return bytes;
  }

  #view(list: Float32Array | Uint32Array, target: number | undefined): number {
    const bytes = new Uint8Array(list.buffer, list.byteOffset, list.byteLength);
    this.#lists.push(bytes);
    this.#views.push({
      buffer: 0,
      byteOffset: this.#length,
      byteLength: bytes.length,
      ...(target === undefined ? {} : { target }),
    });
    this.#length += bytes.length;
    return this.#views.length - 1;
  }

  #accessor(accessor: object): number {
    this.#accessors.push(accessor);
    return this.#accessors.length - 1;
  }
}

function rangeOf(list: Float32Array, width: number): { readonly min: number[]; readonly max: number[] } {
  const min = Array.from({ length: width }, () => Infinity);
  const max = Array.from({ length: width }, () => -Infinity);
  for (let i = 0; i < list.length; i++) {
    const value = list[i] ?? 0;
    min[i % width] = Math.min(min[i % width] ?? value, value);
    max[i % width] = Math.max(max[i % width] ?? value, value);
  }
  return { min, max };
}

function padded(bytes: Uint8Array, filler: number): Uint8Array {
  const whole = new Uint8Array(Math.ceil(bytes.length / 4) * 4).fill(filler);
  whole.set(bytes);
  return whole;
}
