/**
 * Kept as text: how a bag is sorted, which heights it gives and where its parts are in use; the table of keys against cylinders, which
 * key goes into which, and what is built together, each from small drawn jobs. That the choice of keys is the best there is holds
 * key-choices.test.ts, by trying all.
 */
import { describe, test } from 'vitest';
import { bagHeights, inRange } from '../../../src/model/matching/bag-heights.ts';
import { buildTogether } from '../../../src/model/matching/build-together.ts';
import { chooseKeys } from '../../../src/model/matching/choose-keys.ts';
import type { Score } from '../../../src/model/matching/levels.ts';
import { measuringOf } from '../../../src/model/matching/match.ts';
import { pairTable, runToEnd } from '../../../src/model/matching/match-many.ts';
import { takeStock } from '../../../src/model/matching/stock.ts';
import { copiesLeft, usedTooOften, usesOfAll } from '../../../src/model/matching/used-parts.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { asText } from '../../support/as-text.ts';
import { drawnBag } from '../../support/drawn-bag.ts';
import { smallManyJob } from '../../support/drawn-many.ts';
import { expectGolden } from '../../support/golden.ts';

const seeds = (count: number) => Array.from({ length: count }, (_, i) => i + 1);
const round = (mm: number) => mm.toFixed(4);

describe('a bag', () => {
  test.each(seeds(30))('drawn at random, sorted, %i', (seed) => {
    const { job } = drawnBag(seed);
    const { parts, batches, setAside } = takeStock(job, measuringOf(job));
    const label = (number: number) => parts[number]?.id ?? '–';
    expectGolden(
      `stock/${seed}.txt`,
      asText({
        parts: parts.map(({ id }) => id),
        batches: batches.map((batch) => ({
          like: batch.example.map(({ id }) => id).join(' + '),
          hasBall: batch.hasBall,
          added: batch.added,
          balls: batch.ballKinds.map(label).join(' '),
          members: [...batch.lengths]
            .map((length, i) => {
              const ball = batch.balls[i]!;
              const group = batch.groups[i]?.id;
              return `${ball < 0 ? '' : `${label(ball)} + `}${label(batch.pins[i]!)} ${round(length)}${group === undefined ? '' : ` ${group}`}`;
            })
            .join(', '),
        })),
        setAside: setAside.map(({ part, why }) => `${part.id}: ${why}`),
        heights: [false, true].map((takesBall) => heightsText(job, takesBall)),
      }),
    );
  });

  function heightsText(job: Job, takesBall: boolean) {
    const bag = bagHeights(job, takeStock(job, measuringOf(job)), takesBall);
    return {
      on: takesBall ? 'a ball' : 'the cut',
      all: [...bag.heights]
        .map((height, i) => `${bag.pins[i]!.id} ${round(height)} × ${bag.copies[i]}`)
        .join(', '),
      ranges: [3.5, 4.2, 4.7, 5.3, 7].map((from) => {
        const { count, nearest } = inRange(bag, from, from + 0.4);
        return `${from}: ${count}${nearest === null ? '' : `, ${nearest.pin.id} ${round(nearest.by)}`}`;
      }),
    };
  }
});

describe('keys against cylinders', () => {
  test.each(seeds(24))('drawn at random, %i', (seed) => {
    const { job, ask, eachKeyOnce } = smallManyJob(seed);
    const cells = runToEnd(pairTable(job, ask));
    const steps = [...chooseKeys(job, { ...ask, eachKeyOnce, mostCases: 4 })];
    const choice = runToEnd(chooseKeys(job, { ...ask, eachKeyOnce, mostCases: 4 }));
    const pairs = choice.keys.flatMap(({ key, ...each }) => (key === null ? [] : [{ ...each, key }]));
    const together = buildTogether(job, pairs, ask.mostFiled ?? null);
    const stock = takeStock(job, measuringOf(job));
    expectGolden(
      `keys-and-bags/${seed}.txt`,
      asText({
        mostFiled: ask.mostFiled,
        eachKeyOnce,
        bag: job.parts
          .filter(({ id }) => id.startsWith('loose'))
          .map(({ id, length, quantity }) => `${id} ${round(length!.readings[0]!.value)} × ${quantity}`)
          .join(', '),
        cells: cells.map(({ missing, ...cell }) => ({
          ...cell,
          plan: undefined,
          missing: missing.map(({ chamber, best }) => `${chamber} ${round(best)}`).join(', '),
        })),
        progress: [...pairTable(job, ask)].map(({ done, of }) => `${done}/${of}`).join(' '),
        steps: steps.map(
          ({ cases, best }) =>
            `${cases}: ${best.keys.map(({ key }) => key).join(' ')}, ${whole(best.score)}, at most ${whole(best.bound)}${best.isProved ? ', proved' : ''}`,
        ),
        choice: choice.keys.map(({ cylinder, key }) => `${cylinder} ${key}`),
        whole: whole(choice.score),
        bound: choice.isProved ? 'proved' : whole(choice.bound),
        together: {
          complete: together.complete,
          whole: whole(together.score),
          bound: together.isProved ? 'proved' : whole(together.bound),
          matches: together.matches.map(
            ({ key, chambers, filled, score }) =>
              `${key}: ${chambers.map(({ standing }) => standing?.items.map(({ part }) => part).join(' + ') ?? '–').join(', ')}; ${filled} turn, ${whole(score)}`,
          ),
        },
        inUse: [...usesOfAll(job)]
          .map(([part, uses]) => `${part}: ${uses.map(({ chamber }) => chamber).join(', ')}`)
          .join('; '),
        usedTooOften: usedTooOften(job).map(({ message }) => message),
        left: [...copiesLeft(job, stock, [{ plan: job.plans[0]!, parts: ['c1-driver-1'] }])]
          .map((count, i) => `${stock.parts[i]!.id} ${count}`)
          .join(', '),
      }),
    );
  });
});

function whole({ filled, filed, smallestToSpare, squares, ties }: Score): string {
  return `${filled} filled, ${filed} filed, ${smallestToSpare} to spare, squares ${squares}${ties.length === 0 ? '' : `, ties ${ties.join(' ')}`}`;
}
