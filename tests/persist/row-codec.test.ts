import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import { checksum } from '../../src/persist/checksum.ts';
import { frameText, plainCodec, unframeText } from '../../src/persist/row-codec.ts';

const bytesOf = (text: string) => new TextEncoder().encode(text);

describe('checksum', () => {
  // Check value of CRC-32/ISO-HDLC, as listed for "123456789" in the catalogue of parametrised CRC algorithms; from memory.
  it.each([
    ['', 0],
    ['123456789', 0xcbf43926],
    ['The quick brown fox jumps over the lazy dog', 0x414fa339],
  ])('of %j is what it is everywhere', (text, sum) => {
    expect(checksum(bytesOf(text))).toBe(sum);
  });
});

describe('framed text', () => {
  test.prop([fc.string({ unit: 'grapheme', maxLength: 200 })])('comes back as it was', (text) => {
    expect(unframeText(frameText(text))).toBe(text);
  });

  test.prop([fc.string({ minLength: 1, maxLength: 60 }), fc.nat(), fc.nat(7)], { numRuns: 2000 })(
    'is not taken for sound after any one bit has flipped',
    (text, at, bit) => {
      const bytes = frameText(text);
      const place = at % bytes.length;
      bytes[place] = (bytes[place] ?? 0) ^ (1 << bit);
      expect(unframeText(bytes)).toBeNull();
    },
  );

  test.prop([fc.string({ minLength: 1, maxLength: 60 }), fc.nat()])(
    'is not taken for sound when cut off',
    (text, at) => {
      const bytes = frameText(text);
      expect(unframeText(bytes.slice(0, at % bytes.length))).toBeNull();
    },
  );

  it('is read from bytes that lie within others', () => {
    const frame = frameText('text');
    const around = new Uint8Array(frame.length + 5);
    around.set(frame, 3);
    expect(unframeText(around.subarray(3, 3 + frame.length))).toBe('text');
  });

  it('that is not text inside is damaged', () => {
    const frame = frameText('xx');
    frame[9] = 0xff;
    new DataView(frame.buffer).setUint32(4, checksum(frame.subarray(8)));
    expect(unframeText(frame)).toBeNull();
  });
});

describe('the plain codec', () => {
  it('marks its rows as not sealed, and opens them', async () => {
    const row = await plainCodec.encode('text');
    expect(row.sealed).toBe(false);
    expect(await plainCodec.decode(row)).toEqual({ type: 'success', text: 'text' });
  });

  it('leaves sealed rows alone', async () => {
    const row = { ...(await plainCodec.encode('text')), sealed: true };
    expect(await plainCodec.decode(row)).toEqual({ type: 'error', reason: 'locked' });
  });

  test.prop([fc.anything()])('calls anything else damaged', async (row) => {
    expect(await plainCodec.decode(row)).toMatchObject({ type: 'error' });
  });
});
