/**
 * What is planned for several keys, and what putting it into the plan changes in the job, kept as text: drawn cylinders of one to three
 * chambers, with a ball or a sleeve now and then. That the keys turn what was planned is held in plan-keys.test.ts, by evaluating it.
 */
import { describe, test } from 'vitest';
import { type KeysPlan, type PlannedSplit, planKeys } from '../../../src/model/keying/plan-keys.ts';
import { putChosen } from '../../../src/model/keying/put-chosen.ts';
import { putKeysPlan } from '../../../src/model/keying/put-plan.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { asText, differences } from '../../support/as-text.ts';
import { expectGolden } from '../../support/golden.ts';
import { drawnKeysJob } from '../../support/drawn-keys-job.ts';

describe('what is planned for several keys', () => {
  test.each(Array.from({ length: 60 }, (_, i) => i + 1))('drawn at random, %i', (seed) => {
    const { job, wants } = drawnKeysJob(seed);
    const ask = { cylinder: 'cylinder', plan: 'plan', wants };
    const plan = planKeys(job, ask);
    const merged = planKeys(job, { ...ask, merged: plan.chambers.map(({ chamber }) => chamber) });
    const hasOffer = plan.chambers.some(({ offer }) => offer !== null);
    const put = putKeysPlan(job, plan, counting());
    const again = putKeysPlan(put.job, { ...plan, plan: put.plan }, counting('again-'));
    const text = asText({
      keys: job.keys.map(({ id, cuts }) => ({
        key: id,
        rootDepths: cuts.map(({ rootDepth }) => rootDepth?.readings[0]?.value.toFixed(4) ?? '–').join(' '),
      })),
      wants: wants.map(({ key, line }) => `${key} at ${line}`),
      ...planText(plan),
      ...(hasOffer && { merged: planText(merged).chambers }),
    });
    const changes = [
      `put into ${put.plan}:`,
      changesOf(job, put.job),
      ...(hasOffer ? ['merged:', changesOf(job, putKeysPlan(job, merged, counting()).job)] : []),
      'put once more:',
      changesOf(put.job, again.job),
    ];
    expectGolden(`key-plans/${seed}.txt`, `${text}${changes.join('\n')}\n`);
  });

  test.each(Array.from({ length: 12 }, (_, i) => i + 1))('chosen parts put into a plan, %i', (seed) => {
    const { job } = drawnKeysJob(seed);
    const { chambers } = job.cylinders[0]!;
    const chosen = chambers.map(({ id }, i) => ({
      chamber: id,
      isLocked: seed % 3 === 0 && i === 0,
      items: seed % 4 === 0 && i === 1 ? null : [{ part: 'spare-1' }, { part: 'spare-2' }],
    }));
    const put = putChosen(job, 'plan', chosen, counting());
    expectGolden(`key-plans/chosen-${seed}.txt`, `put into ${put.plan}:\n${changesOf(job, put.job)}\n`);
  });
});

const counting = (before = 'new-') => {
  let count = 0;
  return () => `${before}${(count += 1)}`;
};

/** What is new, gone or other in a job: parts, what was measured together, stacks, and whatever else there is. */
function changesOf(before: Job, after: Job): string {
  const lines = (['parts', 'groups', 'plans'] as const).flatMap((name) => {
    const [old, now] = [before, after].map((job) => sayEach(job, name));
    return [
      ...[...old!].filter(([id, text]) => now!.get(id) !== text).map(([, text]) => `  - ${text}`),
      ...[...now!].filter(([id, text]) => old!.get(id) !== text).map(([, text]) => `  + ${text}`),
    ];
  });
  const rest = (job: Job) => ({ ...job, parts: [], groups: [], plans: [] });
  const all = [...lines, ...differences(rest(before), rest(after)).map((line) => `  ${line}`)];
  return all.length === 0 ? '  nothing' : all.join('\n');
}

function sayEach(job: Job, name: 'parts' | 'groups' | 'plans'): Map<string, string> {
  if (name === 'parts') return new Map(job.parts.map((part) => [part.id, sayPart(part)]));
  if (name === 'groups')
    return new Map(
      job.groups.map(({ id, parts, height }) => [
        id,
        `${id}: ${parts.join(' + ')}, ${sayValue(height)} high`,
      ]),
    );
  return new Map(
    job.plans.flatMap(({ id, kind, stacks }) =>
      stacks.map(({ chamber, items, locked }): [string, string] => {
        const stack = items.map(({ part, flipped }) => `${part}${flipped === true ? ' turned over' : ''}`);
        const text = `${id} ${kind}, ${chamber}${locked === true ? ', locked' : ''}: ${stack.join(' + ')}`;
        return [`${id} ${chamber}`, text];
      }),
    ),
  );
}

function sayPart({
  id,
  label,
  kind,
  quantity,
  original,
  from,
  diameter,
  length,
  ends,
}: Job['parts'][number]) {
  return [
    `${id}: ${quantity} ${kind} "${label}"`,
    ...(diameter === undefined ? [] : [`${sayValue(diameter)} across`]),
    ...(length === undefined ? [] : [`${sayValue(length)} long`]),
    ...(ends ?? []).map((end) => `${end.kind} ${end.basis}`),
    ...(original ? ['original'] : []),
    ...(from === undefined ? [] : [from]),
  ].join(', ');
}

function sayValue({ readings, basis }: NonNullable<Job['parts'][number]['length']>): string {
  return `${readings.map(({ typed, unit }) => `${typed} ${unit}`).join(' ')} ${basis}`;
}

function planText({ chambers, guessed, thinnest }: KeysPlan) {
  return {
    thinnest,
    guessed,
    chambers: chambers.map(({ splits, masters, offer, ...each }) => ({
      ...each,
      masters: masters.map(({ length, isThin }) => `${length.toFixed(4)}${isThin ? ', too thin' : ''}`),
      splits: splits.flatMap(splitRows),
      offer: offer === null ? null : { saves: offer.saves, splits: offer.splits.flatMap(splitRows) },
    })),
  };
}

function splitRows({ height, serves }: PlannedSplit) {
  return serves.map(({ key, line, offset, lowest, highest }) => ({
    height,
    key,
    line,
    offset,
    lowest,
    highest,
  }));
}
