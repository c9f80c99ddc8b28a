import { afterEach, describe, expect, it, vi } from 'vitest';
import { keepPreferences, loadPreferences, watchPreferences } from '../../src/persist/preferences-storage.ts';
import { askToPersist, readStorageStatus } from '../../src/persist/storage-status.ts';

class MemoryStorage {
  readonly kept = new Map<string, string>();
  getItem = (key: string) => this.kept.get(key) ?? null;
  setItem = (key: string, value: string) => void this.kept.set(key, value);
}

const denied = {
  getItem: () => {
    throw new DOMException('no', 'SecurityError');
  },
  setItem: () => {
    throw new DOMException('no', 'SecurityError');
  },
};

afterEach(() => vi.unstubAllGlobals());

describe('preferences in the browser', () => {
  it('come back as they were kept', () => {
    const storage = new MemoryStorage();
    expect(loadPreferences(storage)).toBeNull();
    expect(keepPreferences({ theme: 'slate' }, storage)).toBe(true);
    expect(loadPreferences(storage)).toEqual({ theme: 'slate' });
  });

  it('are nothing when they are damaged or denied, and keeping them disturbs nobody', () => {
    const storage = new MemoryStorage();
    storage.setItem('shearsight-preferences', '{"theme": ');
    expect(loadPreferences(storage)).toBeNull();
    expect(loadPreferences(denied)).toBeNull();
    expect(keepPreferences({}, denied)).toBe(false);
    expect([loadPreferences(null), keepPreferences({}, null)]).toEqual([null, false]);
  });

  it('are found in the window, even in one that forbids looking', () => {
    vi.stubGlobal('window', { localStorage: new MemoryStorage() });
    expect(keepPreferences({ unit: 'mm' })).toBe(true);
    expect(loadPreferences()).toEqual({ unit: 'mm' });
    const forbidding = Object.defineProperty({}, 'localStorage', { get: denied.getItem });
    vi.stubGlobal('window', forbidding);
    expect([loadPreferences(), keepPreferences({})]).toEqual([null, false]);
  });

  it('changed in another tab are told, other things are not', () => {
    const page = Object.assign(new EventTarget(), { localStorage: new MemoryStorage() });
    vi.stubGlobal('window', page);
    const told: unknown[] = [];
    const end = watchPreferences((kept) => told.push(kept));
    keepPreferences({ theme: 'paper' });
    const changed = (key: string) => Object.assign(new Event('storage'), { key });
    page.dispatchEvent(changed('something else'));
    page.dispatchEvent(changed('shearsight-preferences'));
    end();
    page.dispatchEvent(changed('shearsight-preferences'));
    expect(told).toEqual([{ theme: 'paper' }]);
  });
});

describe('how firmly the browser keeps things', () => {
  const yes = () => Promise.resolve(true);
  const no = () => Promise.resolve(false);

  it.each([
    ['granted', { persist: yes, persisted: no }],
    ['granted', { persist: () => Promise.reject(new Error('asked again')), persisted: yes }],
    ['refused', { persist: no, persisted: no }],
    ['unknown', {}],
    ['unknown', null],
    ['unknown', { persist: () => Promise.reject(new Error('no')), persisted: no }],
  ] as const)('is %s', async (answer, manager) => {
    expect(await askToPersist(manager)).toBe(answer);
  });

  it('is read together with the room there is', async () => {
    const estimate = () => Promise.resolve({ usage: 10, quota: 100 });
    expect(await readStorageStatus({ persisted: yes, estimate })).toEqual({
      persistence: 'granted',
      usedBytes: 10,
      roomBytes: 100,
    });
    const nothing = { persistence: 'unknown', usedBytes: null, roomBytes: null };
    expect(await readStorageStatus(null)).toEqual(nothing);
    expect(await readStorageStatus({ persisted: denied.getItem })).toEqual(nothing);
  });
});
