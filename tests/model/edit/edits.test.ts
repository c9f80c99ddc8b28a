import { describe, expect, test } from 'vitest';
import { chamberRows } from '../../../src/model/edit/chamber-rows.ts';
import { benchOutcome, recordBench } from '../../../src/model/edit/edit-bench.ts';
import { setRattle, setTurn } from '../../../src/model/edit/edit-cylinder.ts';
import { setCutOverBall, setCutRootDepth, setStop, slideCuts } from '../../../src/model/edit/edit-key.ts';
import {
  feltWith,
  setBottomEdge,
  setFelt,
  setKeywayFloorHeight,
  setStandsUpBy,
} from '../../../src/model/edit/edit-seating.ts';
import { setNumbering } from '../../../src/model/edit/edit-settings.ts';
import { setDriverEnds, setKeyFoot, setPinTops } from '../../../src/model/edit/edit-shapes.ts';
import { driverEndsSeen, keyFoot, pinTopsSeen } from '../../../src/model/edit/seen-shapes.ts';
import {
  eachStack,
  lowerStackValue,
  restValue,
  setLowerStack,
  setPartLength,
  setPinDiameter,
  setRest,
} from '../../../src/model/edit/edit-stack.ts';
import { closedReading, setClosedReading, takeUpInstrument } from '../../../src/model/edit/instruments.ts';
import { knownStack, setKnownStack } from '../../../src/model/edit/known-set.ts';
import { spaceChambers, spaceCuts, spacingOf } from '../../../src/model/edit/spacing.ts';
import { withoutLastRepeat, withRepeat } from '../../../src/model/edit/values.ts';
import { lengthOf } from '../../../src/model/measured/part-ends.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { inchesToMm } from '../../../src/model/units/length-unit.ts';
import { emptyBench, inches } from './edit-support.ts';

const isValid = (job: Job) => parseJob(JSON.parse(JSON.stringify(job))).type === 'success';
const first = <T>(list: readonly T[]): T => {
  const [item] = list;
  if (item === undefined) throw new Error('empty list');
  return item;
};

describe('cuts', () => {
  test('a root depth goes to its cut alone, and the job before stays as it was', () => {
    const { job, where } = emptyBench();
    const before = JSON.stringify(job);
    const cut = first(job.keys).cuts[2];
    const next = setCutRootDepth(job, where.key, cut?.id ?? '', inches(0.333));
    expect(next.keys[0]?.cuts.map((each) => each.rootDepth !== undefined)).toEqual([
      false,
      false,
      true,
      false,
      false,
      false,
    ]);
    expect(JSON.stringify(job)).toBe(before);
    expect(setCutRootDepth(next, where.key, cut?.id ?? '', undefined)).toEqual(job);
  });

  test('a reading over the ball keeps the ball it was taken with', () => {
    const { job, where } = emptyBench();
    const cut = first(first(job.keys).cuts);
    const next = setCutOverBall(job, where.key, cut.id, inches(0.5276), inches(0.15625));
    expect(first(first(next.keys).cuts).overBall).toMatchObject({
      reading: { readings: [{ value: inchesToMm(0.5276) }] },
      ball: { readings: [{ value: inchesToMm(0.15625) }] },
    });
    expect(isValid(next)).toBe(true);
  });

  test('sliding all cuts by a spacing puts cut 1 under chamber 2 and leaves the last one loose', () => {
    const { job, where } = emptyBench();
    const slid = slideCuts(job, where.key, inchesToMm(0.156));
    const { rows, looseCuts } = chamberRows(slid, where);
    expect(rows.map((row) => row.under?.number)).toEqual([undefined, 1, 2, 3, 4, 5]);
    expect(looseCuts.map((cut) => cut.number)).toEqual([6]);
    expect(isValid(slid)).toBe(true);
  });

  test('a small slide keeps the pairs and tells how far the cuts lie off', () => {
    const { job, where } = emptyBench();
    const { rows } = chamberRows(slideCuts(job, where.key, -0.127), where);
    expect(rows.map((row) => row.under?.number)).toEqual([1, 2, 3, 4, 5, 6]);
    for (const row of rows) expect(row.offBy).toBeCloseTo(-0.127, 6);
  });

  test('counted from the tip, the last chamber and the last cut are number 1', () => {
    const { job, where } = emptyBench(5);
    const tip = setNumbering(job, 'tip');
    const { rows } = chamberRows(tip, where);
    expect(rows.map((row) => row.number)).toEqual([1, 2, 3, 4, 5]);
    expect(rows.map((row) => row.under?.number)).toEqual([1, 2, 3, 4, 5]);
    expect(first(rows).chamber.id).toBe(job.cylinders[0]?.chambers[4]?.id);
  });

  test('a key that stops at its tip keeps its cuts where they were', () => {
    const { job, where } = emptyBench();
    const before = chamberRows(job, where).rows.map((row) => row.under?.z ?? NaN);
    const stopped = setStop(job, where.cylinder, where.key, 'tip', inches(1.4));
    const after = chamberRows(stopped, where).rows.map((row) => row.under?.z ?? NaN);
    after.forEach((z, i) => {
      expect(z).toBeCloseTo(before[i] ?? NaN, 6);
    });
    expect(lengthOf(first(first(stopped.keys).cuts).position, 0)).toBeCloseTo(inchesToMm(1.4 - 0.247), 6);
    expect(isValid(stopped)).toBe(true);
  });

  test('even spacing is laid out in the order the cuts lie', () => {
    const { job, where } = emptyBench();
    const spaced = spaceCuts(job, where.key, { first: 0.35, spacing: 0.1565 });
    const places = spaced.keys[0]?.cuts.map((cut) => lengthOf(cut.position, 0) / 25.4) ?? [];
    places.forEach((place, i) => {
      expect(place).toBeCloseTo(0.35 + i * 0.1565, 9);
    });
  });
});

