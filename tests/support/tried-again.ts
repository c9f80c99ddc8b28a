/** A browser test that passed only when it was tried again says so in the runner's report; tools/count-results.mjs names it. */
import { afterEach } from 'vitest';

declare module 'vitest' {
  interface TaskMeta {
    /** How often the test was tried again. */
    triedAgain?: number;
  }
}

afterEach(({ task }) => {
  const count = task.result?.retryCount ?? 0;
  if (count > 0) task.meta.triedAgain = count;
});
