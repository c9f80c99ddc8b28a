/**
 * What turns in a cylinder of any number of lines: the lines that are clear in every chamber. A line that one chamber
 * holds turns nothing, whatever the other lines do there: chambers at different lines hold each other.
 */
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { ChamberResult, Evaluation, LineResult } from './evaluation.ts';
import { holds, letsTurn } from './judge.ts';

export type WhatTurns = {
  /** The lines that turn, inside to outside; with several, friction decides which. */
  readonly turning: readonly Id[];
  /** Lines that may turn: the ± leaves them open. */
  readonly open: readonly Id[];
  /** Nothing turns, because some chambers are at one line and some at another. */
  readonly isMixed: boolean;
  /** The line to look at first: one that turns, else one that may, else the one that was meant or is held the least. */
  readonly focus: Id | null;
};

/**
 * Sums up the lines.
 *
 * @param meant the line this key is meant to turn, if that is known
 */
export function whatTurns({ lines, chambers }: Evaluation, meant: Id | null = null): WhatTurns {
  const turning = lines.filter((line) => line.verdict === 'turns').map(({ line }) => line);
  const open = lines.filter((line) => line.verdict === "can't say yet").map(({ line }) => line);
  const isHeld = lines.length > 0 && lines.every((line) => line.verdict === 'will not turn');
  return {
    turning,
    open,
    isMixed: isHeld && isMixture(chambers),
    focus: focusOf(lines, turning, meant),
  };
}

/** The line a key is meant to turn in a cylinder; null when nobody said. */
export function meantLine(job: Job, cylinder: Id, key: Id | null): Id | null {
  const intent = job.intents.find((each) => each.cylinder === cylinder && each.key === key && each.turns);
  return intent?.line ?? null;
}

function focusOf(lines: readonly LineResult[], turning: readonly Id[], meant: Id | null): Id | null {
  const among = (candidates: readonly LineResult[]): Id | null =>
    candidates.find(({ line }) => line === meant)?.line ?? candidates[0]?.line ?? null;
  const clear = lines.filter(({ line }) => turning.includes(line));
  if (clear.length > 0) return among(clear);
  const open = lines.filter((line) => line.verdict === "can't say yet");
  const likely = open.filter((line) => line.lean === 'probably turns');
  if (open.length > 0) return among(likely.length > 0 ? likely : open);
  const told = lines.find(({ line }) => line === meant);
  if (told !== undefined) return told.line;
  const fewest = Math.min(...lines.map((line) => line.blockedBy.length));
  return lines.find((line) => line.blockedBy.length === fewest)?.line ?? null;
}

/** Every line is free in one chamber that holds another line: no key part is missing, they only do not agree. */
function isMixture(chambers: readonly ChamberResult[]): boolean {
  const free = new Set<Id>();
  for (const { verdicts } of chambers) {
    if (!verdicts.some(({ verdict }) => holds(verdict))) continue;
    for (const { line, verdict } of verdicts) if (letsTurn(verdict)) free.add(line);
  }
  return free.size > 1;
}
