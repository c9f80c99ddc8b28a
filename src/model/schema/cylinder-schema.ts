/**
 * A cylinder in the job file: bodies inside to outside (plug, a sleeve perhaps, shell) with a line between neighbours, and
 * its chambers. Positions are measured from the plug's front face inwards.
 */
import * as z from 'zod/mini';
import {
  angleSchema,
  idSchema,
  lengthSchema,
  listSchema,
  numberSchema,
  shareable,
  textSchema,
} from './leaf.ts';

const mouthSchema = () =>
  z.strictObject({
    kind: z.enum(['sharp', 'deburred along', 'countersunk']),
    size: z.optional(lengthSchema()),
    basis: z.enum(['seen', 'assumed']),
  });

const bodySchema = z.strictObject({
  id: shareable(idSchema()),
  role: shareable(z.enum(['plug', 'sleeve', 'shell'])),
  /** Across the solid part. The shell's is for the drawing only. */
  outerDiameter: shareable(z.optional(lengthSchema())),
  length: shareable(z.optional(lengthSchema())),
  /** How far a filed or worn crest lies below half the diameter, for all chambers or for single ones. */
  crestDrop: shareable(z.optional(lengthSchema())),
  crestDropAt: shareable(z.optional(z.record(idSchema(), lengthSchema()))),
});

const lineSchema = z.strictObject({
  id: shareable(idSchema()),
  inner: shareable(idSchema()),
  outer: shareable(idSchema()),
  /** Bore minus diameter. */
  clearance: shareable(lengthSchema()),
  lies: shareable(z.enum(['away from drivers', 'centred'])),
});

const holeSchema = z.strictObject({
  body: shareable(idSchema()),
  diameter: shareable(z.optional(lengthSchema())),
  /** Out of line with the plug's chamber, across; + to the right looking in from the front. */
  sideways: shareable(z.optional(lengthSchema())),
  innerMouth: shareable(z.optional(mouthSchema())),
  outerMouth: shareable(z.optional(mouthSchema())),
});

const chamberSchema = z.strictObject({
  id: shareable(idSchema()),
  /** Centre, from the plug's front face. */
  position: shareable(lengthSchema()),
  /** From the shell's bore surface to the underside of the cap. */
  capDepth: shareable(z.optional(lengthSchema())),
  holes: shareable(listSchema(holeSchema, 4)),
  closed: shareable(z.optional(z.literal(true))),
});

export const cylinderSchema = z.strictObject({
  id: shareable(idSchema()),
  label: shareable(textSchema()),
  turn: z.strictObject({ angle: shareable(angleSchema()), ways: shareable(z.enum(['both', 'one'])) }),
  bodies: listSchema(bodySchema, 3).check(z.minLength(2)),
  lines: listSchema(lineSchema, 2).check(z.minLength(1)),
  chambers: listSchema(chamberSchema, 12),
  /** Width of the slot under the chambers: a ball narrower than it falls through. */
  keywayWidth: shareable(z.optional(lengthSchema())),
  endPlay: shareable(z.optional(lengthSchema())),
});

export const instrumentSchema = z.strictObject({
  id: shareable(idSchema()),
  label: shareable(textSchema()),
  kind: shareable(z.enum(['digital caliper', 'dial caliper', 'micrometer', 'dial indicator', 'other'])),
  resolutionMm: shareable(numberSchema(0, 1)),
  maxPermissibleErrorMm: shareable(numberSchema(0, 1)),
  repeatabilityMm: shareable(numberSchema(0, 1)),
  /** Width of the jaw's edge that is laid into a cut. */
  jawEdge: shareable(z.optional(lengthSchema())),
  source: shareable(z.enum(['maker', 'assumed', 'checked'])),
});

/** A zero check: what the instrument read when closed. It correlates and corrects the readings taken under it. */
export const sessionSchema = z.strictObject({
  id: shareable(idSchema()),
  instrument: shareable(idSchema()),
  closedReading: shareable(z.optional(lengthSchema())),
  at: shareable(textSchema(40)),
});

export type Cylinder = z.infer<typeof cylinderSchema>;
export type Body = z.infer<typeof bodySchema>;
export type Line = z.infer<typeof lineSchema>;
export type Chamber = z.infer<typeof chamberSchema>;
export type Hole = z.infer<typeof holeSchema>;
export type Mouth = z.infer<ReturnType<typeof mouthSchema>>;
export type Instrument = z.infer<typeof instrumentSchema>;
export type Session = z.infer<typeof sessionSchema>;
