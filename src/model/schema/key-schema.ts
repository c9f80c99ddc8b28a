/**
 * Keys, and how a key sits in a cylinder. Cuts are never paired with chambers by their place in a list: both have
 * positions. What belongs to a key in a plug (metal under the key, what stood up, what was felt) lives with the pair.
 */
import * as z from 'zod/mini';
import {
  angleSchema,
  idSchema,
  lengthSchema,
  listSchema,
  restricted,
  shareable,
  textSchema,
} from './leaf.ts';

const cutSchema = z.strictObject({
  id: shareable(idSchema()),
  /** Centre of the cut from the stop: from the shoulder inwards, or from the tip back towards the bow. */
  position: restricted(lengthSchema()),
  /** Metal left under the cut, from its bottom to the key's bottom edge. */
  rootDepth: restricted(z.optional(lengthSchema())),
  /** Ball laid in the cut, one jaw on it, the other on the key's bottom edge. */
  overBall: restricted(z.optional(z.strictObject({ reading: lengthSchema(), ball: lengthSchema() }))),
  rootFlat: restricted(z.optional(lengthSchema())),
  includedAngle: restricted(z.optional(angleSchema())),
});

export const keySchema = z.strictObject({
  id: shareable(idSchema()),
  label: shareable(textSchema()),
  bladeHeight: restricted(z.optional(lengthSchema())),
  stop: z.strictObject({ kind: shareable(z.enum(['shoulder', 'tip'])) }),
  tip: restricted(
    z.optional(
      z.strictObject({
        /** From the stop to the end of the blade. */
        position: z.optional(lengthSchema()),
        noseHeight: z.optional(lengthSchema()),
        /** Between the tip's slope and the blade's length. */
        ramp: z.optional(angleSchema()),
      }),
    ),
  ),
  bladeThickness: shareable(z.optional(lengthSchema())),
  /** For cuts that do not state their own. */
  rootFlat: restricted(z.optional(lengthSchema())),
  includedAngle: restricted(z.optional(angleSchema())),
  cuts: listSchema(cutSchema, 12),
});

const itemSchema = () => z.strictObject({ part: idSchema(), flipped: z.optional(z.literal(true)) });

const standsUpBySchema = z.strictObject({
  chamber: shareable(idSchema()),
  /** What was in the hole, bottom to top; its height when measured together. */
  items: restricted(listSchema(itemSchema(), 8)),
  stack: restricted(lengthSchema()),
  /** Caliper zeroed across the plug beside the chamber, then across the pin. */
  reading: restricted(lengthSchema()),
});

const feltSchema = z.strictObject({
  chamber: shareable(idSchema()),
  items: restricted(listSchema(itemSchema(), 8)),
  is: shareable(z.enum(['above', 'level', 'below'])),
});

export const seatingSchema = z.strictObject({
  cylinder: shareable(idSchema()),
  key: shareable(idSchema()),
  /** Answer to: is the key's bottom edge level with the underside of the plug? */
  bottomEdge: shareable(z.optional(z.enum(['level', 'above', 'unknown']))),
  /** For a key that stops at its tip: where the tip stops, from the plug's front face. */
  stopAt: shareable(z.optional(lengthSchema())),
  /** How far the key stops short of home (+), or goes past (-), along the plug. */
  stopShort: shareable(z.optional(lengthSchema())),
  /** Metal under the key: from the plug's lowest point up to the key's bottom edge. */
  keywayFloorHeight: restricted(z.optional(lengthSchema())),
  /** Rod down the chamber to the floor, read to the crest: plug minus floor in one reading. */
  plugMinusFloor: restricted(z.optional(lengthSchema())),
  standsUpBy: listSchema(standsUpBySchema, 24),
  felt: listSchema(feltSchema, 200),
  /** Plans known to have worked with this key: their stacks give the effective diameter. */
  knownSets: shareable(listSchema(idSchema(), 24)),
  /** The person's own choice of route for a chamber, instead of the one with the smallest ±. */
  pinnedRoutes: shareable(
    z.record(idSchema(), z.enum(['subtraction', 'over the ball', 'stands up by', 'known set'])),
  ),
});

export { itemSchema };
export type Key = z.infer<typeof keySchema>;
export type Cut = z.infer<typeof cutSchema>;
export type Seating = z.infer<typeof seatingSchema>;
export type Item = z.infer<ReturnType<typeof itemSchema>>;
export type StandsUpBy = z.infer<typeof standsUpBySchema>;
