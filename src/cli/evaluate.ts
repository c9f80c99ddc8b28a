/**
 * Prints the numbers of the screen, from a job file, as JSON in mm and radians.
 *
 *   npm run -s evaluate -- FILE.json [--all] [--cylinder ID] [--key ID] [--plan ID] [--travel 1.70in,0]
 *   npm run -s evaluate -- --schema
 *
 * A file that cannot be read: nothing on stdout, one sentence a line on stderr, exit code 2.
 */
import { readFileSync } from 'node:fs';
import { assemble, buildAssembly } from '../model/assembly/build-assembly.ts';
import { poseAt } from '../model/assembly/pose-at.ts';
import { evaluateBench } from '../model/evaluate/evaluate.ts';
import type { Evaluation } from '../model/evaluate/evaluation.ts';
import { gatherFacts } from '../model/findings/facts.ts';
import { allSelections, firstSelection, layOut, type Selection } from '../model/measured/selection.ts';
import type { Job } from '../model/schema/job-schema.ts';
import { jobJsonSchema } from '../model/schema/json-schema.ts';
import { type Sureness, sureness } from '../model/sureness/sureness.ts';
import { parseLength } from '../model/units/parse-length.ts';
import { readJobBytes } from '../persist/job-text.ts';
import { printableFacts } from './printable-facts.ts';
import { keyingOf } from './keying.ts';

type Arguments = {
  readonly file: string | null;
  readonly all: boolean;
  readonly schema: boolean;
  readonly only: ReadonlyMap<'cylinder' | 'key' | 'plan', string>;
  readonly travel: readonly string[];
};

class Refused extends Error {}

/** Prints what the arguments ask for and gives the exit code. */
function main(words: readonly string[]): number {
  try {
    const wanted = readArguments(words);
    if (wanted.schema) return print(jobJsonSchema());
    if (wanted.file === null) throw new Refused('file: name a job file, for example job.json.');
    return print(answer(readJob(wanted.file), wanted));
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    process.stderr.write(`${error.message}\n`);
    return 2;
  }
}

function answer(job: Job, wanted: Arguments): unknown {
  const selections = chosen(job, wanted);
  const evaluations = selections.map((selection) => printable(job, selection, wanted.travel));
  return wanted.all ? { evaluations } : evaluations[0];
}

function chosen(job: Job, { all, only }: Arguments): Selection[] {
  const fits = (selection: Selection) => [...only].every(([name, id]) => selection[name] === id);
  const matching = allSelections(job).filter(fits);
  if (matching.length === 0) {
    throw new Refused(
      only.size === 0
        ? 'plans: this job has no plan for a cylinder yet.'
        : `selection: this job has no such pair: ${[...only].map(([name, id]) => `${name} ${id}`).join(', ')}.`,
    );
  }
  if (all) return matching;
  const first = firstSelection(job);
  const preferred = first !== null && fits(first) ? first : matching[0];
  return preferred === undefined ? [] : [preferred];
}

/** The evaluation as printed: chambers by their number on screen, with their id beside it. */
function printable(job: Job, selection: Selection, travel: readonly string[]): unknown {
  const bench = layOut(job, selection);
  const assembly = assemble(bench);
  const evaluation: Evaluation = evaluateBench(bench, assembly);
  const facts = gatherFacts(bench, assembly, evaluation);
  const numbers = new Map(evaluation.chambers.map((each) => [each.chamber, each.number]));
  const number = (id: string) => numbers.get(id) ?? id;
  return {
    ...evaluation,
    lines: evaluation.lines.map((line) => ({ ...line, blockedBy: line.blockedBy.map(number) })),
    chambers: evaluation.chambers.map(({ chamber, number: shown, ...rest }) => ({
      chamber: shown,
      id: chamber,
      ...rest,
    })),
    insertion: evaluation.insertion.map(({ chamber, ...rest }) => ({
      chamber: number(chamber),
      id: chamber,
      ...rest,
    })),
    howSure: printableSureness(sureness(bench, assembly), number),
    keying: keyingOf(job, selection, evaluation),
    ...printableFacts(facts, number),
    ...(travel.length > 0 && { travel: travel.map((text) => atTravel(job, selection, text, number)) }),
  };
}

/** How sure the lines are (share of draws), what would help most, and the bracket test of each chamber. */
function printableSureness(
  { lines, helps, brackets }: Sureness,
  number: (id: string) => number | string,
): unknown {
  return {
    lines: lines.map(({ chambers, ...line }) => ({
      ...line,
      chambers: chambers.map(({ chamber, turns }) => ({ chamber: number(chamber), turns })),
    })),
    helps: helps.map(({ kind, field, chambers, sentence }) => ({
      kind,
      field: field === null ? null : `${field.owner} ${field.name}`,
      chambers: chambers.map(({ number: shown, from, to, decides }) => ({
        chamber: shown,
        from,
        to,
        decides,
      })),
      sentence,
    })),
    brackets: brackets.map(({ chamber, pins }) => ({ chamber: number(chamber), pins })),
  };
}

/** Where every foot stands, above the key's bottom edge, with the key still so far out. */
function atTravel(
  job: Job,
  selection: Selection,
  text: string,
  number: (id: string) => number | string,
): unknown {
  const read = parseLength(text, { unit: job.settings.unit });
  if (read.type !== 'length')
    throw new Refused(`travel: "${text}" is no length, for example 1.70in or 12.5mm.`);
  const assembly = buildAssembly(job, selection);
  const pose = poseAt(assembly, { travel: read.mm });
  const floor = assembly.key?.bottomY ?? 0;
  return {
    travel: read.mm,
    chambers: pose.stacks.map((stack) => ({
      chamber: number(stack.chamber),
      footHeight: stack.footY - floor,
      heldBy: stack.heldBy,
      crushedBy: stack.crushedBy,
    })),
  };
}

function readJob(file: string): Job {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(file);
  } catch {
    throw new Refused(`file: ${file} cannot be read.`);
  }
  const read = readJobBytes(bytes);
  if (read.type === 'success') return read.job;
  throw new Refused(read.problems.map(({ field, message }) => `${field}: ${message}`).join('\n'));
}

function readArguments(words: readonly string[]): Arguments {
  let file: string | null = null;
  let all = false;
  let schema = false;
  const only = new Map<'cylinder' | 'key' | 'plan', string>();
  const travel: string[] = [];
  const rest = [...words];
  for (let word = rest.shift(); word !== undefined; word = rest.shift()) {
    if (word === '--all') all = true;
    else if (word === '--schema') schema = true;
    else if (word === '--cylinder' || word === '--key' || word === '--plan') {
      only.set(word === '--cylinder' ? 'cylinder' : word === '--key' ? 'key' : 'plan', follow(word, rest));
    } else if (word === '--travel') travel.push(...follow(word, rest).split(','));
    else if (word.startsWith('--')) throw new Refused(`arguments: ${word} is not known here.`);
    else file = word;
  }
  return { file, all, schema, only, travel };
}

function follow(word: string, rest: string[]): string {
  const next = rest.shift();
  if (next === undefined) throw new Refused(`arguments: ${word} needs something after it.`);
  return next;
}

function print(what: unknown): number {
  process.stdout.write(`${JSON.stringify(what, null, 2)}\n`);
  return 0;
}

process.exitCode = main(process.argv.slice(2));
