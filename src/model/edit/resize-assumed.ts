/**
 * When the plug turns out to be of another size, what was only assumed for the old size (chambers, pins, root flat,
 * spacing, blade) is assumed anew for the new one. What was measured or stated stays.
 */
import type { Cylinder } from '../schema/cylinder-schema.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Key } from '../schema/key-schema.ts';
import type { Id, LengthValue } from '../schema/leaf.ts';
import type { Part } from '../schema/parts-schema.ts';
import type { JobUnit } from '../units/length-unit.ts';
import { assumedKeyEnd, assumedPositions } from './usual-positions.ts';
import { type UsualSizes, type UsualValue, usualSizes } from './usual-values.ts';
import { assumedValue } from './values.ts';

/** Renews the assumptions of one cylinder and of the keys and stacks that belong to it. Diameters mm, null: not known. */
export function resizeAssumed(
  job: Job,
  cylinderId: Id,
  plugBefore: number | null,
  plugNow: number | null,
): Job {
  const sizes = usualSizes(plugNow);
  if (sizes === usualSizes(plugBefore)) return job;
  const { unit } = job.settings;
  const keys = new Set(job.seatings.filter((each) => each.cylinder === cylinderId).map((each) => each.key));
  const parts = new Set(
    job.plans
      .filter((plan) => plan.cylinder === cylinderId)
      .flatMap((plan) => plan.stacks.flatMap((stack) => stack.items.map((item) => item.part))),
  );
  return {
    ...job,
    cylinders: job.cylinders.map((each) =>
      each.id === cylinderId ? resizeCylinder(each, sizes, unit, plugNow) : each,
    ),
    keys: job.keys.map((each) => (keys.has(each.id) ? resizeKey(each, sizes, unit, plugNow) : each)),
    parts: job.parts.map((each) => (parts.has(each.id) ? resizePart(each, sizes, unit) : each)),
  };
}

function resizeCylinder(
  cylinder: Cylinder,
  sizes: UsualSizes,
  unit: JobUnit,
  plugNow: number | null,
): Cylinder {
  const places = assumedPositions(cylinder.chambers.length, unit, plugNow);
  return {
    ...cylinder,
    chambers: cylinder.chambers.map((chamber, i) => ({
      ...chamber,
      position: renewedPlace(chamber.position, places[i], unit),
      ...(chamber.capDepth && { capDepth: renewed(chamber.capDepth, sizes.capDepth, unit) }),
      holes: chamber.holes.map((hole) => ({
        ...hole,
        ...(hole.diameter && { diameter: renewed(hole.diameter, sizes.chamberDiameter, unit) }),
      })),
    })),
  };
}

function resizeKey(key: Key, sizes: UsualSizes, unit: JobUnit, plugNow: number | null): Key {
  const places = assumedPositions(key.cuts.length, unit, plugNow);
  const end = assumedKeyEnd(places, unit, plugNow);
  const { tip } = key;
  return {
    ...key,
    ...(key.bladeHeight && { bladeHeight: renewed(key.bladeHeight, sizes.bladeHeight, unit) }),
    ...(key.bladeThickness && { bladeThickness: renewed(key.bladeThickness, sizes.bladeThickness, unit) }),
    ...(key.rootFlat && { rootFlat: renewed(key.rootFlat, sizes.rootFlat, unit) }),
    ...(tip && {
      tip: {
        ...tip,
        ...(tip.position?.basis === 'assumed' && { position: end.position }),
        ...(tip.noseHeight?.basis === 'assumed' && { noseHeight: end.noseHeight }),
      },
    }),
    cuts: key.cuts.map((cut, i) => ({ ...cut, position: renewedPlace(cut.position, places[i], unit) })),
  };
}

function resizePart(part: Part, sizes: UsualSizes, unit: JobUnit): Part {
  return {
    ...part,
    ...(part.diameter && { diameter: renewed(part.diameter, sizes.pinDiameter, unit) }),
    ...(part.length && { length: renewed(part.length, sizes.driverLength, unit) }),
    ...(part.solid && { solid: renewed(part.solid, sizes.springSolid, unit) }),
    ...(part.free && { free: renewed(part.free, sizes.springFree, unit) }),
  };
}

function renewed(value: LengthValue, usual: UsualValue, unit: JobUnit): LengthValue {
  return value.basis === 'assumed' ? assumedValue(usual[unit], unit) : value;
}

function renewedPlace(value: LengthValue, place: string | undefined, unit: JobUnit): LengthValue {
  return value.basis === 'assumed' && place !== undefined ? assumedValue([place, place, place], unit) : value;
}
