/** The parts of a stack that nobody measured yet. */
import type { Id } from '../schema/leaf.ts';
import type { Part } from '../schema/parts-schema.ts';
import type { JobUnit } from '../units/length-unit.ts';
import { usualSizes } from './usual-values.ts';
import { assumedValue } from './values.ts';

/** Makes the parts of one stack, bottom to top, none of them measured, for a plug of this diameter; null: not known. mm. */
export function newParts(newId: () => Id, unit: JobUnit, plugDiameterMm: number | null = null): Part[] {
  const sizes = usualSizes(plugDiameterMm);
  const diameter = assumedValue(sizes.pinDiameter[unit], unit);
  const common = { quantity: 1, original: false };
  return [
    { ...common, id: newId(), label: 'ball', kind: 'ball', diameter },
    { ...common, id: newId(), label: 'bottom pin', kind: 'pin', diameter },
    {
      ...common,
      id: newId(),
      label: 'driver',
      kind: 'pin',
      diameter,
      length: assumedValue(sizes.driverLength[unit], unit),
    },
    {
      ...common,
      id: newId(),
      label: 'spring',
      kind: 'spring',
      solid: assumedValue(sizes.springSolid[unit], unit),
      free: assumedValue(sizes.springFree[unit], unit),
    },
  ];
}
