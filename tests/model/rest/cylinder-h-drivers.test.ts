/**
 * Cylinder H: driver window, springs, rest states and spool, against the table worked by hand (our own, from plain
 * addition of its sizes; no source outside the project but the spring formula). All figures in inches.
 */
import { describe, expect, test } from 'vitest';
import { asRadians, toDegrees } from '../../../src/model/radians.ts';
import { restResults } from '../../../src/model/rest/rest-results.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { cylinderH, lookAt } from '../../support/cylinder-h.ts';
import { inches, statedInches } from '../../support/values.ts';

const INCH = 25.4;
/** N/mm in one lb/in, and N in one lb (0.45359237 kg, 9.80665 m/s²). */
const POUND = 0.45359237 * 9.80665;

function rest(change: (job: Job) => void = () => undefined) {
  const { bench, assembly } = lookAt(cylinderH(change));
  return restResults(bench, assembly);
}

const toInches = (mm: number | null | undefined) => (mm ?? Number.NaN) / INCH;
const drivers = (job: Job) => job.parts.filter((part) => part.label.startsWith('driver'));
const springs = (job: Job) => job.parts.filter((part) => part.kind === 'spring');

describe('driver windows of cylinder H', () => {
  const table = [
    [0.1715, 0.5, 0.1915, 0.3095],
    [0.227, 0.5, 0.247, 0.365],
    [0.138, 0.5, 0.158, 0.276],
    [0.196, 0.5, 0.216, 0.334],
    [0.254, 0.473, 0.274, 0.419],
    [0.1025, 0.3415, 0.1225, 0.399],
  ] as const;
  const { chambers, commonDriver } = rest();

  test.each(table.map((row, i) => [i + 1, ...row] as const))(
    'chamber %i: recess %f, peak %f, drivers from %f to %f',
    (number, recess, peak, shortest, longest) => {
      const { driver, atLines } = chambers[number - 1]!;
      const { assembly } = lookAt(cylinderH());
      const stack = assembly.stacks[number - 1]!;
      const lower = stack.parts[0]!.length + stack.parts[1]!.length - stack.parts[1]!.seat;
      expect(toInches(atLines[0]?.recess)).toBeCloseTo(recess, 5);
      expect(toInches((driver.peak?.height ?? 0) - lower - assembly.key!.bottomY)).toBeCloseTo(peak, 5);
      expect(toInches(driver.shortest)).toBeCloseTo(shortest, 5);
      expect(toInches(driver.longest)).toBeCloseTo(longest, 5);
      expect(driver.verdict).toBe('fits');
    },
  );

  test('one common length fits all six only between .274 and .276', () => {
    expect(toInches(commonDriver?.shortest)).toBeCloseTo(0.274, 5);
    expect(toInches(commonDriver?.longest)).toBeCloseTo(0.276, 5);
  });

  test('every chamber locks: the driver stands across', () => {
    expect(chambers.map((each) => each.atLines[0]?.state)).toEqual(Array(6).fill('driver across'));
    expect(chambers.map((each) => each.atLines[0]?.locks)).toEqual(Array(6).fill(true));
  });

  test('the person can ask for more engagement and more margin: the window shrinks by as much', () => {
    const own = rest((job) => {
      job.settings.thresholds = { driverEngagement: statedInches(0.025), springMargin: statedInches(0.015) };
    });
    expect(toInches(own.chambers[0]?.driver.shortest)).toBeCloseTo(0.1965, 5);
    expect(toInches(own.chambers[0]?.driver.longest)).toBeCloseTo(0.3045, 5);
    expect(own.commonDriver).toBeNull();
  });

  test('a .250 driver drops below the line in chamber 5; a .290 driver cannot pass the peak in chamber 3', () => {
    const short = rest((job) => drivers(job).forEach((part) => (part.length = inches(0.25))));
    expect(short.chambers.map((each) => each.atLines[0]?.state)).toEqual([
      ...Array<string>(4).fill('driver across'),
      'driver below',
      'driver across',
    ]);
    const long = rest((job) => drivers(job).forEach((part) => (part.length = inches(0.29))));
    expect(long.chambers.map((each) => each.driver.verdict)).toEqual([
      'fits',
      'fits',
      'too long',
      'fits',
      'fits',
      'fits',
    ]);
    expect(toInches(long.chambers[2]?.spring?.toSpare)).toBeCloseTo(-0.004, 5);
  });

  test('without a spring a chamber is taken as not locking', () => {
    const { chambers: unsprung } = rest((job) => {
      job.plans[0]!.stacks[0]!.items.pop();
    });
    expect(unsprung[0]?.spring).toBeNull();
    expect(unsprung[0]?.atLines[0]).toMatchObject({ state: 'driver across', locks: false });
  });
});

