/** What a person can do about work that is not saved. */
export type Remedy = { readonly label: string; readonly run: () => Promise<void> };
