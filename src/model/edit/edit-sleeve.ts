/**
 * Edits of the sleeve (master ring): a second round between plug and shell, with a line of its own outside it. What nobody
 * measured is assumed: its outer diameter from the plug (measured/usual-sleeve.ts), its play as usual, its chambers as
 * wide as the plug's. Each gives a new job. Lengths mm.
 */
import { known } from '../assert.ts';
import { lengthOf } from '../measured/part-ends.ts';
import { usualSleeve } from '../measured/usual-sleeve.ts';
import type { Body, Chamber, Cylinder, Hole, Mouth } from '../schema/cylinder-schema.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import type { JobUnit } from '../units/length-unit.ts';
import { withOptional } from './change.ts';
import { changeCylinder } from './edit-cylinder.ts';
import { USUAL_CLEARANCE } from './usual-values.ts';
import { assumedLike, assumedValue } from './values.ts';

/** Which edges of the sleeve's chambers: where they open towards the plug, or towards the shell. */
export type SleeveMouth = 'innerMouth' | 'outerMouth';

/** mm, in. A deburred edge, and how much it may be. Common practice, no source. */
const DEBURRED: Readonly<Record<JobUnit, readonly [string, string, string]>> = {
  in: ['.005', '.002', '.010'],
  mm: ['0.13', '0.05', '0.25'],
};

/** The sleeve of a cylinder; null when it has none. */
export function sleeveOf(cylinder: Cylinder): Body | null {
  return cylinder.bodies.find((body) => body.role === 'sleeve') ?? null;
}

/** The sleeve's outer diameter as entered, else as it is assumed. */
export function sleeveDiameter(cylinder: Cylinder): LengthValue | undefined {
  const [plug] = cylinder.bodies;
  const sleeve = sleeveOf(cylinder);
  if (sleeve?.outerDiameter !== undefined || plug?.outerDiameter === undefined) return sleeve?.outerDiameter;
  return usualSleeve(lengthOf(plug.outerDiameter, 0), lengthOf(cylinder.lines[0]?.clearance, 0));
}

/** Puts a sleeve between plug and shell; nothing changes when there is one. The play entered so far stays the plug's. */
export function addSleeve(job: Job, cylinderId: Id, newId: () => Id): Job {
  const { unit } = job.settings;
  return changeCylinder(job, cylinderId, (cylinder) => {
    if (sleeveOf(cylinder) !== null) return cylinder;
    const [plug, shell, inner] = ends(cylinder);
    const sleeve = newId();
    return {
      ...cylinder,
      bodies: [plug, { id: sleeve, role: 'sleeve' }, shell],
      lines: [
        { ...inner, outer: sleeve },
        {
          id: newId(),
          inner: sleeve,
          outer: shell.id,
          clearance: assumedValue(USUAL_CLEARANCE[unit], unit),
          lies: inner.lies,
        },
      ],
      chambers: cylinder.chambers.map((chamber) => withHole(chamber, plug.id, sleeve, job.sessions)),
    };
  });
}

/** Takes the sleeve away, and all that was said about it: its size, its line, its chambers, keys meant for that line. */
export function removeSleeve(job: Job, cylinderId: Id): Job {
  const cylinder = known(
    job.cylinders.find((each) => each.id === cylinderId),
    `cylinder ${cylinderId}`,
  );
  const sleeve = sleeveOf(cylinder)?.id;
  if (sleeve === undefined) return job;
  const [plug, shell, inner] = ends(cylinder);
  const gone = new Set(cylinder.lines.filter((line) => line.id !== inner.id).map((line) => line.id));
  const without = changeCylinder(job, cylinderId, (each) => ({
    ...each,
    bodies: [plug, shell],
    lines: [{ ...inner, outer: shell.id }],
    chambers: each.chambers.map((chamber) => ({
      ...chamber,
      holes: chamber.holes.filter((hole) => hole.body !== sleeve),
    })),
  }));
  return { ...without, intents: without.intents.filter((intent) => !gone.has(intent.line)) };
}

/** Sets the sleeve's outer diameter; taken away, it is assumed again. */
export function setSleeveDiameter(job: Job, cylinderId: Id, value: LengthValue | undefined): Job {
  return changeCylinder(job, cylinderId, (cylinder) => ({
    ...cylinder,
    bodies: cylinder.bodies.map((body) =>
      body.role === 'sleeve' ? withOptional(body, 'outerDiameter', value) : body,
    ),
  }));
}

/** Sets how the edges of the sleeve's chambers were seen to be, in every chamber. */
export function setSleeveMouths(job: Job, cylinderId: Id, which: SleeveMouth, kind: Mouth['kind']): Job {
  const { unit } = job.settings;
  const mouth: Mouth =
    kind === 'sharp'
      ? { kind, basis: 'seen' }
      : { kind, size: assumedValue(DEBURRED[unit], unit), basis: 'seen' };
  return changeCylinder(job, cylinderId, (cylinder) => {
    const sleeve = sleeveOf(cylinder)?.id;
    const changed = (hole: Hole): Hole => (hole.body === sleeve ? { ...hole, [which]: mouth } : hole);
    return {
      ...cylinder,
      chambers: cylinder.chambers.map((chamber) => ({ ...chamber, holes: chamber.holes.map(changed) })),
    };
  });
}

/** How the edges of the sleeve's chambers are, where somebody looked and all are alike; null otherwise. */
export function sleeveMouthsSeen(cylinder: Cylinder, which: SleeveMouth): Mouth['kind'] | null {
  const sleeve = sleeveOf(cylinder)?.id;
  const kinds = cylinder.chambers.map((chamber) => {
    const mouth = chamber.holes.find((hole) => hole.body === sleeve)?.[which];
    return mouth?.basis === 'seen' ? mouth.kind : null;
  });
  const [first = null] = kinds;
  return kinds.every((kind) => kind === first) ? first : null;
}

/** Plug, shell, and the line outside the plug. */
function ends(cylinder: Cylinder): readonly [Body, Body, Cylinder['lines'][number]] {
  const plug = known(cylinder.bodies[0], 'plug');
  const shell = known(cylinder.bodies[cylinder.bodies.length - 1], 'shell');
  const inner = known(
    cylinder.lines.find((line) => line.inner === plug.id),
    'line outside the plug',
  );
  return [plug, shell, inner];
}

/** The sleeve's hole after the plug's, as wide as that one, which is drilled with it: assumed, to as much as another of its make. */
function withHole(chamber: Chamber, plug: Id, sleeve: Id, sessions: Job['sessions']): Chamber {
  const own = chamber.holes.find((hole) => hole.body === plug);
  const hole: Hole =
    own?.diameter === undefined
      ? { body: sleeve }
      : { body: sleeve, diameter: asAssumed(own.diameter, sessions) };
  const at = chamber.holes.findIndex((each) => each.body === plug) + 1;
  return { ...chamber, holes: [...chamber.holes.slice(0, at), hole, ...chamber.holes.slice(at)] };
}

function asAssumed(value: LengthValue, sessions: Job['sessions']): LengthValue {
  return value.basis === 'assumed' ? value : assumedLike({ ...value, basis: 'measured' }, sessions);
}
