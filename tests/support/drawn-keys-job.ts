/**
 * Cylinders of one to three chambers with two or three keys, drawn from a seed: each chamber the same, a little or a good deal apart for
 * the other keys, with balls or a sleeve now and then, and here and there something missing, locked or turned over. Invented sizes, in
 * inches, until the job has them.
 */
import { setIntent } from '../../src/model/keying/intent.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { buildJob, type ChamberOptions, changed } from './job-builder.ts';
import { seededRandom } from './random-job.ts';
import { type EndOptions, endForm, inches, statedInches } from './values.ts';

type Random = () => number;

const pick = <const T>(random: Random, list: readonly [T, ...T[]]): T =>
  list[Math.floor(random() * list.length)] ?? list[0];

/** How much deeper or shallower another key is cut in a chamber. Inches. */
const APART = [0, 0, 0.0015, 0.003, 0.015, -0.015, 0.045, -0.03] as const;
const DRIVERS: readonly [EndOptions, ...EndOptions[]] = [
  { kind: 'bevel', width: 0.005, angleDeg: 45 },
  { kind: 'dome' },
  { kind: 'flat' },
];

/** The job, and what each of its keys is to turn. Ids as in job-builder.ts; the other keys are key-2, key-3. */
export function drawnKeysJob(seed: number): { job: Job; wants: { key: string; line: string }[] } {
  const random = seededRandom(seed);
  const hasBalls = random() < 0.3;
  const hasSleeve = random() < 0.3;
  const roots = Array.from(
    { length: pick(random, [1, 1, 2, 3]) },
    () => Math.round(220 + random() * 50) / 1000,
  );
  const base = buildJob({
    unit: pick(random, ['in', 'in', 'mm']),
    clearance: pick(random, [0.002, 0.003, 0.005]),
    driverEnd: pick(random, DRIVERS),
    ...(hasSleeve && { sleeve: { outerDiameter: pick(random, [0.52, 0.64]), clearance: 0.004 } }),
    chambers: roots.map((rootDepth) => chamberOf(random, rootDepth, hasBalls)),
  });
  const keys = Array.from({ length: pick(random, [1, 1, 2]) }, (_, k) => `key-${k + 2}`);
  const job = changed(base, (copy) => {
    for (const id of keys) {
      const key = structuredClone(copy.keys[0]!);
      key.id = id;
      for (const cut of key.cuts) {
        const root = (cut.rootDepth?.readings[0]?.value ?? 6.35) / 25.4;
        cut.rootDepth = statedInches(Math.round((root + pick(random, APART)) * 1e5) / 1e5);
      }
      copy.keys.push(key);
      copy.seatings.push({ ...structuredClone(copy.seatings[0]!), key: id });
    }
    addOddThings(random, copy);
  });
  const lines = hasSleeve ? (['inner-line', 'outer-line'] as const) : (['line'] as const);
  const wants = ['key', ...keys].map((key) => ({ key, line: pick(random, lines) }));
  return { job, wants };
}

function chamberOf(random: Random, rootDepth: number, hasBall: boolean): ChamberOptions {
  const state = random();
  return {
    rootDepth,
    ball: hasBall ? 0.115 : null,
    ...(state < 0.1 && { bottomPin: null, ball: null }),
    ...(state > 0.1 && state < 0.2 && { driver: null, isSprung: false }),
    ...(state > 0.2 && state < 0.28 && { masterPins: [0.03] }),
    ...(state > 0.28 && state < 0.34 && { cutPosition: null }),
  };
}

function addOddThings(random: Random, job: Job): void {
  const plan = job.plans[0]!;
  const spare = (id: string): Job['parts'][number] => ({
    id,
    label: id,
    kind: 'pin',
    quantity: 1,
    original: false,
    diameter: inches(0.116),
    length: inches(0.12),
    ends: [endForm({ kind: 'flat' }), endForm({ kind: 'dome' })],
  });
  job.parts.push(spare('spare-1'), spare('spare-2'));
  if (random() < 0.15) plan.stacks[0]!.locked = true;
  if (random() < 0.15) plan.kind = pick(random, ['as found', 'as built']);
  if (random() < 0.15) plan.stacks.splice(0, 1);
  if (random() < 0.15) for (const stack of plan.stacks) stack.items = [];
  if (random() < 0.15) delete job.seatings[1]!.keywayFloorHeight;
  if (random() < 0.15) job.settings.thresholds = { thinnestMasterPin: inches(0.02) };
  if (random() < 0.15) delete job.parts.find(({ id }) => id.startsWith('bottom'))?.diameter;
  if (random() < 0.15) delete job.parts.find(({ id }) => id.startsWith('bottom'))?.ends;
  if (random() < 0.2) delete job.parts.find(({ id }) => id.startsWith('bottom'))?.length;
  if (random() < 0.15) {
    const item = plan.stacks[0]?.items.at(0);
    if (item !== undefined) item.flipped = true;
  }
  if (random() < 0.1) for (const cut of job.keys[1]!.cuts) cut.rootDepth = statedInches(0.425);
  if (random() < 0.3) job.intents = setIntent(job, { key: 'key', cylinder: 'cylinder' }, 'plug').intents;
}
