/** Everything said about one chamber. Heights and lengths mm, offsets + high, - low. */
import { known } from '../assert.ts';
import type { Assembly, AssemblyChamber } from '../assembly/assembly.ts';
import { combine, type Estimate, exact, expandedUncertainty, shift } from '../estimate/estimate.ts';
import type { MeasuredChamber } from '../measured/measured-cylinder.ts';
import type { MeasuredPair } from '../measured/measured-pair.ts';
import { lowerStackEnd, type MeasuredStack } from '../measured/measured-stack.ts';
import type { Bench } from '../measured/selection.ts';
import { oneReading } from '../measured/stand-in.ts';
import { boundsOnNeeded } from './bounds.ts';
import { type ContactEstimate, estimateContact, type KeyReading, measuredBy } from './contact-estimate.ts';
import type { ChamberResult, RouteResult, SplitResult, Turns } from './evaluation.ts';
import { holds, letsTurn } from './judge.ts';
import { bySubtraction, byStandingUp, drivingRoute, type RouteEstimate, routesDisagree } from './routes.ts';
import { sayAmount, sayLength } from './say.ts';
import { type LinePlace, type SplitPlace, splitPlaces } from './split-place.ts';
import { judged, type UsableRange, usable } from './judged.ts';
import { type SplitAtLine, splitAtLine } from './split-results.ts';
import { keyTrouble, sleeveTrouble, windowTrouble } from './size-trouble.ts';
import { tighten } from './tighten.ts';
import { estimateWindow } from './window-estimate.ts';
import { windowInputFor } from './window-input-for.ts';
import type { WindowOf } from './window-memo.ts';

export type ChamberSetting = {
  readonly bench: Bench;
  readonly assembly: Assembly;
  readonly chamber: AssemblyChamber;
  readonly measured: MeasuredChamber;
  readonly stack: MeasuredStack;
  readonly lines: readonly LinePlace[];
  readonly pair: MeasuredPair;
  readonly keyReadings: readonly KeyReading[];
  /** Of a set known to work with this key. */
  readonly effectiveDiameter: Estimate | null;
  readonly windowOf: WindowOf;
};

/** Evaluates one chamber. */
export function evaluateChamber(setting: ChamberSetting): ChamberResult {
  const { chamber, stack } = setting;
  const contacts = contactsOf(setting);
  const contact = contacts[0]?.contact ?? null;
  const routes = routesOf(setting, contacts);
  const driving = drivingRoute(routes, setting.bench.seating?.pinnedRoutes[chamber.id]);
  const place = splitPlaces(stack)[0];
  const line = setting.lines[0];
  const trouble = troubleOf(setting, contact);
  const sure = driving === null || trouble !== null ? null : tightenNeeded(setting, driving.needed);
  const atLines = sure === null ? [] : splitsAtLines(setting, sure.estimate);
  const splits = atLines.map((each) => each.split);
  const lower = place?.top ?? null;
  return {
    chamber: chamber.id,
    number: chamber.number,
    contactHeight: contact?.height.value ?? null,
    flankLift: contact?.lift ?? null,
    neededLowerStack: sure?.estimate.value ?? null,
    neededUncertainty: sure === null ? null : expandedUncertainty(sure.estimate),
    drivingRoute: driving?.route ?? null,
    routes: routes.map((each) => routeResult(each, driving)),
    ...simple(setting, contact, driving),
    lowerStack: lower?.value ?? null,
    lowerStackUncertainty: lower === null ? null : expandedUncertainty(lower),
    ...rangeToUse(setting, sure?.estimate ?? null, line, atLines[0]),
    splits,
    verdicts: setting.lines.map(({ measured }) => bestSplit(splits, measured.id, hasUnknownSplit(stack))),
    alone: alone(splits),
    missing: [
      ...missingOf(setting, driving),
      ...(trouble === null ? [] : [trouble]),
      ...(sure?.contradicts === true ? [contradiction(setting)] : []),
    ],
  };
}

