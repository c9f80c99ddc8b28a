/**
 * What is assumed until somebody measures it: the usual value, and from where to where it may be. The ranges count in
 * the ±. All of them are common practice, no source, and none belongs to a particular lock.
 */
import type { JobUnit } from '../units/length-unit.ts';

/** The usual value, the least and the most it may be, as plain numbers in the unit. */
export type UsualValue = Readonly<Record<JobUnit, readonly [value: string, from: string, to: string]>>;

/** Play between plug and shell: bore less plug. */
export const USUAL_CLEARANCE: UsualValue = {
  in: ['.004', '.002', '.006'],
  mm: ['0.10', '0.05', '0.15'],
};

/** The same by how it rattles. */
export const CLEARANCE_BY_RATTLE: Readonly<Record<'tight' | 'normal' | 'loose', UsualValue>> = {
  tight: { in: ['.002', '.001', '.003'], mm: ['0.05', '0.025', '0.08'] },
  normal: USUAL_CLEARANCE,
  loose: { in: ['.006', '.004', '.009'], mm: ['0.15', '0.10', '0.23'] },
};

/** Within this of its line a split counts as level. */
export const USUAL_SHOP_RULE: Readonly<Record<JobUnit, string>> = { in: '.001', mm: '0.025' };

/** Driver against steel in a clean cylinder. */
export const USUAL_FRICTION = 0.22;
export const USUAL_STEEPEST_RAMP_DEG = 60;
export const USUAL_CUT_ANGLE_DEG = { value: 90, from: 86, to: 100 };
export const USUAL_TIP_RAMP_DEG = { value: 45, from: 35, to: 55 };

/** What goes with the size of a plug. */
export type UsualSizes = {
  readonly chamberDiameter: UsualValue;
  readonly pinDiameter: UsualValue;
  readonly rootFlat: UsualValue;
  readonly bladeHeight: UsualValue;
  readonly bladeThickness: UsualValue;
  readonly driverLength: UsualValue;
  readonly springSolid: UsualValue;
  readonly springFree: UsualValue;
  readonly capDepth: UsualValue;
  /** Centre of the first chamber, and from centre to centre. */
  readonly firstChamber: Readonly<Record<JobUnit, string>>;
  readonly spacing: Readonly<Record<JobUnit, string>>;
};

/** mm. Plugs from here on count as large. */
const LARGE_PLUG_FROM_MM = 15.5;

const SMALL: UsualSizes = {
  chamberDiameter: { in: ['.118', '.116', '.121'], mm: ['3.00', '2.95', '3.07'] },
  pinDiameter: { in: ['.115', '.114', '.116'], mm: ['2.92', '2.90', '2.95'] },
  rootFlat: { in: ['.045', '.030', '.055'], mm: ['1.15', '0.76', '1.40'] },
  bladeHeight: { in: ['.335', '.320', '.350'], mm: ['8.50', '8.10', '8.90'] },
  bladeThickness: { in: ['.080', '.070', '.090'], mm: ['2.00', '1.80', '2.30'] },
  driverLength: { in: ['.200', '.180', '.220'], mm: ['5.10', '4.60', '5.60'] },
  springSolid: { in: ['.120', '.090', '.150'], mm: ['3.00', '2.30', '3.80'] },
  springFree: { in: ['.450', '.400', '.550'], mm: ['11.5', '10.0', '14.0'] },
  capDepth: { in: ['.430', '.400', '.470'], mm: ['10.9', '10.2', '11.9'] },
  firstChamber: { in: '.247', mm: '6.25' },
  spacing: { in: '.156', mm: '3.96' },
};

const LARGE: UsualSizes = {
  chamberDiameter: { in: ['.160', '.157', '.164'], mm: ['4.06', '3.99', '4.17'] },
  pinDiameter: { in: ['.156', '.154', '.157'], mm: ['3.96', '3.91', '3.99'] },
  rootFlat: { in: ['.060', '.045', '.075'], mm: ['1.52', '1.14', '1.90'] },
  bladeHeight: { in: ['.500', '.470', '.530'], mm: ['12.7', '11.9', '13.5'] },
  bladeThickness: { in: ['.090', '.075', '.110'], mm: ['2.30', '1.90', '2.80'] },
  driverLength: { in: ['.275', '.250', '.300'], mm: ['7.00', '6.30', '7.60'] },
  springSolid: { in: ['.190', '.150', '.230'], mm: ['4.80', '3.80', '5.80'] },
  springFree: { in: ['.700', '.600', '.800'], mm: ['17.8', '15.2', '20.3'] },
  capDepth: { in: ['.640', '.600', '.700'], mm: ['16.3', '15.2', '17.8'] },
  firstChamber: { in: '.350', mm: '8.89' },
  spacing: { in: '.250', mm: '6.35' },
};

/** Gives what usually goes with a plug of this diameter; for a plug not measured yet, the common small one. mm. */
export function usualSizes(plugDiameterMm: number | null): UsualSizes {
  return plugDiameterMm !== null && plugDiameterMm >= LARGE_PLUG_FROM_MM ? LARGE : SMALL;
}
