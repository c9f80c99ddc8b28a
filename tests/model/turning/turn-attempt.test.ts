/**
 * Trying the turn with a sleeve. The states follow from what a line is: it turns if every chamber has a split in its
 * window, so with two lines there are four states, and alternating cuts of two keys hold both lines.
 */
import { describe, expect, test } from 'vitest';
import { assemble } from '../../../src/model/assembly/build-assembly.ts';
import { poseAt } from '../../../src/model/assembly/pose-at.ts';
import { evaluateBench } from '../../../src/model/evaluate/evaluate.ts';
import { whatTurns } from '../../../src/model/evaluate/what-turns.ts';
import { firstSelection, layOut } from '../../../src/model/measured/selection.ts';
import { asRadians } from '../../../src/model/radians.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { tryTurn } from '../../../src/model/turning/turn-attempt.ts';
import { harbourJobWith, type Owner } from '../../support/harbour-jobs.ts';
import { buildJob } from '../../support/job-builder.ts';

function attemptOf(job: Job, wanted: string | null = null) {
  const bench = layOut(job, firstSelection(job)!);
  const assembly = assemble(bench);
  const evaluation = evaluateBench(bench, assembly);
  const attempt = tryTurn(bench, assembly, evaluation, wanted);
  if (attempt === null) throw new Error('the turn cannot be tried');
  const roles = attempt.turning.map((id) => assembly.bodies.find((body) => body.id === id)?.role);
  return { assembly, evaluation, attempt, roles, what: whatTurns(evaluation) };
}

/** By chamber, the role of the body each part turns with, bottom to top, at a third of a turn. */
function carriers(job: Job): (string | undefined)[][] {
  const { assembly, attempt } = attemptOf(job);
  const turn = asRadians(2);
  const pose = poseAt(assembly, {
    travel: 0,
    turns: new Map(attempt.turning.map((body) => [body, turn])),
    parting: attempt.parting,
    driverFloors: attempt.driverFloors(turn),
  });
  return pose.stacks.map(({ parts }) =>
    parts.map(({ turnsWith }) => assembly.bodies.find(({ id }) => id === turnsWith)?.role),
  );
}

const alternating = (place: number): Owner => (place % 2 === 0 ? 'storekeeper' : 'harbour master');

