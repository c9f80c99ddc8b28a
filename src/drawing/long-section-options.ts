/** What a long section can be asked to look like. Nothing here changes what is true. */
import type { JobUnit } from '../model/units/length-unit.ts';
import type { HatchUse } from './hatch-styles.ts';

export type LongSectionOptions = {
  /** CSS px, 320 to 2560. */
  readonly width: number;
  /** CSS px; the drawing is scaled down to it where it would be higher. */
  readonly maxHeight?: number;
  readonly unit: JobUnit;
  readonly pickedChamber?: string | null;
  /** The line whose chambers are flagged; by default each chamber at the first line it holds. */
  readonly flaggedLine?: string | null;
  /** mm across from the plug's axis. */
  readonly planeOffset?: number;
  /** by default `bodies` */
  readonly hatch?: HatchUse;
  /** Text size against the usual 13 px: 2 for a page at 200 %. */
  readonly textScale?: number;
  /** Only flat faces, one colour for each part key: no outlines, hatching, springs or text. */
  readonly flatColours?: (partKey: string) => string;
};
