import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import {
  createPreferencesStore,
  DEFAULT_PREFERENCES,
  preferencesOf,
  readPreferences,
} from '../../src/state/preferences-store.ts';

const instrument = {
  label: 'Dial caliper by the vice',
  kind: 'dial caliper',
  resolutionMm: 0.0254,
  maxPermissibleErrorMm: 0.0254,
  repeatabilityMm: 0.0127,
  source: 'checked',
} as const;

describe('preferences', () => {
  it('come back as they were kept', () => {
    const store = createPreferencesStore();
    store.getState().set({ theme: 'slate', unit: 'mm', instrument, caliper: 'on' });
    const kept: unknown = JSON.parse(JSON.stringify(preferencesOf(store.getState())));
    expect(preferencesOf(createPreferencesStore(kept).getState())).toEqual({
      ...DEFAULT_PREFERENCES,
      theme: 'slate',
      unit: 'mm',
      instrument,
      caliper: 'on',
    });
  });

  it('are at their defaults where nothing was kept, each for itself', () => {
    expect(readPreferences(null)).toEqual(DEFAULT_PREFERENCES);
    expect(readPreferences({ theme: 'neon', unit: 'mm', bench: true })).toEqual({
      ...DEFAULT_PREFERENCES,
      unit: 'mm',
    });
  });

  it.each([
    ['a negative error', { ...instrument, resolutionMm: -1 }],
    ['an error that is no number', { ...instrument, repeatabilityMm: '0.01' }],
    ['an unknown kind', { ...instrument, kind: 'thumb' }],
    ['no label', { ...instrument, label: undefined }],
  ])('take no instrument with %s', (_, broken) => {
    expect(readPreferences({ instrument: broken }).instrument).toBeNull();
  });

  test.prop([fc.anything()])('can be read from anything', (data) => {
    expect(Object.keys(readPreferences(data)).sort()).toEqual(Object.keys(DEFAULT_PREFERENCES).sort());
  });

  it('take nothing from what every object inherits', () => {
    const hostile: unknown = JSON.parse('{"__proto__": {"theme": "slate"}}');
    expect(readPreferences(hostile).theme).toBe('system');
  });
});
