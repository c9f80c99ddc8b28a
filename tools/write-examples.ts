/**
 * Writes the example jobs. All of it is invented: the oil-store door of a lighthouse, the net store of a harbour with
 * its sleeve, and cylinder H, whose numbers were worked by hand. Run: npx tsx tools/write-examples.ts
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import type { Job } from '../src/model/schema/job-schema.ts';
import { parseJob } from '../src/model/schema/parse-job.ts';
import type { LengthValue } from '../src/model/schema/leaf.ts';
import type { EndForm, Group, Part } from '../src/model/schema/parts-schema.ts';
import { jobToText } from '../src/persist/job-text.ts';
import {
  angle,
  caliper,
  chamber,
  idMaker,
  measured,
  pin,
  seen,
  stackOf,
  stated,
  twoBodies,
} from './example-builder.ts';
import { harbourStore } from './harbour-example.ts';

type Row = { root: string; stack: string; pin: string; rest: string; spool?: true; cutOff?: string };
type Sizes = {
  seed: number;
  title: string;
  cylinderLabel: string;
  keyLabel: string;
  caliperError: number;
  caliperStep: number;
  plug: string[];
  floor: string;
  play: string;
  first: number;
  spacing: number;
  hole: string;
  pinDiameter: string;
  ball: string;
  flat: string;
  blade: string;
  tip: string;
  nose: string;
  capDepth: string;
  driver: string;
  springSolid: string;
  springFree: string;
  driverEnd: EndForm;
  rows: Row[];
  spares: { label: string; length: string; from: string }[];
  note: Record<string, string>;
};

const inch = (value: number) => value.toFixed(4);

function build(sizes: Sizes): Job {
  const id = idMaker(sizes.seed);
  const tool = id();
  const read = (...typed: string[]): LengthValue => measured(tool, ...typed);
  const [cylinderId, plugId, shellId, lineId, keyId, planId] = [id(), id(), id(), id(), id(), id()];
  const chambers = sizes.rows.map((_, i) =>
    chamber(id(), {
      position: stated(inch(sizes.first + i * sizes.spacing)),
      capDepth: stated(sizes.capDepth),
      hole: stated(sizes.hole),
      bodies: [plugId, shellId],
    }),
  );
  const parts: Part[] = [];
  const groups: Group[] = [];
  const flat = seen({ kind: 'flat' });
  const stacks = sizes.rows.map((row, i) => {
    const number = i + 1;
    const [ball, bottom, driver, spring, group] = [id(), id(), id(), id(), id()];
    parts.push(
      {
        id: ball,
        label: `ball ${number}`,
        kind: 'ball',
        diameter: stated(sizes.ball),
        quantity: 1,
        original: true,
      },
      pin(bottom, `bottom pin ${number}`, {
        diameter: stated(sizes.pinDiameter),
        length: read(row.pin),
        ends: [
          seen({ kind: 'cup', mouthDiameter: stated('.090'), includedAngle: angle(118) }),
          seen({ kind: 'dome' }),
        ],
      }),
      pin(driver, `driver ${number}`, {
        diameter: stated(sizes.pinDiameter),
        length: read(sizes.driver),
        ends: [sizes.driverEnd, flat],
        ...(row.spool && {
          waist: { kind: 'spool', from: stated('.055'), length: stated('.150'), diameter: stated('.115') },
        }),
      }),
      {
        id: spring,
        label: `spring ${number}`,
        kind: 'spring',
        diameter: stated('.145'),
        solid: stated(sizes.springSolid),
        free: stated(sizes.springFree),
        wire: stated('.014'),
        coils: 13,
        quantity: 1,
        original: false,
      },
    );
    groups.push({ id: group, parts: [ball, bottom], height: read(row.stack) });
    return stackOf(chambers[i]?.id ?? '', [ball, bottom, driver, spring], read(row.rest), 2);
  });
  for (const spare of sizes.spares) {
    parts.push(
      pin(id(), spare.label, {
        diameter: stated(sizes.pinDiameter),
        length: read(spare.length),
        from: spare.from,
        original: false,
        condition: 'good',
      }),
    );
  }
  return {
    format: 'shearsight-job',
    schemaVersion: 1,
    id: id(),
    revision: 0,
    title: sizes.title,
    settings: {
      unit: 'in',
      shopRule: stated('.001'),
      friction: 0.22,
      steepestRampDeg: 60,
      numbering: 'bow',
      instrument: tool,
      session: null,
    },
    instruments: [caliper(tool, 'digital caliper', sizes.caliperError, sizes.caliperStep)],
    sessions: [],
    cylinders: [
      {
        id: cylinderId,
        label: sizes.cylinderLabel,
        turn: { angle: angle(360), ways: 'both' },
        bodies: twoBodies(plugId, shellId, read(...sizes.plug)),
        lines: [
          {
            id: lineId,
            inner: plugId,
            outer: shellId,
            clearance: read(sizes.play),
            lies: 'away from drivers',
          },
        ],
        chambers,
        keywayWidth: stated('.080'),
      },
    ],
    keys: [
      {
        id: keyId,
        label: sizes.keyLabel,
        bladeHeight: stated(sizes.blade),
        stop: { kind: 'shoulder' },
        tip: { position: stated(sizes.tip), noseHeight: stated(sizes.nose), ramp: angle(45) },
        bladeThickness: stated('.075'),
        rootFlat: stated(sizes.flat),
        includedAngle: angle(90),
        cuts: sizes.rows.map((row, i) => ({
          id: id(),
          position: stated(inch(sizes.first + i * sizes.spacing + Number(row.cutOff ?? 0))),
          rootDepth: read(row.root),
        })),
      },
    ],
    seatings: [
      {
        cylinder: cylinderId,
        key: keyId,
        bottomEdge: 'above',
        keywayFloorHeight: read(sizes.floor),
        standsUpBy: [],
        felt: [],
        knownSets: [],
        pinnedRoutes: {},
      },
    ],
    parts,
    groups,
    plans: [{ id: planId, cylinder: cylinderId, kind: 'planned', stacks }],
    intents: [{ key: keyId, cylinder: cylinderId, line: lineId, turns: true }],
    benchResults: [],
    note: { shared: sizes.note, restricted: {} },
  };
}

const lighthouse = build({
  seed: 20260412,
  title: 'Oil-store door, north light',
  cylinderLabel: 'Oil-store door',
  keyLabel: 'Key on a loop of twine',
  caliperError: 0.001,
  caliperStep: 0.0005,
  plug: ['.7260', '.7260', '.7260'],
  floor: '.0380',
  play: '.0040',
  first: 0.33,
  spacing: 0.24,
  hole: '.160',
  pinDiameter: '.156',
  ball: '5/32',
  flat: '.060',
  blade: '.484',
  tip: '1.860',
  nose: '.055',
  capDepth: '.620',
  driver: '.2650',
  springSolid: '.180',
  springFree: '.700',
  driverEnd: {
    kind: 'bevel',
    width: stated('.005'),
    angle: angle(45),
    basis: 'assumed',
    alternatives: [{ kind: 'flat' }, { kind: 'bevel', width: stated('.010'), angle: angle(45) }],
  },
  rows: [
    { root: '.3520', stack: '.3330', pin: '.1910', rest: '.1650' },
    { root: '.4080', stack: '.2765', pin: '.1345', rest: '.2215', spool: true },
    { root: '.3180', stack: '.3675', pin: '.2255', rest: '.1305' },
    { root: '.3800', stack: '.3030', pin: '.1610', rest: '.1950', cutOff: '.005' },
    { root: '.4360', stack: '.2590', pin: '.1170', rest: '.2390', spool: true },
    { root: '.2900', stack: '.3940', pin: '.2520', rest: '.1040' },
  ],
  spares: [
    { label: 'A1', length: '.1070', from: 'coal-shed cylinder' },
    { label: 'A2', length: '.1080', from: 'coal-shed cylinder' },
    { label: 'A3', length: '.1345', from: 'coal-shed cylinder' },
    { label: 'A4', length: '.1585', from: 'signal-room cylinder' },
    { label: 'A5', length: '.1895', from: 'signal-room cylinder' },
    { label: 'A6', length: '.2260', from: 'signal-room cylinder' },
  ],
  note: {
    cylinder: 'Oil-store door, north light',
    function: 'Storeroom',
    work: 'Re-pinned to the key found in the lamp room',
  },
});

const cylinderH = build({
  seed: 8,
  title: 'Cylinder H',
  cylinderLabel: 'Cylinder H',
  keyLabel: 'Key H',
  caliperError: 0,
  caliperStep: 0,
  plug: ['.748'],
  floor: '.042',
  play: '.004',
  first: 0.35,
  spacing: 0.25,
  hole: '.160',
  pinDiameter: '.156',
  ball: '5/32',
  flat: '.060',
  blade: '.500',
  tip: '1.95',
  nose: '.060',
  capDepth: '.640',
  driver: '.275',
  springSolid: '.196',
  springFree: '.700',
  driverEnd: seen({ kind: 'bevel', width: stated('.005'), angle: angle(45) }),
  rows: [
    { root: '.369', stack: '.3345', pin: '.1920', rest: '.1715' },
    { root: '.421', stack: '.2790', pin: '.1365', rest: '.2270' },
    { root: '.333', stack: '.3680', pin: '.2255', rest: '.1380' },
    { root: '.393', stack: '.3100', pin: '.1675', rest: '.1960' },
    { root: '.453', stack: '.2520', pin: '.1095', rest: '.2540' },
    { root: '.303', stack: '.4035', pin: '.2610', rest: '.1025' },
  ],
  spares: [],
  note: {},
});

function write(path: string, job: Job): void {
  const parsed = parseJob(JSON.parse(JSON.stringify(job)));
  if (parsed.type === 'error')
    throw new Error(parsed.problems.map((each) => `${each.field}: ${each.message}`).join('\n'));
  writeFileSync(path, jobToText(job));
}

mkdirSync('public/examples', { recursive: true });
mkdirSync('tests/fixtures/jobs', { recursive: true });
write('public/examples/lighthouse.json', lighthouse);
write('tests/fixtures/jobs/cylinder-h.json', cylinderH);
write('public/examples/harbour-store.json', harbourStore());
