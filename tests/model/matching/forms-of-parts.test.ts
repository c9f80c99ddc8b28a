/** Into which batches the parts of a bag go: by every size of their ends, and what counts as measured together. */
import { describe, expect, test } from 'vitest';
import { measuringOf } from '../../../src/model/matching/match.ts';
import { takeStock } from '../../../src/model/matching/stock.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { EndForm, Part } from '../../../src/model/schema/parts-schema.ts';
import { loose } from '../../support/bag-job.ts';
import { buildJob } from '../../support/job-builder.ts';
import { degrees, endForm, inches } from '../../support/values.ts';

const ONE = buildJob({ chambers: 1 });

describe('forms that batches come in', () => {
  const batchesOf = (parts: readonly Part[]) => {
    const job = { ...ONE, parts: [...parts], groups: [] };
    return takeStock(job, measuringOf(job)).batches.map(({ pins }) => pins.length);
  };
  const withFoot = (id: string, foot: EndForm, top: EndForm = endForm({ kind: 'dome' })): Part => ({
    ...loose(id, { length: 0.17 }),
    ends: [foot, top],
  });
  const size = inches(0.01);
  const base: EndForm = { kind: 'cone', basis: 'seen' };
  const changes: readonly Partial<EndForm>[] = [
    { kind: 'flat' },
    { basis: 'assumed' },
    { width: size },
    { radius: size },
    { tipFlatDiameter: size },
    { mouthDiameter: size },
    { angle: degrees(1) },
    { includedAngle: degrees(1) },
  ];

  test('each size of an end tells parts apart, and its value does', () => {
    const ends = [base, ...changes.map((change): EndForm => ({ ...base, ...change }))];
    const bag = ends.flatMap((end, i) => [withFoot(`a${i}`, end), withFoot(`b${i}`, structuredClone(end))]);
    expect(batchesOf(bag)).toEqual(ends.map(() => 2));
    const values = [0.01, 0.02].flatMap((value) => [
      { ...base, width: inches(value) },
      { ...base, radius: inches(value) },
      { ...base, tipFlatDiameter: inches(value) },
      { ...base, mouthDiameter: inches(value) },
      { ...base, angle: degrees(value) },
      { ...base, includedAngle: degrees(value) },
    ]);
    expect(batchesOf(values.map((end, i) => withFoot(`v${i}`, end)))).toEqual(values.map(() => 1));
  });

  test('which end it is, the diameter, and whether it was measured', () => {
    const flat = endForm({ kind: 'flat' });
    expect(
      batchesOf([withFoot('a', base, flat), withFoot('b', flat, base), withFoot('c', flat, base)]),
    ).toEqual([1, 2]);
    const across = [0.116, 0.116, 0.115, null].map((diameter, i) =>
      loose(`p${i}`, { length: 0.17, diameter }),
    );
    expect(batchesOf(across)).toEqual([2, 1, 1]);
  });

  test('equally long ones stand by label, then by id, however the file runs', () => {
    const order = (bag: readonly Part[]) => {
      const job = { ...ONE, parts: [...bag], groups: [] };
      const { parts, batches } = takeStock(job, measuringOf(job));
      return [...batches[0]!.pins].map((pin) => parts[pin]!.id);
    };
    const bag = [
      loose('c', { length: 0.17, label: 'x' }),
      loose('a', { length: 0.17, label: 'x' }),
      loose('b', { length: 0.17, label: 'w' }),
      loose('d', { length: 0.16, label: 'z' }),
    ];
    expect(order(bag)).toEqual(['d', 'b', 'a', 'c']);
    expect(order([...bag].reverse())).toEqual(['d', 'b', 'a', 'c']);
  });
});

describe('measured together', () => {
  const ball = loose('ball', { kind: 'ball', diameter: 0.115, quantity: 2 });
  const second = loose('ball-2', { kind: 'ball', diameter: 0.115 });
  const flat = (id: string, more: Parameters<typeof loose>[1] = {}) =>
    loose(id, { length: 0.1, foot: { kind: 'flat' }, ...more });
  const group = (id: string, parts: string[], height: number) => ({ id, parts, height: inches(height) });
  const members = (parts: Part[], groups: Job['groups']) => {
    const job = { ...ONE, parts, groups };
    const { batches, parts: sorted } = takeStock(job, measuringOf(job));
    return batches
      .filter(({ hasBall }) => hasBall)
      .flatMap(({ lengths, added, pins, balls, groups: of, ballKinds, example }) => {
        expect(ballKinds).toEqual([...new Set(balls)]);
        expect(example.map(({ kind }) => kind)).toEqual(['ball', 'pin']);
        return [...lengths].map(
          (length, i) =>
            `${sorted[balls[i]!]!.id} + ${sorted[pins[i]!]!.id} ${((length + added) / 25.4).toFixed(3)} ${of[i]?.id ?? '–'}`,
        );
      });
  };

  test('the first height of two counts; other balls stand under the pin as they are', () => {
    expect(
      members([ball, second, flat('p')], [group('g', ['ball', 'p'], 0.21), group('h', ['ball', 'p'], 0.2)]),
    ).toEqual(['ball-2 + p 0.215 –', 'ball + p 0.210 g']);
  });

  test.each([
    ['three parts', group('g', ['ball', 'p', 'q'], 0.3)],
    ['one part', group('g', ['p'], 0.3)],
    ['none', group('g', [], 0.3)],
    ['two pins', group('g', ['q', 'p'], 0.3)],
    ['two balls', group('g', ['ball', 'ball-2'], 0.3)],
    ['the wrong way round', group('g', ['p', 'ball'], 0.3)],
    ['a ball that is gone', group('g', ['gone', 'p'], 0.3)],
    ['a pin that is gone', group('g', ['ball', 'gone'], 0.3)],
  ])('%s is no ball with its pin', (_, odd) => {
    const bag = [ball, second, flat('p'), flat('q')];
    expect(members(bag, [odd])).toEqual(members(bag, []));
  });

  test('nothing of it when a part is used up, waisted, or the height is nothing', () => {
    const waist = {
      kind: 'spool' as const,
      from: inches(0.02),
      length: inches(0.03),
      diameter: inches(0.08),
    };
    const g = group('g', ['ball', 'p'], 0.21);
    expect(members([ball, flat('p', { quantity: 0 })], [g])).toEqual([]);
    expect(members([{ ...ball, quantity: 0 }, flat('p')], [g])).toEqual([]);
    expect(members([ball, { ...flat('p'), waist }], [g])).toEqual([]);
    expect(members([ball, flat('p')], [group('g', ['ball', 'p'], 0)])).toEqual([]);
    expect(members([{ ...ball, quantity: 1 }, flat('p', { quantity: 1 })], [g])).toEqual([
      'ball + p 0.210 g',
    ]);
  });

  test('in the order of pins, then of balls, those of one form together', () => {
    const groups = [
      group('g1', ['ball-2', 'q'], 0.22),
      group('g2', ['ball', 'q'], 0.23),
      group('g3', ['ball-2', 'p'], 0.24),
      group('g4', ['ball', 'p'], 0.24),
    ];
    expect(members([ball, second, flat('p'), flat('q')], groups)).toEqual([
      'ball-2 + q 0.220 g1',
      'ball + q 0.230 g2',
      'ball + p 0.240 g4',
      'ball-2 + p 0.240 g3',
    ]);
  });
});