/** The splits of a chamber at every line, with their doubt; none while the key's call is not known. */
export function judgedSplits(setting: ChamberSetting): SplitAtLine[] {
  const contacts = contactsOf(setting);
  const pinned = setting.bench.seating?.pinnedRoutes[setting.chamber.id];
  const driving = drivingRoute(routesOf(setting, contacts), pinned);
  if (driving === null || troubleOf(setting, contacts[0]?.contact ?? null) !== null) return [];
  return splitsAtLines(setting, tightenNeeded(setting, driving.needed).estimate);
}

/** By which routes a chamber's call is known. */
export function routesTo(setting: ChamberSetting): RouteEstimate[] {
  return routesOf(setting, contactsOf(setting));
}

function splitsAtLines(setting: ChamberSetting, needed: Estimate): SplitAtLine[] {
  return splitPlaces(setting.stack).flatMap((each) =>
    setting.lines.map((at) => splitAtLine(each, at, { ...setting, needed })),
  );
}

type Routed = { readonly reading: KeyReading; readonly contact: ContactEstimate };

/** Contacts by each way the cut under this chamber was measured; the first is the one shown. */
function contactsOf({ keyReadings, measured, stack }: ChamberSetting): Routed[] {
  const lowest = known(stack.parts[0], 'the foot of a stack');
  return keyReadings.flatMap((reading): Routed[] => {
    const contact = estimateContact(reading, measured.position, lowest);
    return contact !== null && measuredBy(reading, contact.cut) ? [{ reading, contact }] : [];
  });
}

function routesOf(setting: ChamberSetting, contacts: readonly Routed[]): RouteEstimate[] {
  const { bench, chamber, pair, effectiveDiameter } = setting;
  const crestDrop = chamber.crestDrops[0] ?? 0;
  const routes: RouteEstimate[] = [];
  const { plugMinusFloor } = pair;
  if (plugMinusFloor !== null) {
    for (const { reading, contact } of contacts) {
      const route = reading.route === 'rootDepth' ? 'subtraction' : 'over the ball';
      routes.push({ route, needed: bySubtraction(plugMinusFloor, contact.height, crestDrop) });
    }
  }
  const diameter = 2 * (setting.assembly.lines[0]?.radius ?? 0);
  for (const entry of bench.seating?.standsUpBy ?? []) {
    if (entry.chamber === chamber.id) {
      routes.push({ route: 'stands up by', needed: byStandingUp(entry, diameter, bench.measuring) });
    }
  }
  const contact = contacts[0]?.contact;
  if (effectiveDiameter !== null && contact !== undefined) {
    routes.push({
      route: 'known set',
      needed: combine([
        [1, effectiveDiameter],
        [-1, contact.height],
      ]),
    });
  }
  return routes;
}

function tightenNeeded(setting: ChamberSetting, needed: Estimate): ReturnType<typeof tighten> {
  const { bench, assembly, chamber, lines, stack } = setting;
  const place = splitPlaces(stack)[0];
  const line = lines[0];
  if (place === undefined || line === undefined) return { estimate: needed, contradicts: false };
  const hasNews =
    bench.job.benchResults.length > 0 ||
    (bench.seating?.felt.some((felt) => felt.chamber === chamber.id) ?? false);
  if (!hasNews) return { estimate: needed, contradicts: false };
  const input = windowInputFor({ place, line, bench, assembly, chamber });
  const window = estimateWindow(input, { line, place, chamber: setting.measured }, setting.windowOf);
  const ends = { lowest: window.lowest.value, highest: window.highest.value };
  const lineRadius = assembly.lines[0]?.radius ?? 0;
  return tighten(needed, boundsOnNeeded(bench, chamber.id, ends, lineRadius, chamber.holes[0]?.radius ?? 1));
}

