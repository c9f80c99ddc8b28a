/** Stops on a bad call: a bug of ours, never bad input (which is data, see findings). The text carries the value. */
export function assert(condition: boolean, message: string): asserts condition {
  if (!condition) throw new Error(`Shearsight bug: ${message}`);
}

/** Gives the value, or stops because a caller promised that it is there. */
export function known<T>(value: T | undefined | null, what: string): T {
  assert(value !== undefined && value !== null, `${what} is missing`);
  return value;
}
