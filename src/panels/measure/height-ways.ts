/** The ways to the height the key calls for, as they are chosen on screen. */
import type { HeightWay, StackWay } from './chamber-columns.ts';

export const WAYS: readonly { readonly way: HeightWay; readonly label: string }[] = [
  { way: 'root depth', label: 'Root depth' },
  { way: 'over the ball', label: 'Over the ball' },
  { way: 'stands up by', label: 'Stands up by' },
  { way: 'known set', label: 'A set known to work' },
];

export type WaysChoiceProps = {
  readonly ways: ReadonlySet<HeightWay>;
  /** These hold readings: taking their column away would hide them. */
  readonly used: ReadonlySet<HeightWay>;
  readonly onChange: (ways: ReadonlySet<HeightWay>) => void;
  readonly stackWay: StackWay;
  readonly onStackWay: (way: StackWay) => void;
  /** Master pins get a column when there are any, or when asked for. */
  readonly master: {
    readonly asks: boolean;
    readonly isUsed: boolean;
    readonly onChange: (asks: boolean) => void;
  };
  readonly hasBalls: boolean;
};
