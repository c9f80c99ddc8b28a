/**
 * What the shape of a job file alone cannot say: ids are unique, everything referred to exists, lines lie between
 * neighbouring bodies, an assumed value has a range that holds it, a range runs upwards.
 */
import type { Cylinder } from './cylinder-schema.ts';
import type { Job } from './job-schema.ts';
import type { Id, LengthValue } from './leaf.ts';
import { printable } from './printable.ts';
import type { Problem } from './problem.ts';

/** Lists every broken reference of a job, each with its place and one sentence. */
export function checkReferences(job: Job): Problem[] {
  const problems: Problem[] = [];
  const say = (field: string, message: string) => {
    problems.push({ field, message });
  };
  const parts = idsOf(job.parts, 'parts', say);
  const cylinders = idsOf(job.cylinders, 'cylinders', say);
  const keys = idsOf(job.keys, 'keys', say);
  const plans = idsOf(job.plans, 'plans', say);
  const instruments = idsOf(job.instruments, 'instruments', say);
  const sessions = idsOf(job.sessions, 'sessions', say);
  idsOf(job.groups, 'groups', say);
  for (const cylinder of job.cylinders) checkCylinder(cylinder, say);
  for (const key of job.keys) idsOf(key.cuts, `key ${printable(key.label)} › cuts`, say);
  const need: Need = (known, id, field, what) => {
    if (!known.has(id)) say(field, `refers to ${what} "${id}", which is not in this file.`);
  };
  for (const session of job.sessions) need(instruments, session.instrument, 'sessions', 'an instrument');
  checkSettings(job, instruments, sessions, need);
  const chambersOf = new Map(
    job.cylinders.map((cylinder) => [cylinder.id, new Set(cylinder.chambers.map((c) => c.id))]),
  );
  const pairs = new Set<string>();
  for (const seating of job.seatings) {
    need(cylinders, seating.cylinder, 'seatings', 'a cylinder');
    need(keys, seating.key, 'seatings', 'a key');
    const pair = `${seating.cylinder} ${seating.key}`;
    if (pairs.has(pair)) say('seatings', 'has the same key and cylinder paired twice.');
    pairs.add(pair);
    const chambers = chambersOf.get(seating.cylinder) ?? new Set();
    for (const entry of [...seating.standsUpBy, ...seating.felt]) {
      need(chambers, entry.chamber, 'seatings', 'a chamber');
      for (const item of entry.items) need(parts, item.part, 'seatings', 'a part');
    }
    for (const plan of seating.knownSets) need(plans, plan, 'seatings › knownSets', 'a plan');
    for (const chamber of Object.keys(seating.pinnedRoutes))
      need(chambers, chamber, 'seatings › pinnedRoutes', 'a chamber');
  }
  for (const group of job.groups) for (const part of group.parts) need(parts, part, 'groups', 'a part');
  for (const plan of job.plans) {
    need(cylinders, plan.cylinder, 'plans', 'a cylinder');
    const chambers = chambersOf.get(plan.cylinder) ?? new Set();
    const seen = new Set<Id>();
    for (const stack of plan.stacks) {
      need(chambers, stack.chamber, 'plans › stacks', 'a chamber');
      if (seen.has(stack.chamber)) say('plans › stacks', 'has two stacks in one chamber.');
      seen.add(stack.chamber);
      for (const item of [...stack.items, ...(stack.rest?.items ?? [])])
        need(parts, item.part, 'plans › stacks', 'a part');
    }
  }
  checkBenchResults(job, { plans, keys, parts, chambersOf }, need);
  for (const intent of job.intents) {
    need(keys, intent.key, 'intents', 'a key');
    need(cylinders, intent.cylinder, 'intents', 'a cylinder');
    const lines = job.cylinders.find(({ id }) => id === intent.cylinder)?.lines ?? [];
    need(new Set(lines.map(({ id }) => id)), intent.line, 'intents', 'a shear line');
  }
  checkValues(job, '', instruments, sessions, say);
  return problems;
}

type Say = (field: string, message: string) => void;
type Need = (known: ReadonlySet<Id>, id: Id, field: string, what: string) => void;

function checkSettings(job: Job, instruments: Set<Id>, sessions: Set<Id>, need: Need): void {
  const { instrument, session } = job.settings;
  if (instrument !== null) need(instruments, instrument, 'settings › instrument', 'an instrument');
  if (session !== null) need(sessions, session, 'settings › session', 'a zero check');
}

