/**
 * Prove it on a good one: a cylinder known to work, measured first. Its stacks stand level or a little low in truth, so what
 * they read is the error of caliper, hand and method: all alike off shows a common error that the next cylinder would have
 * too; scattered shows how far single stacks can be trusted. Offsets + high, - low; mm.
 */
import type { Evaluation } from '../evaluate/evaluation.ts';
import { sayAmount } from '../evaluate/say.ts';
import type { JobUnit } from '../units/length-unit.ts';

export type GoodOne = {
  readonly chambers: number;
  /** Mean offset, and the standard deviation of the single ones around it. */
  readonly offset: number;
  readonly spread: number;
  readonly says: 'trust' | 'common error' | 'scatter';
  readonly sentence: string;
};

/** With fewer stacks than this nothing is proved. */
const ENOUGH_STACKS = 3;

/** Reads what a cylinder known to work tells about the measuring; null with too few stacks. */
export function provedOn({ chambers, lines }: Evaluation, shopRule: number, unit: JobUnit): GoodOne | null {
  const line = lines[0]?.line;
  const offsets = chambers.flatMap(({ splits }) => {
    const split = splits.find((each) => each.line === line);
    return split === undefined ? [] : [split.offset];
  });
  if (offsets.length < ENOUGH_STACKS) return null;
  const offset = offsets.reduce((sum, each) => sum + each, 0) / offsets.length;
  const spread = Math.sqrt(
    offsets.reduce((sum, each) => sum + (each - offset) ** 2, 0) / (offsets.length - 1),
  );
  const standardError = spread / Math.sqrt(offsets.length);
  const isOff = Math.abs(offset) > shopRule && Math.abs(offset) > 2 * standardError;
  const says = isOff ? 'common error' : spread > 2 * shopRule ? 'scatter' : 'trust';
  return { chambers: offsets.length, offset, spread, says, sentence: sentenceOf(says, offset, spread, unit) };
}

function sentenceOf(says: GoodOne['says'], offset: number, spread: number, unit: JobUnit): string {
  const way = offset > 0 ? 'high' : 'low';
  switch (says) {
    case 'trust':
      return `A cylinder that works reads level, ± ${sayAmount(2 * spread, unit)} from stack to stack: your readings can be trusted that far.`;
    case 'common error':
      return (
        `A cylinder that works reads ${sayAmount(offset, unit)} ${way} in every stack: the next one measured the same way will too. ` +
        'Enter it as a set known to work, and that error drops out.'
      );
    case 'scatter':
      return `A cylinder that works scatters by ± ${sayAmount(2 * spread, unit)} from stack to stack: read each part again before trusting a single stack.`;
  }
}
