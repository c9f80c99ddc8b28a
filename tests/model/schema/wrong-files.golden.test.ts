/** What is said of a file in which one thing is wrong, kept as text: each place that can refer to nothing, each shape that can be off. */
import { describe, expect, test } from 'vitest';
import { checkReferences } from '../../../src/model/schema/check-references.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { parseJob } from '../../../src/model/schema/parse-job.ts';
import type { Problem } from '../../../src/model/schema/problem.ts';
import { pairedJob } from '../../support/paired-job.ts';
import { expectGolden } from '../../support/golden.ts';
import { assumedInches, inches } from '../../support/values.ts';

type Wrong = Readonly<Record<string, (job: Job) => void>>;

/** Each is written into a job that is right. */
function said(wrong: Wrong, read: (job: Job) => readonly Problem[]): string {
  return Object.entries(wrong)
    .map(([name, change]) => {
      const lines = read(pairedJob(change)).map(({ field, message }) => `${field}: ${message}`);
      return `## ${name}\n${lines.length === 0 ? 'nothing is wrong' : lines.join('\n')}\n\n`;
    })
    .join('');
}

function readAsFile(job: Job): readonly Problem[] {
  const parsed = parseJob(JSON.parse(JSON.stringify(job)));
  return parsed.type === 'success' ? [] : parsed.problems;
}

const LOST = { part: 'lost' };

const OWNERS: Wrong = {
  nothing: () => undefined,
  'parts with one id': (job) => (job.parts[1]!.id = job.parts[0]!.id),
  'cylinders with one id': (job) => (job.cylinders[1]!.id = 'cylinder'),
  'keys with one id': (job) => (job.keys[1]!.id = 'key'),
  'plans with one id': (job) => (job.plans[2]!.id = 'plan'),
  'instruments with one id': (job) => (job.instruments[2]!.id = 'micrometer'),
  'zero checks with one id': (job) => (job.sessions[0]!.id = 'noon'),
  'groups with one id': (job) => (job.groups[1]!.id = 'group-1'),
  'cuts with one id': (job) => (job.keys[0]!.cuts[1]!.id = 'cut-1'),
  'chambers with one id': (job) => (job.cylinders[1]!.chambers[1]!.id = 'b-chamber-1'),
  'bodies with one id': (job) => (job.cylinders[1]!.bodies[1]!.id = 'b-plug'),
  'zero check of no instrument': (job) => (job.sessions[0]!.instrument = 'lost'),
  'no such instrument in hand': (job) => (job.settings.instrument = 'lost'),
  'no such zero check in force': (job) => (job.settings.session = 'lost'),
  'neither in hand nor in force': (job) => {
    job.settings.instrument = null;
    job.settings.session = null;
  },
};

const PAIRS: Wrong = {
  'pairing with no cylinder': (job) => (job.seatings[1]!.cylinder = 'lost'),
  'pairing with no key': (job) => (job.seatings[1]!.key = 'lost'),
  'the same pair twice': (job) => {
    job.seatings[2]!.key = 'key';
  },
  'stood up in no chamber': (job) => (job.seatings[0]!.standsUpBy[0]!.chamber = 'lost'),
  'stood up in a chamber of the other cylinder': (job) =>
    (job.seatings[0]!.standsUpBy[0]!.chamber = 'b-chamber-1'),
  'stood up with no part': (job) => (job.seatings[0]!.standsUpBy[1]!.items[1] = LOST),
  'felt in no chamber': (job) => (job.seatings[0]!.felt[3]!.chamber = 'lost'),
  'felt with no part': (job) => (job.seatings[0]!.felt[1]!.items[0] = LOST),
  'knows no such set': (job) => (job.seatings[0]!.knownSets = ['found', 'lost']),
  'route of no chamber': (job) => (job.seatings[0]!.pinnedRoutes = { lost: 'known set' }),
  'measured with no part': (job) => (job.groups[1]!.parts[1] = 'lost'),
  'plan of no cylinder': (job) => {
    job.plans[1]!.cylinder = 'lost';
    job.plans[1]!.stacks = [];
    job.benchResults.length = 4;
  },
  'stack in no chamber': (job) => (job.plans[1]!.stacks[1]!.chamber = 'lost'),
  'two stacks in one': (job) => (job.plans[2]!.stacks[1]!.chamber = 'chamber-1'),
  'stack of no part': (job) => (job.plans[0]!.stacks[2]!.items[1] = LOST),
  'sank with no part': (job) => (job.plans[0]!.stacks[0]!.rest!.items[1] = LOST),
  'tried with no plan': (job) => (job.benchResults[0]!.plan = 'lost'),
  'tried with no plan, all chambers': (job) => (job.benchResults[4]!.plan = 'lost'),
  'tried with no key': (job) => (job.benchResults[1]!.key = 'lost'),
  'tried in no chamber': (job) => (job.benchResults[1]!.chamber = 'lost'),
  'tried in a chamber of the other cylinder': (job) => (job.benchResults[1]!.chamber = 'b-chamber-1'),
  'tried with no part': (job) => (job.benchResults[3]!.items[0] = LOST),
  'meant for no key': (job) => (job.intents[0]!.key = 'lost'),
  'meant for no cylinder': (job) => (job.intents[3]!.cylinder = 'lost'),
  'meant for a line of the other cylinder': (job) => (job.intents[0]!.line = 'b-line'),
};

