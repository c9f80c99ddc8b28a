/**
 * The small changes of `src/model` that the tests are held against: every one that the instrumenter knows to make, with its place,
 * and a sample of them drawn from a seed, each as likely to be drawn as any other. Lines and columns are counted from 0, as the
 * instrumenter counts them.
 */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { Instrumenter } from '@stryker-mutator/instrumenter';
import { startDraw } from '../src/model/learning/draw.ts';

type Place = { readonly line: number; readonly column: number };

export type Mutant = {
  /** From the root of the project. */
  readonly file: string;
  /** What sort of change, in the instrumenter's words. */
  readonly kind: string;
  readonly from: Place;
  readonly to: Place;
  /** What stands there, and what is put in its place. */
  readonly original: string;
  readonly replacement: string;
};

export const SCOPE = 'src/model';

/** Tables of data are no code: what stands in them is held to its source, not to a behaviour. */
const isLeftOut = (file: string): boolean => file.endsWith('-table.ts');

/** Tells whether a text is a message: it has a blank between words. Codes and names of fields have none. */
const isSentence = ({ kind, original }: Mutant): boolean =>
  kind === 'StringLiteral' && /\S\s+\S/.test(original);

/** Lists the files that are changed, of the given files and folders. */
export function filesToMutate(paths: readonly string[] = [SCOPE]): string[] {
  const all = paths.flatMap((path) =>
    statSync(path).isDirectory()
      ? readdirSync(path, { recursive: true, encoding: 'utf8' }).map((name) => join(path, name))
      : [path],
  );
  const inScope = all.map((path) => relative(process.cwd(), resolve(path)).replaceAll('\\', '/'));
  return [...new Set(inScope)]
    .filter((path) => path.startsWith(`${SCOPE}/`) && path.endsWith('.ts') && !isLeftOut(path))
    .sort();
}

const nothing = () => undefined;
const silent = {
  isTraceEnabled: () => false,
  isDebugEnabled: () => false,
  isInfoEnabled: () => false,
  isWarnEnabled: () => false,
  isErrorEnabled: () => false,
  isFatalEnabled: () => false,
  trace: nothing,
  debug: nothing,
  info: nothing,
  warn: nothing,
  error: nothing,
  fatal: nothing,
};

/** Lists every change of the given files, without texts of messages, in the order of file and place. */
export async function listMutants(files: readonly string[]): Promise<Mutant[]> {
  const sources = new Map(files.map((file) => [resolve(file), readFileSync(file, 'utf8')]));
  const { mutants } = await new Instrumenter(silent).instrument(
    [...sources].map(([name, content]) => ({ name, content, mutate: true })),
    { plugins: null, excludedMutations: [], ignorers: [] },
  );
  return mutants
    .map(({ fileName, mutatorName, location: { start, end }, replacement }): Mutant => {
      const original = between(sources.get(fileName) ?? '', start, end);
      const file = relative(process.cwd(), fileName).replaceAll('\\', '/');
      return { file, kind: mutatorName, from: start, to: end, original, replacement };
    })
    .filter((mutant) => !isSentence(mutant));
}

function between(text: string, from: Place, to: Place): string {
  const lines = text.split('\n').slice(from.line, to.line + 1);
  const last = lines.length - 1;
  return lines
    .map((line, i) => line.slice(i === 0 ? from.column : 0, i === last ? to.column : undefined))
    .join('\n');
}

/** Draws so many of a list, none twice, the same ones for the same seed; in the order of the list. */
export function sample<T>(list: readonly T[], count: number, seed: number): T[] {
  const { share } = startDraw(seed, 'mm');
  const order = list.map((_, i) => i);
  const drawn = Math.min(count, list.length);
  for (let i = 0; i < drawn; i++) {
    const other = i + Math.floor(share() * (order.length - i));
    [order[i], order[other]] = [order[other]!, order[i]!];
  }
  return order
    .slice(0, drawn)
    .sort((one, other) => one - other)
    .map((i) => list[i]!);
}

/** What tells one change from every other; mutant-runner.mjs writes the same. */
export function keyOf({ file, kind, from, to, replacement }: Mutant): string {
  return `${file}|${kind}|${from.line}:${from.column}-${to.line}:${to.column}|${replacement}`;
}

/** The place of a change as the `mutate` option takes it: lines from 1. */
export function rangeOf({ file, from, to }: Mutant): string {
  return `${file}:${from.line + 1}:${from.column}-${to.line + 1}:${to.column}`;
}
