/**
 * What is chosen from a bag, and why, kept as text: for each drawn job the bag, the choice, what else could stand in each chamber,
 * what is missing, what a deeper cut would do. That the choices are the best ones is held elsewhere, against trying them all.
 */
import { describe, test } from 'vitest';
import type { Alternative } from '../../../src/model/matching/alternatives.ts';
import type { Held } from '../../../src/model/matching/held.ts';
import type { Score } from '../../../src/model/matching/levels.ts';
import { answerRequest } from '../../../src/model/matching/matching-request.ts';
import { runToEnd } from '../../../src/model/matching/match-many.ts';
import type { Standing } from '../../../src/model/matching/standing.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { Part } from '../../../src/model/schema/parts-schema.ts';
import { asText } from '../../support/as-text.ts';
import { drawnBag } from '../../support/drawn-bag.ts';
import { expectGolden } from '../../support/golden.ts';
import { SELECTION } from '../../support/small-job.ts';

describe('what is chosen from a bag', () => {
  test.each(Array.from({ length: 100 }, (_, i) => i + 1))('drawn at random, %i', (seed) => {
    expectGolden(`choices/${seed}.txt`, asText(choicesFrom(seed)));
  });
});

function choicesFrom(seed: number): unknown {
  const { job, ask } = drawnBag(seed);
  const selection = SELECTION;
  const first = answer(job, ask, []);
  const alternatives = first.match.chambers.map(({ chamber, number }) => ({
    number,
    list: runToEnd(
      answerRequest<'alternatives'>(job, {
        kind: 'alternatives',
        selection,
        ask: { ...ask, held: [] },
        chamber,
      }),
    ),
  }));
  const deeper = first.match.chambers.map(({ chamber }) =>
    runToEnd(answerRequest<'deeper cut'>(job, { kind: 'deeper cut', selection, chamber })),
  );
  // a person takes the last of the alternatives of one chamber instead
  const { list } = alternatives.find((each) => each.list.length > 1) ?? { list: [] };
  const other = list.at(-1);
  const held = first.match.chambers
    .filter((_, i) => alternatives[i]?.list === list)
    .flatMap(({ chamber }): Held[] =>
      other === undefined
        ? []
        : [{ chamber, items: other.standing.items, isFiled: other.standing.filedOff > 0 }],
    );
  return {
    unit: job.settings.unit,
    mostFiled: ask.mostFiled,
    bag: job.parts.filter(isLower).map(partRow),
    ...written(first),
    alternatives: alternatives.map((each) => ({ number: each.number, list: each.list.map(alternativeRow) })),
    held: held.length === 0 ? 'nothing' : written(answer(job, ask, held)),
    deeper,
  };
}

function answer(job: Job, ask: ReturnType<typeof drawnBag>['ask'], held: readonly Held[]) {
  return runToEnd(
    answerRequest<'match'>(job, { kind: 'match', selection: SELECTION, ask: { ...ask, held } }),
  );
}

function written({ match, reasons, missing }: ReturnType<typeof answer>) {
  return {
    answer: match.answer,
    notes: match.notes,
    whole: whole(match.score),
    bound: match.isProved ? 'proved' : whole(match.bound),
    filled: `${match.filled} of ${match.of}, ${match.smallestToSpare?.toFixed(4) ?? 'none'} to spare`,
    chambers: match.chambers.map(({ number, isLocked, standing }) => ({
      number,
      isLocked,
      ...(standing === null ? { stands: 'nothing' } : standingRow(standing)),
    })),
    why: match.chambers.flatMap(({ number, why }) => (why === null ? [] : [`${number}: ${why}`])),
    reasons,
    missing: missing.map(({ ball, rest, ...each }) => ({ ...each, ball: ball?.label, rest: whole(rest) })),
  };
}

const isLower = ({ kind, id }: Part) => kind === 'ball' || (kind === 'pin' && !/^(driver|master)/u.test(id));

function partRow({
  id,
  label,
  kind,
  quantity,
  original,
  diameter,
  length,
  ends,
  condition,
  from,
  waist,
}: Part) {
  return {
    id,
    label: label === id ? '' : `"${label}"`,
    kind,
    quantity,
    length: length?.readings[0]?.value,
    diameter: diameter?.readings[0]?.value,
    ends: ends?.map((end) => end.kind).join(', ') ?? '',
    origin: `${original ? 'original' : 'loose'} ${from ?? ''}`.trim(),
    condition: `${condition ?? ''}${waist === undefined ? '' : ' waisted'}`,
  };
}

function standingRow({ items, lowest, highest, ...standing }: Standing) {
  const window = `${lowest.toFixed(4)} to ${highest.toFixed(4)}`;
  return { stands: items.map(({ part }) => part).join(' + '), window, ...standing };
}

function alternativeRow({ standing, isChosen, whole: score, changes }: Alternative) {
  const { stands, offset, filedOff, spare, deviation } = standingRow(standing);
  return {
    stands,
    offset,
    filedOff,
    spare,
    deviation,
    isChosen,
    changes: changes.join(' '),
    whole: whole(score),
  };
}

/** Filled, filed, steps to spare, squares, filed off, what settles ties. */
function whole({ filled, filed, smallestToSpare, squares, filedOff, ties }: Score): string {
  return `${filled} filled, ${filed} filed, ${smallestToSpare} to spare, squares ${squares}, off ${filedOff}, ties ${ties.join(' ')}`;
}
