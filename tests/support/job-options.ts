/** What a test may say about the job it needs; see job-builder.ts. Lengths in inches, angles in degrees. */
import type { EndOptions } from './values.ts';

/** One chamber, the cut for it, and its stack; bottom to top. Lengths in inches. */
export type ChamberOptions = {
  /** From the plug's front face. */
  position?: number;
  /** Of the cut, from the stop; the chamber's position unless told otherwise. Null: the key has no cut here. */
  cutPosition?: number | null;
  rootDepth?: number;
  /** Read over a ball instead of the root depth. */
  overBall?: { reading: number; ball: number };
  /** Diameter; null or absent: no ball. */
  ball?: number | null;
  /** Length; absent: reaches the line by subtraction. Null: no bottom pin. */
  bottomPin?: number | null;
  /** Ball and bottom pin measured together; replaces the sum of theirs. */
  lowerStack?: number;
  masterPins?: readonly number[];
  /** Length; null: no driver. */
  driver?: number | null;
  isSprung?: boolean;
  /** How far the lower stack sinks below the line with the key out. */
  restDepth?: number;
};

export type JobOptions = {
  /** Put before every id, to join jobs. */
  prefix?: string;
  title?: string;
  unit?: 'in' | 'mm';
  /** none: the caliper has no error at all; default: half a thousandth to read, a thousandth at most wrong. */
  instrumentError?: 'none' | 'default';
  shopRule?: number;
  numbering?: 'bow' | 'tip';
  plugDiameter?: number;
  /** Shell bore less plug diameter; with a sleeve, sleeve bore less plug diameter. */
  clearance?: number;
  lies?: 'away from drivers' | 'centred';
  sleeve?: { outerDiameter: number; clearance: number };
  turnDeg?: number;
  turnWays?: 'both' | 'one';
  firstChamber?: number;
  chamberSpacing?: number;
  chamberDiameter?: number;
  /** From the bore to the underside of the cap. */
  capDepth?: number;
  chambers?: number | readonly ChamberOptions[];
  stop?: 'shoulder' | 'tip';
  bladeHeight?: number;
  rootFlat?: number;
  cutAngleDeg?: number;
  tip?: { position: number; noseHeight: number; rampDeg: number };
  /** Metal under the key. */
  floorHeight?: number;
  pinDiameter?: number;
  pinFoot?: EndOptions;
  pinTop?: EndOptions;
  driverEnd?: EndOptions;
  driverLength?: number;
  spring?: { free: number; solid: number; wire: number; coils: number };
};

export type FullJobOptions = Required<Omit<JobOptions, 'sleeve' | 'chambers'>> & Pick<JobOptions, 'sleeve'>;