describe('a cylinder with a sleeve', () => {
  test("the storekeeper's key turns the plug alone", () => {
    const { attempt, roles, evaluation } = attemptOf(harbourJobWith('storekeeper'));
    expect(evaluation.lines.map(({ verdict }) => verdict)).toEqual(['turns', 'will not turn']);
    expect(roles).toEqual(['plug']);
    expect(attempt.stoppedBy).toEqual([]);
    expect(attempt.reach).toBe(attemptOf(harbourJobWith('storekeeper')).assembly.turn.angle);
  });

  test("the harbour master's key turns plug and sleeve together", () => {
    const { attempt, roles, evaluation } = attemptOf(harbourJobWith('harbour master'));
    expect(evaluation.lines.map(({ verdict }) => verdict)).toEqual(['will not turn', 'turns']);
    expect(roles).toEqual(['plug', 'sleeve']);
    expect(attempt.stoppedBy).toEqual([]);
  });

  test('cuts of both keys in turn hold both lines, although every chamber has a split at one of them', () => {
    const { attempt, evaluation, what } = attemptOf(harbourJobWith('storekeeper', alternating));
    expect(evaluation.lines.map(({ blockedBy }) => blockedBy.length)).toEqual([2, 3]);
    expect(what).toMatchObject({ turning: [], open: [], isMixed: true });
    expect(attempt.stoppedBy.length).toBe(2);
    expect(attempt.reach).toBeLessThan(0.1);
  });

  test('held at both lines, it is tried at the one that the key is meant for, else where fewest hold it', () => {
    const held = harbourJobWith('storekeeper', alternating);
    const { key, cylinder } = firstSelection(held)!;
    const [inner, outer] = held.cylinders[0]!.lines.map(({ id }) => id);
    const meantFor = (line: string, forKey = key!) =>
      attemptOf({ ...held, intents: [{ key: forKey, cylinder, line, turns: true }] }).attempt.line;
    const others = held.keys.find(({ id }) => id !== key)?.id ?? 'another';
    expect(attemptOf({ ...held, intents: [] }).attempt.line).toBe(inner);
    expect(meantFor(outer!)).toBe(outer);
    expect(meantFor(inner!)).toBe(inner);
    expect(meantFor(outer!, others)).toBe(inner);
    expect(attemptOf(held, outer).attempt.line).toBe(outer);
  });

  test('the chamber that binds first is named first, and tells how far it turns', () => {
    for (const shift of [0.5, -0.5]) {
      const wrong = harbourJobWith('storekeeper', undefined, (place) => shift * (1 + place / 10));
      const { attempt } = attemptOf(wrong);
      const turns = attempt.stoppedBy.map(({ binding }) => binding.turn);
      expect(turns.length).toBeGreaterThan(2);
      expect(turns).toEqual(turns.toSorted((one, other) => one - other));
      expect(attempt.reach).toBe(turns[0]);
    }
  });

  test('one cut half a millimetre too deep holds both lines, and that is no mixture', () => {
    const wrong = harbourJobWith('storekeeper', undefined, (place) => (place === 2 ? 0.5 : 0));
    const { attempt, evaluation, what, assembly } = attemptOf(wrong);
    expect(evaluation.lines.map(({ verdict }) => verdict)).toEqual(['will not turn', 'will not turn']);
    expect(what).toMatchObject({ turning: [], isMixed: false, focus: assembly.lines[0]?.id });
    expect(attempt.stoppedBy.map(({ chamber }) => chamber)).toEqual([assembly.chambers[2]?.id]);
    expect(attempt.stoppedBy[0]?.binding.side).toBe('upper part');
  });

  test('what is above the inner line stays in sleeve and shell when the plug turns alone', () => {
    for (const stack of carriers(harbourJobWith('storekeeper')))
      expect(stack).toEqual(['plug', 'sleeve', 'shell', 'shell']);
  });

  test('what is under the outer line goes with plug and sleeve', () => {
    for (const stack of carriers(harbourJobWith('harbour master'))) {
      expect(stack.slice(2)).toEqual(['shell', 'shell']);
      expect(stack.slice(0, 2)).not.toContain('shell');
    }
  });

  test('nothing that stays reaches into what turns, at any angle', () => {
    for (const owner of ['storekeeper', 'harbour master'] as const) {
      const { assembly, attempt } = attemptOf(harbourJobWith(owner));
      const line = assembly.lines.find(({ id }) => id === attempt.line)!;
      for (let turn = 0.05; turn < Math.PI; turn += 0.05) {
        const pose = poseAt(assembly, {
          travel: 0,
          turns: new Map(attempt.turning.map((body) => [body, asRadians(turn)])),
          parting: attempt.parting,
          driverFloors: attempt.driverFloors(asRadians(turn)),
        });
        for (const { parts } of pose.stacks) {
          const still = parts.filter(({ turnsWith }) => !attempt.turning.includes(turnsWith));
          // Once the mouth has passed, its lowest point stands on the round.
          const lowest = Math.min(...still.map(({ y }) => y));
          if (turn > 0.6) expect(lowest).toBeGreaterThanOrEqual(line.innerAxisY + line.radius - 1e-9);
          const moving = parts.filter(({ turnsWith }) => attempt.turning.includes(turnsWith));
          expect(Math.max(...moving.map(({ topY }) => topY))).toBeLessThanOrEqual(lowest + 1e-9);
        }
      }
    }
  });
});

describe('both lines clear', () => {
  /** The outer crest stands the wall and half the inner play above the inner one; a pin with an edge has to stay below it. */
  const either = () =>
    buildJob({
      chambers: Array.from({ length: 3 }, () => ({ masterPins: [0.0625 + 0.0015 - 0.003] })),
      sleeve: { outerDiameter: 0.512 + 0.125, clearance: 0.003 },
      plugDiameter: 0.512,
      clearance: 0.003,
    });

  test('either may turn: the plug first, unless the person holds it', () => {
    const { attempt, roles, assembly, what } = attemptOf(either());
    expect(what.turning).toEqual(assembly.lines.map(({ id }) => id));
    expect(attempt.clear).toEqual(what.turning);
    expect(roles).toEqual(['plug']);
    expect(attemptOf(either(), assembly.lines[1]!.id).roles).toEqual(['plug', 'sleeve']);
  });

  test('a line that is held is not turned because somebody asks for it', () => {
    const job = harbourJobWith('storekeeper');
    const outer = job.cylinders[0]!.lines[1]!.id;
    expect(attemptOf(job, outer).roles).toEqual(['plug']);
  });
});

test('a cylinder with one line turns its plug, by the same way', () => {
  const { attempt, roles } = attemptOf(buildJob());
  expect(roles).toEqual(['plug']);
  expect(attempt.clear).toEqual(['line']);
  expect(carriers(buildJob())[0]).toEqual(['plug', 'shell', 'shell']);
});
