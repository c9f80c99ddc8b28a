/**
 * One split in place of several: a height that stands in the windows of all of them. Heights of splits above the foot; offsets
 * from each one's own level, + high, - low; mm.
 *
 *     split of key B     level B + lowest [-------------------] level B + highest
 *     split of key A  [-------------------] level A + highest
 *     one for both                        [===]
 */

/** Where one key wants its split, and between which offsets it turns. */
export type WantedSplit = {
  /** Height at which it stands level. */
  readonly level: number;
  readonly lowest: number;
  readonly highest: number;
};

/** Finds the height that serves all; null when there is none. Level for the lowest of them, or in the middle of what fits. */
export function heightForAll(wanted: readonly WantedSplit[]): number | null {
  const from = Math.max(...wanted.map(({ level, lowest }) => level + lowest));
  const to = Math.min(...wanted.map(({ level, highest }) => level + highest));
  if (!(from <= to)) return null;
  // never above anybody's level, unless that leaves the lowest end too near
  const level = Math.min(to, ...wanted.map((each) => each.level));
  return Math.max(level, (from + to) / 2);
}

/** How high (+) or low (-) a split at this height stands for each of them. */
export function offsetsAt(height: number, wanted: readonly WantedSplit[]): number[] {
  return wanted.map(({ level }) => height - level);
}

/**
 * Puts neighbours together, from the lowest up, as long as one height serves all of a group.
 *
 * @param wanted in the order of their levels
 */
export function groupSplits<T extends WantedSplit>(
  wanted: readonly T[],
  mayJoin: (group: readonly T[], next: T) => boolean,
): T[][] {
  const groups: T[][] = [];
  for (const each of wanted) {
    const group = groups[groups.length - 1];
    if (group !== undefined && mayJoin(group, each)) group.push(each);
    else groups.push([each]);
  }
  return groups;
}
