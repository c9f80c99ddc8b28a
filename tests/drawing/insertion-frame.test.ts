/** The pictures of the key going in: one size, words that say how far, and only what moves differs. */
import { describe, expect, test } from 'vitest';
import { insertionFrame, travelAtShare, travelWords } from '../../src/drawing/insertion-frame.ts';
import { toSvgText } from '../../src/drawing/node.ts';
import { sampleAssembly } from '../support/sample-assembly.ts';

const assembly = sampleAssembly({ chambers: 3 });
const at = (share: number) =>
  insertionFrame(assembly, travelAtShare(assembly, share), { unit: 'mm', width: 400 });

describe('the key going in', () => {
  test('ends home and starts clear of every stack', () => {
    expect(travelAtShare(assembly, 0)).toBe(assembly.key!.outTravel);
    expect(travelAtShare(assembly, 1)).toBe(assembly.key!.seatedTravel);
    expect(travelWords(assembly, assembly.key!.seatedTravel, 'mm')).toBe('Key fully in');
    expect(travelWords(assembly, 12.7, 'mm')).toBe('Key 12.70 mm out');
    expect(travelWords(assembly, 12.7, 'in')).toBe('Key .5000 in out');
  });

  test('all pictures have one size, and no two show the same', () => {
    const frames = [0, 0.2, 0.4, 0.6, 0.8, 1].map(at);
    const sizes = new Set(frames.map(({ attributes }) => String(attributes['viewBox'])));
    expect(sizes.size).toBe(1);
    expect(new Set(frames.map(toSvgText)).size).toBe(6);
  });
});
