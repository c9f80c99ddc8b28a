import { expect, test } from 'vitest';
import { meetsAim, median, medianMs } from '../../bench/support/bench.ts';
import { countIn } from '../support/browser-frames.ts';

test('the median is the middle one, or the mean of the middle two', () => {
  expect(median([3, 1, 2])).toBe(2);
  expect(median([4, 1, 3, 2])).toBe(2.5);
});

test('an aim is met at its own value', () => {
  const row = { what: 'x', measured: 2, unit: 'ms' };
  expect(meetsAim({ ...row, aim: { atMost: 2 } })).toBe(true);
  expect(meetsAim({ ...row, aim: { atLeast: 2.1 } })).toBe(false);
  expect(meetsAim(row)).toBeNull();
});

test('the timed call runs once for each warm-up and round', async () => {
  let calls = 0;
  await medianMs(() => (calls += 1), { warmUp: 3, rounds: 5 });
  expect(calls).toBe(8);
});

test('a trace is counted by frame, in order of time, with nested script time once', () => {
  const main = { pid: 1, tid: 2 };
  const events = [
    { ...main, name: 'thread_name', ts: 0, args: { name: 'CrRendererMain' } },
    { ...main, name: 'FireAnimationFrame', ts: 110, dur: 50, tdur: 40 },
    { ...main, name: 'FunctionCall', ts: 115, dur: 30, tdur: 30 },
    { ...main, name: 'FireAnimationFrame', ts: 170, dur: 20, tdur: 20 },
    { ...main, name: 'BeginMainThreadFrame', ts: 200 },
    { ...main, name: 'FireAnimationFrame', ts: 210, dur: 10, tdur: 10 },
    { pid: 1, tid: 3, name: 'FunctionCall', ts: 300, dur: 1000 },
    { pid: 1, tid: 3, name: 'DrawFrame', ts: 400 },
    { ...main, name: 'BeginMainThreadFrame', ts: 100 },
  ];
  expect(countIn(events)).toEqual({ drawnFrames: 1, animationFrames: 2, scriptMs: 0.07 });
});
