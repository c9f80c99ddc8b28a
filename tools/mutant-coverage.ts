/**
 * Counts anew for each file of tests which changes it reaches and how often. All files share one process, and a count that went on
 * from file to file would be added up once for each: a loop that never ends would be let run a hundred times as long.
 */
const { __stryker__: counting } = globalThis as {
  readonly __stryker__?: { readonly mutantCoverage?: { static: object; perTest: object } };
};

// In place: the changed files hold on to the object itself.
if (counting?.mutantCoverage !== undefined) {
  counting.mutantCoverage.static = {};
  counting.mutantCoverage.perTest = {};
}
