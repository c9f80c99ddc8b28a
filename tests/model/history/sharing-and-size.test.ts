/** What two versions of a job share, how long a job is as text, and the edges of the list of steps. */
import { describe, expect, it } from 'vitest';
import {
  commitStep,
  HISTORY_LIMITS,
  previewJob,
  redo,
  restoreHistory,
  startHistory,
  undo,
} from '../../../src/model/history/history.ts';
import { measureText } from '../../../src/model/history/measure-text.ts';
import { shareStructure } from '../../../src/model/history/share-structure.ts';
import { buildJob } from '../../support/job-builder.ts';

describe('what is shared', () => {
  const one = { id: 'one', at: { x: 1 } };
  const two = { id: 'two', at: { x: 2 } };
  const list = [one, two];

  it('is the very same list where nothing differs', () => {
    expect(shareStructure(list, structuredClone(list))).toBe(list);
  });

  it('is by place where two have one id, or where the id went', () => {
    const twins = [
      { id: 'one', at: { x: 1 } },
      { id: 'one', at: { x: 2 } },
    ];
    expect(shareStructure(twins, structuredClone(twins))).toBe(twins);
    const [nameless] = shareStructure<readonly unknown[]>([one], [{ at: { x: 1 } }]);
    expect((nameless as typeof one).at).toBe(one.at);
  });

  it('is each member by its id, wherever it went', () => {
    const moved = shareStructure(list, structuredClone([two, one]));
    expect(moved).toEqual([two, one]);
    expect(moved).not.toBe(list);
    expect(moved[0]).toBe(two);
    expect(moved[1]).toBe(one);
    const later = shareStructure(list, structuredClone([{ id: 'new', at: { x: 2 } }, one, two]));
    expect([later[1], later[2]]).toEqual([one, two]);
    expect(later[1]).toBe(one);
    expect(later[2]).toBe(two);
    // what is new shares nothing with what stood in its place, but what is alike in it
    expect(later[0]).toEqual({ id: 'new', at: { x: 2 } });
  });

  it('is nothing of one that stood in the place of another id', () => {
    const after = [{ id: 'other', at: { x: 1 } }];
    expect(shareStructure([one], after)[0]).toBe(after[0]);
    // an id that is no text is a value like others: the member is compared by its place
    const numbered = [
      { id: 1, at: { x: 1 } },
      { id: 2, at: { x: 2 } },
    ];
    const swapped = shareStructure(numbered, structuredClone([numbered[1], numbered[0]]));
    expect(swapped).toEqual([numbered[1], numbered[0]]);
    expect(swapped[0]).not.toBe(numbered[1]);
  });

  it('is by place where there are no ids', () => {
    const plain = [{ x: 1 }, { x: 2 }];
    const after = shareStructure(plain, [{ x: 1 }, { x: 3 }, { x: 2 }]);
    expect(after).toEqual([{ x: 1 }, { x: 3 }, { x: 2 }]);
    expect(after[0]).toBe(plain[0]);
    expect(after[2]).not.toBe(plain[1]);
  });

  it('is a shorter list only as far as it goes', () => {
    const shorter = shareStructure(list, structuredClone([one]));
    expect(shorter).toEqual([one]);
    expect(shorter).not.toBe(list);
    expect(shorter[0]).toBe(one);
    expect(shareStructure(list, [])).toEqual([]);
  });

  it('is no list for an object, and no object for a list', () => {
    const members = { 0: one };
    expect(shareStructure([one], members)).toBe(members);
    expect(shareStructure({ 0: one }, [one])).toEqual([one]);
    expect(shareStructure(null, list)).toBe(list);
    expect(shareStructure(list, null)).toBeNull();
    expect(shareStructure(undefined, one)).toBe(one);
    expect(shareStructure(one, 'text')).toBe('text');
  });

  it('counts what is there but undefined as absent', () => {
    const before = { a: 1, b: { c: 2 } };
    expect(shareStructure(before, { a: 1, b: { c: 2 }, d: undefined })).toBe(before);
    const gone = shareStructure(before, { a: undefined, b: { c: 2 } });
    expect(Object.keys(gone)).toEqual(['b']);
    expect(gone.b).toBe(before.b);
    const loose: Record<string, unknown> = { a: 1, b: undefined };
    expect(shareStructure(loose, { a: 1 })).toBe(loose);
    expect(shareStructure(loose, { a: 1, b: 2 })).toEqual({ a: 1, b: 2 });
  });

  it('is not taken from what every object has', () => {
    const after = { toString: 1 };
    expect(shareStructure({}, after)).toEqual(after);
    const before = { a: { b: 1 } };
    expect(shareStructure(before, { a: { b: 1 }, constructor: Object.prototype.constructor })).toEqual({
      a: { b: 1 },
      constructor: Object,
    });
  });

  it('tells a member that went from one that came', () => {
    const before = { a: { x: 1 }, b: 1 };
    const after = shareStructure<Record<string, unknown>>(before, { a: { x: 1 }, c: 1 });
    expect(after).toEqual({ a: { x: 1 }, c: 1 });
    expect(after['a']).toBe(before.a);
    const fewer = shareStructure<Record<string, unknown>>(before, { a: { x: 1 } });
    expect(fewer).toEqual({ a: { x: 1 } });
    expect(fewer).not.toBe(before);
  });
});

