import { expect, test } from 'vitest';
import { unreadWords } from '../../src/panels/answer/unread-words.ts';
import { createViewStore } from '../../src/state/view-store.ts';

test('a field that cannot be read is named with what still counts', () => {
  expect(unreadWords([{ label: 'Root depth, cut 3', counts: '.2400 in' }])).toBe(
    'Not as typed: one field cannot be read. Root depth, cut 3 still counts as .2400 in.',
  );
  expect(
    unreadWords([
      { label: 'Plug diameter', counts: null },
      { label: 'Pins, across', counts: 'the assumed .1150 in' },
    ]),
  ).toBe(
    'Not as typed: two fields cannot be read. Plug diameter counts as not entered; Pins, across still counts as the assumed .1150 in.',
  );
  const many = Array.from({ length: 5 }, (_, i) => ({ label: `Cut ${i + 1}`, counts: null }));
  expect(unreadWords(many)).toMatch(/^Not as typed: five fields .*; two more\.$/);
});

test('the view knows a field until it is read or gone', () => {
  const view = createViewStore();
  view.getState().tellUnread('one', { label: 'Plug diameter', counts: null });
  view.getState().tellUnread('two', { label: 'Root depth, cut 1', counts: '.2400 in' });
  expect([...view.getState().unread.keys()]).toEqual(['one', 'two']);
  view.getState().tellUnread('one', null);
  expect([...view.getState().unread.values()]).toEqual([{ label: 'Root depth, cut 1', counts: '.2400 in' }]);
});