const CYLINDERS: Wrong = {
  'crest of no chamber': (job) => (job.cylinders[0]!.bodies[0]!.crestDropAt = { lost: inches(0.001) }),
  'two shells': (job) => (job.cylinders[1]!.bodies[0]!.role = 'shell'),
  'sleeve outside': (job) => {
    job.cylinders[0]!.bodies[1]!.role = 'shell';
    job.cylinders[0]!.bodies[2]!.role = 'sleeve';
  },
  'a line too few': (job) => {
    job.cylinders[0]!.lines.length = 1;
    job.intents = [];
  },
  'a line too many': (job) => job.cylinders[1]!.lines.push({ ...job.cylinders[1]!.lines[0]!, id: 'more' }),
  'a line too many, from the last body': (job) =>
    job.cylinders[1]!.lines.push({
      ...job.cylinders[1]!.lines[0]!,
      id: 'more',
      inner: 'b-shell',
      outer: 'lost',
    }),
  'first line from the wrong body': (job) => (job.cylinders[0]!.lines[0]!.inner = 'sleeve'),
  'second line to the wrong body': (job) => (job.cylinders[0]!.lines[1]!.outer = 'plug'),
  'hole in no body': (job) => (job.cylinders[0]!.chambers[1]!.holes[2]!.body = 'lost'),
  'a label with a break in it': (job) => {
    job.cylinders[1]!.label = 'Back\ndoor';
    job.cylinders[1]!.chambers[0]!.holes[0]!.body = 'lost';
  },
  'a key whose label has a break in it': (job) => {
    job.keys[0]!.label = 'Key\u2028one';
    job.keys[0]!.cuts[1]!.id = 'cut-1';
  },
};

const VALUES: Wrong = {
  'read with no instrument': (job) => (job.keys[1]!.cuts[0]!.rootDepth!.readings[0]!.instrument = 'lost'),
  'read under no zero check': (job) => (job.keys[1]!.cuts[0]!.rootDepth!.readings[0]!.session = 'lost'),
  'assumed without a range': (job) => (job.cylinders[1]!.lines[0]!.clearance.basis = 'assumed'),
  'a range the wrong way round': (job) => (job.keys[0]!.rootFlat = assumedInches(0.05, 0.06, 0.04)),
  'a range of nothing': (job) => (job.keys[0]!.rootFlat = assumedInches(0.05, 0.05, 0.05)),
  'a range the wrong way round, of one measured': (job) =>
    (job.keys[0]!.rootFlat = { ...inches(0.05), range: { from: 2, to: 1 } }),
  'one of two readings left out': (job) => {
    job.keys[0]!.rootFlat = inches(0.05, 0.06);
    job.keys[0]!.rootFlat.readings[0]!.left = 'out';
  },
  'both readings left out': (job) => {
    job.keys[0]!.rootFlat = inches(0.05, 0.06);
    for (const reading of job.keys[0]!.rootFlat.readings) reading.left = 'out';
  },
  'an angle under no zero check': (job) => (job.cylinders[0]!.turn.angle.readings[0]!.session = 'lost'),
  'at a chamber whose name ends with a figure': (job) =>
    (job.cylinders[0]!.bodies[0]!.crestDropAt!['chamber-3']!.basis = 'assumed'),
  'at the thirteenth of a list': (job) => (job.parts[12]!.diameter!.basis = 'assumed'),
  'deep in an end': (job) => {
    const driver = job.parts.find(({ id }) => id === 'driver-2')!;
    driver.ends![0].width!.readings[0]!.instrument = 'lost';
  },
  'at a chamber whose name begins with a figure': (job) => {
    const text = JSON.stringify(job).replaceAll('"chamber-3"', '"3rd"');
    Object.assign(job, JSON.parse(text));
    job.cylinders[0]!.bodies[0]!.crestDropAt!['3rd']!.basis = 'assumed';
  },
};

