import type { Option } from './option.ts';

/** How many copies of a part an option takes. */
export function copiesTaken({ part, also }: Option, which: number): number {
  return (part === which ? 1 : 0) + (also.includes(which) ? 1 : 0);
}
