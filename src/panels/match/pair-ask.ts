/** What is asked of the bag for one key in one cylinder. mm. */
import type { MatchSelection } from '../../model/matching/match.ts';

export type PairAsk = { readonly pair: MatchSelection; readonly mostFiled: number | null };