describe('spacing of the chambers', () => {
  test('takes along cuts that were only assumed, and leaves those that were measured', () => {
    const { job, where } = emptyBench();
    const even = { first: 0.35, spacing: 0.25 };
    const spaced = spaceChambers(job, where, even);
    expect(chamberRows(spaced, where).rows.map((row) => row.offBy)).toEqual([0, 0, 0, 0, 0, 0]);
    expect(
      spacingOf(
        first(spaced.cylinders).chambers.map((each) => each.position),
        'in',
      ),
    ).toEqual({
      first: expect.closeTo(0.35, 9) as number,
      spacing: expect.closeTo(0.25, 9) as number,
    });
    const said = spaceCuts(job, where.key, { first: 0.3, spacing: 0.156 });
    expect(first(spaceChambers(said, where, even).keys)).toEqual(first(said.keys));
    expect(isValid(spaced)).toBe(true);
  });
});

describe('stacks', () => {
  test('ball and pin measured together become a group, and a new reading renews it', () => {
    const { job, where, newId } = emptyBench();
    const chamber = first(first(job.cylinders).chambers).id;
    const once = setLowerStack(job, where.plan, chamber, inches(0.3345), newId);
    const twice = setLowerStack(once, where.plan, chamber, inches(0.334), newId);
    expect(twice.groups).toHaveLength(1);
    expect(twice.groups[0]?.parts).toEqual(first(eachStack(job, where.plan)).lower.map((item) => item.part));
    expect(lengthOf(lowerStackValue(first(eachStack(twice, where.plan))), 0)).toBe(inchesToMm(0.334));
    expect(setLowerStack(twice, where.plan, chamber, undefined, newId).groups).toEqual([]);
    expect(isValid(twice)).toBe(true);
  });

  test('without a ball the pin alone is the lower stack', () => {
    const { job, where, newId } = emptyBench();
    const chamber = first(first(job.cylinders).chambers).id;
    const bare = setKeyFoot(job, where.plan, 'pointed pin', newId);
    const next = setLowerStack(bare, where.plan, chamber, inches(0.25), newId);
    expect(next.groups).toEqual([]);
    expect(first(eachStack(next, where.plan)).bottomPin?.length?.readings[0]?.value).toBe(6.35);
    expect(keyFoot(next, where.plan)).toBe('pointed pin');
  });

  test('taking the balls out and putting them back leaves one ball at the bottom of each hole', () => {
    const { job, where, newId } = emptyBench();
    const back = setKeyFoot(setKeyFoot(job, where.plan, 'rounded pin', newId), where.plan, 'ball', newId);
    for (const stack of eachStack(back, where.plan)) {
      expect(stack.stack.items[0]?.part).toBe(stack.ball?.id);
      expect(stack.stack.items).toHaveLength(4);
    }
    expect(keyFoot(back, where.plan)).toBe('ball');
    expect(isValid(back)).toBe(true);
  });

  test('pictures pass over a stack that has no such part, and turn nothing else', () => {
    const { job, where } = emptyBench();
    const bare = structuredClone(job);
    const stacks = bare.plans[0]!.stacks;
    stacks[0]!.items = [];
    // a ball and a spring only
    stacks[1]!.items = [stacks[1]!.items[0]!, stacks[1]!.items.at(-1)!];
    const seen = setDriverEnds(setPinTops(bare, where.plan, 'sharp edge'), where.plan, 'broken edge');
    expect(seen.plans).toEqual(bare.plans);
    const looked = new Set(
      seen.parts.filter(({ ends }) => ends?.some(({ basis }) => basis === 'seen')).map(({ id }) => id),
    );
    const held = eachStack(seen, where.plan).flatMap(({ bottomPin, driver }) => [bottomPin?.id, driver?.id]);
    expect([...looked].sort()).toEqual(held.filter((id) => id !== undefined).sort());
    expect(looked.size).toBe(2 * (stacks.length - 2));
  });

  test('pictures of both ends hold for every stack, and say that somebody looked', () => {
    const { job, where } = emptyBench();
    expect([pinTopsSeen(job, where.plan), driverEndsSeen(job, where.plan)]).toEqual([null, null]);
    const seen = setDriverEnds(setPinTops(job, where.plan, 'sharp edge'), where.plan, 'broken edge');
    expect([pinTopsSeen(seen, where.plan), driverEndsSeen(seen, where.plan)]).toEqual([
      'sharp edge',
      'broken edge',
    ]);
    const { driver, bottomPin } = first(eachStack(seen, where.plan));
    expect(driver?.ends?.[0]).toMatchObject({ kind: 'bevel', basis: 'seen', width: { basis: 'assumed' } });
    expect(bottomPin?.ends?.[0]).toMatchObject({ basis: 'assumed' });
    expect(isValid(seen)).toBe(true);
  });

  test('the rest depth is only told while its own parts are in the hole', () => {
    const { job, where, newId } = emptyBench();
    const chamber = first(first(job.cylinders).chambers).id;
    const rested = setRest(job, where.plan, chamber, inches(0.1715));
    expect(lengthOf(restValue(first(eachStack(rested, where.plan))), 0)).toBe(inchesToMm(0.1715));
    const other = setKeyFoot(rested, where.plan, 'pointed pin', newId);
    expect(restValue(first(eachStack(other, where.plan)))).toBeUndefined();
  });

  test('a length that is taken away leaves no empty field behind', () => {
    const { job, where } = emptyBench();
    const driver = first(eachStack(job, where.plan)).driver;
    const next = setPartLength(job, driver?.id ?? '', 'length', undefined);
    expect('length' in (first(eachStack(next, where.plan)).driver ?? { length: 0 })).toBe(false);
  });
});

