/** What came out of a run: the share of changes that some test noticed, how sure that share is, and what got away, by file. */
import type { Mutant } from './mutant-list.ts';

export type Outcome = {
  readonly mutant: Mutant;
  /** In the words of the runner: Killed, Timeout, Survived, NoCoverage, Ignored, RuntimeError … */
  readonly status: string;
};

export type Score = {
  readonly noticed: number;
  readonly counted: number;
  /** Runs only while a file is loaded, or could not be run: not counted. */
  readonly notCounted: number;
};

const NOTICED = ['Killed', 'Timeout'];
const MISSED = ['Survived', 'NoCoverage'];

export const isMissed = ({ status }: Outcome): boolean => MISSED.includes(status);

/** Counts what was noticed, and what was missed because no test saw it or none reached it. */
export function scoreOf(outcomes: readonly Outcome[]): Score {
  const noticed = outcomes.filter(({ status }) => NOTICED.includes(status)).length;
  const missed = outcomes.filter(isMissed).length;
  return { noticed, counted: noticed + missed, notCounted: outcomes.length - noticed - missed };
}

/** Standard normal, 97.5 %. */
const Z = 1.959964;

/** The 95 % interval of a share by E. B. Wilson (J. Am. Stat. Assoc. 22, 1927, 209): from and to, 0 … 1. */
export function wilson(noticed: number, counted: number): readonly [from: number, to: number] {
  if (counted === 0) return [0, 1];
  const share = noticed / counted;
  const middle = share + Z ** 2 / (2 * counted);
  const half = Z * Math.sqrt((share * (1 - share)) / counted + Z ** 2 / (4 * counted ** 2));
  const scale = 1 + Z ** 2 / counted;
  return [Math.max(0, (middle - half) / scale), Math.min(1, (middle + half) / scale)];
}

/** The score in one line. */
export function sayScore({ noticed, counted, notCounted }: Score): string {
  const [from, to] = wilson(noticed, counted).map(percent);
  const share = counted === 0 ? '–' : percent(noticed / counted);
  return `${share} % (95 %: ${from ?? ''} to ${to ?? ''} %), ${noticed} of ${counted} noticed, ${notCounted} not counted`;
}

const percent = (share: number): string => (share * 100).toFixed(1);

/** The score of each folder, as rows of a table. */
export function byFolder(outcomes: readonly Outcome[]): string {
  const folders = groupBy(outcomes, ({ mutant }) => mutant.file.split('/').slice(2, -1)[0] ?? '(top)');
  const rows = [...folders].map(([folder, of]) => ({ folder, ...scoreOf(of) }));
  return rows
    .filter(({ counted }) => counted > 0)
    .sort((one, other) => one.noticed / one.counted - other.noticed / other.counted)
    .map(
      ({ folder, noticed, counted }) =>
        `| ${folder} | ${counted} | ${counted - noticed} | ${percent(noticed / counted)} |`,
    )
    .join('\n');
}

/** The items of a list by what they have in common, in the order in which they first appear. */
export function groupBy<T>(list: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of list) {
    const group = groups.get(keyOf(item));
    if (group === undefined) groups.set(keyOf(item), [item]);
    else group.push(item);
  }
  return groups;
}

/** What got away, file by file. */
export function sayMissed(outcomes: readonly Outcome[]): string {
  const files = groupBy(outcomes.filter(isMissed), ({ mutant }) => mutant.file);
  return [...files]
    .sort(([one], [other]) => one.localeCompare(other, 'en'))
    .map(
      ([file, missed]) =>
        `${file}\n${missed.map(({ mutant, status }) => `  ${sayMutant(mutant)}${status === 'NoCoverage' ? ' (no test comes here)' : ''}`).join('\n')}`,
    )
    .join('\n');
}

function sayMutant({ from, kind, original, replacement }: Mutant): string {
  return `${from.line + 1}:${from.column + 1} ${kind}: ${short(original)} → ${short(replacement)}`;
}

function short(code: string): string {
  const line = code.replaceAll(/\s+/g, ' ');
  return line.length > 70 ? `${line.slice(0, 67)}…` : line;
}
