export type Counts = { passed: number; failed: number; skipped: number };
export type Report = {
  readonly testResults: readonly {
    readonly name?: string;
    readonly status: string;
    readonly message?: string;
    readonly assertionResults: readonly {
      readonly status: string;
      readonly fullName?: string;
      readonly failureMessages?: readonly string[];
      readonly meta?: { readonly triedAgain?: number };
    }[];
  }[];
};
/** `report` null: the runner left none. `exitCode` null: it was stopped. */
export declare function countResults(report: Report | null, exitCode: number | null): Counts;
/** `root`: the folder that names of files are given from, with its slash. One line each. */
export declare function remarksOn(report: Report | null, root: string): readonly string[];
