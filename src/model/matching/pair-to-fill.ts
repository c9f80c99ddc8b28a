/** A key in a cylinder with what the bag offers each of its chambers: what one match or many are made of. */
import { known } from '../assert.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Id } from '../schema/leaf.ts';
import { type Candidate, type CandidateRules, chamberRow, type Span, spansOf } from './candidate-heights.ts';
import { type KeyInSite, putKeyIn } from './needed-height.ts';
import type { Row } from './option.ts';
import { resolutionOf } from './resolution.ts';
import type { ChamberPlace } from './fits.ts';
import type { Site } from './site.ts';
import { type TieBreaks, tieBreaksOf } from './tie-breaks.ts';
import { copiesLeft } from './used-parts.ts';

export type PlaceToFill = { readonly place: ChamberPlace; readonly spans: readonly Span[] };

export type PairToFill = {
  readonly keyIn: KeyInSite;
  readonly tieBreaks: TieBreaks;
  /** Chambers that are not locked. */
  readonly toFill: readonly PlaceToFill[];
};

/** Finds what the bag offers each chamber of a site for a key of the job. */
export function pairToFill(site: Site, key: Id): PairToFill {
  const { keys } = site.bench.job;
  const keyIn = putKeyIn(
    site,
    known(
      keys.find((each) => each.id === key),
      `key ${key}`,
    ),
  );
  return {
    keyIn,
    tieBreaks: tieBreaksOf(site),
    toFill: site.places
      .filter((place) => !place.isLocked)
      .map((place) => ({ place, spans: spansOf(keyIn, place) })),
  };
}

/** What holds for all chambers that are filled at the same time. */
export type Filling = Pick<CandidateRules, 'step' | 'mostFiled' | 'copies' | 'placeCount'>;

/** Sites that are filled at the same time, or that each could be: what stays in one of them is not there for the others. */
export function fillingOf(
  job: Job,
  sites: readonly Site[],
  placeCount: number,
  mostFiled: number | null,
): Filling {
  const stock = sites[0]?.stock;
  return {
    step: resolutionOf(job.settings.unit),
    mostFiled,
    copies:
      stock === undefined
        ? new Int32Array(0)
        : copiesLeft(
            job,
            stock,
            sites.map((site) => site.kept),
          ),
    placeCount,
  };
}

/** The rows of a pair, one for each chamber to fill. */
export function rowsOf({ keyIn, tieBreaks, toFill }: PairToFill, filling: Filling): Row<Candidate>[] {
  return toFill.map(({ place, spans }) =>
    chamberRow(spans, keyIn.site.stock, place, { ...filling, tieBreaks }),
  );
}
