/** One thing that is wrong with a file: where, and one sentence. */
export type Problem = { readonly field: string; readonly message: string };
