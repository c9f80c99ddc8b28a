export type Counts = { passed: number; failed: number; skipped: number };
export type Report = {
  readonly testResults: readonly {
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
};
/** `report` null: the runner left none. `exitCode` null: it was stopped. */
export declare function countResults(report: Report | null, exitCode: number | null): Counts;
