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
  note: z.strictObject({ shared: shareable(fieldsSchema()), restricted: restricted(fieldsSchema()) }),
});

export type Job = z.infer<typeof jobSchema>;
