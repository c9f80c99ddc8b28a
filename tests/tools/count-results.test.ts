import { expect, test } from 'vitest';
import { countResults, remarksOn } from '../../tools/count-results.mjs';

const file = (status: string, ...statuses: string[]) => ({
  status,
  assertionResults: statuses.map((one) => ({ status: one })),
});

test('counts every test by what became of it', () => {
  const report = {
    testResults: [file('passed', 'passed', 'skipped'), file('failed', 'failed', 'passed', 'todo')],
  };
  expect(countResults(report, 1)).toEqual({ passed: 2, failed: 1, skipped: 2 });
});

test('counts a file that could not be loaded as one failed', () => {
  const report = { testResults: [file('passed', 'passed'), file('failed')] };
  expect(countResults(report, 1)).toEqual({ passed: 1, failed: 1, skipped: 0 });
});

test('counts an error outside every test as one failed', () => {
  expect(countResults({ testResults: [file('passed', 'passed')] }, 1)).toMatchObject({
    passed: 1,
    failed: 1,
  });
});

test('counts a runner that was stopped, left no report or found nothing as one failed', () => {
  expect(countResults({ testResults: [file('passed', 'passed')] }, null)).toMatchObject({ failed: 1 });
  expect(countResults(null, 0)).toEqual({ passed: 0, failed: 1, skipped: 0 });
  expect(countResults({ testResults: [] }, 0)).toEqual({ passed: 0, failed: 1, skipped: 0 });
});

test('names what failed, and what passed only when it was tried again', () => {
  const broken = { name: '/here/a.test.ts', status: 'failed', message: 'cannot be read\n  at …' };
  const mixed = {
    name: '/here/b.spec.ts',
    status: 'failed',
    assertionResults: [
      { status: 'failed', fullName: 'fits', failureMessages: ['\u001b[31mfour, not five\u001b[0m\n  at …'] },
      { status: 'passed', fullName: 'turns', failureMessages: ['one, not two\n'], meta: { triedAgain: 1 } },
      { status: 'passed', fullName: 'stays', meta: {} },
    ],
  };
  expect(remarksOn({ testResults: [{ ...broken, assertionResults: [] }, mixed] }, '/here/')).toEqual([
    'FAILED a.test.ts: cannot be read',
    'FAILED b.spec.ts: fits: four, not five',
    'passed only when tried again: b.spec.ts: turns: one, not two',
  ]);
  expect(remarksOn(null, '/here/')).toEqual([]);
});
