/** What stands on the key otherwise than on the root of its cut. mm. */
import { eatenFlats } from '../contact/eaten-flats.ts';
import { flankLift } from '../contact/flank-lift.ts';
import { buildFoot } from '../contact/foot.ts';
import type { Finding } from '../evaluate/evaluation.ts';
import { sayAmount } from '../evaluate/say.ts';
import { chamberOver, type Facts, found, homeTravel, inChamber, SAID_FROM_MM, stackOf } from './facts.ts';

/** Lists what rides on sides, off its cut, or on a cut that a neighbour ate into. */
export function contactFindings(facts: Facts): Finding[] {
  return [...ridings(facts), ...eaten(facts), ...hanging(facts)];
}

function ridings(facts: Facts): Finding[] {
  const { assembly, evaluation, unit } = facts;
  const { key } = assembly;
  if (key === null) return [];
  return assembly.chambers.flatMap((chamber): Finding[] => {
    const foot = stackOf(facts, chamber.id)?.parts[0];
    const result = evaluation.chambers.find((each) => each.chamber === chamber.id);
    if (foot === undefined || result?.contactHeight == null) return [];
    const shape = buildFoot(foot.lower, foot.radius);
    const lift = flankLift(key.shape, key.profile, shape, chamber.z, homeTravel(facts));
    if (lift === undefined) return [];
    const told: Finding[] = [];
    const common = { chambers: [chamber.id], view: 'section' } as const;
    if (lift.bridging > SAID_FROM_MM) {
      const isBall = foot.role === 'ball';
      const by = sayAmount(lift.bridging, unit);
      const message = isBall
        ? inChamber(
            facts,
            chamber.id,
            `the cut is too narrow for the ball, which rides on its sides ${by} above the root.`,
          )
        : inChamber(
            facts,
            chamber.id,
            `the pin's point is too blunt for the cut and rides on its sides, ${by} above the root.`,
          );
      told.push(
        found(facts, isBall ? 'rides-on-sides' : 'tip-rides-on-sides', 'notes', {
          ...common,
          fields: ['root flat', 'cut angle'],
          message,
        }),
      );
    }
    if (Number.isFinite(lift.outOfLineLift) && lift.outOfLineLift > SAID_FROM_MM) {
      const message = inChamber(
        facts,
        chamber.id,
        `its cut lies ${sayAmount(lift.outOfLine, unit)} off, towards the ${lift.outOfLine > 0 ? 'tip' : 'bow'}; that lifts the stack ${sayAmount(lift.outOfLineLift, unit)}.`,
      );
      told.push(
        found(facts, 'cut-off-chamber', 'warns', {
          ...common,
          fields: ['cut position', 'chamber position'],
          message,
        }),
      );
    }
    return told;
  });
}

function eaten(facts: Facts): Finding[] {
  const { assembly, unit } = facts;
  if (assembly.key === null) return [];
  return eatenFlats(assembly.key.shape).flatMap((flat): Finding[] => {
    if (flat.rootDrop <= SAID_FROM_MM) return [];
    const at = assembly.key?.shape.cuts.find((each) => each.id === flat.cut)?.at ?? 0;
    const chamber = chamberOver(facts, at);
    if (chamber === undefined) return [];
    const by = flat.by.kind === 'tip' ? "the tip's slope" : 'the deeper cut beside it';
    const message = inChamber(
      facts,
      chamber.id,
      `${by} eats into its cut: under the chamber the root is ${sayAmount(flat.rootDrop, unit)} deeper than it was cut.`,
    );
    return [
      found(facts, 'neighbour-eats-cut', 'warns', {
        chambers: [chamber.id],
        fields: ['root depth', 'cut position'],
        message,
        view: 'section',
      }),
    ];
  });
}

/** Stacks that the seated key does not set. */
function hanging(facts: Facts): Finding[] {
  return facts.way.chambers.flatMap((way): Finding[] => {
    const { chamber } = way;
    const view = 'section' as const;
    if (!way.isReached) {
      const message = inChamber(facts, chamber, 'the key ends before it: nothing lifts this stack.');
      return [
        found(facts, 'key-too-short', 'stops', {
          chambers: [chamber],
          fields: ['tip position'],
          message,
          view,
        }),
      ];
    }
    if (way.hangsBy <= SAID_FROM_MM) return [];
    const by = sayAmount(way.hangsBy, facts.unit);
    const message = inChamber(
      facts,
      chamber,
      `the cut is so deep that the stack hangs in its hole ${by} above the key, which does not set it.`,
    );
    return [
      found(facts, 'hangs-above-key', 'warns', {
        chambers: [chamber],
        fields: ['root depth', 'rest depth'],
        message,
        view,
      }),
    ];
  });
}
