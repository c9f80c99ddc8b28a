/** What is said of springs and drivers beside their lengths, written as the panels write it, and what comes of it. */
import { describe, expect, it } from 'vitest';
import {
  setCoilEnds,
  setCoils,
  setPressed,
  setSpringWire,
  springWireOf,
} from '../../../src/model/edit/edit-spring.ts';
import { setPartLength } from '../../../src/model/edit/edit-stack.ts';
import { setWaistKind, setWaistSize } from '../../../src/model/edit/edit-waist.ts';
import { measureSpring } from '../../../src/model/rest/measured-spring.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { Part } from '../../../src/model/schema/parts-schema.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { parseCoils, parseForce } from '../../../src/model/units/parse-quantity.ts';
import { loose, withBag } from '../../support/bag-job.ts';
import { buildJob } from '../../support/job-builder.ts';
import { inchesToMm } from '../../support/values.ts';
import { inches } from './edit-support.ts';

const isValid = (job: Job) => parseJob(JSON.parse(JSON.stringify(job))).type === 'success';
const SPRING: Part = { id: 's', label: 'S01', kind: 'spring', quantity: 1, original: false };
const bag = withBag(buildJob(), [SPRING, loose('d', { length: 0.2, diameter: 0.12 })]);
const partOf = (job: Job, id: string) => {
  const part = job.parts.find((each) => each.id === id);
  if (part === undefined) throw new Error(`no part ${id}`);
  return part;
};

describe('a spring', () => {
  it('wound of what is said has the rate of the handbook', () => {
    // Shigley's Mechanical Engineering Design, example 10-1, from memory: music wire .037 in, 7/16 in across, squared ends,
    // 12 1/2 turns: 4.13 lbf/in, and .4995 in long when solid.
    let job = setPartLength(bag, 's', 'wire', inches(0.037));
    job = setPartLength(job, 's', 'diameter', inches(0.437));
    job = setSpringWire(setCoilEnds(setCoils(job, 's', 12.5), 's', 'closed'), 's', 'music wire');
    const { rate, solid } = measureSpring(partOf(job, 's'));
    expect((rate ?? 0) / (4.4482216152605 / 25.4)).toBeCloseTo(4.13, 2);
    expect((solid ?? 0) / 25.4).toBeCloseTo(0.4995, 4);
    expect(isValid(job)).toBe(true);
    expect(springWireOf(partOf(job, 's').shearModulusGPa)).toBe('music wire');
    expect(springWireOf(77)).toBeNull();
    expect(partOf(setCoils(job, 's', undefined), 's').coils).toBeUndefined();
  });

  it('pressed twice on a scale has the rate of the two readings', () => {
    const once = setPressed(bag, 's', 0, { length: inches(0.4), newtons: 1 });
    expect(measureSpring(partOf(once, 's')).rate).toBeNull();
    const twice = setPressed(once, 's', 1, { length: inches(0.3), newtons: 2.27 });
    expect(measureSpring(partOf(twice, 's')).rate).toBeCloseTo(1.27 / 2.54, 12);
    expect(isValid(twice)).toBe(true);
    const later = setPressed(twice, 's', 0, null);
    expect(partOf(later, 's').pressed).toEqual([{ length: inches(0.3), newtons: 2.27 }]);
    expect(partOf(setPressed(later, 's', 0, null), 's')).toEqual(partOf(bag, 's'));
  });
});

describe('a waist', () => {
  it('is assumed in its sizes until they are measured, and goes with the kind', () => {
    const spool = setWaistKind(bag, 'd', 'spool');
    const { waist } = partOf(spool, 'd');
    expect(waist).toMatchObject({ kind: 'spool', from: { basis: 'assumed' }, length: { basis: 'assumed' } });
    expect(waist?.from.readings[0]?.value).toBeCloseTo(0.05 * 25.4, 6);
    expect(waist?.diameter.range).toEqual({ from: inchesToMm(0.06), to: inchesToMm(0.108) });
    const read = setWaistSize(spool, 'd', 'diameter', inches(0.08));
    const mushroom = partOf(setWaistKind(read, 'd', 'mushroom'), 'd').waist;
    expect(mushroom).toEqual({ ...waist, kind: 'mushroom', diameter: inches(0.08) });
    expect(partOf(setWaistSize(read, 'd', 'diameter', undefined), 'd').waist).toEqual(waist);
    expect(partOf(setWaistKind(read, 'd', null), 'd')).toEqual(partOf(bag, 'd'));
    expect(setWaistSize(bag, 'd', 'from', inches(0.05)).parts).toEqual(bag.parts);
    expect(isValid(read)).toBe(true);
  });
});

describe('a force and a number of coils', () => {
  it.each([
    ['2.5 N', 2.5],
    ['2,5n', 2.5],
    ['100 g', 0.980665],
    ['0.1 kg', 0.980665],
    ['1 lbf', 4.4482216152605],
    ['16 oz', 4.4482216152605],
    ['٢ N', 2],
  ])('%s is %d N', (text, newtons) => {
    const reading = parseForce(text);
    expect(reading.type === 'quantity' ? reading.value : reading).toBeCloseTo(newtons, 12);
  });

  it.each([
    ['2.5', 'Write the unit as well as “2.5”'],
    ['1,250 g', 'can be read in two ways: write 1.250 or 1250'],
    ['2 stone', 'has a unit that is not known here'],
    ['2 constructor', 'has a unit that is not known here'],
    ['0 N', 'is out of range'],
    ['1e9 N', 'is not a force'],
    ['-2 N', 'is not a force'],
    ['.', 'is not a force'],
    ['9'.repeat(300), 'too long'],
  ])('%s is answered with a sentence', (text, part) => {
    const reading = parseForce(text);
    expect(reading.type === 'error' ? reading.message : reading).toContain(part);
  });

  it('coils may be half ones, and nothing is no answer', () => {
    expect(parseCoils('9.5')).toMatchObject({ type: 'quantity', value: 9.5 });
    expect(parseCoils('9 mm')).toMatchObject({ type: 'error' });
    expect(parseCoils(' ')).toEqual({ type: 'empty' });
  });
});
