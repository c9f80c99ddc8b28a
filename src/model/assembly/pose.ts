/**
 * Where everything is at one moment: the key still `travel` out, the bodies turned. Frame, units and signs as in
 * assembly.ts; heights are those before turning, and a part that turns with a body turns about that body's axis.
 */
import type { Radians } from '../radians.ts';
import type { Id } from '../schema/leaf.ts';
import type { StackPart } from './assembly.ts';

export type PosedPart = {
  readonly part: StackPart;
  /** Height of its lowest point. */
  readonly y: number;
  /** Height of its highest point; for a spring, where it is pressed. */
  readonly topY: number;
  /** The body it turns with at this moment. */
  readonly turnsWith: Id;
};

export type PosedStack = {
  readonly chamber: Id;
  /** Height of the foot's lowest point. */
  readonly footY: number;
  /** What holds it: the key, the bottom of its chamber (key out), or nothing is known. */
  readonly heldBy: 'key' | 'rest';
  /** The spring is pressed solid and the stack stands higher than it can: by how much. 0 when there is room. */
  readonly crushedBy: number;
  readonly parts: readonly PosedPart[];
};

export type Pose = {
  readonly travel: number;
  /** How far each body is turned. Bodies that are not listed stand still. */
  readonly turns: ReadonlyMap<Id, Radians>;
  readonly stacks: readonly PosedStack[];
};
