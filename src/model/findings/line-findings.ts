/** What the splits at the lines tell beyond their verdicts. mm; offsets + high, - low. */
import type { ChamberResult, Finding, SplitResult } from '../evaluate/evaluation.ts';
import { letsTurn } from '../evaluate/judge.ts';
import { sayAmount } from '../evaluate/say.ts';
import { type Facts, found, homeTravel, inChamber } from './facts.ts';
import type { FindingCode } from './finding-codes.ts';
import { movedKey, type Span } from './moved-key.ts';

/** A split in this share of the low side of its window, next to its end, wears the plug's edge. Common practice, no source. */
const WEARS_SHARE = 1 / 3;

/** Lists what is worth knowing about the shear lines. */
export function lineFindings(facts: Facts): Finding[] {
  return [
    ...facts.evaluation.chambers.flatMap((chamber) => [
      ...endFindings(facts, chamber),
      ...wearing(facts, chamber),
    ]),
    ...mixedLines(facts),
    ...otherwiseHeld(facts),
  ];
}

function tell(
  facts: Facts,
  { chamber }: ChamberResult,
  code: FindingCode,
  severity: Finding['severity'],
  text: string,
) {
  const message = inChamber(facts, chamber, text);
  return found(facts, code, severity, { chambers: [chamber], fields: ['ends'], message, view: 'close-up' });
}

/** The lower stack's split at the inner line. */
function firstSplit({ evaluation }: Facts, chamber: ChamberResult): SplitResult | undefined {
  return chamber.splits.find((split) => split.line === evaluation.lines[0]?.line);
}

/** Ends that turn at no length, and flat tops whose corners stand out of the plug's curve. */
function endFindings(facts: Facts, chamber: ChamberResult): Finding[] {
  const split = firstSplit(facts, chamber);
  if (split === undefined) return [];
  const { window, offset } = split;
  if (window.lowest > window.highest) {
    const text =
      'with these ends no length of pin ever turns: dome or bevel the pin, or take a driver with a broken edge.';
    return [tell(facts, chamber, 'no-length-turns', 'stops', text)];
  }
  const pin = facts.assembly.stacks
    .find((each) => each.chamber === chamber.chamber)
    ?.parts.find((part) => part.part === split.below);
  const isFlat = pin?.upper.kind === 'flat' || pin?.upper.kind === 'bevel';
  const clearance = facts.assembly.lines[0]?.clearance ?? 0;
  if (!isFlat || offset <= window.highest || offset > clearance) return [];
  const by = sayAmount(offset - window.highest, facts.unit);
  const text = `its pin has a flat top, and the corners stand out of the plug's round. Domed it would turn at this height; flat it must stand ${by} lower.`;
  return [tell(facts, chamber, 'flat-top-corners', 'warns', text)];
}

function wearing(facts: Facts, chamber: ChamberResult): Finding[] {
  const split = firstSplit(facts, chamber);
  if (split === undefined || !letsTurn(split.verdict) || split.window.lowest >= 0) return [];
  const room = split.offset - split.window.lowest;
  if (room < 0 || room >= -split.window.lowest * WEARS_SHARE) return [];
  const text = `it turns, but only ${sayAmount(room, facts.unit)} above where the driver stops the plug: the plug's edge lifts the driver at every turn, feels rough and wears.`;
  return [tell(facts, chamber, 'plug-edge-wears', 'notes', text)];
}

/** Every chamber is clear at some line, and yet nothing turns. */
function mixedLines(facts: Facts): Finding[] {
  const { lines, chambers } = facts.evaluation;
  if (lines.length < 2 || lines.some((line) => line.verdict !== 'will not turn')) return [];
  if (!chambers.every((chamber) => chamber.verdicts.some(({ verdict }) => letsTurn(verdict)))) return [];
  const inner = chambers.filter((chamber) => letsTurn(chamber.verdicts[0]?.verdict ?? 'unknown'));
  const numbers = (list: readonly ChamberResult[]) => list.map(({ number }) => number).join(', ');
  const outer = chambers.filter((chamber) => !inner.includes(chamber));
  return [
    found(facts, 'mixed-lines', 'stops', {
      chambers: outer.map(({ chamber }) => chamber),
      fields: ['parts'],
      message: `Chambers ${numbers(inner)} are clear at the inner line, ${numbers(outer)} only at the outer one: a mixture turns nothing.`,
      view: 'close-up',
    }),
  ];
}

function otherwiseHeld(facts: Facts): Finding[] {
  const moved = movedKey(facts);
  if (moved === null || moved.turnsAsItSits) return [];
  const { lifted, rocked, drawn } = moved;
  const told: Finding[] = [];
  const tellAll = (code: FindingCode, span: Span, how: string, why: string, travel: number) =>
    told.push(
      found(facts, code, 'warns', {
        chambers: facts.evaluation.lines[0]?.blockedBy ?? [],
        fields: ['metal under the key', 'root depth'],
        message: `It only turns with the key ${how} by ${sayAmount(span.from, facts.unit)} to ${sayAmount(span.to, facts.unit)}: ${why}`,
        travel,
        view: 'close-up',
      }),
    );
  const home = homeTravel(facts);
  if (lifted !== null)
    tellAll(
      'turns-when-lifted',
      lifted,
      'lifted',
      'the stacks are low all together, by a worn key or short pins.',
      home,
    );
  else if (rocked !== null)
    tellAll('turns-when-rocked', rocked, 'rocked up at the bow', 'the stacks next to the bow are low.', home);
  if (drawn !== null)
    tellAll(
      'turns-when-drawn',
      drawn,
      'drawn out',
      'the stop or the places of the cuts are off, and pins ride on the sides.',
      home + (drawn.from + drawn.to) / 2,
    );
  return told;
}
