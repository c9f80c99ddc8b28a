/**
 * The form of a clip's file, read by a few lines after RFC 8794: an id keeps its leading bits, a size drops them. That a browser
 * plays it is tried in tests/e2e/note.spec.ts.
 */
import { describe, expect, test } from 'vitest';
import { type Clip, webmFile } from '../../src/persist/webm-file.ts';

type Element = { readonly id: string; readonly at: number; readonly content: Uint8Array };

function readVint(bytes: Uint8Array, at: number, keepsMark: boolean): { value: number; length: number } {
  const length = Math.clz32(bytes[at]!) - 23;
  let value = keepsMark ? bytes[at]! : bytes[at]! & (0xff >> length);
  for (let i = 1; i < length; i++) value = value * 256 + bytes[at + i]!;
  return { value, length };
}

function elementsOf(bytes: Uint8Array): Element[] {
  const found: Element[] = [];
  for (let at = 0; at < bytes.length; ) {
    const id = readVint(bytes, at, true);
    const size = readVint(bytes, at + id.length, false);
    const start = at + id.length + size.length;
    found.push({ id: id.value.toString(16), at, content: bytes.subarray(start, start + size.value) });
    at = start + size.value;
    expect(at).toBeLessThanOrEqual(bytes.length);
  }
  return found;
}

const inside = (elements: readonly Element[], id: string) => elements.find((each) => each.id === id)!.content;
const whole = (bytes: Uint8Array) => bytes.reduce((sum, byte) => sum * 256 + byte, 0);

const clip: Clip = {
  codec: 'V_VP8',
  width: 800,
  height: 300,
  milliseconds: 5000,
  frames: Array.from({ length: 40 }, (_, i) => ({
    bytes: new Uint8Array(10 + i * 9).fill(i),
    milliseconds: i * 100,
    isKey: i % 16 === 0,
  })),
};

describe('a clip', () => {
  const [head, segment] = elementsOf(webmFile(clip));
  const parts = elementsOf(segment!.content);

  test('says what it is, how large and how long', () => {
    expect(new TextDecoder().decode(inside(elementsOf(head!.content), '4282'))).toBe('webm');
    const info = elementsOf(inside(parts, '1549a966'));
    const { buffer, byteOffset } = inside(info, '4489');
    expect(new DataView(buffer, byteOffset).getFloat64(0)).toBe(5000);
    const track = elementsOf(inside(elementsOf(inside(parts, '1654ae6b')), 'ae'));
    expect(new TextDecoder().decode(inside(track, '86'))).toBe('V_VP8');
    const video = elementsOf(inside(track, 'e0'));
    expect([whole(inside(video, 'b0')), whole(inside(video, 'ba'))]).toEqual([800, 300]);
    // 0x4461 would be a date.
    expect(info.map(({ id }) => id)).not.toContain('4461');
  });

  test('holds every frame at its time, and cues that point at clusters', () => {
    const clusters = parts.filter(({ id }) => id === '1f43b675');
    const blocks = clusters.flatMap(({ content }) => {
      const start = whole(inside(elementsOf(content), 'e7'));
      return elementsOf(content)
        .filter(({ id }) => id === 'a3')
        .map((block) => ({
          milliseconds: start + block.content[1]! * 256 + block.content[2]!,
          isKey: block.content[3] === 0x80,
          bytes: block.content.slice(4),
        }));
    });
    expect(blocks).toEqual(clip.frames);
    const cues = elementsOf(inside(parts, '1c53bb6b')).map(({ content }) => elementsOf(content));
    const targets = cues.map((cue) => whole(inside(elementsOf(inside(cue, 'b7')), 'f1')));
    expect(targets).toEqual(clusters.map(({ at }) => at));
    expect(cues.map((cue) => whole(inside(cue, 'b3')))).toEqual([0, 1600, 3200]);
  });
});