describe('a set known to work', () => {
  test('has a ball and a pin as thick and as shaped as those in the chamber, and no ball where none is', () => {
    const { job, where, newId } = emptyBench();
    const chamber = first(first(job.cylinders).chambers).id;
    const shaped = setPinTops(setPinDiameter(job, where.plan, inches(0.111)), where.plan, 'sharp edge');
    const partsOf = (from: Job) => {
      const set = setKnownStack(from, where, chamber, inches(0.3345), newId);
      const { items } = first(set.plans[1]!.stacks);
      return items.map(({ part }) => set.parts.find(({ id }) => id === part)!);
    };
    const [ball, pin, ...none] = partsOf(shaped);
    expect([ball?.kind, pin?.kind, none]).toEqual(['ball', 'pin', []]);
    const own = first(eachStack(shaped, where.plan));
    expect(pin?.diameter).toEqual(own.bottomPin?.diameter);
    expect(pin?.ends).toEqual(own.bottomPin?.ends);
    expect(ball?.diameter).toEqual(own.ball?.diameter);
    const alone = partsOf(setKeyFoot(shaped, where.plan, 'rounded pin', newId));
    expect(alone.map(({ kind }) => kind)).toEqual(['pin']);
  });

  test('begins with its first stack, has parts of its own, and ends with its last', () => {
    const { job, where, newId } = emptyBench();
    const [one, two] = first(job.cylinders).chambers;
    const begun = setKnownStack(job, where, one?.id ?? '', inches(0.3345), newId);
    const both = setKnownStack(begun, where, two?.id ?? '', inches(0.28), newId);
    expect(first(both.seatings).knownSets).toHaveLength(1);
    expect(both.plans.map((plan) => plan.kind)).toEqual(['planned', 'as found']);
    expect(lengthOf(knownStack(both, where, two?.id ?? ''), 0)).toBe(inchesToMm(0.28));
    expect(isValid(both)).toBe(true);
    const working = new Set(job.parts.map((part) => part.id));
    expect(both.plans[1]?.stacks.every((stack) => stack.items.every((i) => !working.has(i.part)))).toBe(true);
    const gone = setKnownStack(
      setKnownStack(both, where, one?.id ?? '', undefined, newId),
      where,
      two?.id ?? '',
      undefined,
      newId,
    );
    expect(gone).toEqual(job);
  });

  test('a set that ends takes along what was tried with it, and no part that something else speaks of', () => {
    const { job, where, newId } = emptyBench();
    const chamber = first(first(job.cylinders).chambers).id;
    const begun = setKnownStack(job, where, chamber, inches(0.3345), newId);
    const set = begun.plans[1]!;
    const { items } = set.stacks[0]!;
    const test = { key: where.key, chamber, items };
    const tried = recordBench(begun, { ...test, plan: set.id }, true, '2026-03-04T10:00:00Z');
    const both = recordBench(tried, { ...test, plan: where.plan }, false, '2026-03-04T10:05:00Z');
    const gone = setKnownStack(both, where, chamber, undefined, newId);
    expect(gone.benchResults.map(({ plan }) => plan)).toEqual([where.plan]);
    expect(isValid(gone)).toBe(true);
  });
});