describe('springs of cylinder H', () => {
  const withWire = (job: Job) =>
    springs(job).forEach((part) => {
      // Phosphor bronze, 6.0e6 psi, as in the worked example; from memory.
      Object.assign(part, {
        coils: 14,
        coilEnds: 'closed and ground',
        wire: statedInches(0.014),
        diameter: statedInches(0.144),
        shearModulusGPa: (6.0e6 * 6894.757293168) / 1e9,
      });
      delete part.solid;
    });
  const { chambers } = rest(withWire);

  test('rate, solid length, tightest and loosest', () => {
    expect(((chambers[0]?.spring?.rate ?? 0) * INCH) / POUND).toBeCloseTo(1.09285, 5);
    expect(toInches(chambers[0]?.spring?.solid)).toBeCloseTo(0.196, 5);
    const worst = chambers.map((each) => toInches(each.spring?.atWorst));
    expect(Math.min(...worst)).toBeCloseTo(0.207, 5);
    expect(worst.indexOf(Math.min(...worst))).toBe(2);
    expect((chambers[2]?.spring?.forceAtWorst ?? 0) / POUND).toBeCloseTo(0.53878, 5);
    const atRest = chambers.map((each) => toInches(each.spring?.atRest));
    expect(Math.max(...atRest)).toBeCloseTo(0.623, 5);
    expect(atRest.indexOf(Math.max(...atRest))).toBe(4);
    expect((chambers[4]?.spring?.forceAtRest ?? 0) / POUND).toBeCloseTo(0.08415, 5);
    expect(chambers.every((each) => each.spring?.isLooseAtRest === false)).toBe(true);
  });

  test('a spring no longer than .623 leaves the driver of chamber 5 unpressed', () => {
    const { chambers: slack } = rest((job) => springs(job).forEach((part) => (part.free = inches(0.622))));
    expect(slack.map((each) => each.spring?.isLooseAtRest)).toEqual([
      false,
      false,
      false,
      false,
      true,
      false,
    ]);
  });

  test('two readings of force tell the rate as well', () => {
    const { chambers: read } = rest((job) =>
      springs(job).forEach((part) => {
        part.pressed = [
          { length: inches(0.6), newtons: 1 },
          { length: inches(0.4), newtons: 3 },
        ];
      }),
    );
    expect(read[0]?.spring?.rate).toBeCloseTo(2 / (0.2 * INCH), 9);
  });

  test.each([
    [
      'solid',
      (job: Job) =>
        springs(job).forEach((part) => {
          delete part.solid;
        }),
      /squeezed solid/,
    ],
    [
      'free',
      (job: Job) =>
        springs(job).forEach((part) => {
          delete part.free;
        }),
      /spring free/,
    ],
    [
      'cap',
      (job: Job) =>
        job.cylinders[0]!.chambers.forEach((each) => {
          delete each.capDepth;
        }),
      /cap/,
    ],
    [
      'rest',
      (job: Job) =>
        job.plans[0]!.stacks.forEach((each) => {
          delete each.rest;
        }),
      /sinks/,
    ],
    [
      'driver',
      (job: Job) =>
        drivers(job).forEach((part) => {
          delete part.length;
        }),
      /length of the driver/,
    ],
    [
      'blade',
      (job: Job) => {
        delete job.keys[0]!.bladeHeight;
      },
      /height of the blade/,
    ],
  ])('without the %s it says what is missing and guesses nothing', (_, change, words) => {
    const { chambers: open, commonDriver } = rest(change);
    expect(open[0]?.missing.join('; ')).toMatch(words);
    const { driver, spring, atLines } = open[0]!;
    const unknown = [driver.shortest, driver.longest, driver.length, spring?.atRest, spring?.isLooseAtRest];
    expect(unknown).toContain(null);
    if (_ === 'rest') {
      expect(atLines[0]).toMatchObject({ state: 'unknown', recess: null, locks: null });
      expect(commonDriver).toBeNull();
    }
  });
});

