/**
 * One cylinder with one key and one plan, as plain numbers: what the drawing draws, the solids are made of, and the
 * mechanics works on. Only nominal values; how sure they are is the estimates' business.
 *
 * Frame: origin on the plug's axis in the plug's front face, where the key's shoulder stops; x across, y up towards the
 * drivers, z inwards. mm, radians. With the plug lying away from the drivers, all the play is at the top: each outer
 * body's own axis lies half the play of the line below it higher.
 *
 *        capY ----+--+----+--+---- underside of the cap
 *                 |  |    |  |     spring
 *   shell         |##|    |##|     driver
 *   ______________|##|____|##|____ bore:  outerAxisY + radius + clearance / 2
 *   --------------|==|----|==|---- line:  innerAxisY + radius (less the crest's drop)
 *   plug          |==|    |==|     bottom pin
 *                 (o )    (o )     ball on the key
 *        bottomY ------------------ key's bottom edge
 */
import type { EndShape } from '../end-shape.ts';
import type { Radians } from '../radians.ts';
import type { Id } from '../schema/leaf.ts';
import type { KeyProfile, KeyShape } from '../contact/key-profile.ts';
import type { MouthShape } from '../window/window-input.ts';

export type AssemblyBody = {
  readonly id: Id;
  readonly role: 'plug' | 'sleeve' | 'shell';
  /** Of the solid round; for the shell, half its drawn width. */
  readonly outerRadius: number;
  /** 0 for the plug. */
  readonly boreRadius: number;
  /** Height of the body's own axis. */
  readonly axisY: number;
  readonly frontZ: number;
  readonly backZ: number;
};

export type AssemblyLine = {
  readonly id: Id;
  readonly inner: Id;
  readonly outer: Id;
  /** Radius of the inner body. */
  readonly radius: number;
  readonly clearance: number;
  readonly innerAxisY: number;
  readonly outerAxisY: number;
  readonly lies: 'away from drivers' | 'centred';
};

export type AssemblyHole = {
  readonly body: Id;
  readonly radius: number;
  /** Across, out of line with the plug's chamber. */
  readonly sideways: number;
  readonly innerMouth: MouthShape;
  readonly outerMouth: MouthShape;
};

export type AssemblyChamber = {
  readonly id: Id;
  /** As counted on screen, from the bow or from the tip. */
  readonly number: number;
  readonly z: number;
  /** Inside to outside, one for each body. */
  readonly holes: readonly AssemblyHole[];
  readonly capY: number;
  readonly closed: boolean;
  /** For each line, inside to outside: how far the inner body's crest lies below its radius here. */
  readonly crestDrops: readonly number[];
};

export type AssemblyKey = {
  readonly id: Id;
  readonly shape: KeyShape;
  readonly profile: KeyProfile;
  /** Height of the key's bottom edge. */
  readonly bottomY: number;
  readonly thickness: number;
  /** How far the key still is out when it stops: 0 when home. */
  readonly seatedTravel: number;
  /** Travel at which the tip has left every stack. */
  readonly outTravel: number;
};

export type PartRole = 'ball' | 'bottomPin' | 'masterPin' | 'driver' | 'spring';

export type StackPart = {
  readonly part: Id;
  readonly label: string;
  readonly role: PartRole;
  readonly radius: number;
  /** Between the extreme points of both ends; a spring's free length. */
  readonly length: number;
  /** The end that points down, with its own highest point down. */
  readonly lower: EndShape;
  readonly upper: EndShape;
  /** How far its lowest point reaches down past the highest point of the part under it (a ball in a dimple). */
  readonly seat: number;
  readonly waist: {
    readonly kind: 'spool' | 'serrated' | 'mushroom';
    readonly from: number;
    readonly length: number;
    readonly radius: number;
  } | null;
  /** Springs: squeezed solid; wire thickness and coils for the drawing. */
  readonly solid: number;
  readonly wire: number;
  readonly coils: number;
};

export type AssemblyStack = {
  readonly chamber: Id;
  /** Bottom to top. */
  readonly parts: readonly StackPart[];
  /** Height of the foot's lowest point with no key in; null when the stack's rest was never seen (then it stops at the key). */
  readonly restY: number | null;
};

export type Assembly = {
  readonly cylinder: Id;
  readonly plan: Id;
  readonly label: string;
  /** Inside to outside. */
  readonly bodies: readonly AssemblyBody[];
  /** Inside to outside. */
  readonly lines: readonly AssemblyLine[];
  /** Front to back. */
  readonly chambers: readonly AssemblyChamber[];
  readonly key: AssemblyKey | null;
  readonly stacks: readonly AssemblyStack[];
  readonly turn: { readonly angle: Radians; readonly ways: 'both' | 'one' };
  readonly keywayWidth: number;
};
