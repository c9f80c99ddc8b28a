/** How sure, what helps, bracket test: on cylinder H with the default caliper. Figures in inches where said. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { assemble } from '../../../src/model/assembly/build-assembly.ts';
import { evaluateBench } from '../../../src/model/evaluate/evaluate.ts';
import { firstSelection, layOut } from '../../../src/model/measured/selection.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import { tellsSomething } from '../../../src/model/sureness/bracket-test.ts';
import { sureWords } from '../../../src/model/sureness/all-turn.ts';
import { provedOn } from '../../../src/model/sureness/good-one.ts';
import { sureness } from '../../../src/model/sureness/sureness.ts';
import { known } from '../../../src/model/assert.ts';
import { buildJob } from '../../support/job-builder.ts';

const INCH = 25.4;
const file = new URL('../../fixtures/jobs/cylinder-h.json', import.meta.url);
const parsed = parseJob(JSON.parse(readFileSync(file, 'utf8')));
if (parsed.type === 'error') throw new Error(JSON.stringify(parsed.problems));
const perfect = parsed.job;
const ordinary: Job = {
  ...perfect,
  instruments: perfect.instruments.map((each) => ({
    ...each,
    resolutionMm: 0.0005 * INCH,
    repeatabilityMm: 0.0005 * INCH,
    maxPermissibleErrorMm: 0.001 * INCH,
  })),
};

function surenessOf(job: Job) {
  const bench = layOut(job, known(firstSelection(job), 'a selection'));
  const assembly = assemble(bench);
  return { ...sureness(bench, assembly), evaluation: evaluateBench(bench, assembly) };
}

/** Every stack shorter by so many inches. */
function lowered(job: Job, by: number): Job {
  return {
    ...job,
    groups: job.groups.map((each) => ({
      ...each,
      height: {
        ...each.height,
        readings: each.height.readings.map((reading) => ({ ...reading, value: reading.value - by * INCH })),
      },
    })),
  };
}

describe('how sure', () => {
  test('without instrument error a line that turns is certain', () => {
    const [line] = surenessOf(perfect).lines;
    expect(line?.allTurn).toBe(1);
    expect(line?.words).toBe('all but certain');
  });

  test('what is common to all chambers is not multiplied', () => {
    const [line] = surenessOf(ordinary).lines;
    const each = known(line, 'line').chambers.map(({ turns }) => turns ?? 0);
    const multiplied = each.reduce((product, share) => product * share, 1);
    const all = line?.allTurn ?? 0;
    expect(all).toBeGreaterThan(multiplied + 0.005);
    expect(all).toBeLessThanOrEqual(Math.min(...each));
  });

  test('a chamber that never turns leaves nothing to hope', () => {
    const job = buildJob({
      pinTop: { kind: 'flat' },
      driverEnd: { kind: 'flat' },
      instrumentError: 'default',
    });
    const { lines } = surenessOf(job);
    expect(lines[0]?.allTurn).toBe(0);
    expect(lines[0]?.words).toBe('very unlikely');
  });

  test.each([
    [null, 'not known'],
    [0.5, 'about as likely as not'],
    [0.95, 'very likely'],
    [0.05, 'very unlikely'],
  ])('%s is said as %s', (share, words) => expect(sureWords(share)).toBe(words));
});

