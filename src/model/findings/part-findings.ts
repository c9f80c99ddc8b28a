/** Parts that are wrong for their place, or are not there. mm. */
import type { Finding } from '../evaluate/evaluation.ts';
import { sayLength } from '../evaluate/say.ts';
import type { MeasuredPart } from '../measured/measured-stack.ts';
import type { RestSite } from '../rest/rest-site.ts';
import { type Facts, found, inChamber } from './facts.ts';
import type { FindingCode } from './finding-codes.ts';
import { partsUsedTwice } from './parts-used-twice.ts';

/** Lists what does not belong where it is. */
export function partFindings(facts: Facts): Finding[] {
  return [
    ...facts.sites.flatMap((site) => [
      ...tooWide(facts, site),
      ...throughSlot(facts, site),
      ...upsideDown(facts, site),
      ...balls(facts, site),
      ...thinMasterPins(facts, site),
    ]),
    ...emptyChambers(facts),
    ...partsUsedTwice(facts),
  ];
}

function tell(
  facts: Facts,
  { chamber }: RestSite,
  code: FindingCode,
  severity: Finding['severity'],
  fields: readonly string[],
  text: string,
): Finding {
  return found(facts, code, severity, {
    chambers: [chamber.id],
    fields,
    message: inChamber(facts, chamber.id, text),
    view: 'section',
  });
}

const NAMES: Readonly<Record<MeasuredPart['role'], string>> = {
  ball: 'the ball',
  bottomPin: 'the bottom pin',
  masterPin: 'the master pin',
  driver: 'the driver',
  spring: 'the spring',
};

function tooWide(facts: Facts, site: RestSite): Finding[] {
  const { bench, chamber, stack } = site;
  const entered = bench.cylinder.chambers.find((each) => each.id === chamber.id)?.holes ?? [];
  if (entered.every((hole) => hole.diameter === undefined)) return [];
  return stack.parts.flatMap((part): Finding[] => {
    // The ball and the bottom pin live in the plug, the spring in the shell, the others pass both.
    const holes =
      part.role === 'spring'
        ? chamber.holes.slice(-1)
        : part.role === 'ball'
          ? chamber.holes.slice(0, 1)
          : chamber.holes;
    const hole = Math.min(...holes.map((each) => each.radius));
    if (part.part.diameter === undefined || part.radius.value <= hole) return [];
    const sizes = `${sayLength(2 * part.radius.value, facts.unit)} across, the hole ${sayLength(2 * hole, facts.unit)}`;
    return [
      tell(
        facts,
        site,
        'part-too-wide',
        'stops',
        ['diameter'],
        `${NAMES[part.role]} is ${sizes}: it does not go in.`,
      ),
    ];
  });
}

function throughSlot(facts: Facts, site: RestSite): Finding[] {
  const slot = facts.bench.cylinder.keywayWidth;
  if (slot === undefined) return [];
  const width = facts.assembly.keywayWidth;
  return site.stack.parts.flatMap((part): Finding[] => {
    if (part.role !== 'ball' || part.part.diameter === undefined || 2 * part.radius.value > width) return [];
    const text = `the ball is ${sayLength(2 * part.radius.value, facts.unit)} across, the slot of the keyway ${sayLength(width, facts.unit)}: it drops through.`;
    return [tell(facts, site, 'ball-falls-through', 'stops', ['diameter', 'keyway width'], text)];
  });
}

function upsideDown(facts: Facts, site: RestSite): Finding[] {
  const told: Finding[] = [];
  for (const { role, lower, upper } of site.stack.parts) {
    if (
      role === 'bottomPin' &&
      upper.basis === 'seen' &&
      (upper.shape.kind === 'cone' || upper.shape.kind === 'cup')
    ) {
      const what = upper.shape.kind === 'cone' ? 'point' : 'dimple';
      told.push(
        tell(
          facts,
          site,
          'pin-upside-down',
          'stops',
          ['ends'],
          `the bottom pin stands upside down, its ${what} looks up.`,
        ),
      );
    } else if (
      role === 'bottomPin' &&
      lower.basis === 'seen' &&
      lower.shape.kind === 'dome' &&
      upper.shape.kind !== 'dome'
    ) {
      told.push(
        tell(
          facts,
          site,
          'pin-upside-down',
          'warns',
          ['ends'],
          'the bottom pin stands upside down, its crown looks at the key.',
        ),
      );
    }
    if (
      role === 'driver' &&
      lower.basis === 'seen' &&
      (lower.shape.kind === 'cone' || lower.shape.kind === 'cup')
    ) {
      told.push(
        tell(
          facts,
          site,
          'bottom-pin-as-driver',
          'warns',
          ['ends'],
          'what stands as a driver has the end of a bottom pin. Some do it on purpose to even out the stacks; a plain driver is safer.',
        ),
      );
    }
  }
  return told;
}

function balls(facts: Facts, site: RestSite): Finding[] {
  const roles = site.stack.parts.map((part) => part.role);
  if (roles.length === 0) return [];
  const firstPin = roles.findIndex((role) => role !== 'ball');
  const under = firstPin < 0 ? roles.length : firstPin;
  const above = roles.filter((role, i) => role === 'ball' && i > under).length;
  const told: Finding[] = [];
  if (above > 0) {
    const text = 'a ball lies above the bottom pin, on the side of the driver.';
    told.push(tell(facts, site, 'ball-above-pin', 'stops', ['parts'], text));
  }
  if (under > 1)
    told.push(tell(facts, site, 'ball-doubled', 'stops', ['parts'], `${under} balls lie under the pin.`));
  if (under === 0 && wantsBall(facts, site)) {
    told.push(
      tell(
        facts,
        site,
        'ball-missing',
        'warns',
        ['parts'],
        'no ball lies under the pin, as in the other chambers.',
      ),
    );
  }
  return told;
}

/** A dimpled pin is made to stand on a ball; and a chamber is hardly the only one without. */
function wantsBall({ sites }: Facts, { stack }: RestSite): boolean {
  const foot = stack.parts[0];
  if (foot?.role === 'bottomPin' && foot.lower.shape.kind === 'cup' && foot.lower.basis === 'seen')
    return true;
  const filled = sites.filter((each) => each.stack.parts.length > 0);
  const withBall = filled.filter((each) => each.stack.parts[0]?.role === 'ball');
  return 2 * withBall.length > filled.length;
}

function thinMasterPins(facts: Facts, site: RestSite): Finding[] {
  const { thresholds, unit } = facts;
  return site.stack.parts.flatMap((part): Finding[] => {
    const length = part.length?.value;
    if (part.role !== 'masterPin' || length === undefined || length >= thresholds.thinnestMasterPin)
      return [];
    const text = `its master pin is ${sayLength(length, unit)} thin, under ${sayLength(thresholds.thinnestMasterPin, unit)}: it can tip over and jam. Let one split serve both, or choose another cut.`;
    return [tell(facts, site, 'thin-master-pin', 'warns', ['length'], text)];
  });
}

function emptyChambers(facts: Facts): Finding[] {
  const { sites } = facts;
  const empty = sites.filter((site) => site.stack.parts.length === 0);
  if (empty.length === 0 || empty.length === sites.length) return [];
  return empty.map((site) =>
    tell(facts, site, 'empty-chamber', 'stops', ['parts'], 'nothing is in it; it neither holds nor locks.'),
  );
}