type Referred = {
  readonly plans: ReadonlySet<Id>;
  readonly keys: ReadonlySet<Id>;
  readonly parts: ReadonlySet<Id>;
  /** The chambers of each cylinder. */
  readonly chambersOf: ReadonlyMap<Id, ReadonlySet<Id>>;
};

/** What was tried on the bench: with which key, in which hole of the plan's cylinder, with which parts in it. */
function checkBenchResults(job: Job, { plans, keys, parts, chambersOf }: Referred, need: Need): void {
  const cylinderOf = new Map(job.plans.map((plan) => [plan.id, plan.cylinder]));
  for (const { plan, key, chamber, items } of job.benchResults) {
    need(plans, plan, 'benchResults', 'a plan');
    need(keys, key, 'benchResults', 'a key');
    const chambers = chambersOf.get(cylinderOf.get(plan) ?? '') ?? new Set();
    if (chamber !== 'all') need(chambers, chamber, 'benchResults', 'a chamber');
    for (const item of items) need(parts, item.part, 'benchResults', 'a part');
  }
}

function idsOf(list: readonly { id: Id }[], field: string, say: Say): Set<Id> {
  const ids = new Set<Id>();
  for (const { id } of list) {
    if (ids.has(id)) say(field, `has the id "${id}" twice.`);
    ids.add(id);
  }
  return ids;
}

function checkCylinder(cylinder: Cylinder, say: Say): void {
  const field = `cylinder ${printable(cylinder.label)}`;
  const bodies = idsOf(cylinder.bodies, `${field} › bodies`, say);
  const chambers = idsOf(cylinder.chambers, `${field} › chambers`, say);
  for (const body of cylinder.bodies) {
    for (const chamber of Object.keys(body.crestDropAt ?? {})) {
      if (!chambers.has(chamber))
        say(`${field} › bodies`, `refers to a chamber "${chamber}", which is not in this cylinder.`);
    }
  }
  const roles = cylinder.bodies.map((body) => body.role).join(' ');
  if (roles !== 'plug shell' && roles !== 'plug sleeve shell') {
    say(`${field} › bodies`, 'should run inside to outside: plug, shell, or plug, sleeve, shell.');
  }
  if (cylinder.lines.length !== cylinder.bodies.length - 1) {
    say(`${field} › lines`, 'should have one shear line between each two neighbouring bodies.');
  }
  cylinder.lines.forEach((line, i) => {
    if (line.inner !== cylinder.bodies[i]?.id || line.outer !== cylinder.bodies[i + 1]?.id) {
      say(`${field} › lines ${i + 1}`, 'should lie between neighbouring bodies, inside to outside.');
    }
  });
  for (const chamber of cylinder.chambers) {
    for (const hole of chamber.holes) {
      if (!bodies.has(hole.body))
        say(`${field} › chambers`, `refers to a body "${hole.body}", which is not in this cylinder.`);
    }
  }
}

/** Walks the whole job for values: instruments and sessions exist, assumed ones have a range that runs upwards. */
function checkValues(node: unknown, field: string, instruments: Set<Id>, sessions: Set<Id>, say: Say): void {
  if (typeof node !== 'object' || node === null) return;
  if (isValue(node)) {
    for (const reading of node.readings) {
      if (reading.instrument !== null && !instruments.has(reading.instrument)) {
        say(field, `was read with an instrument "${reading.instrument}", which is not in this file.`);
      }
      if (reading.session !== null && !sessions.has(reading.session)) {
        say(field, `was read under a zero check "${reading.session}", which is not in this file.`);
      }
    }
    if (node.basis === 'assumed' && node.range === undefined) say(field, 'is assumed, so it needs a range.');
    if (node.range !== undefined && node.range.from > node.range.to)
      say(field, 'has a range that runs backwards.');
    if (node.readings.every((reading) => reading.left === 'out'))
      say(field, 'has no reading left that counts.');
    return;
  }
  for (const [name, child] of Object.entries(node)) {
    checkValues(
      child,
      field === ''
        ? printable(name)
        : `${field} › ${/^\d+$/.test(name) ? Number(name) + 1 : printable(name)}`,
      instruments,
      sessions,
      say,
    );
  }
}

function isValue(node: object): node is LengthValue {
  return 'readings' in node && 'basis' in node;
}
