import { describe, expect, it, vi } from 'vitest';
import * as z from 'zod/mini';
import { idSchema } from '../../src/model/schema/leaf.ts';
import { newId } from '../../src/state/ids.ts';

describe('newId', () => {
  it('makes ids that the job file takes, each one another', () => {
    const ids = Array.from({ length: 2000 }, newId);
    expect(ids.filter((id) => !z.safeParse(idSchema(), id).success)).toEqual([]);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('keeps all 128 random bits', () => {
    const source = Uint8Array.from({ length: 16 }, (_, i) => i * 17);
    const random = vi.spyOn(crypto, 'getRandomValues').mockImplementation((into) => {
      (into as unknown as Uint8Array).set(source);
      return into;
    });
    // The same bytes by an independent encoder, without its padding.
    expect(newId()).toBe(Buffer.from(source).toString('base64url'));
    random.mockRestore();
  });
});