describe('seating, feel and bench', () => {
  test('metal under the key that was read is kept by "above" and let go by "level"', () => {
    const { job, where } = emptyBench();
    const read = setKeywayFloorHeight(job, where.cylinder, where.key, inches(0.042));
    expect(first(read.seatings)).toMatchObject({ bottomEdge: 'above' });
    const level = setBottomEdge(read, where.cylinder, where.key, 'level');
    expect(first(level.seatings).keywayFloorHeight).toBeUndefined();
    expect(setBottomEdge(read, where.cylinder, where.key, 'above')).toEqual(read);
  });

  test('what stood up by is one reading a chamber', () => {
    const { job, where } = emptyBench();
    const chamber = first(first(job.cylinders).chambers).id;
    const stood = { stack: inches(0.36), reading: inches(0.0255), items: [] };
    const twice = setStandsUpBy(
      setStandsUpBy(job, where.cylinder, where.key, chamber, stood),
      where.cylinder,
      where.key,
      chamber,
      { ...stood, reading: inches(0.025) },
    );
    expect(first(twice.seatings).standsUpBy).toHaveLength(1);
    expect(setStandsUpBy(twice, where.cylinder, where.key, chamber, undefined)).toEqual(job);
  });

  test('feel and outcome belong to the parts they were found with', () => {
    const { job, where } = emptyBench();
    const chamber = first(first(job.cylinders).chambers).id;
    const { lower, stack } = first(eachStack(job, where.plan));
    const felt = setFelt(job, { ...where, chamber, items: lower }, 'above');
    expect(feltWith(first(felt.seatings), chamber, lower)).toBe('above');
    expect(feltWith(first(felt.seatings), chamber, stack.items)).toBeNull();
    expect(setFelt(felt, { ...where, chamber, items: lower }, null)).toEqual(job);

    const shell = { plan: where.plan, key: where.key, chamber, items: lower };
    const driver = { ...shell, items: stack.items };
    const tried = recordBench(recordBench(job, shell, true, 't1'), driver, false, 't2');
    expect([benchOutcome(tried, shell), benchOutcome(tried, driver)]).toEqual([true, false]);
    expect(recordBench(tried, shell, false, 't3').benchResults).toHaveLength(2);
    expect(isValid(tried)).toBe(true);
  });
});

