/**
 * The example with a sleeve: the old cylinder of a harbour's net store. All of it is invented. Two keys: the
 * storekeeper's brings the inner line level and turns the plug alone, the harbour master's brings the outer line level
 * and turns plug and sleeve together. mm.
 */
import type { Job } from '../src/model/schema/job-schema.ts';
import type { Key } from '../src/model/schema/key-schema.ts';
import type { EndForm, Part } from '../src/model/schema/parts-schema.ts';
import {
  angle,
  caliper,
  chamber,
  idMaker,
  measuredMm,
  pin,
  seen,
  stackOf,
  stated,
} from './example-builder.ts';

type Row = {
  /** Root depths of the two keys here. */
  readonly storekeeper: string;
  readonly harbourMaster: string;
  readonly bottomPin: string;
  readonly masterPin: string;
  /** How far the bottom pin's top sinks below the inner line with the key out. */
  readonly rest: string;
};

const ROWS: readonly Row[] = [
  { storekeeper: '6.10', harbourMaster: '6.50', bottomPin: '7.29', masterPin: '1.24', rest: '3.40' },
  { storekeeper: '5.30', harbourMaster: '6.10', bottomPin: '8.09', masterPin: '0.85', rest: '2.60' },
  { storekeeper: '6.90', harbourMaster: '6.10', bottomPin: '6.50', masterPin: '2.43', rest: '4.20' },
  { storekeeper: '5.70', harbourMaster: '6.50', bottomPin: '7.68', masterPin: '0.84', rest: '3.00' },
  { storekeeper: '7.30', harbourMaster: '6.50', bottomPin: '6.09', masterPin: '2.44', rest: '4.60' },
];
const FIRST_MM = 6.8;
const SPACING_MM = 4.3;

const mm = (typed: string) => stated(typed, 'mm');

/** Builds the job. */
export function harbourStore(): Job {
  const id = idMaker(20260718);
  const tool = id();
  const read = (...typed: string[]) => measuredMm(tool, ...typed);
  const [cylinder, plug, sleeve, shell, inner, outer, plan] = [id(), id(), id(), id(), id(), id(), id()];
  const chambers = ROWS.map((_, i) =>
    chamber(id(), {
      position: mm((FIRST_MM + i * SPACING_MM).toFixed(2)),
      capDepth: mm('11.20'),
      hole: mm('3.02'),
      bodies: [plug, sleeve, shell],
    }),
  );
  const parts: Part[] = [];
  const stacks = ROWS.map((row, i) => {
    const ids = [id(), id(), id(), id()] as const;
    parts.push(...stackParts(ids, row, i + 1, read));
    return stackOf(chambers[i]?.id ?? '', ids, read(row.rest), 1);
  });
  const keys: Key[] = [
    key(
      id,
      "Storekeeper's key",
      ROWS.map((row) => read(row.storekeeper)),
    ),
    key(
      id,
      "Harbour master's key",
      ROWS.map((row) => read(row.harbourMaster)),
    ),
  ];
  const lines = [inner, outer];
  return {
    format: 'shearsight-job',
    schemaVersion: 1,
    id: id(),
    revision: 0,
    title: 'Net store, old harbour',
    settings: {
      unit: 'mm',
      shopRule: mm('0.025'),
      friction: 0.22,
      steepestRampDeg: 60,
      numbering: 'bow',
      instrument: tool,
      session: null,
    },
    instruments: [caliper(tool, 'digital caliper', 0.0004, 0.0004)],
    sessions: [],
    cylinders: [
      {
        id: cylinder,
        label: 'Net store',
        turn: { angle: angle(360), ways: 'both' },
        bodies: [
          { id: plug, role: 'plug', outerDiameter: read('14.20', '14.20') },
          { id: sleeve, role: 'sleeve', outerDiameter: read('17.40', '17.40') },
          { id: shell, role: 'shell' },
        ],
        lines: [
          { id: inner, inner: plug, outer: sleeve, clearance: read('0.08'), lies: 'away from drivers' },
          { id: outer, inner: sleeve, outer: shell, clearance: read('0.09'), lies: 'away from drivers' },
        ],
        chambers,
        keywayWidth: mm('1.90'),
      },
    ],
    keys,
    seatings: keys.map((each) => ({
      cylinder,
      key: each.id,
      bottomEdge: 'above',
      keywayFloorHeight: read('0.80'),
      standsUpBy: [],
      felt: [],
      knownSets: [],
      pinnedRoutes: {},
    })),
    parts,
    groups: [],
    plans: [{ id: plan, cylinder, kind: 'planned', stacks }],
    intents: keys.map((each, i) => ({ key: each.id, cylinder, line: lines[i] ?? inner, turns: true })),
    benchResults: [],
    note: { shared: { cylinder: 'Net store, old harbour', function: 'Storeroom' }, restricted: {} },
  };
}

const BROKEN: EndForm = { kind: 'bevel', width: mm('0.12'), angle: angle(45), basis: 'seen' };

function stackParts(
  [bottom, master, driver, spring]: readonly [string, string, string, string],
  row: Row,
  number: number,
  read: (...typed: string[]) => ReturnType<typeof mm>,
): Part[] {
  const diameter = mm('2.95');
  const point: EndForm = {
    kind: 'cone',
    tipFlatDiameter: mm('0.70'),
    includedAngle: angle(90),
    basis: 'seen',
  };
  return [
    pin(bottom, `bottom pin ${number}`, {
      diameter,
      length: read(row.bottomPin),
      ends: [point, seen({ kind: 'dome' })],
    }),
    pin(master, `master pin ${number}`, {
      diameter,
      length: read(row.masterPin),
      ends: [BROKEN, seen({ kind: 'dome' })],
    }),
    pin(driver, `driver ${number}`, {
      diameter,
      length: read('6.20'),
      ends: [BROKEN, seen({ kind: 'flat' })],
    }),
    {
      id: spring,
      label: `spring ${number}`,
      kind: 'spring',
      diameter: mm('2.70'),
      solid: mm('3.10'),
      free: mm('11.50'),
      wire: mm('0.26'),
      coils: 11,
      quantity: 1,
      original: false,
    },
  ];
}

function key(id: () => string, label: string, roots: readonly ReturnType<typeof mm>[]): Key {
  return {
    id: id(),
    label,
    bladeHeight: mm('8.90'),
    stop: { kind: 'shoulder' },
    tip: { position: mm('31.60'), noseHeight: mm('1.40'), ramp: angle(45) },
    bladeThickness: mm('1.75'),
    rootFlat: mm('1.10'),
    includedAngle: angle(92),
    cuts: roots.map((rootDepth, i) => ({
      id: id(),
      position: mm((FIRST_MM + i * SPACING_MM).toFixed(2)),
      rootDepth,
    })),
  };
}
