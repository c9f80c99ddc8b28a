/** The tests when it is together, in order, and what this job's numbers expect of each. */
import { splitThat } from './split-that.ts';
import { sayAmount } from '../evaluate/say.ts';
import type { Facts } from '../findings/facts.ts';
import { movedKey, turnsDrawn } from '../findings/moved-key.ts';
import type { Turns } from '../evaluate/evaluation.ts';

export type LoadTest = {
  readonly what: string;
  readonly expected: string;
  /** The numbers speak for what a sound lock does there; null when they say nothing. */
  readonly isGood: boolean | null;
};

/** Lists the tests. */
export function loadTests(facts: Facts): LoadTest[] {
  return [
    ...oneByOne(facts),
    keyOut(facts),
    inAndOut(facts),
    keyIn(facts),
    lifted(facts),
    oneCutShort(facts),
    pulled(facts),
    otherKeys(facts),
    {
      what: 'With the lock body, then on the door, the door open and the key in your hand',
      expected: 'the same as on the bench',
      isGood: null,
    },
  ];
}

/** Chambers that should do the same are told together. */
function oneByOne(facts: Facts): LoadTest[] {
  const alike = new Map<string, { readonly numbers: number[]; readonly isGood: boolean | null }>();
  for (const { number, alone } of facts.evaluation.chambers) {
    if (alone === null) continue;
    const expected = `${alone.lowerStackOnly}, then ${alone.withDriver}`;
    const isGood = both(good(alone.lowerStackOnly), good(alone.withDriver));
    const before = alike.get(expected);
    if (before === undefined) alike.set(expected, { numbers: [number], isGood });
    else before.numbers.push(number);
  }
  return [...alike].map(([expected, { numbers, isGood }]) => ({
    what: `${chambers(numbers)} ${numbers.length === 1 ? 'alone' : 'alone, one after the other'}: the lower stack in the empty shell, then with driver and spring`,
    expected,
    isGood,
  }));
}

function chambers(numbers: readonly number[]): string {
  const last = numbers.at(-1) ?? 0;
  if (numbers.length === 1) return `Chamber ${last}`;
  return `Chambers ${numbers.slice(0, -1).join(', ')} and ${last}`;
}

function good(turns: Turns): boolean | null {
  return turns === 'turns' ? true : turns === 'does not turn' ? false : null;
}

function both(one: boolean | null, other: boolean | null): boolean | null {
  if (one === false || other === false) return false;
  return one === null || other === null ? null : true;
}

function keyOut({ rest, bench }: Facts): LoadTest {
  const what = 'Key out: try to turn the plug with a screwdriver blade';
  const lines = bench.cylinder.lines.map((_, i) =>
    rest.chambers.map(({ atLines }) => atLines[i]?.locks ?? null),
  );
  const isLocked = lines.map((chambers) =>
    chambers.includes(true)
      ? true
      : chambers.length > 0 && chambers.every((each) => each === false)
        ? false
        : null,
  );
  if (isLocked.includes(false)) return { what, expected: 'it turns: nothing stands across', isGood: false };
  if (isLocked.includes(null))
    return { what, expected: 'not known: how far the stacks sink is not measured', isGood: null };
  const few = Math.min(...lines.map((chambers) => chambers.filter((each) => each === true).length));
  return {
    what,
    expected: `it does not turn: ${few} of ${rest.chambers.length} chambers hold`,
    isGood: true,
  };
}

function inAndOut({ way, rest }: Facts): LoadTest {
  const what = 'Key in and out twenty times, slowly and quickly';
  const solid = rest.chambers.filter(
    ({ spring, driver }) => (spring?.toSpare ?? 0) < 0 || (driver.roomLeft ?? 0) < 0,
  );
  const jams = way.chambers.filter(
    (each) => each.goingIn?.canClimb === false || each.comingOut?.canClimb === false,
  );
  if (solid.length > 0)
    return { what, expected: `it stops: no room above chamber ${list(solid)}`, isGood: false };
  if (jams.length > 0) return { what, expected: `it may jam at chamber ${list(jams)}`, isGood: false };
  if (way.chambers.length === 0) return { what, expected: 'not known: no key yet', isGood: null };
  const isOpen = rest.chambers.some(({ spring }) => spring?.toSpare == null);
  return isOpen
    ? { what, expected: 'nothing in the way that is measured; springs are not all known', isGood: null }
    : { what, expected: 'it goes freely', isGood: true };
}

function list(chambers: readonly { readonly number: number }[]): string {
  return chambers.map(({ number }) => number).join(', ');
}

function keyIn({ evaluation }: Facts): LoadTest {
  const what = 'Key fully in: turn both ways, all the way';
  const verdicts = evaluation.lines.map(({ verdict }) => verdict);
  if (verdicts.includes('turns')) return { what, expected: 'it turns', isGood: true };
  if (verdicts.every((each) => each === 'will not turn'))
    return { what, expected: 'it does not turn', isGood: false };
  const lean = evaluation.lines.find((line) => line.lean !== null)?.lean;
  return {
    what,
    expected:
      lean === 'probably turns'
        ? 'it probably turns'
        : lean === 'probably not'
          ? 'it probably does not turn'
          : 'not known yet',
    isGood: null,
  };
}

/** How far the key may be lifted or pressed before some chamber leaves its window. */
function lifted(facts: Facts): LoadTest {
  const what = 'The same with the key lifted lightly, and pressed down lightly';
  const moved = movedKey(facts);
  if (moved === null) return { what, expected: 'not known yet', isGood: null };
  if (!moved.turnsAsItSits) {
    const expected = moved.lifted === null ? 'it does not turn' : 'it turns only when lifted';
    return { what, expected, isGood: false };
  }
  const spare = Math.min(...splitThat(facts).map((split) => split.window.highest - split.offset));
  return {
    what,
    expected: `it turns up to a lift of ${sayAmount(Math.max(0, spare), facts.unit)}`,
    isGood: true,
  };
}

function oneCutShort(facts: Facts): LoadTest {
  const what = 'Key one cut short of home: try to turn';
  const [first, second] = facts.assembly.chambers;
  if (first === undefined || second === undefined)
    return { what, expected: 'there is only one chamber', isGood: null };
  const turns = turnsDrawn(facts, second.z - first.z);
  if (turns === null) return { what, expected: 'not known yet', isGood: null };
  return turns
    ? { what, expected: 'it turns there as well', isGood: false }
    : { what, expected: 'it does not turn', isGood: true };
}

function pulled({ way, play, unit }: Facts): LoadTest {
  const what = 'Pull the key at 5°, 45°, 90° and 180°';
  if (way.keyIsHeld === null) return { what, expected: 'not known yet', isGood: null };
  if (!way.keyIsHeld) return { what, expected: 'it comes out', isGood: false };
  const isLoose = play.catches === true && play.play !== null;
  const back = isLoose
    ? `; back upright the pins may catch, with ${sayAmount(play.play, unit)} of end play`
    : '; upright it comes out';
  return { what, expected: `it is held${back}`, isGood: !isLoose };
}

function otherKeys({ assembly, thresholds }: Facts): LoadTest {
  const what = 'A wrong key of the same keyway';
  const { depthStep } = thresholds;
  const drop = Math.max(0, ...assembly.chambers.map((chamber) => chamber.crestDrops[0] ?? 0));
  const band = (assembly.lines[0]?.clearance ?? 0) + drop;
  const isLoose = depthStep !== null && band > depthStep / 2;
  return isLoose
    ? { what, expected: 'it must not turn; one with neighbouring cuts may', isGood: false }
    : { what, expected: 'it must not turn', isGood: null };
}
