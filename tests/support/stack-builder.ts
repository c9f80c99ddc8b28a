/** The stack in one chamber of a job made in tests: its parts, what was measured together, and how they lie in the plan. */
import type { Group, Part, Stack } from '../../src/model/schema/parts-schema.ts';
import type { ChamberOptions, FullJobOptions } from './job-options.ts';
import { endForm, type EndOptions, inches } from './values.ts';

/** A chamber with everything that its place in the row decides. */
export type Built = ChamberOptions & { position: number; cutPosition: number | null; rootDepth: number };

type BuiltStack = { parts: Part[]; groups: Group[]; stack: Stack };

/** Builds the parts of one chamber, bottom to top. */
export function stackOf(full: FullJobOptions, chamber: Built, number: number): BuiltStack {
  const id = (name: string) => `${full.prefix}${name}-${number}`;
  const parts: Part[] = [];
  const ball = chamber.ball ?? null;
  if (ball !== null) parts.push({ ...part(id('ball'), 'ball'), diameter: inches(ball) });
  const pinLength = chamber.bottomPin === undefined ? reachingLength(full, chamber, ball) : chamber.bottomPin;
  const foot = ball === null ? full.pinFoot : { kind: 'flat' as const };
  if (pinLength !== null) parts.push(pin(full, id('bottom-pin'), pinLength, [foot, full.pinTop]));
  const lower = parts.map((item) => ({ part: item.id }));
  chamber.masterPins?.forEach((length, i) => {
    parts.push(pin(full, `${id('master-pin')}-${i + 1}`, length, [{ kind: 'flat' }, { kind: 'flat' }]));
  });
  const driver = chamber.driver === undefined ? full.driverLength : chamber.driver;
  if (driver !== null) parts.push(pin(full, id('driver'), driver, [full.driverEnd, full.driverEnd]));
  if (chamber.isSprung ?? true) parts.push(spring(full, id('spring')));

  const { lowerStack, restDepth } = chamber;
  const groups: Group[] =
    lowerStack === undefined || lower.length < 2
      ? []
      : [{ id: id('group'), parts: lower.map((item) => item.part), height: inches(lowerStack) }];
  const rest = restDepth === undefined ? {} : { rest: { items: lower, belowLine: inches(restDepth) } };
  return {
    parts,
    groups,
    stack: { chamber: id('chamber'), items: parts.map((item) => ({ part: item.id })), ...rest },
  };
}

/** The bottom pin that reaches the line: plug less metal under the key less root depth less ball. Inches. */
function reachingLength(full: FullJobOptions, chamber: Built, ball: number | null): number {
  const lowerStack = chamber.lowerStack ?? full.plugDiameter - full.floorHeight - chamber.rootDepth;
  return Math.round((lowerStack - (ball ?? 0)) * 1e6) / 1e6;
}

function part(id: string, kind: Part['kind']): Part {
  return { id, label: id, kind, quantity: 1, original: true };
}

function pin(full: FullJobOptions, id: string, length: number, ends: [EndOptions, EndOptions]): Part {
  return {
    ...part(id, 'pin'),
    diameter: inches(full.pinDiameter),
    length: inches(length),
    ends: [endForm(ends[0]), endForm(ends[1])],
  };
}

function spring(full: FullJobOptions, id: string): Part {
  const { free, solid, wire, coils } = full.spring;
  return {
    ...part(id, 'spring'),
    diameter: inches(full.pinDiameter),
    solid: inches(solid),
    free: inches(free),
    wire: inches(wire),
    coils,
  };
}