describe('the length as text', () => {
  it.each([
    ['nothing', null],
    ['a text with a mark in it', 'a"b\n'],
    ['a number', -1.5],
    ['yes', true],
    ['an empty list', []],
    ['one in a list', [1]],
    ['a list', [1, 'two', null, [3]]],
    ['no members', {}],
    ['one member', { a: 1 }],
    ['members, one of them absent', { a: 1, 'b"': [true, false], c: undefined, d: { e: null } }],
    ['a job', buildJob()],
  ])('of %s is that of the text', (_, data) => {
    expect(measureText(data)).toBe(JSON.stringify(data).length);
    // remembered
    expect(measureText(data)).toBe(JSON.stringify(data).length);
  });

  it('of what no file holds is none', () => {
    expect(measureText(undefined)).toBe(0);
  });
});

describe('the list of steps at its edges', () => {
  const job = buildJob({ chambers: 1 });
  const titled = (title: string) => ({ ...job, title });
  const entries = ['one', 'two', 'three'].map((name) => ({ name, job: titled(name), at: `at ${name}` }));

  it('says since when and under which name it began', () => {
    expect(startHistory(job)).toEqual({
      entries: [{ name: 'Opened', job, at: null }],
      present: 0,
      preview: null,
      dropped: 0,
    });
    expect(startHistory(job, 'Began', 'noon').entries[0]).toEqual({ name: 'Began', job, at: 'noon' });
  });

  it('holds two hundred steps, and as much as sixty-four million characters', () => {
    expect(HISTORY_LIMITS).toEqual({ mostEntries: 200, mostCharacters: 64_000_000 });
    let history = startHistory(job);
    for (let i = 1; i <= 200; i++)
      history = commitStep(history, { name: `${i}`, job: titled(`${i}`), at: null });
    expect([history.entries.length, history.present, history.dropped]).toEqual([200, 199, 1]);
  });

  it('is put together again at its first and its last entry', () => {
    expect(restoreHistory(entries, 0, 0).present).toBe(0);
    expect(restoreHistory(entries, 2, 4)).toEqual({ entries, present: 2, preview: null, dropped: 4 });
    expect(() => restoreHistory(entries, 3, 0)).toThrow('present entry 3 of 3');
    expect(() => restoreHistory(entries, -1, 0)).toThrow('present entry -1 of 3');
    expect(() => restoreHistory([], 0, 0)).toThrow('a history without entries');
  });

  it('shares each entry with the one before it, though each came from a text of its own', () => {
    const kept = entries.map((entry, i) => {
      const own = JSON.parse(JSON.stringify(entry)) as typeof entry;
      return i === 0
        ? own
        : { ...own, job: { ...own.job, note: { shared: { work: 'Oiled.' }, restricted: {} } } };
    });
    const [first, second, third] = restoreHistory(kept, 2, 0).entries;
    expect(second!.job.cylinders).toBe(first!.job.cylinders);
    expect(third!.job.cylinders).toBe(first!.job.cylinders);
    expect(third!.job.note).toBe(second!.job.note);
    expect(second!.job.note).not.toBe(first!.job.note);
  });

  it('keeps as many as the limit says, of the very size it says', () => {
    const size = entries.map((entry) => measureText(entry.job));
    const two = { mostEntries: 9, mostCharacters: size[1]! + size[2]! };
    const built = (limits: typeof two) =>
      commitStep(
        restoreHistory(entries.slice(0, 2), 1, 3),
        { name: 'three', job: titled('three'), at: null },
        limits,
      );
    expect([built(two).entries.length, built(two).present, built(two).dropped]).toEqual([2, 1, 4]);
    const less = { ...two, mostCharacters: two.mostCharacters - 1 };
    expect([built(less).entries.length, built(less).present, built(less).dropped]).toEqual([1, 0, 5]);
    const three = { mostEntries: 3, mostCharacters: Infinity };
    expect([built(three).entries.length, built(three).dropped]).toEqual([3, 3]);
  });

  it('is left as it is where a step does nothing', () => {
    const history = restoreHistory(entries, 2, 0);
    expect(redo(history)).toBe(history);
    const first = { ...history, present: 0 };
    expect(undo(first)).toBe(first);
    // a gesture over it ends
    const running = previewJob(history, titled('on'));
    expect(running.preview?.title).toBe('on');
    expect(commitStep(running, { name: 'Same', job: titled('three'), at: null })).toEqual(history);
    const same = commitStep(history, { name: 'Same', job: titled('three'), at: null });
    expect(same).toBe(history);
  });

  it('shares what a gesture shows with what it showed a moment ago', () => {
    const history = startHistory(job);
    const once = previewJob(history, { ...structuredClone(job), title: 'on' });
    expect(once.preview?.cylinders).toBe(job.cylinders);
    const again = previewJob(once, { ...structuredClone(job), title: 'on' });
    expect(again.preview).toEqual(once.preview);
    expect(previewJob(once, structuredClone(job)).preview).toBeNull();
  });
});
