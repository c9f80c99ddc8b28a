/**
 * Spreads labels along a line so that none overlap: each as near to its wanted place as the others let it, in the order
 * of the wanted places. No forces, no chance: neighbours that clash are moved together as one block around their middle.
 */
type Block = { readonly members: number[]; wanted: number; size: number };

/**
 * Gives the place of each label.
 *
 * @param wanted places wanted
 * @param pitch least distance between neighbours
 * @param least smallest place allowed, and the largest; when they do not all fit they run past the largest
 */
export function spreadLabels(
  wanted: readonly number[],
  pitch: number,
  least: number,
  most: number,
): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0) || a - b);
  const blocks: Block[] = [];
  for (const i of order) {
    let block: Block = { members: [i], wanted: wanted[i] ?? 0, size: 1 };
    for (;;) {
      const before = blocks.at(-1);
      if (before === undefined || start(block) - end(before) >= pitch - 1e-9) break;
      blocks.pop();
      block = merged(before, block);
    }
    blocks.push(block);
  }
  const places: number[] = [];
  for (const block of blocks) block.members.forEach((i, k) => (places[i] = start(block) + k * pitch));
  return places;

  function start(block: Block): number {
    const length = (block.size - 1) * pitch;
    return Math.max(least, Math.min(most - length, block.wanted - length / 2));
  }
  function end(block: Block): number {
    return start(block) + (block.size - 1) * pitch;
  }
  function merged(a: Block, b: Block): Block {
    const size = a.size + b.size;
    return {
      members: [...a.members, ...b.members],
      wanted: (a.wanted * a.size + b.wanted * b.size) / size,
      size,
    };
  }
}
