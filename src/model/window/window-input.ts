/**
 * What decides at which heights one split of one stack lets its line turn.
 *
 * "Inner body" is what turns inside the line (the plug, or the sleeve for the outer line), "outer body" is what holds
 * it. Frame of a line: origin on the axis of the inner body, y up along the chamber, x across, z along the body from
 * the chamber's axis. All lengths mm, angles radians. Offsets are heights above the axis minus the line's radius:
 * positive is high. A turn takes the top of the inner body towards -x; a turn the other way is its mirror image and has
 * the same window, because the play of both parts is taken on either side.
 *
 *                 |         |   upper part (driver or master pin), slides in the outer body
 *         outer   |  upper  |   outer
 *       __________|         |__________   bore: clearance / 2 outside the line's radius
 *       __________ \_______/ __________   surface of the inner body: the line
 *         inner   | _______ |   inner     mouth of the inner hole: where hole and surface meet
 *                 |/       \|
 *                 |  lower  |   lower part (ball + bottom pin, or what lies on it)
 */
import type { EndShape } from '../end-shape.ts';
import type { Radians } from '../radians.ts';

/**
 * Mouth of the inner body's hole.
 *
 *  sharp           hole and surface meet in an edge
 *  deburred along  a file or stone followed the edge: `size` deep at the wall of the hole and `size` wide, everywhere
 *  countersunk     a 45 deg countersink about the hole's axis, `size` deep at the wall measured from the crest of the
 *                  inner body; on the flanks of a round body it may not reach down to the edge at all
 */
export type MouthShape =
  | { readonly kind: 'sharp' }
  | { readonly kind: 'deburred along'; readonly size: number }
  | { readonly kind: 'countersunk'; readonly size: number };

/** How the inner body lies in its bore: pushed away from the drivers by their springs, or held in the middle. */
export type InnerLies = 'away from drivers' | 'centred';

/** One end of a part that meets a split. `sideways`: how far the part can move from the middle of its hole. */
export type LowerPart = { readonly top: EndShape; readonly radius: number; readonly sideways: number };
export type UpperPart = { readonly bottom: EndShape; readonly radius: number; readonly sideways: number };

export type WindowInput = {
  /** Radius of the inner body at this line. */
  readonly lineRadius: number;
  /** How far the worn or filed crest of the inner body lies below that radius; 0 when new. */
  readonly crestDrop: number;
  /** Diametral play of this line: bore minus body. */
  readonly clearance: number;
  readonly innerLies: InnerLies;
  /** How far it turns from upright, either way. */
  readonly turn: { readonly angle: Radians };
  readonly lower: LowerPart;
  readonly upper: UpperPart;
  readonly innerHole: { readonly radius: number; readonly mouth: MouthShape };
  /** Hole of the outer body, if known; it only moves the angle at which a top that is too high stops (`binds-at.ts`). */
  readonly outerHole?: { readonly radius: number };
  /** The steepest slope, against the direction of turning, up which the upper part can still be lifted. */
  readonly steepestRamp: Radians;
};

/** A point in the frame of the line. mm. */
export type LinePoint = { readonly x: number; readonly y: number; readonly z: number };