describe('instruments', () => {
  test('what it read closed counts for readings from now on', () => {
    const { job, newId } = emptyBench();
    const zeroed = setClosedReading(job, inches(0.0005), { newId, at: '2026-01-01' });
    expect(lengthOf(closedReading(zeroed) ?? undefined, 0)).toBe(inchesToMm(0.0005));
    expect(zeroed.settings.session).toBe(first(zeroed.sessions).id);
    const corrected = setClosedReading(zeroed, inches(0.001), { newId, at: '2026-01-01' });
    expect(corrected.sessions).toHaveLength(1);
    expect(isValid(corrected)).toBe(true);
  });

  test('a zero check that readings hang on is kept when a new one is made', () => {
    const { job, where, newId } = emptyBench();
    const zeroed = setClosedReading(job, inches(0.0005), { newId, at: 'morning' });
    const { session, instrument } = zeroed.settings;
    const value = inches(0.369);
    const read = { ...value, readings: value.readings.map((each) => ({ ...each, session, instrument })) };
    const used = setCutRootDepth(zeroed, where.key, first(first(job.keys).cuts).id, read);
    const later = setClosedReading(used, inches(-0.0005), { newId, at: 'evening' });
    expect(later.sessions.map((each) => each.at)).toEqual(['morning', 'evening']);
  });

  test('picking another instrument up ends the zero check and is not added twice', () => {
    const { job, newId } = emptyBench();
    const zeroed = setClosedReading(job, inches(0.0005), { newId, at: 't' });
    const micrometer = takeUpInstrument(zeroed, 'micrometer', newId);
    const back = takeUpInstrument(micrometer, 'digital caliper', newId);
    expect(micrometer.settings.session).toBeNull();
    expect(back.instruments).toHaveLength(2);
    expect(back.settings.instrument).toBe(job.settings.instrument);
  });
});

describe('values and the cylinder', () => {
  test('a repeat is added, and taken back down to the first reading', () => {
    const reading = { mm: 9.4, unit: 'mm', typed: '9.40' } as const;
    const none = { instrument: null, session: null };
    const twice = withRepeat(withRepeat(undefined, reading, none), { ...reading, mm: 9.41 }, none);
    expect(twice.readings.map((each) => each.value)).toEqual([9.4, 9.41]);
    expect(withoutLastRepeat(withoutLastRepeat(twice)).readings.map((each) => each.value)).toEqual([9.4]);
  });

  test('a rattle is an assumed play with its range', () => {
    const { job, where } = emptyBench();
    const line = first(first(job.cylinders).lines).id;
    const loose = first(first(setRattle(job, where.cylinder, line, 'loose').cylinders).lines).clearance;
    expect(loose.basis).toBe('assumed');
    expect(loose.range).toEqual({ from: inchesToMm(0.004), to: inchesToMm(0.009) });
  });

  test('the turn is kept in degrees with its ways', () => {
    const { job, where } = emptyBench();
    const next = setTurn(job, where.cylinder, 90, 'one');
    expect(first(next.cylinders).turn).toMatchObject({ angle: { readings: [{ value: 90 }] }, ways: 'one' });
    expect(isValid(next)).toBe(true);
  });
});
