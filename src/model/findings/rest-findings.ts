/** What is wrong with no key in, and with drivers and springs on the key's way. mm. */
import type { Finding } from '../evaluate/evaluation.ts';
import { sayAmount, sayLength } from '../evaluate/say.ts';
import type { RestAtLine, RestResult } from '../rest/rest-result.ts';
import { type Facts, found, inChamber, outTravel } from './facts.ts';
import type { FindingCode } from './finding-codes.ts';

/** Lists what does not lock, and which drivers and springs do not do. */
export function restFindings(facts: Facts): Finding[] {
  return [
    ...facts.rest.chambers.flatMap((chamber) => [
      ...stateFindings(facts, chamber),
      ...springFindings(facts, chamber),
      ...driverFindings(facts, chamber),
    ]),
    ...waistFindings(facts),
    ...unlikeSprings(facts),
  ];
}

type Text = {
  readonly code: FindingCode;
  readonly severity: Finding['severity'];
  readonly fields: readonly string[];
  readonly text: string;
  readonly travel?: number;
};

function tell(
  facts: Facts,
  { chamber }: RestResult,
  { code, severity, fields, text, travel }: Text,
): Finding {
  return found(facts, code, severity, {
    chambers: [chamber],
    fields,
    message: inChamber(facts, chamber, text),
    travel: travel ?? outTravel(facts),
    view: 'section',
  });
}

function stateFindings(facts: Facts, result: RestResult): Finding[] {
  const told: Finding[] = [];
  for (const [i, at] of result.atLines.entries()) {
    const text = stateText(
      facts,
      at,
      result.atLines.length > 1 ? (i === 0 ? ' at the inner line' : ' at the outer line') : '',
    );
    if (text !== null) told.push(tell(facts, result, text));
  }
  if (result.spring === null && result.atLines.some((at) => at.state !== 'nothing in it')) {
    const text = 'there is no spring: only its weight brings the driver down. Take it as not locking.';
    told.push(tell(facts, result, { code: 'no-spring', severity: 'warns', fields: ['spring'], text }));
  }
  return told;
}

function stateText({ unit, thresholds }: Facts, at: RestAtLine, where: string): Text | null {
  const recess = sayAmount(at.recess ?? 0, unit);
  const fields = ['rest depth', 'driver length'];
  switch (at.state) {
    case 'split at the line': {
      const text = `with the key out the split itself lies at the shear line${where}: no driver stands across, and it does not lock.`;
      return { code: 'split-at-line-at-rest', severity: 'stops', fields, text };
    }
    case 'bottom pin across': {
      const text = `with the key out the bottom pin already stands ${recess} above the shear line${where}. A key only lifts further: none can open it.`;
      return { code: 'pin-across-at-rest', severity: 'stops', fields, text };
    }
    case 'driver below': {
      const text = `with the key out the driver falls below the shear line${where}, which lies across its spring: it does not lock, and the spring gets cut.`;
      return { code: 'driver-below-at-rest', severity: 'stops', fields, text };
    }
    case 'no driver': {
      const text = `there is no driver: it does not lock${where}.`;
      return { code: 'no-driver', severity: 'stops', fields: ['driver'], text };
    }
    case 'driver across': {
      if (at.engaged === null || at.engaged >= thresholds.driverEngagement) return null;
      const text = `with the key out the driver only reaches ${sayAmount(at.engaged, unit)} past the shear line${where}, less than ${sayLength(thresholds.driverEngagement, unit)}.`;
      return { code: 'driver-barely-across', severity: 'warns', fields, text };
    }
    case 'master pin across':
    case 'nothing in it':
    case 'unknown':
      return null;
  }
}

function springFindings(facts: Facts, result: RestResult): Finding[] {
  const { thresholds, unit } = facts;
  const { spring } = result;
  if (spring === null) return [];
  const told: Finding[] = [];
  if (spring.toSpare !== null && spring.toSpare < thresholds.springMargin) {
    const isSolid = spring.toSpare < 0;
    const text = isSolid
      ? `its spring goes solid as the highest point of the key passes, ${sayAmount(spring.toSpare, unit)} too soon: the key stops there. Take a shorter driver.`
      : `as the highest point of the key passes, its spring is only ${sayAmount(spring.toSpare, unit)} from solid, less than ${sayLength(thresholds.springMargin, unit)}.`;
    const travel = spring.worstTravel ?? 0;
    told.push(
      tell(facts, result, {
        code: 'spring-solid',
        severity: isSolid ? 'stops' : 'warns',
        fields: ['driver length', 'spring solid'],
        text,
        travel,
      }),
    );
  }
  if (spring.isLooseAtRest === true && spring.atRest !== null && spring.free !== null) {
    const text = `its spring is ${sayLength(spring.free, unit)} long and has ${sayLength(spring.atRest, unit)} of room with the key out: nothing presses the driver down.`;
    told.push(
      tell(facts, result, { code: 'spring-loose', severity: 'warns', fields: ['spring free'], text }),
    );
  }
  return told;
}

function driverFindings(facts: Facts, result: RestResult): Finding[] {
  const { unit } = facts;
  const { verdict, shortest, longest, roomLeft, peak } = result.driver;
  const told: Finding[] = [];
  if (roomLeft !== null && roomLeft < 0) {
    const text = `the driver strikes the cap, ${sayAmount(roomLeft, unit)} before the highest point of the key has passed: the key stops there.`;
    told.push(
      tell(facts, result, {
        code: 'driver-strikes-cap',
        severity: 'stops',
        fields: ['driver length'],
        text,
        travel: peak?.travel ?? 0,
      }),
    );
  }
  if (verdict === 'none fits' && shortest !== null && longest !== null) {
    const text = `no driver suits: to lock it must be at least ${sayLength(shortest, unit)} long, to let the key pass at most ${sayLength(longest, unit)}. Take a spring that squeezes shorter.`;
    told.push(
      tell(facts, result, {
        code: 'no-driver-fits',
        severity: 'warns',
        fields: ['spring solid', 'rest depth'],
        text,
      }),
    );
  }
  return told;
}

function waistFindings(facts: Facts): Finding[] {
  const drivers = facts.rest.chambers.filter((each) => each.driver.verdict !== 'no driver');
  const isAll = drivers.length > 1 && drivers.every((each) => each.waist?.isAtLine === true);
  if (!isAll) return [];
  return [
    found(facts, 'all-waists-at-line', 'warns', {
      chambers: drivers.map((each) => each.chamber),
      fields: ['driver'],
      message:
        'Every driver stands at the shear line with its waist: the plug rattles to and fro. Put in at least one plain driver.',
      travel: outTravel(facts),
      view: 'section',
    }),
  ];
}

/** Springs should be all alike: a short one among them is crushed, or of another kind. */
function unlikeSprings(facts: Facts): Finding[] {
  const free = facts.rest.chambers.flatMap(({ chamber, spring }) =>
    spring?.free == null ? [] : [{ chamber, length: spring.free }],
  );
  const longest = Math.max(...free.map((each) => each.length));
  return free.flatMap(({ chamber, length }): Finding[] => {
    const by = longest - length;
    if (by <= facts.thresholds.springMargin) return [];
    const text = `its spring is ${sayAmount(by, facts.unit)} shorter than the longest of the others: crushed, or of another kind.`;
    const message = inChamber(facts, chamber, text);
    return [
      found(facts, 'springs-differ', 'notes', {
        chambers: [chamber],
        fields: ['spring free'],
        message,
        travel: outTravel(facts),
        view: 'section',
      }),
    ];
  });
}
