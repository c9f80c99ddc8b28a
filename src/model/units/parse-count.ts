/**
 * Reads a typed count: a whole number of things, at least one. No unit, no sign, no decimals.
 *
 * Answers like parseLength: a count outside the caller's range is never taken; one sent twice ("66" where at most 12
 * can be) is offered once, as a question. Any string is answered.
 */
import { assert } from '../assert.ts';
import { cleanTypedText, halfOfRepeated } from './clean-typed-text.ts';

export type CountChoice = { readonly count: number; readonly says: string };

export type CountReading =
  | { readonly type: 'count'; readonly count: number; readonly typed: string }
  | {
      readonly type: 'ask';
      readonly typed: string;
      /** never empty; none may be stored before a person picked it */
      readonly choices: readonly CountChoice[];
      readonly reason: 'doubled';
      readonly message: string;
    }
  | { readonly type: 'error'; readonly typed: string; readonly message: string }
  | { readonly type: 'empty' };

export type CountOptions = {
  /** by default 1 */
  readonly from?: number;
  /** by default 1000 */
  readonly to?: number;
};

const COUNT = /^\+?[0-9]+$/u;

/** Reads a typed count; see the head of this file. */
export function parseCount(text: string, options: CountOptions = {}): CountReading {
  const { from = 1, to = 1000 } = options;
  assert(from >= 0 && from <= to && Number.isSafeInteger(to), `a count runs from ${from} to ${to}`);
  const range = `a whole number from ${from} to ${to}, like ${Math.min(Math.max(6, from), to)}`;
  const clean = cleanTypedText(text);
  if (clean === undefined) {
    return { type: 'error', typed: '', message: `This is too long to be a count; write ${range}.` };
  }
  const { typed, plain } = clean;
  if (plain === '') return { type: 'empty' };
  const count = readCount(plain, from, to);
  if (count !== undefined) return { type: 'count', count, typed };
  const half = halfOfRepeated(plain);
  const once = half === undefined ? undefined : readCount(half, from, to);
  if (once !== undefined) {
    const message = `“${typed}” looks like one value sent twice. Did you mean ${once}?`;
    const choices = [{ count: once, says: String(once) }];
    return { type: 'ask', typed, choices, reason: 'doubled', message };
  }
  return { type: 'error', typed, message: `“${typed.slice(0, 24)}” is not ${range}.` };
}

function readCount(plain: string, from: number, to: number): number | undefined {
  if (!COUNT.test(plain)) return undefined;
  const count = Number(plain);
  return count >= from && count <= to ? count : undefined;
}
