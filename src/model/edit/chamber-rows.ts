/**
 * The rows of the table: each chamber with the cut that lies under it and the stack that is in it. Cuts and chambers are
 * different things, with positions of their own: a cut belongs to a row only because it lies there. mm, z from the plug's
 * front face.
 */
import { lengthOf } from '../measured/part-ends.ts';
import type { Selection } from '../measured/selection.ts';
import type { Cylinder } from '../schema/cylinder-schema.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Cut, Key, Seating } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import { type StackParts, stackParts } from './stack-parts.ts';

export type NumberedCut = {
  readonly cut: Cut;
  /** As counted on screen. */
  readonly number: number;
  /** Where its centre lies with the key home. */
  readonly z: number;
};

export type ChamberRow = {
  readonly chamber: Cylinder['chambers'][number];
  /** As counted on screen. */
  readonly number: number;
  readonly z: number;
  /** The cut under it, and how far it lies off: + further in. */
  readonly under: NumberedCut | null;
  readonly offBy: number;
  readonly parts: StackParts | null;
};

export type ChamberRows = {
  /** By number. */
  readonly rows: readonly ChamberRow[];
  /** Cuts that no chamber lies over. */
  readonly looseCuts: readonly NumberedCut[];
};

/** Half the usual smallest spacing: a cut further off belongs to no chamber when there is only one. mm. */
const REACH_OF_ONE_CHAMBER_MM = 2;

/** Lays out the rows. */
export function chamberRows(job: Job, selection: Selection): ChamberRows {
  const cylinder = job.cylinders.find((each) => each.id === selection.cylinder);
  const plan = job.plans.find((each) => each.id === selection.plan);
  if (cylinder === undefined) return { rows: [], looseCuts: [] };
  const { numbering } = job.settings;
  const chambers = cylinder.chambers
    .map((chamber) => ({ chamber, z: lengthOf(chamber.position, 0) }))
    .sort((a, b) => a.z - b.z);
  const cuts = numberedCuts(job, selection);
  const reach = halfSpacing(chambers.map((each) => each.z));
  const taken = nearestPairs(chambers, cuts, reach);
  const rows = chambers.map(({ chamber, z }, i): ChamberRow => {
    const under = taken.get(chamber.id) ?? null;
    return {
      chamber,
      number: numbering === 'bow' ? i + 1 : chambers.length - i,
      z,
      under,
      offBy: under === null ? 0 : under.z - z,
      parts: plan === undefined ? null : stackParts(job, plan, chamber.id),
    };
  });
  const used = new Set([...taken.values()].map((each) => each.cut.id));
  return {
    rows: rows.sort((a, b) => a.number - b.number),
    looseCuts: cuts.filter((each) => !used.has(each.cut.id)),
  };
}

/** The cuts of the selected key, where they lie with the key home, numbered as on screen. */
export function numberedCuts(job: Job, selection: Selection): NumberedCut[] {
  const key = job.keys.find((each) => each.id === selection.key);
  if (key === undefined) return [];
  const seating = job.seatings.find(
    (each) => each.cylinder === selection.cylinder && each.key === selection.key,
  );
  const placed = key.cuts.map((cut) => ({ cut, z: placeOf(cut, key, seating) })).sort((a, b) => a.z - b.z);
  return placed.map((each, i) => ({
    ...each,
    number: job.settings.numbering === 'bow' ? i + 1 : placed.length - i,
  }));
}

function placeOf(cut: Cut, key: Key, seating: Seating | undefined): number {
  const fromStop = lengthOf(cut.position, 0);
  const home = key.stop.kind === 'shoulder' ? fromStop : lengthOf(seating?.stopAt, 0) - fromStop;
  return home - lengthOf(seating?.stopShort, 0);
}

/** Pairs each chamber with the nearest cut within reach, nearest pairs first; none is used twice. */
function nearestPairs(
  chambers: readonly { readonly chamber: { readonly id: Id }; readonly z: number }[],
  cuts: readonly NumberedCut[],
  reach: number,
): Map<Id, NumberedCut> {
  const pairs = chambers
    .flatMap(({ chamber, z }) => cuts.map((cut) => ({ chamber: chamber.id, cut, off: Math.abs(cut.z - z) })))
    .filter(({ off }) => off < reach)
    .sort((a, b) => a.off - b.off);
  const taken = new Map<Id, NumberedCut>();
  const used = new Set<Id>();
  for (const { chamber, cut } of pairs) {
    if (taken.has(chamber) || used.has(cut.cut.id)) continue;
    taken.set(chamber, cut);
    used.add(cut.cut.id);
  }
  return taken;
}

function halfSpacing(places: readonly number[]): number {
  let least = Infinity;
  for (let i = 1; i < places.length; i++) least = Math.min(least, (places[i] ?? 0) - (places[i - 1] ?? 0));
  return Number.isFinite(least) ? least / 2 : REACH_OF_ONE_CHAMBER_MM;
}
