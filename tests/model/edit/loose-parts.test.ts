import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  measuredOnBall,
  setDimpleMouth,
  setHeightOnBall,
  setPartCondition,
  setPartEnd,
  setPartFrom,
  setPartLabel,
  setPartOriginal,
  setPartQuantity,
} from '../../../src/model/edit/edit-parts.ts';
import { END_NAMES, endForm, endName } from '../../../src/model/edit/end-forms.ts';
import { freeLabel, labelsOf, labelTrouble, nextLabel } from '../../../src/model/edit/labels.ts';
import {
  addParts,
  copyPart,
  MOST_PARTS,
  type NewPart,
  roomForParts,
} from '../../../src/model/edit/loose-parts.ts';
import { removeParts, whatGoesWith } from '../../../src/model/edit/remove-parts.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { loose, withBag } from '../../support/bag-job.ts';
import { countingIds, emptyBench, inches } from './edit-support.ts';

const isValid = (job: Job) => parseJob(JSON.parse(JSON.stringify(job))).type === 'success';

const PIN: NewPart = {
  kind: 'pin',
  label: null,
  length: inches(0.21),
  onBall: null,
  diameter: inches(0.115),
  lower: 'pointed',
  upper: 'domed',
  quantity: 1,
  from: '',
  original: false,
  condition: null,
};

describe('labels', () => {
  test('count on from the highest of their kind', () => {
    const bag = [
      loose('a', { label: 'P01' }),
      loose('b', { label: 'p07' }),
      loose('c', { label: 'Pinch 9' }),
    ];
    expect(nextLabel(bag, 'pin')).toBe('P08');
    expect(nextLabel(bag, 'ball')).toBe('B01');
    expect(nextLabel([loose('d', { label: 'P99' })], 'pin')).toBe('P100');
  });

  test('are the same when only case or blanks differ', () => {
    const bag = [loose('a', { label: 'Tray  4' }), loose('b')];
    expect(labelTrouble(bag, 'b', ' tray 4 ')).toContain('is the label of another part');
    expect(labelTrouble(bag, 'a', 'TRAY 4')).toBeNull();
    expect(labelTrouble(bag, 'b', '  ')).toContain('needs a label');
    expect(labelTrouble(bag, 'b', 'x'.repeat(81))).toContain('80 characters');
  });

  test('near a wanted one stay within what the job file allows', () => {
    const taken = labelsOf([loose('a', { label: 'x'.repeat(80) })]);
    const label = freeLabel('x'.repeat(80), taken);
    expect(label).toHaveLength(80);
    expect(label.endsWith('-2')).toBe(true);
  });

  test('made by counting never collide, whatever is in the bag', () => {
    const texts = fc.oneof(
      fc.string({ maxLength: 6 }),
      fc.nat(300).map((n) => `P${n}`),
      fc.constant('p 1'),
    );
    fc.assert(
      fc.property(fc.array(texts, { maxLength: 20 }), fc.nat(12), (labels, count) => {
        const { job, newId } = emptyBench(1);
        const bag = { ...job, parts: labels.map((label, i) => loose(`old${i}`, { label })) };
        const added = addParts(bag, new Array<NewPart>(count).fill(PIN), newId).parts.slice(labels.length);
        expect(added).toHaveLength(count);
        expect(labelsOf(added).size).toBe(count);
        const old = labelsOf(bag.parts);
        for (const label of labelsOf(added)) expect(old.has(label)).toBe(false);
      }),
    );
  });
});

describe('putting parts into the bag', () => {
  test('keeps what was said of them, and the job before as it was', () => {
    const { job, newId } = emptyBench();
    const before = JSON.stringify(job);
    const next = addParts(job, [{ ...PIN, from: ' shed ', condition: 'fair', quantity: 3 }], newId);
    expect(next.parts.at(-1)).toMatchObject({
      label: 'P01',
      kind: 'pin',
      quantity: 3,
      from: 'shed',
      condition: 'fair',
      original: false,
      length: { readings: [{ value: 5.334 }] },
      ends: [
        { kind: 'cone', basis: 'seen' },
        { kind: 'dome', basis: 'seen' },
      ],
    });
    expect(isValid(next)).toBe(true);
    expect(JSON.stringify(job)).toBe(before);
  });

  test('a pin measured standing on a ball keeps the height of both and no length of its own', () => {
    const { job, newId } = emptyBench();
    const withBall = addParts(job, [{ ...PIN, kind: 'ball', length: null, quantity: 6 }], () => 'the-ball');
    const next = addParts(withBall, [{ ...PIN, onBall: 'the-ball', length: inches(0.3345) }], newId);
    const pin = next.parts.at(-1)!;
    expect(pin.length).toBeUndefined();
    expect(measuredOnBall(next, pin.id)).toMatchObject({
      parts: ['the-ball', pin.id],
      height: inches(0.3345),
    });
    expect(isValid(next)).toBe(true);
  });

  test('stops at what a job file may hold', () => {
    const { job, newId } = emptyBench(1);
    const many = addParts(job, new Array<NewPart>(MOST_PARTS + 5).fill(PIN), newId);
    expect(many.parts).toHaveLength(MOST_PARTS);
    expect(roomForParts(many)).toBe(0);
    expect(addParts(many, [PIN], newId)).toBe(many);
    expect(copyPart(many, many.parts[0]!.id, newId)).toBe(many);
  });

  test('another like it comes right behind it, with a label and a pair of its own', () => {
    const { job, newId } = emptyBench();
    const withBall = addParts(job, [{ ...PIN, kind: 'ball', length: null }], () => 'the-ball');
    const first = addParts(withBall, [{ ...PIN, onBall: 'the-ball' }, PIN], newId);
    const pin = first.parts.find(({ label }) => label === 'P01')!;
    const next = copyPart(first, pin.id, newId);
    const labels = next.parts.map(({ label }) => label);
    expect(labels.slice(labels.indexOf('P01'))).toEqual(['P01', 'P03', 'P02']);
    const copy = next.parts.find(({ label }) => label === 'P03')!;
    expect(measuredOnBall(next, copy.id)?.height).toEqual(measuredOnBall(next, pin.id)?.height);
    expect(isValid(next)).toBe(true);
  });
});

