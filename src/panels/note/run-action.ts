/** Does something that takes a while, and tells what came of it; `meanwhile` is said until then. */
export type RunAction = (action: () => Promise<string | null>, meanwhile?: string) => void;
