/**
 * What an edit does to a job, as lines that a person can judge: the place, what stood there, what stands there now. Values are one
 * text each, things in a hole one line, and a list whose order changes says its order.
 *
 *     ## the play by its rattle: tight
 *     cylinders › cylinder › lines › line › clearance: 0.003 (0.0762 mm, caliper) measured → .002 (0.0508 mm) assumed, 0.0254 to 0.0762
 */
import type { Job } from '../../src/model/schema/job-schema.ts';
import type { Id } from '../../src/model/schema/leaf.ts';
import { asText, differences } from './as-text.ts';

/** What is done, by its name: a job comes out, or an answer. */
export type Edits = Readonly<Record<string, (job: Job, newId: () => Id) => unknown>>;

/** Does each edit to the same job, with ids that count from 1 for each. */
export function editText(job: Job, edits: Edits): string {
  return Object.entries(edits)
    .map(([name, edit]) => `## ${name}\n${outcome(job, edit)}\n`)
    .join('');
}

function outcome(job: Job, edit: Edits[string]): string {
  let count = 0;
  const result = edit(job, () => `new-${++count}`);
  if (!isJob(result)) return asText(plain(result));
  if (result === job) return 'the very same job\n';
  const lines = changesOf(job, result);
  return lines.length === 0 ? 'an equal job\n' : `${lines.join('\n')}\n`;
}

/** What differs between two jobs, a line each. */
export function changesOf(before: Job, after: Job): string[] {
  return [...differences(plain(before), plain(after)), ...orders(before, after, '')];
}

function isJob(value: unknown): value is Job {
  return typeof value === 'object' && value !== null && 'format' in value && value.format !== undefined;
}

/** Remembered, so that what two jobs share is written and compared once. */
const written = new WeakMap<object, unknown>();

function plain(node: unknown): unknown {
  if (typeof node !== 'object' || node === null) return node;
  const before = written.get(node);
  if (before !== undefined) return before;
  const now = writtenOut(node);
  written.set(node, now);
  return now;
}

function writtenOut(node: object): unknown {
  if ('readings' in node && 'basis' in node) return sayValue(node as Value);
  if (!Array.isArray(node))
    return Object.fromEntries(Object.entries(node).map(([name, child]) => [name, plain(child)]));
  if (node.length > 0 && node.every((each) => typeof each === 'string')) return node.join(', ');
  if (node.length > 0 && node.every((each) => isItem(each))) return node.map(sayItem).join(', ');
  const counts = new Map<string, number>();
  return Object.fromEntries(
    node.map((each: unknown, i) => {
      const name = nameOf(each) ?? String(i + 1);
      const count = (counts.get(name) ?? 0) + 1;
      counts.set(name, count);
      return [count === 1 ? name : `${name} (${count})`, plain(each)];
    }),
  );
}

type Value = {
  readonly readings: readonly {
    readonly typed: string;
    readonly unit: string;
    readonly value: number;
    readonly instrument: Id | null;
    readonly session: Id | null;
    readonly left?: string;
  }[];
  readonly estimator: string;
  readonly basis: string;
  readonly range?: { readonly from: number; readonly to: number };
};

function sayValue({ readings, estimator, basis, range }: Value): string {
  const said = readings.map(({ typed, unit, value, instrument, session, left }) => {
    const size = `${rounded(value)} ${unit === 'deg' ? 'deg' : `mm, as ${unit}`}`;
    return `${typed} (${[size, instrument, session, left].filter((each) => each != null).join(', ')})`;
  });
  const within = range === undefined ? '' : `, ${rounded(range.from)} to ${rounded(range.to)}`;
  return `${said.join(' ')} ${basis}${within}${estimator === 'mean' ? '' : `, ${estimator}`}`;
}

function rounded(value: number): string {
  return String(Number(value.toFixed(5)) + 0);
}

function isItem(node: unknown): node is { part: Id; flipped?: true } {
  return typeof node === 'object' && node !== null && 'part' in node && !('id' in node);
}

function sayItem(item: { part: Id; flipped?: true }): string {
  return item.flipped === true ? `${item.part} upside down` : item.part;
}

function nameOf(each: unknown): string | null {
  if (typeof each !== 'object' || each === null) return null;
  const { id, key, plan, cylinder, line, chamber, body } = each as Record<string, unknown>;
  const names = id === undefined ? [plan, key, cylinder, line, chamber, body] : [id];
  const said = names.filter((one) => typeof one === 'string').join(' ');
  return said === '' ? null : said;
}

/** The order of every list of which more changed than that its end got longer or that something went. */
function orders(before: unknown, after: unknown, path: string): string[] {
  if (before === after || typeof before !== 'object' || typeof after !== 'object') return [];
  if (before === null || after === null) return [];
  const own: string[] = [];
  if (Array.isArray(before) && Array.isArray(after)) {
    const [was, is] = [before, after].map((list) => list.map((each) => nameOf(each) ?? ''));
    const kept = was!.filter((name) => is!.includes(name));
    const usual = [...kept, ...is!.filter((name) => !was!.includes(name))];
    if (!is!.includes('') && usual.join() !== is!.join()) own.push(`${path}, order: ${is!.join(', ')}`);
  }
  const [one, other] = [before, after].map(
    (node) =>
      new Map(
        Array.isArray(node)
          ? node.map((each, i) => [nameOf(each) ?? String(i), each as unknown])
          : Object.entries(node),
      ),
  );
  const below = [...one!].flatMap(([name, child]) =>
    orders(child, other!.get(name), path === '' ? name : `${path} › ${name}`),
  );
  return [...own, ...below];
}