describe('what helps', () => {
  const { helps, evaluation } = surenessOf(ordinary);
  const waiting = evaluation.chambers.filter(({ splits }) => splits[0]?.verdict === "can't say yet");

  test('is asked for the chambers that wait', () => {
    expect(waiting.length).toBeGreaterThan(0);
    const named = new Set(helps.flatMap(({ chambers }) => chambers.map(({ chamber }) => chamber)));
    for (const { chamber } of waiting) expect(named).toContain(chamber);
  });

  test('tells by how much: read three times over, the ± comes out as told', () => {
    const again = known(
      helps.find(({ kind, field }) => kind === 'read again' && field?.owner === 'group'),
      'a stack to read again',
    );
    const group = again.field?.id;
    const job: Job = {
      ...ordinary,
      groups: ordinary.groups.map((each) =>
        each.id === group
          ? {
              ...each,
              height: { ...each.height, readings: [0, 1, 2].flatMap(() => each.height.readings.slice(0, 1)) },
            }
          : each,
      ),
    };
    const told = known(again.chambers[0], 'a chamber');
    const after = surenessOf(job).evaluation.chambers.find(({ chamber }) => chamber === told.chamber);
    expect(after?.splits[0]?.toHighest).toBeCloseTo(told.to, 6);
  });

  test('standing a pin up shrinks the ± most, as it does when it is done', () => {
    const best = known(
      helps.find(({ kind }) => kind === 'stand it up'),
      'standing up',
    );
    const told = known(best.chambers[0], 'a chamber');
    const caliper = ordinary.settings.instrument;
    const at = known(
      evaluation.chambers.find(({ chamber }) => chamber === told.chamber),
      'its result',
    );
    const reading = (value: number) => ({
      readings: [{ typed: '', unit: 'mm' as const, value, instrument: caliper, session: null }],
      estimator: 'mean' as const,
      basis: 'measured' as const,
    });
    const stack = at.lowerStack ?? 0;
    const standsUp = stack - (at.neededLowerStack ?? 0);
    const job: Job = {
      ...ordinary,
      seatings: ordinary.seatings.map((each) => ({
        ...each,
        standsUpBy: [{ chamber: told.chamber, items: [], stack: reading(stack), reading: reading(standsUp) }],
      })),
    };
    const after = surenessOf(job).evaluation.chambers.find(({ chamber }) => chamber === told.chamber);
    expect(after?.drivingRoute).toBe('stands up by');
    expect(known(after?.splits[0], 'split').toHighest / told.to).toBeCloseTo(1, 1);
    expect(told.to).toBeLessThan(told.from);
  });

  test('nothing waits, nothing is asked', () => expect(surenessOf(perfect).helps).toEqual([]));
});

describe('bracket test', () => {
  test('chamber 1 of H (-.00014; window -.0077 to +.004): all three turn, so a kit step tells nothing', () => {
    const { brackets } = surenessOf(perfect);
    const pins = known(brackets[0], 'chamber 1').pins;
    expect(pins.map(({ withDriver }) => withDriver)).toEqual(['turns', 'turns', 'turns']);
    expect(tellsSomething(pins)).toBe(false);
  });

  test('chamber 5 (+.00136): .003 over stops even in the empty shell, .003 under turns', () => {
    const pins = known(surenessOf(perfect).brackets[4], 'chamber 5').pins;
    expect(pins.map(({ alone }) => alone)).toEqual(['does not turn', 'turns', 'turns']);
    expect(tellsSomething(pins)).toBe(true);
  });

  test('chamber 2 (-.00364): .003 under turns, one more step shows only with its driver', () => {
    const pins = known(surenessOf(perfect).brackets[1], 'chamber 2').pins;
    expect(pins.at(-1)).toMatchObject({ alone: 'turns', withDriver: 'turns' });
    const lower = known(surenessOf(lowered(perfect, 0.002)).brackets[1], 'chamber 2').pins;
    expect(lower.map(({ withDriver }) => withDriver)).toEqual(['turns', 'turns', 'does not turn']);
    expect(lower.at(-1)?.alone).toBe('turns');
  });
});

describe('prove it on a good one', () => {
  /** Bottom pins longer than called for by so much (inches), every other one more, the others less by the scatter. */
  const proved = (by: number, scatter = 0) => {
    const chambers = [0, 1, 2, 3, 4].map((i) => ({
      rootDepth: 0.26,
      bottomPin: 0.512 - 0.08 - 0.26 + by + (i % 2 === 0 ? scatter : -scatter),
    }));
    return provedOn(surenessOf(buildJob({ chambers })).evaluation, 0.0254, 'in');
  };

  test('level stacks are trusted', () => expect(proved(0)?.says).toBe('trust'));
  test('all alike off is a common error', () => {
    const good = proved(0.003);
    expect(good?.says).toBe('common error');
    expect(good?.sentence).toContain('high');
    expect(good?.offset).toBeCloseTo(0.003 * INCH, 6);
  });
  test('scattered readings are told', () => expect(proved(0, 0.004)?.says).toBe('scatter'));
  test('two stacks prove nothing', () =>
    expect(provedOn(surenessOf(buildJob({ chambers: 2 })).evaluation, 0.0254, 'in')).toBeNull());
});
