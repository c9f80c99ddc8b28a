/**
 * The job file: what one person knows about some cylinders, keys and parts. Nothing is addressed by its place in a list;
 * ids are opaque and derived from nothing.
 */
import * as z from 'zod/mini';
import { cylinderSchema, instrumentSchema, sessionSchema } from './cylinder-schema.ts';
import { keySchema, seatingSchema } from './key-schema.ts';
import {
  idSchema,
  lengthSchema,
  listSchema,
  numberSchema,
  restricted,
  shareable,
  textSchema,
} from './leaf.ts';
import { benchResultSchema, groupSchema, intentSchema, partSchema, planSchema } from './parts-schema.ts';

export const SCHEMA_VERSION = 1;

const fieldsSchema = () => z.record(z.string().check(z.maxLength(80)), textSchema(20000));

const thresholdsSchema = () =>
  z.strictObject({
    /** How far a driver must at least reach to either side of its line with the key out. */
    driverEngagement: z.optional(lengthSchema()),
    /** What must be left before a spring goes solid. */
    springMargin: z.optional(lengthSchema()),
    /** Readings of one cut, and of the plug, that differ by more are to be taken again. */
    readingsSpread: z.optional(lengthSchema()),
    plugSpread: z.optional(lengthSchema()),
    thinnestMasterPin: z.optional(lengthSchema()),
    /** A crest this much lower than half the diameter is told. */
    crestLow: z.optional(lengthSchema()),
    /** How far a key may be lifted, rocked or drawn when looking whether it turns then. */
    keyMoved: z.optional(lengthSchema()),
    /** Between neighbouring depths of the system the key belongs to, if it has one. */
    depthStep: z.optional(lengthSchema()),
  });

/** How the keys of this job are cut, when that is known: what other keys could turn its cylinders is counted with it. */
const depthsSchema = () =>
  z.strictObject({
    /** Root depth of every step, in the table's order. */
    rootDepths: restricted(listSchema(lengthSchema(), 24)),
    /** The most steps that neighbouring cuts may differ by. */
    largestStep: shareable(z.optional(z.number().check(z.int(), z.gte(0), z.lte(24)))),
  });

export const jobSchema = z.strictObject({
  format: shareable(z.literal('shearsight-job')),
  schemaVersion: shareable(z.literal(SCHEMA_VERSION)),
  id: shareable(idSchema()),
  revision: shareable(z.number().check(z.int(), z.gte(0))),
  title: shareable(textSchema(200)),
  settings: z.strictObject({
    unit: shareable(z.enum(['in', 'mm'])),
    /** A split this close to its line counts as level. */
    shopRule: shareable(lengthSchema()),
    friction: shareable(numberSchema(0, 2)),
    /** The steepest slope a driver climbs. */
    steepestRampDeg: shareable(numberSchema(1, 89)),
    /** Which end chamber 1 and cut 1 are counted from. */
    numbering: shareable(z.enum(['bow', 'tip'])),
    /** The instrument a new reading is taken with. */
    instrument: shareable(z.nullable(idSchema())),
    session: shareable(z.nullable(idSchema())),
    /** From where on something is worth a word. What is left out has its usual value (rest/thresholds.ts). */
    thresholds: shareable(z.optional(thresholdsSchema())),
  }),
  instruments: listSchema(instrumentSchema, 50),
  sessions: listSchema(sessionSchema, 500),
  cylinders: listSchema(cylinderSchema, 200),
  keys: listSchema(keySchema, 200),
  seatings: listSchema(seatingSchema, 2000),
  parts: listSchema(partSchema, 20000),
  groups: listSchema(groupSchema, 20000),
  plans: listSchema(planSchema, 1000),
  intents: listSchema(intentSchema, 2000),
  benchResults: listSchema(benchResultSchema, 5000),
  depths: z.optional(depthsSchema()),
  note: z.strictObject({
    shared: shareable(fieldsSchema()),
    restricted: restricted(fieldsSchema()),
    /** Pages, pictures and tables made from the job leave out what a key could be cut from. */
    hidesBitting: shareable(z.optional(z.literal(true))),
  }),
});

export type Job = z.infer<typeof jobSchema>;
export type Thresholds = NonNullable<Job['settings']['thresholds']>;