/** A size that cannot be, of the surroundings of any line or of the cut under the chamber. */
function troubleOf(setting: ChamberSetting, contact: ContactEstimate | null): string | null {
  const { bench, assembly, chamber, lines, stack, keyReadings } = setting;
  const unit = bench.job.settings.unit;
  const key = keyReadings[0]?.key;
  const ofSleeve = sleeveTrouble(lines, unit);
  if (ofSleeve !== null) return ofSleeve;
  const ofKey = key === undefined || contact === null ? null : keyTrouble(key, contact.cut, unit);
  if (ofKey !== null) return ofKey;
  const lower = lowerPlace(stack);
  if (lower === null) return null;
  const height = lower.top?.value;
  if (height !== undefined && !(height > 0 && height < 200)) {
    return `The ball + bottom pin of chamber ${chamber.number} cannot be ${sayLength(height, unit)} high.`;
  }
  for (const place of [{ ...lower, top: exact(0) }, ...splitPlaces(stack)]) {
    for (const line of lines) {
      const input = windowInputFor({ place, line, bench, assembly, chamber });
      const trouble = windowTrouble(input, unit, assembly.bodies[line.index]?.role);
      if (trouble !== null) return trouble;
    }
  }
  return null;
}

function routeResult({ route, needed }: RouteEstimate, driving: RouteEstimate | null): RouteResult {
  return {
    route,
    needed: needed.value,
    expandedUncertainty: expandedUncertainty(needed),
    disagrees: driving !== null && driving.route !== route && routesDisagree(needed, driving.needed),
  };
}

function rangeToUse(
  setting: ChamberSetting,
  needed: Estimate | null,
  line: LinePlace | undefined,
  first: SplitAtLine | undefined,
): Pick<ChamberResult, 'useFrom' | 'useTo' | 'best' | 'noneCertain'> {
  if (first !== undefined) return told(first.use);
  const place = lowerPlace(setting.stack);
  if (needed === null || line === undefined || place === null) {
    return { useFrom: null, useTo: null, best: needed?.value ?? null, noneCertain: false };
  }
  const { bench, assembly, chamber } = setting;
  const level = needed.value + (chamber.crestDrops[0] ?? 0);
  const top = place.top ?? oneReading(bench.job, level, bench);
  const input = windowInputFor({ place: { ...place, top }, line, bench, assembly, chamber });
  const window = estimateWindow(
    input,
    { line, place: { ...place, top }, chamber: setting.measured },
    setting.windowOf,
  );
  const offset = shift(
    combine([
      [1, top],
      [-1, needed],
    ]),
    -(chamber.crestDrops[0] ?? 0),
  );
  return told(usable(level, window, judged(offset, window, bench)));
}

function told(use: UsableRange): Pick<ChamberResult, 'useFrom' | 'useTo' | 'best' | 'noneCertain'> {
  return { useFrom: use.from, useTo: use.to, best: use.best, noneCertain: use.noneCertain };
}

/** The place of the lower stack's top, its height known or not. */
function lowerPlace(
  stack: MeasuredStack,
): (Omit<SplitPlace, 'top'> & { readonly top: Estimate | null }) | null {
  const end = lowerStackEnd(stack);
  const below = stack.parts[end];
  const next = stack.parts[end + 1];
  if (below === undefined) return null;
  const above = next === undefined || next.role === 'spring' ? null : next;
  return { below, above, top: stack.tops[end] ?? null, isLowerStack: true };
}

/** Plain subtraction as on paper, and why the real thing differs. */
function simple(
  { bench, pair, stack }: ChamberSetting,
  contact: ContactEstimate | null,
  driving: RouteEstimate | null,
): Pick<ChamberResult, 'simpleLowerStack' | 'simpleDiffers'> {
  if (contact === null || pair.plugMinusFloor === null)
    return { simpleLowerStack: null, simpleDiffers: null };
  const simpleLowerStack = pair.plugMinusFloor.value - contact.rootDepth.value;
  const unit = bench.job.settings.unit;
  const what = stack.parts[0]?.role === 'ball' ? 'the ball' : 'the tip';
  const reasons: string[] = [];
  if (isWorthSaying(contact.bridging)) {
    reasons.push(
      `${what} rides on the sides of the cut, ${sayAmount(contact.bridging, unit)} above its root`,
    );
  }
  if (isWorthSaying(Math.abs(contact.outOfLineLift))) {
    reasons.push(
      `the cut sits ${sayAmount(contact.outOfLine, unit)} off its chamber, which lifts ${what} ${sayAmount(contact.outOfLineLift, unit)}`,
    );
  }
  if (driving !== null && (driving.route === 'stands up by' || driving.route === 'known set')) {
    reasons.push(`the height comes from another route: ${driving.route}`);
  }
  return { simpleLowerStack, simpleDiffers: reasons.length === 0 ? null : sentence(reasons) };
}