const put = (at: object, values: object): void => {
  Object.assign(at, values);
};

const SHAPES: Wrong = {
  'no title': (job) => put(job, { title: undefined }),
  'a title that is a number': (job) => put(job, { title: 7 }),
  'a title too long': (job) => (job.title = 'x'.repeat(201)),
  'an old version': (job) => put(job, { schemaVersion: 0 }),
  'a version that is a text': (job) => put(job, { schemaVersion: '9' }),
  'no version': (job) => put(job, { schemaVersion: undefined }),
  'a revision that is no whole number': (job) => (job.revision = 0.5),
  'a revision below nothing': (job) => (job.revision = -1),
  'no list of keys': (job) => put(job, { keys: {} }),
  'a list that is no list of holes': (job) => put(job.cylinders[0]!.chambers[1]!, { holes: 'none' }),
  'too many fields at once': (job) => put(job.settings, { a: 1, b: 1, c: 1, d: 1, e: 1, f: 1 }),
  'a field with a break in its name': (job) => put(job.settings, { 'a\nb': 1 }),
  'an unknown route': (job) => put(job.seatings[0]!.pinnedRoutes, { 'chamber-2': 'guessed' }),
  'a route of a chamber no id can name': (job) => put(job.seatings[0]!.pinnedRoutes, { 'a b': 'known set' }),
  'a chamber of a test that is neither': (job) => (job.benchResults[0]!.chamber = 'a b'),
  'an end too few': (job) => put(job.parts[1]!, { ends: [job.parts[1]!.ends![0]] }),
  'flipped, but not so': (job) => put(job.plans[0]!.stacks[0]!.items[0]!, { flipped: false }),
  'one part measured together': (job) => (job.groups[0]!.parts.length = 1),
  'one body': (job) => (job.cylinders[1]!.bodies.length = 1),
  'an id that is a name of the language': (job) => (job.id = 'constructor'),
  'an empty id': (job) => (job.id = ''),
  'a value that is a number': (job) => put(job.keys[0]!, { rootFlat: 1.27 }),
  'an unknown unit': (job) => put(job.keys[0]!.rootFlat!.readings[0]!, { unit: 'ft' }),
  'forty-one wrong': (job) => {
    for (let i = 0; i < 41; i++) put(job.parts[i % 21]!, i < 21 ? { kind: 'nail' } : { quantity: -1 });
  },
};

describe('what is said of a file with one thing wrong', () => {
  test.each(Object.entries({ owners: OWNERS, pairs: PAIRS, cylinders: CYLINDERS, values: VALUES }))(
    'in its %s',
    (topic, wrong) => {
      expectGolden(`wrong-files/${topic}.txt`, said(wrong, checkReferences));
    },
  );

  test('in its shapes', () => {
    expectGolden('wrong-files/shapes.txt', said(SHAPES, readAsFile));
  });

  test('what is wrong is told as such, whatever is wrong', () => {
    expect(parseJob('text').type).toBe('error');
    expect(parseJob({ ...pairedJob(), title: 7 }).type).toBe('error');
    expect(parseJob({ ...pairedJob(), keys: [] }).type).toBe('error');
    expect(parseJob({ ...pairedJob(), title: '' }).type).toBe('success');
  });

  test('the job it is written into is right', () => {
    expect(readAsFile(pairedJob())).toEqual([]);
  });
});
