/** How many copies of a part an option takes: as its main part, or as one of the others. */
import type { Option } from './option.ts';

export function copiesTaken({ part, also }: Option, which: number): number {
  return (part === which ? 1 : 0) + (also.includes(which) ? 1 : 0);
}
