/**
 * How an answer speaks of a shear line: just "the shear line" and "it" where there is one; where a sleeve makes two, which
 * line it is and what turns at it. And what the other line means for the turn, in a sentence.
 */
import type { ChamberResult, Evaluation } from '../../model/evaluate/evaluation.ts';
import { holds, letsTurn } from '../../model/evaluate/judge.ts';
import type { WhatTurns } from '../../model/evaluate/what-turns.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { sayChambers } from './list-words.ts';

export type LineWording = {
  /** "the shear line", "the outer shear line". */
  readonly line: string;
  /** "It should turn", "Plug and sleeve should turn together". */
  readonly should: string;
  /** "It probably turns", "The plug probably turns alone". */
  readonly probably: string;
  /** "the plug", "plug and sleeve". */
  readonly held: string;
  /** What follows from a chamber that holds: "the plug will not turn", "nothing turns". */
  readonly stops: string;
  /** The body inside the line: a driver that hangs down hangs into it. */
  readonly body: string;
  /** After a chamber's verdict: " at the inner line"; nothing where there is one line. */
  readonly at: string;
};

const ONE_LINE: LineWording = {
  line: 'the shear line',
  should: 'It should turn',
  probably: 'It probably turns',
  held: 'the plug',
  stops: 'the plug will not turn',
  body: 'plug',
  at: '',
};

/** Words for a line, and what follows from it together with the others. */
export function lineWording(evaluation: Evaluation, line: Id | null, what: WhatTurns): LineWording {
  if (evaluation.lines.length < 2) return ONE_LINE;
  const isInner = evaluation.lines[0]?.line === line;
  const name = isInner ? 'inner' : 'outer';
  const isEither = what.turning.length > 1;
  return {
    line: isEither ? 'both shear lines' : `the ${name} shear line`,
    should: isEither
      ? 'Either may turn, the plug alone or plug and sleeve together'
      : isInner
        ? 'The plug should turn alone'
        : 'Plug and sleeve should turn together',
    probably: isInner ? 'The plug probably turns alone' : 'Plug and sleeve probably turn together',
    held: isInner ? 'the plug' : 'plug and sleeve',
    stops:
      what.open.length > 0 ? `${isInner ? 'the plug' : 'plug and sleeve'} will not turn` : 'nothing turns',
    body: isInner ? 'plug' : 'sleeve',
    at: ` at the ${name} line`,
  };
}

/** "Some chambers are at the inner line, some at the outer: nothing turns." And which. */
export function mixtureWords(evaluation: Evaluation): { readonly headline: string; readonly text: string } {
  const [inner, outer] = evaluation.lines.map(({ line }) =>
    numbersOf(evaluation.chambers.filter((chamber) => letsTurn(verdictAt(chamber, line)))),
  );
  const text = [
    ...placeWords(inner, 'inner'),
    ...placeWords(outer, 'outer'),
    'A line only turns when every chamber is at it.',
  ].join(' ');
  return { headline: 'Nothing turns: some chambers are at the inner line, some at the outer.', text };
}

function placeWords(numbers: readonly number[] | undefined, name: string): string[] {
  if (numbers === undefined || numbers.length === 0) return [];
  return [`${sayChambers(numbers)} ${numbers.length === 1 ? 'is' : 'are'} at the ${name} line.`];
}

/** What the lines that are not the answer's own mean for it; null where there are none, or nothing is to be said. */
export function otherLineWords(evaluation: Evaluation, own: Id, what: WhatTurns): string | null {
  const other = evaluation.lines.find(({ line }) => line !== own);
  if (other === undefined || what.isMixed) return null;
  if (what.turning.length > 1) return 'Both lines are free: friction decides which of them turns.';
  const isOuter = evaluation.lines[0]?.line === own;
  const name = isOuter ? 'outer' : 'inner';
  const numbers = numbersOf(evaluation.chambers.filter((each) => holds(verdictAt(each, other.line))));
  const who =
    numbers.length === evaluation.chambers.length ? 'every chamber' : sayChambers(numbers).toLowerCase();
  const verb = numbers.length === 1 || who === 'every chamber' ? 'holds' : 'hold';
  switch (other.verdict) {
    case 'will not turn': {
      if (!what.turning.includes(own)) return `The ${name} line does not turn either: ${who} ${verb} it.`;
      const so = isOuter ? 'the sleeve stays with the shell' : 'the plug does not turn in the sleeve';
      return `At the ${name} line ${who} ${verb}: ${so}.`;
    }
    case 'turns':
      return null;
    case "can't say yet":
      return `Whether the ${name} line turns as well cannot be said yet.`;
    case 'unknown':
      return `The ${name} line is not known yet.`;
  }
}

/** Said when what turns is not what the key is meant to turn; null when it is, or nobody said. */
export function notMeantWords(evaluation: Evaluation, meant: Id | null, what: WhatTurns): string | null {
  if (meant === null || evaluation.lines.length < 2 || what.turning.length === 0) return null;
  if (what.turning.length === 1 && what.turning[0] === meant) return null;
  const isInner = evaluation.lines[0]?.line === meant;
  return `This key is meant to turn ${isInner ? 'the plug alone' : 'plug and sleeve together'}.`;
}

function verdictAt(chamber: ChamberResult, line: Id) {
  return chamber.verdicts.find((each) => each.line === line)?.verdict ?? 'unknown';
}

function numbersOf(chambers: readonly ChamberResult[]): number[] {
  return chambers.map(({ number }) => number);
}