describe('a part in the bag', () => {
  const { job, newId } = emptyBench();
  const bag = addParts(job, [PIN], newId);
  const pin = bag.parts.at(-1)!;
  const partOf = (next: Job) => next.parts.at(-1)!;

  test('is mended one property at a time', () => {
    expect(partOf(setPartLabel(bag, pin.id, ' A1 ')).label).toBe('A1');
    expect(partOf(setPartQuantity(bag, pin.id, 0)).quantity).toBe(0);
    expect(partOf(setPartOriginal(bag, pin.id, true)).original).toBe(true);
    expect(partOf(setPartCondition(bag, pin.id, 'poor')).condition).toBe('poor');
    expect('condition' in partOf(setPartCondition(bag, pin.id, null))).toBe(false);
    expect('from' in partOf(setPartFrom(setPartFrom(bag, pin.id, 'shed'), pin.id, ' '))).toBe(false);
  });

  test('has its ends by picture, and the dimple of one that has a dimple', () => {
    for (const name of END_NAMES) {
      expect(endName(endForm(name, 'mm'))).toBe(name);
      const next = setPartEnd(bag, pin.id, 0, name);
      expect(isValid(next)).toBe(true);
      expect(partOf(next).ends?.[1]).toBe(pin.ends?.[1]);
    }
    expect(setDimpleMouth(bag, pin.id, inches(0.06)).parts.at(-1)).toEqual(pin);
    const dimpled = setPartEnd(bag, pin.id, 0, 'dimpled');
    const mouth = partOf(setDimpleMouth(dimpled, pin.id, inches(0.06))).ends?.[0].mouthDiameter;
    expect(mouth).toEqual(inches(0.06));
  });

  test('can be measured on a ball later, and alone again', () => {
    const withBall = addParts(bag, [{ ...PIN, kind: 'ball', length: null }], () => 'the-ball');
    const stood = setHeightOnBall(withBall, pin.id, 'the-ball', inches(0.33), newId);
    const again = setHeightOnBall(stood, pin.id, 'the-ball', inches(0.331), newId);
    expect(again.groups).toHaveLength(withBall.groups.length + 1);
    expect(measuredOnBall(again, pin.id)?.height).toEqual(inches(0.331));
    expect(setHeightOnBall(again, pin.id, 'the-ball', undefined, newId)).toEqual(withBall);
  });
});

describe('taking parts out', () => {
  const job = changed(withBag(buildJob({ chambers: 3 }), [loose('free', { length: 0.2 })]), (copy) => {
    const [seating] = copy.seatings;
    seating!.felt.push({ chamber: 'chamber-2', items: [{ part: 'bottom-pin-2' }], is: 'level' });
    copy.plans[0]!.stacks[1]!.rest = { items: [{ part: 'bottom-pin-2' }], belowLine: inches(0.1) };
    copy.benchResults.push({
      plan: 'plan',
      key: 'key',
      chamber: 'chamber-2',
      items: [{ part: 'bottom-pin-2' }],
      turned: true,
      at: '2026-01-01T00:00:00.000Z',
    });
  });

  test('a loose one goes without a question', () => {
    expect(whatGoesWith(job, new Set(['free']))).toEqual([]);
    expect(removeParts(job, new Set(['free'])).parts.some(({ id }) => id === 'free')).toBe(false);
  });

  test('one in use says where it is and what goes with it, and leaves nothing that points at it', () => {
    expect(isValid(job)).toBe(true);
    expect(whatGoesWith(job, new Set(['bottom-pin-2']))).toEqual([
      'In use: chamber 2 of Cylinder, in the plan.',
      'With it goes: one rest depth, one note of what was felt, one bench test.',
    ]);
    const next = removeParts(job, new Set(['bottom-pin-2']));
    expect(isValid(next)).toBe(true);
    expect(JSON.stringify(next)).not.toContain('bottom-pin-2');
    expect(next.plans[0]!.stacks[1]!.items.length).toBe(job.plans[0]!.stacks[1]!.items.length - 1);
    expect(next.plans[0]!.stacks[0]).toBe(job.plans[0]!.stacks[0]);
  });

  test('a ball takes the heights along that were read on it, and says so', () => {
    const newId = countingIds();
    const withBall = addParts(job, [{ ...PIN, kind: 'ball', length: null }], () => 'the-ball');
    const stood = addParts(
      withBall,
      [1, 2].map(() => ({ ...PIN, onBall: 'the-ball' })),
      newId,
    );
    expect(whatGoesWith(stood, new Set(['the-ball']))).toEqual([
      'With it goes: 2 heights measured together.',
    ]);
    expect(removeParts(stood, new Set(['the-ball'])).groups).toEqual(job.groups);
  });

  test('any set of parts leaves a job that can be saved and opened', () => {
    const ids = job.parts.map(({ id }) => id);
    fc.assert(
      fc.property(fc.subarray(ids), (some) => {
        const next = removeParts(job, new Set(some));
        expect(isValid(next)).toBe(true);
        expect(next.parts).toHaveLength(ids.length - some.length);
      }),
      { numRuns: 40 },
    );
  });
});
