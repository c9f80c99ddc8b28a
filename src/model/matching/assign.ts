/**
 * Which part goes where, exactly: no other choice fills more places, or as many with fewer parts filed, then with a larger
 * smallest to spare, then with a smaller sum of squared deviations, then with less filed off, then better by what settles
 * ties. No part is used more often than there are copies of it.
 *
 * Why a few options of each row are enough. Take n rows and a best choice in which row r has a part that is not among its
 * n best of that kind (same other parts, filed or not). The other n - 1 rows use at most n - 1 parts, so one of the n best
 * is free; putting it in makes no level worse: it fills as much, is filed as much, has at least as much to spare (list by
 * to spare) or, among those with enough to spare, stands at least as well (list by deviation). Row by row, some best choice
 * uses listed options only. With other parts in play the other rows use at most (1 + most others) (n - 1) parts, and the
 * lists are that much longer; with parts ruled out for a row, longer by those.
 *
 * Parts that two options may share besides their main one (three balls for five pins) are not seen by the levels. When a
 * choice uses such a part too often, it is only a bound: of the rows that use it, some must do without. The cases "the first
 * must do without it", "the first has it, the second must do without", ... cover everything, and are looked at in turn,
 * most promising first, until no open case can be better than the best choice found.
 */
import { chooseByLevels, compareScores, type CopiesOf, type Score, scoreOf } from './levels.ts';
import { byDeviation, bySpare, type Option, type Row } from './option.ts';

export type Assignment<T extends Option> = {
  /** For each row what stands there, null where nothing does. */
  readonly chosen: readonly (T | null)[];
  readonly score: Score;
  /** False when the search was cut short: then no choice is better than `bound`, and this one may not be the best. */
  readonly isProved: boolean;
  readonly bound: Score;
};

export type AssignOptions = {
  /** Cases looked at before the search for a better use of shared parts is cut short. */
  readonly mostCases?: number;
};

const MOST_CASES = 4000;

/** Chooses for every row. Rows and options in the same order give the same choice. */
export function assign<T extends Option>(
  rows: readonly Row<T>[],
  copiesOf: CopiesOf,
  { mostCases = MOST_CASES }: AssignOptions = {},
): Assignment<T> {
  const root = lookAt(rows, copiesOf, NO_RULES);
  if (root.overused === null) return proved(root);
  return branch(rows, copiesOf, root, mostCases);
}

/** What a case says about rows: parts they must do without, and parts they must have. */
type Rules = readonly { readonly row: number; readonly part: number; readonly has: boolean }[];
const NO_RULES: Rules = [];

type Case<T extends Option> = {
  readonly rules: Rules;
  readonly chosen: readonly (T | null)[];
  readonly score: Score;
  readonly overused: {
    readonly part: number;
    readonly rows: readonly number[];
    readonly copies: number;
  } | null;
};

function proved<T extends Option>({ chosen, score }: Case<T>): Assignment<T> {
  return { chosen, score, isProved: true, bound: score };
}

function branch<T extends Option>(
  rows: readonly Row<T>[],
  copiesOf: CopiesOf,
  root: Case<T>,
  mostCases: number,
): Assignment<T> {
  let best = repaired(rows, copiesOf, root);
  const open: Case<T>[] = [root];
  let looked = 0;
  while (open.length > 0) {
    open.sort((one, other) => compareScores(other.score, one.score));
    const next = open.pop();
    if (next === undefined || next.overused === null) break;
    if (compareScores(best.score, next.score) <= 0) break;
    if (looked >= mostCases) {
      return { chosen: best.chosen, score: best.score, isProved: false, bound: next.score };
    }
    for (const rules of splitCase(rows, next.rules, next.overused)) {
      const found = lookAt(rows, copiesOf, rules);
      looked += 1;
      if (compareScores(best.score, found.score) <= 0) continue;
      if (found.overused === null) best = found;
      else open.push(found);
    }
  }
  return proved(best);
}

/**
 * The cases that take an overused part away from one more row. "The ones before have it" keeps them apart; it is left out
 * where a row could have it as its main part, whose lists are by kind and might miss it, and then cases overlap.
 */
function splitCase(
  all: readonly Row<Option>[],
  rules: Rules,
  { part, rows, copies }: NonNullable<Case<Option>['overused']>,
): Rules[] {
  const keepsApart = all.every((row) => !row.mayBeMain(part));
  return rows
    .slice(0, copies + 1)
    .map(
      (row, i): Rules => [
        ...rules,
        ...(keepsApart ? rows.slice(0, i).map((other) => ({ row: other, part, has: true })) : []),
        { row, part, has: false },
      ],
    );
}

/** A choice that uses nothing too often, got by taking shared parts away from the rows that need them least. */
function repaired<T extends Option>(rows: readonly Row<T>[], copiesOf: CopiesOf, root: Case<T>): Case<T> {
  let current = root;
  while (current.overused !== null) {
    const { part, rows: users, copies } = current.overused;
    const { chosen } = current;
    const inOrder = [...users].sort((one, other) => worth(chosen[one], chosen[other]));
    const rules = inOrder.slice(copies).map((row) => ({ row, part, has: false }));
    current = lookAt(rows, copiesOf, [...current.rules, ...rules]);
  }
  return current;
}

function worth(one: Option | null | undefined, other: Option | null | undefined): number {
  if (one == null || other == null) return 0;
  return byDeviation(one, other) || bySpare(one, other);
}

function lookAt<T extends Option>(rows: readonly Row<T>[], copiesOf: CopiesOf, rules: Rules): Case<T> {
  const others = rows.reduce((most, row) => Math.max(most, row.others), 0);
  const count = (1 + others) * Math.max(0, rows.length - 1) + 1;
  const ruled = rules.length === 0 ? rows : rows.map((row, i) => underRules(row, i, rules));
  const chosen = chooseByLevels(ruled, copiesOf, count);
  // main parts alone are never used too often: the levels see to that
  const overused = others === 0 ? null : findOverused(chosen, copiesOf);
  return { rules, chosen, score: scoreOf(chosen), overused };
}

function underRules<T extends Option>(row: Row<T>, which: number, rules: Rules): Row<T> {
  const own = rules.filter((rule) => rule.row === which);
  if (own.length === 0) return row;
  const fits = ({ part, also }: T) =>
    own.every((rule) => rule.has === (rule.part === part || also.includes(rule.part)));
  return {
    ...row,
    roomiest: (count, isLeft) => row.roomiest(count + own.length, isLeft).filter(fits),
    closest: (count, isLeft, leastSpare) => row.closest(count + own.length, isLeft, leastSpare).filter(fits),
  };
}

function findOverused<T extends Option>(
  chosen: readonly (T | null)[],
  copiesOf: CopiesOf,
): Case<T>['overused'] {
  const users = new Map<number, number[]>();
  chosen.forEach((option, row) => {
    if (option === null) return;
    for (const part of [option.part, ...option.also]) {
      const list = users.get(part);
      if (list === undefined) users.set(part, [row]);
      else list.push(row);
    }
  });
  for (const [part, rows] of users) {
    const copies = copiesOf(part);
    if (rows.length > copies) return { part, rows, copies };
  }
  return null;
}
