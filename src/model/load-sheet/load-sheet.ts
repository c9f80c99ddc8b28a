/**
 * What a person needs beside them while the cylinder goes together: tools, the order of loading with which way up each part
 * goes, and the tests after it with what to expect. It holds lengths from which a key could be cut. mm, radians.
 */
import type { Facts } from '../findings/facts.ts';
import type { MeasuredPart } from '../measured/measured-stack.ts';
import type { Radians } from '../radians.ts';
import type { Id } from '../schema/leaf.ts';
import { type LoadTest, loadTests } from './load-tests.ts';
import { sayWayUp } from './way-up.ts';

export type LoadPart = {
  readonly part: Id;
  readonly label: string;
  readonly role: MeasuredPart['role'];
  /** Of the part alone; null when only measured together with others, or never. */
  readonly length: number | null;
  /** "crown up", "either way up". Null for balls and springs. */
  readonly wayUp: string | null;
};

export type LoadRow = {
  readonly chamber: Id;
  readonly number: number;
  /** Goes into the plug (or sleeve), bottom to top: ball first. */
  readonly inPlug: readonly LoadPart[];
  /** Height of what goes into the plug; null while it is not known. */
  readonly inPlugHeight: number | null;
  /** Goes into the shell, first in first: spring, then driver, when loaded from below; the other way from above. */
  readonly inShell: readonly LoadPart[];
};

export type LoadTools = {
  readonly line: Id;
  /** The plug is turned at least so far before it slides past the drivers. */
  readonly turnAtLeast: Radians;
  readonly followerFrom: number | null;
  readonly followerTo: number;
  readonly shimUpTo: number;
};

export type LoadSheet = {
  readonly tools: readonly LoadTools[];
  /** With the cap on and a follower: the chamber farthest from the bow first, so that the follower covers each in turn. */
  readonly rows: readonly LoadRow[];
  readonly tests: readonly LoadTest[];
};

/** Draws up the sheet. */
export function loadSheet(facts: Facts): LoadSheet {
  return {
    tools: facts.loading.map(({ line, angle, follower, thickestShim }) => ({
      line,
      turnAtLeast: angle,
      followerFrom: follower.smallest,
      followerTo: follower.largest,
      shimUpTo: thickestShim,
    })),
    rows: [...facts.sites]
      .sort((one, other) => other.chamber.z - one.chamber.z)
      .map(({ chamber, stack, driver, under }): LoadRow => {
        const parts = stack.parts.map(loadPart);
        const inShell = parts.filter((_, i) => i === driver || stack.parts[i]?.role === 'spring');
        return {
          chamber: chamber.id,
          number: chamber.number,
          inPlug: parts.slice(0, under + 1),
          inPlugHeight: under < 0 ? null : (stack.tops[under]?.value ?? null),
          inShell: [...inShell].reverse(),
        };
      }),
    tests: loadTests(facts),
  };
}

function loadPart(part: MeasuredPart): LoadPart {
  const isRound = part.role === 'ball' || part.role === 'spring';
  return {
    part: part.part.id,
    label: part.part.label,
    role: part.role,
    length: part.role === 'spring' ? null : (part.length?.value ?? null),
    wayUp: isRound ? null : sayWayUp(part),
  };
}
