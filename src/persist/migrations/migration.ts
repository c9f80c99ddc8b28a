/** One step from a version of the job file to the next. */
export type JsonValue = null | boolean | number | string | readonly JsonValue[] | JsonObject;
export type JsonObject = { readonly [name: string]: JsonValue };

export type Migration = {
  /** The version of the file after the step; the one before it is one less. */
  readonly to: number;
  /** What changed in the file, as a sentence for the change log. */
  readonly change: string;
  /** Gives the file in its new shape, but for `schemaVersion`, which is set for it. Leaves the old one as it is. */
  readonly migrate: (job: JsonObject) => JsonObject;
};