describe('rest states of cylinder H', () => {
  const sunk = (job: Job, byInches: number) => {
    const { rest: seen } = job.plans[0]!.stacks[0]!;
    seen!.belowLine = inches(byInches);
  };
  test.each([
    [0.1715, 'driver across', true],
    [0.0078, 'driver across', true],
    [0.0076, 'split at the line', false],
    [0, 'split at the line', false],
    [-0.0039, 'split at the line', false],
    [-0.0041, 'bottom pin across', true],
    [0.2749, 'driver across', true],
    [0.2751, 'driver below', false],
  ] as const)('sunk by %f: %s, locks %s', (byInches, state, locks) => {
    const { chambers } = rest((job) => sunk(job, byInches));
    expect(chambers[0]?.atLines[0]).toMatchObject({ state, locks });
  });
});

describe('spools in cylinder H', () => {
  const spool = (from: number) => (job: Job) => {
    drivers(job).forEach((part) => {
      part.waist = {
        kind: 'spool',
        from: inches(from),
        length: inches(0.15),
        diameter: inches(0.115),
      };
    });
  };

  test('slack of a plain driver and of a waist', () => {
    const { waist } = rest(spool(0.06)).chambers[0]!;
    expect(toDegrees(waist?.plainSlack ?? asRadians(0))).toBeCloseTo(0.61, 2);
    expect(toDegrees(waist?.slack ?? asRadians(0))).toBeCloseTo(6.89, 2);
  });

  test('the waist stands at the line where flange < recess < flange + waist', () => {
    const at = (from: number) => rest(spool(from)).chambers.map((each) => each.waist?.isAtLine);
    // recesses .1715 .2270 .1380 .1960 .2540 .1025; waist from .060 to .210
    expect(at(0.06)).toEqual([true, false, true, true, false, true]);
    const { waist } = rest(spool(0.06)).chambers[1]!;
    expect([toInches(waist?.from), toInches(waist?.to)].map((each) => Number(each.toFixed(5)))).toEqual([
      -0.167, -0.017,
    ]);
  });

  test('turned over, it is drawn from the other end too', () => {
    const turned = (flipped: boolean) =>
      lookAt(
        cylinderH((job) => {
          spool(0.06)(job);
          if (flipped) job.plans[0]!.stacks[0]!.items[2]!.flipped = true;
        }),
      ).assembly.stacks[0]!.parts[2]!.waist!.from;
    expect(toInches(turned(false))).toBeCloseTo(0.06, 6);
    expect(toInches(turned(true))).toBeCloseTo(0.065, 6);
  });

  test('turned over, the waist is measured from the other end', () => {
    const { waist } = rest((job) => {
      spool(0.06)(job);
      job.plans[0]!.stacks[0]!.items[2]!.flipped = true;
    }).chambers[0]!;
    // .275 long: the waist begins .275 - .060 - .150 = .065 up
    expect(toInches(waist?.from)).toBeCloseTo(0.065 - 0.1715, 5);
  });
});
