/**
 * A job built from a published depth-and-space table: one chamber for each depth, the key cut to every depth in turn, the
 * published pin for that depth in the hole. Pins are pointed with a small flat, so that they rest on the root itself.
 */
import {
  angle,
  caliper,
  chamber,
  idMaker,
  measured,
  pin,
  seen,
  stated,
  twoBodies,
} from '../../tools/example-builder.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';

export type DepthTable = {
  readonly id: string;
  readonly plugDiameter: number | null;
  readonly shoulderToFirstCut: number;
  readonly cutSpacing: number;
  readonly cutRootFlat: number | null;
  readonly cutAngleDeg: number | null;
  readonly pinDiameter: number | null;
  readonly depths: readonly {
    readonly cut: number;
    readonly rootDepth: number;
    readonly bottomPin: number;
  }[];
};

const inch = (value: number) => value.toFixed(4);

/** Builds the job. Without a published plug diameter, `plug` says what to take instead. Inches. */
export function tableJob(table: DepthTable, plug: number): Job {
  const id = idMaker(77);
  const tool = id();
  const [cylinder, plugBody, shell, line, key, plan] = [id(), id(), id(), id(), id(), id()];
  const place = (i: number) => stated(inch(table.shoulderToFirstCut + i * table.cutSpacing));
  const across = table.pinDiameter ?? 0.115;
  const flat = table.cutRootFlat ?? 0.045;
  const chambers = table.depths.map((_, i) =>
    chamber(id(), {
      position: place(i),
      capDepth: stated('.4500'),
      hole: stated(inch(across + 0.003)),
      bodies: [plugBody, shell],
    }),
  );
  const tip = seen({
    kind: 'cone',
    tipFlatDiameter: stated(inch(Math.min(flat, 0.03) * 0.6)),
    includedAngle: angle(80),
  });
  const pins = table.depths.map(({ bottomPin, cut }) =>
    pin(id(), `pin for depth ${cut}`, {
      diameter: stated(inch(across)),
      length: stated(inch(bottomPin)),
      ends: [tip, seen({ kind: 'dome' })],
    }),
  );
  const lastPlace = table.shoulderToFirstCut + (table.depths.length + 1.5) * table.cutSpacing;
  return {
    format: 'shearsight-job',
    schemaVersion: 1,
    id: id(),
    revision: 0,
    title: `table ${table.id}`,
    settings: {
      unit: 'in',
      shopRule: stated('.001'),
      friction: 0.22,
      steepestRampDeg: 60,
      numbering: 'bow',
      instrument: tool,
      session: null,
    },
    instruments: [caliper(tool, 'none: nominal figures', 0, 0)],
    sessions: [],
    cylinders: [
      {
        id: cylinder,
        label: table.id,
        turn: { angle: angle(360), ways: 'both' },
        bodies: twoBodies(plugBody, shell, measured(tool, inch(plug))),
        lines: [
          { id: line, inner: plugBody, outer: shell, clearance: stated('.0050'), lies: 'away from drivers' },
        ],
        chambers,
      },
    ],
    keys: [
      {
        id: key,
        label: 'a key with every depth',
        bladeHeight: stated('.4000'),
        stop: { kind: 'shoulder' },
        tip: { position: stated(inch(lastPlace)), noseHeight: stated('.0500'), ramp: angle(45) },
        rootFlat: stated(inch(flat)),
        includedAngle: angle(table.cutAngleDeg ?? 90),
        cuts: table.depths.map(({ rootDepth }, i) => ({
          id: id(),
          position: place(i),
          rootDepth: measured(tool, inch(rootDepth)),
        })),
      },
    ],
    seatings: [
      {
        cylinder,
        key,
        bottomEdge: 'level',
        keywayFloorHeight: stated('0'),
        standsUpBy: [],
        felt: [],
        knownSets: [],
        pinnedRoutes: {},
      },
    ],
    parts: pins,
    groups: [],
    plans: [
      {
        id: plan,
        cylinder,
        kind: 'planned',
        stacks: chambers.map((each, i) => ({ chamber: each.id, items: [{ part: pins[i]?.id ?? '' }] })),
      },
    ],
    intents: [],
    benchResults: [],
    note: { shared: {}, restricted: {} },
  };
}
