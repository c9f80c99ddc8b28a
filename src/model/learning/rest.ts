/** What stands across the line of a scene with the key out, worked out once for each. */
import { known } from '../assert.ts';
import { restResults } from '../rest/rest-results.ts';
import type { RestResult } from '../rest/rest-result.ts';
import type { Reading } from './scene.ts';

const rests = new WeakMap<Reading, RestResult>();

/** The first chamber with no key in. */
export function restOfScene(reading: Reading): RestResult {
  const before = rests.get(reading);
  if (before !== undefined) return before;
  const result = known(restResults(reading.bench, reading.assembly).chambers[0], 'chamber at rest');
  rests.set(reading, result);
  return result;
}