/** mm. Differences below this are not worth a word (a quarter of a thousandth). */
const SAID_FROM_MM = 0.00635;

/** A cut that lies beyond the tip lifts nothing: there is no amount to say. */
function isWorthSaying(mm: number): boolean {
  return Number.isFinite(mm) && mm > SAID_FROM_MM;
}

function sentence(reasons: readonly string[]): string {
  const text = reasons.join('; ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** A split above the lower stack whose height is not known yet may still be the one that lets a line turn. */
function hasUnknownSplit(stack: MeasuredStack): boolean {
  return stack.parts.some((part, i) => part.role === 'masterPin' && stack.tops[i] == null);
}

function bestSplit(
  splits: readonly SplitResult[],
  line: string,
  isOneUnknown: boolean,
): ChamberResult['verdicts'][number] {
  let best: number | null = null;
  for (const [i, split] of splits.entries()) {
    if (split.line !== line) continue;
    const current = best === null ? undefined : splits[best];
    if (current === undefined || split.margin > current.margin) best = i;
  }
  const verdict = best === null ? 'unknown' : (splits[best]?.verdict ?? 'unknown');
  return { line, verdict: isOneUnknown && holds(verdict) ? 'unknown' : verdict, split: best };
}

/** What the one-chamber bench test would show: first the lower stack alone in the empty shell, then with its driver. */
function alone([first, ...others]: readonly SplitResult[]): ChamberResult['alone'] {
  if (first === undefined) return null;
  const best = bestOf([first, ...others]);
  // Without anything above it the lower stack lets any line turn that it does not stand too high for.
  const lower = [first, ...others].filter(({ below }) => below === first.below);
  const room = ({ window, offset }: SplitResult) => window.highest - offset;
  const roomiest = lower.reduce((most, each) => (room(each) > room(most) ? each : most), first);
  const toHighest = room(roomiest);
  const sure = Math.abs(toHighest) >= roomiest.toHighest;
  const lowerStackOnly: Turns =
    toHighest >= 0 ? (sure ? 'turns' : 'probably turns') : sure ? 'does not turn' : 'probably not';
  if (letsTurn(best.verdict)) return { lowerStackOnly, withDriver: 'turns' };
  if (holds(best.verdict)) return { lowerStackOnly, withDriver: 'does not turn' };
  return { lowerStackOnly, withDriver: best.lean ?? 'unknown' };
}

/** Alone in the cylinder, a stack lets anything turn that any of its splits lets turn, at any line. */
function bestOf(splits: readonly [SplitResult, ...SplitResult[]]): SplitResult {
  return splits.reduce((best, each) => (each.margin > best.margin ? each : best), splits[0]);
}

function missingOf(setting: ChamberSetting, driving: RouteEstimate | null): string[] {
  const { bench, chamber, stack, pair } = setting;
  const missing: string[] = [];
  if (driving === null) {
    if (bench.key === null) missing.push('No key is paired with this cylinder yet.');
    else if (pair.plugMinusFloor === null) missing.push('Measure the plug across its solid part.');
    else missing.push(`Measure the cut under chamber ${chamber.number}: root depth, or over the ball.`);
  }
  const items = bench.plan.stacks.find((each) => each.chamber === chamber.id)?.items ?? [];
  if (items.length === 0)
    missing.push(`Nothing is in chamber ${chamber.number} yet: measure its ball + bottom pin together.`);
  else if (stack.tops[lowerStackEnd(stack)] == null) {
    missing.push(`Measure the ball + bottom pin of chamber ${chamber.number} together.`);
  } else if (hasUnknownSplit(stack)) {
    missing.push(`Measure the master pin of chamber ${chamber.number}, end to end.`);
  }
  return missing;
}

function contradiction({ chamber }: ChamberSetting): string {
  return `What was felt or tried in chamber ${chamber.number} contradicts its readings: check them again.`;
}
