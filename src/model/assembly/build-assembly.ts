/**
 * From a job and a selection to the plain-number assembly. Only nominal values. Sizes that decide nothing and nobody
 * measured (how long the plug is, how wide the shell) get sizes that look right. Frame and signs as in assembly.ts.
 */
import { buildKeyProfile } from '../contact/key-profile.ts';
import { buildFoot } from '../contact/foot.ts';
import { contactAt } from '../contact/contact-at.ts';
import { type MeasuredCylinder, measureCylinder } from '../measured/measured-cylinder.ts';
import { type MeasuredKey, measureKey, nominalKeyShape } from '../measured/measured-key.ts';
import { measurePair } from '../measured/measured-pair.ts';
import { lengthOf } from '../measured/part-ends.ts';
import { type Bench, layOut, type Selection } from '../measured/selection.ts';
import { angleOf } from '../measured/part-ends.ts';
import { nominalRoots } from '../measured/cut-roots.ts';
import type { Job } from '../schema/job-schema.ts';
import type {
  Assembly,
  AssemblyBody,
  AssemblyChamber,
  AssemblyKey,
  AssemblyLine,
  AssemblyStack,
} from './assembly.ts';
import { buildStack, restHeight } from './build-stack.ts';

/** Builds the assembly of a selection. */
export function buildAssembly(job: Job, selection: Selection): Assembly {
  return assemble(layOut(job, selection));
}

/** Builds the assembly of what is laid out. */
export function assemble(bench: Bench): Assembly {
  const { cylinder, job, measuring, seating } = bench;
  const measured = measureCylinder(cylinder, job.settings.numbering, measuring);
  const lines = assembleLines(bench, measured);
  const innerRadius = lines[0]?.radius ?? 0;
  const chambers = assembleChambers(measured, lines);
  const lastZ = chambers.at(-1)?.z ?? innerRadius * 2;
  const pair = measurePair(seating, bench.key?.id ?? '', measured.plugDiameter, measuring);
  const key = bench.key === null ? null : measureKey(bench.key, seating, 2 * innerRadius, lastZ, measuring);
  const bottomY = -innerRadius + pair.floor.value;
  const assemblyKey = key === null ? null : assembleKey(bench, key, bottomY, lastZ, innerRadius);
  const stacks = chambers.map((chamber): AssemblyStack => {
    const parts = buildStack(bench, chamber, innerRadius);
    const known = restHeight(bench, chamber, innerRadius);
    return {
      chamber: chamber.id,
      parts,
      restY: known ?? usualRest(parts, chamber, assemblyKey, innerRadius),
    };
  });
  return {
    cylinder: cylinder.id,
    plan: bench.plan.id,
    label: cylinder.label,
    bodies: assembleBodies(bench, lines, chambers, assemblyKey, lastZ),
    lines,
    chambers,
    key: assemblyKey,
    stacks,
    turn: { angle: angleOf(cylinder.turn.angle, 360), ways: cylinder.turn.ways },
    keywayWidth: lengthOf(cylinder.keywayWidth, innerRadius * 0.22),
  };
}

function assembleLines(bench: Bench, measured: MeasuredCylinder): AssemblyLine[] {
  let axisY = 0;
  return measured.lines.map((line, i): AssemblyLine => {
    const innerAxisY = axisY;
    axisY += line.lies === 'centred' ? 0 : line.clearance.value / 2;
    const bodies = bench.cylinder.bodies;
    return {
      id: line.id,
      inner: bodies[i]?.id ?? '',
      outer: bodies[i + 1]?.id ?? '',
      radius: Math.max(0.1, line.radius.value),
      clearance: Math.max(0, line.clearance.value),
      innerAxisY,
      outerAxisY: axisY,
      lies: line.lies,
    };
  });
}

function assembleChambers(measured: MeasuredCylinder, lines: readonly AssemblyLine[]): AssemblyChamber[] {
  const last = lines.at(-1);
  const boreY = last === undefined ? 0 : last.outerAxisY + last.radius + last.clearance / 2;
  return measured.chambers.map((chamber) => ({
    id: chamber.id,
    number: chamber.number,
    z: chamber.position.value,
    holes: chamber.holes.map((hole) => ({
      body: hole.body,
      radius: Math.max(0.05, hole.radius.value),
      sideways: hole.sideways,
      innerMouth: hole.innerMouth,
      outerMouth: hole.outerMouth,
    })),
    capY: boreY + Math.max(0.1, chamber.capDepth),
    closed: chamber.closed,
    crestDrops: chamber.crestDrops,
  }));
}

function assembleKey(
  bench: Bench,
  key: MeasuredKey,
  bottomY: number,
  lastZ: number,
  innerRadius: number,
): AssemblyKey {
  const shape = nominalKeyShape(key, nominalRoots(key));
  return {
    id: key.id,
    shape,
    profile: buildKeyProfile(shape),
    bottomY,
    thickness: lengthOf(bench.key?.bladeThickness, innerRadius * 0.2),
    seatedTravel: key.stopShort.value,
    outTravel: Math.max(shape.tipAt, lastZ) + innerRadius * 0.3,
  };
}

function assembleBodies(
  bench: Bench,
  lines: readonly AssemblyLine[],
  chambers: readonly AssemblyChamber[],
  key: AssemblyKey | null,
  lastZ: number,
): AssemblyBody[] {
  const innerRadius = lines[0]?.radius ?? 1;
  const capY = Math.max(...chambers.map((chamber) => chamber.capY), innerRadius * 2);
  const plugEnd = Math.max(lastZ + innerRadius * 0.8, (key?.shape.tipAt ?? 0) + innerRadius * 0.25);
  return bench.cylinder.bodies.map((body, i): AssemblyBody => {
    const below = lines[i - 1];
    const length = lengthOf(body.length, plugEnd);
    return {
      id: body.id,
      role: body.role,
      outerRadius:
        body.role === 'shell'
          ? shellRadius(body.outerDiameter, capY, innerRadius)
          : (lines[i]?.radius ?? innerRadius),
      boreRadius: below === undefined ? 0 : below.radius + below.clearance / 2,
      axisY: below?.outerAxisY ?? 0,
      frontZ: 0,
      backZ: Math.max(length, lastZ + innerRadius * 0.3),
    };
  });
}

function shellRadius(outer: Parameters<typeof lengthOf>[0], capY: number, innerRadius: number): number {
  return Math.max(lengthOf(outer, 0) / 2, capY + innerRadius * 0.14);
}

/** Where a stack nobody looked at with the key out is drawn to rest: low in its chamber, never above the seated key. */
function usualRest(
  parts: AssemblyStack['parts'],
  chamber: AssemblyChamber,
  key: AssemblyKey | null,
  innerRadius: number,
): number {
  const usual = -innerRadius * 0.35;
  const foot = parts[0];
  if (key === null || foot === undefined) return usual;
  const seated = contactAt(
    key.profile,
    buildFoot(foot.lower, foot.radius),
    chamber.z,
    key.seatedTravel,
  ).height;
  return Number.isFinite(seated) ? Math.min(usual, key.bottomY + seated) : usual;
}
