/** Edits of the cylinder: plug, play, turn, chambers. Each gives a new job. Lengths mm. */
import { lengthOf } from '../measured/part-ends.ts';
import type { Chamber, Cylinder } from '../schema/cylinder-schema.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import { changeById, withOptional } from './change.ts';
import { resizeAssumed } from './resize-assumed.ts';
import { CLEARANCE_BY_RATTLE } from './usual-values.ts';
import { assumedValue, statedAngle } from './values.ts';

/** Changes one cylinder. */
export function changeCylinder(job: Job, id: Id, change: (cylinder: Cylinder) => Cylinder): Job {
  return { ...job, cylinders: changeById(job.cylinders, id, change) };
}

/** Sets the plug's diameter; what was assumed for a plug of another size is assumed anew. */
export function setPlugDiameter(job: Job, cylinder: Id, value: LengthValue | undefined): Job {
  const before = plugDiameterOf(job, cylinder);
  const changed = changeCylinder(job, cylinder, (each) => ({
    ...each,
    bodies: each.bodies.map((body) =>
      body.role === 'plug' ? withOptional(body, 'outerDiameter', value) : body,
    ),
  }));
  return resizeAssumed(changed, cylinder, before, value === undefined ? null : lengthOf(value, 0));
}

/** The plug's diameter as entered, mm; null when it is not. */
export function plugDiameterOf(job: Job, cylinder: Id): number | null {
  const plug = job.cylinders.find((each) => each.id === cylinder)?.bodies.find((b) => b.role === 'plug');
  return plug?.outerDiameter === undefined ? null : lengthOf(plug.outerDiameter, 0);
}

/** Sets the play at a line: bore less the diameter of what turns in it. */
export function setClearance(job: Job, cylinder: Id, line: Id, value: LengthValue): Job {
  return changeCylinder(job, cylinder, (each) => ({
    ...each,
    lines: changeById(each.lines, line, (one) => ({ ...one, clearance: value })),
  }));
}

/** Sets the play by how it rattles: an assumed value with a range. */
export function setRattle(job: Job, cylinder: Id, line: Id, rattle: 'tight' | 'normal' | 'loose'): Job {
  const { unit } = job.settings;
  return setClearance(job, cylinder, line, assumedValue(CLEARANCE_BY_RATTLE[rattle][unit], unit));
}

/** Sets where the plug lies in its play. */
export function setLies(job: Job, cylinder: Id, line: Id, lies: Cylinder['lines'][number]['lies']): Job {
  return changeCylinder(job, cylinder, (each) => ({
    ...each,
    lines: changeById(each.lines, line, (one) => ({ ...one, lies })),
  }));
}

/** Sets how far the plug turns, degrees, and which ways. */
export function setTurn(job: Job, cylinder: Id, angleDeg: number, ways: 'both' | 'one'): Job {
  return changeCylinder(job, cylinder, (each) => ({
    ...each,
    turn: { angle: statedAngle(angleDeg), ways },
  }));
}

/** Sets where one chamber's centre lies, from the plug's front face. */
export function setChamberPosition(job: Job, cylinder: Id, chamber: Id, value: LengthValue): Job {
  return changeChamber(job, cylinder, chamber, (each) => ({ ...each, position: value }));
}

/** Sets the diameter of the holes in one body, in every chamber. */
export function setChamberDiameter(job: Job, cylinder: Id, body: Id, value: LengthValue | undefined): Job {
  return changeCylinder(job, cylinder, (each) => ({
    ...each,
    chambers: each.chambers.map((chamber) => ({
      ...chamber,
      holes: chamber.holes.map((hole) => (hole.body === body ? withOptional(hole, 'diameter', value) : hole)),
    })),
  }));
}

/** Sets how deep the shell's chambers are, from its bore to the underside of the cap, in every chamber. */
export function setCapDepth(job: Job, cylinder: Id, value: LengthValue | undefined): Job {
  return changeCylinder(job, cylinder, (each) => ({
    ...each,
    chambers: each.chambers.map((chamber) => withOptional(chamber, 'capDepth', value)),
  }));
}

/** Sets how wide the slot under the chambers is. */
export function setKeywayWidth(job: Job, cylinder: Id, value: LengthValue | undefined): Job {
  return changeCylinder(job, cylinder, (each) => withOptional(each, 'keywayWidth', value));
}

/** Changes one chamber. */
export function changeChamber(
  job: Job,
  cylinder: Id,
  chamber: Id,
  change: (chamber: Chamber) => Chamber,
): Job {
  return changeCylinder(job, cylinder, (each) => ({
    ...each,
    chambers: changeById(each.chambers, chamber, change),
  }));
}
