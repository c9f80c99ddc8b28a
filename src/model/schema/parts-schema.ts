/**
 * Parts, groups measured together, plans (what is in each hole), what keys are meant to do, and what the bench said.
 * A part's role (bottom pin, master pin, driver) follows from its place in a stack and is never stored.
 */
import * as z from 'zod/mini';
import { itemSchema } from './key-schema.ts';
import {
  angleSchema,
  idSchema,
  lengthSchema,
  listSchema,
  numberSchema,
  restricted,
  shareable,
  textSchema,
} from './leaf.ts';

const endSizesSchema = () =>
  z.strictObject({
    kind: z.enum(['flat', 'bevel', 'radius', 'dome', 'cone', 'cup', 'sphere']),
    /** bevel: how far in from the rim. */
    width: z.optional(lengthSchema()),
    /** bevel: between bevel and face. */
    angle: z.optional(angleSchema()),
    /** radius, dome. A dome without one is domed to the plug. */
    radius: z.optional(lengthSchema()),
    /** cone: the small flat at the point. */
    tipFlatDiameter: z.optional(lengthSchema()),
    /** cup: the dimple's mouth. */
    mouthDiameter: z.optional(lengthSchema()),
    /** cone, cup. */
    includedAngle: z.optional(angleSchema()),
  });

/** The shape of an end. Assumed shapes are scenarios: an alternative that flips a verdict is named. */
const shapeSchema = () =>
  z.strictObject({
    ...endSizesSchema().shape,
    basis: z.enum(['seen', 'assumed']),
    alternatives: z.optional(z.array(endSizesSchema()).check(z.maxLength(6))),
  });

const waistSchema = () =>
  z.strictObject({
    kind: z.enum(['spool', 'serrated', 'mushroom']),
    /** From the lower end to where the narrowing starts. */
    from: lengthSchema(),
    length: lengthSchema(),
    diameter: lengthSchema(),
  });

export const partSchema = z.strictObject({
  id: shareable(idSchema()),
  label: shareable(textSchema(80)),
  kind: shareable(z.enum(['ball', 'pin', 'spring'])),
  diameter: shareable(z.optional(lengthSchema())),
  /** Between the extreme points of both ends. A ball has none but its diameter. */
  length: restricted(z.optional(lengthSchema())),
  /** Lower end, upper end, as the part stands when not turned over. */
  ends: shareable(z.optional(z.tuple([shapeSchema(), shapeSchema()]))),
  waist: shareable(z.optional(waistSchema())),
  /** Spring: squeezed solid between the jaws, and free. */
  solid: shareable(z.optional(lengthSchema())),
  free: shareable(z.optional(lengthSchema())),
  wire: shareable(z.optional(lengthSchema())),
  /** All coils, the closed ones at the ends too. */
  coils: shareable(z.optional(numberSchema(1, 200))),
  coilEnds: shareable(z.optional(z.enum(['closed and ground', 'closed', 'open']))),
  /** Of the wire's material, in shear. GPa. */
  shearModulusGPa: shareable(z.optional(numberSchema(1, 200))),
  /** What the spring presses with at a length. N. */
  pressed: shareable(
    z.optional(listSchema(z.strictObject({ length: lengthSchema(), newtons: numberSchema(0, 1000) }), 2)),
  ),
  quantity: shareable(z.number().check(z.int(), z.gte(0), z.lte(100000))),
  from: shareable(z.optional(textSchema())),
  original: shareable(z.boolean()),
  condition: shareable(z.optional(z.enum(['good', 'fair', 'poor']))),
});

/** Parts measured together, seated. Its height replaces the sum of theirs. */
export const groupSchema = z.strictObject({
  id: shareable(idSchema()),
  parts: restricted(z.array(idSchema()).check(z.minLength(2), z.maxLength(8))),
  height: restricted(lengthSchema()),
});

const stackSchema = z.strictObject({
  chamber: shareable(idSchema()),
  /** Bottom to top. */
  items: restricted(listSchema(itemSchema(), 12)),
  locked: shareable(z.optional(z.literal(true))),
  /** How far the lower stack sinks below the line with the key out; belongs to the items it was read with. */
  rest: restricted(
    z.optional(z.strictObject({ items: listSchema(itemSchema(), 8), belowLine: lengthSchema() })),
  ),
});

export const planSchema = z.strictObject({
  id: shareable(idSchema()),
  cylinder: shareable(idSchema()),
  kind: shareable(z.enum(['as found', 'planned', 'as built'])),
  stacks: listSchema(stackSchema, 12),
});

export const intentSchema = z.strictObject({
  key: shareable(idSchema()),
  cylinder: shareable(idSchema()),
  line: shareable(idSchema()),
  turns: shareable(z.boolean()),
});

export const benchResultSchema = z.strictObject({
  plan: shareable(idSchema()),
  key: shareable(idSchema()),
  chamber: shareable(z.union([idSchema(), z.literal('all')])),
  /** What was in the hole: without a driver it is the test in the empty shell. */
  items: restricted(listSchema(itemSchema(), 12)),
  turned: shareable(z.boolean()),
  at: shareable(textSchema(40)),
});

export type Part = z.infer<typeof partSchema>;
export type EndForm = z.infer<ReturnType<typeof shapeSchema>>;
export type EndSizes = z.infer<ReturnType<typeof endSizesSchema>>;
export type Waist = z.infer<ReturnType<typeof waistSchema>>;
export type Group = z.infer<typeof groupSchema>;
export type Stack = z.infer<typeof stackSchema>;
export type Plan = z.infer<typeof planSchema>;
export type Intent = z.infer<typeof intentSchema>;
export type BenchResult = z.infer<typeof benchResultSchema>;
