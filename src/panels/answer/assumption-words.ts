/**
 * Puts what the verdicts assume into one or two sentences: first what is assumed, then what would flip a verdict if it
 * were otherwise, chambers that flip alike together.
 */
import { capital, listWords } from './list-words.ts';

const CONDITION = /^if (.+), chamber (\d+) (.+)$/u;

/**
 * Joins assumptions of many splits. Each is "what it is", or "what it is; if otherwise, chamber n is ...; ...".
 */
export function assumptionSentences(assumptions: readonly string[]): string[] {
  const bases = new Set<string>();
  const flips = new Map<
    string,
    { subject: string; condition: string; outcome: string; chambers: number[] }
  >();
  for (const assumption of assumptions) {
    const [base = '', ...conditions] = assumption.split('; ');
    bases.add(base);
    for (const text of conditions) {
      const [, condition, number, outcome] = CONDITION.exec(text) ?? [];
      if (condition === undefined || number === undefined || outcome === undefined) continue;
      const subject = base.startsWith('driver') ? 'drivers' : 'pin tops';
      const name = `${subject}|${condition}|${outcome}`;
      const flip = flips.get(name) ?? { subject, condition, outcome, chambers: [] };
      if (!flip.chambers.includes(Number(number))) flip.chambers.push(Number(number));
      flips.set(name, flip);
    }
  }
  const sentences = bases.size === 0 ? [] : [`Assumes ${listWords([...bases])}.`];
  for (const { subject, condition, outcome, chambers } of flips.values()) {
    const is = condition.startsWith('edge') ? 'have their' : 'are';
    const one = chambers.length === 1;
    const then = one ? outcome : outcome.replace(/^is /u, 'are ');
    const which = `${one ? 'chamber' : 'chambers'} ${listWords([...chambers].sort((a, b) => a - b))}`;
    sentences.push(capital(`if the ${subject} ${is} ${condition}, ${which} ${then}.`));
  }
  return sentences;
}
