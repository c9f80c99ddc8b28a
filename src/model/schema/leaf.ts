/**
 * The building blocks of the job file: every entered value keeps what was typed, on which instrument, or says that it is
 * assumed and within what range. Every leaf of the file is classified: restricted (a key could be cut from it) or not.
 *
 * Lengths in the file are millimetres, angles degrees; `typed` is evidence of how the number came about.
 */
import * as z from 'zod/mini';

// No code from strings: the strict content security policy forbids it.
z.config({ jitless: true });

/** Which parts of the file could give a key away. A classified node covers all leaves below it. */
export const confidentiality = z.registry<{ restricted: boolean }>();

/** Marks a new schema as restricted: a key could be cut from it. */
export function restricted<T extends z.ZodMiniType>(schema: T): T {
  confidentiality.add(schema, { restricted: true });
  return schema;
}

/** Marks a new schema as shareable. */
export function shareable<T extends z.ZodMiniType>(schema: T): T {
  confidentiality.add(schema, { restricted: false });
  return schema;
}

export const idSchema = () =>
  z
    .string()
    .check(
      z.minLength(1),
      z.maxLength(64),
      z.regex(/^(?!__proto__$|constructor$|prototype$)[A-Za-z0-9_-]+$/),
    );
export const textSchema = (most = 400) => z.string().check(z.maxLength(most));
export const numberSchema = (least: number, most: number) => z.number().check(z.gte(least), z.lte(most));
export const listSchema = <T extends z.ZodMiniType>(item: T, most: number) =>
  z.array(item).check(z.maxLength(most));

const rangeSchema = () => z.strictObject({ from: numberSchema(-1000, 1000), to: numberSchema(-1000, 1000) });

const readingSchema = <U extends readonly [string, ...string[]]>(units: U) =>
  z.strictObject({
    typed: textSchema(200),
    unit: z.enum(units),
    value: numberSchema(-1000, 1000),
    instrument: z.nullable(idSchema()),
    session: z.nullable(idSchema()),
    left: z.optional(z.literal('out')),
  });

const readingsSchema = <U extends readonly [string, ...string[]]>(units: U) =>
  z.array(readingSchema(units)).check(z.minLength(1), z.maxLength(100));

// Dozens of values, one schema of what is inside: making it over and over takes longer than reading a job.
const lengthReadings = readingsSchema(['in', 'thou', 'mm']);
const angleReadings = readingsSchema(['deg']);
const estimator = z.enum(['mean', 'minimum']);
const basis = z.enum(['measured', 'stated', 'assumed']);
const range = z.optional(rangeSchema());

/** A length: `value` of each reading is mm. An assumed one carries a range, which counts in the ±. */
export const lengthSchema = () => z.strictObject({ readings: lengthReadings, estimator, basis, range });
/** An angle: `value` of each reading is degrees. */
export const angleSchema = () => z.strictObject({ readings: angleReadings, estimator, basis, range });

export type Id = string;
export type LengthValue = z.infer<ReturnType<typeof lengthSchema>>;
export type AngleValue = z.infer<ReturnType<typeof angleSchema>>;
export type Reading = LengthValue['readings'][number];
export type AngleReading = AngleValue['readings'][number];
