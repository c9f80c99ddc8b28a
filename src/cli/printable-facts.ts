/** What is only worked out when it is asked for, as printed: chambers by their number on screen. mm, N, radians. */
import { allFindings } from '../model/findings/all-findings.ts';
import type { Facts } from '../model/findings/facts.ts';

/** What is only worked out when it is asked for: with no key in, the key's way, putting it together, all findings. */
export function printableFacts(facts: Facts, number: (id: string) => number | string): object {
  const { rest, way, play, loading } = facts;
  const numbered = <T extends { chamber: string; number: number }>({
    chamber,
    number: shown,
    ...more
  }: T) => ({
    chamber: shown,
    id: chamber,
    ...more,
  });
  return {
    rest: { chambers: rest.chambers.map(numbered), commonDriver: rest.commonDriver },
    way: {
      chambers: way.chambers.map(numbered),
      keyIsHeld: way.keyIsHeld,
      mostForce: way.mostForce,
    },
    endPlay: { ...play, tightest: play.tightest === null ? null : number(play.tightest) },
    loading,
    findings: allFindings(facts).map(({ show, chambers, ...finding }) => ({
      ...finding,
      chambers: chambers.map(number),
      show: show && { ...show, chamber: show.chamber === null ? null : number(show.chamber) },
    })),
  };
}
