/** The command line as a person runs it: `npm run -s evaluate -- FILE`. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { setDepthTable } from '../../src/model/keying/depth-table.ts';
import { setIntent } from '../../src/model/keying/intent.ts';
import { keyedJob, tableOf } from '../support/keyed-job.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const h = join(root, 'tests/fixtures/jobs/cylinder-h.json');
const INCH = 25.4;

function run(...words: string[]): { code: number | null; out: string; err: string } {
  const ended = spawnSync('npm', ['run', '-s', 'evaluate', '--', ...words], { cwd: root, encoding: 'utf8' });
  return { code: ended.status, out: ended.stdout, err: ended.stderr };
}

function fileWith(text: string): string {
  const path = join(mkdtempSync(join(tmpdir(), 'shearsight-')), 'job.json');
  writeFileSync(path, text);
  return path;
}

type Printed = {
  units: { length: string };
  lines: { line: string; verdict: string; blockedBy: number[] }[];
  chambers: { chamber: number; contactHeight: number; splits: { offset: number; verdict: string }[] }[];
  rest: { chambers: { chamber: number; driver: { shortest: number; longest: number } }[] };
  way: { keyIsHeld: boolean };
  findings: { code: string; chambers: number[]; message: string }[];
  travel: { travel: number; chambers: { chamber: number; footHeight: number }[] }[];
};

describe('evaluate', () => {
  test('prints cylinder H as worked by hand, in mm, with the heights on the way in', () => {
    const { code, out, err } = run(h, '--travel', '1.70in,0');
    expect(err).toBe('');
    expect(code).toBe(0);
    const printed = JSON.parse(out) as Printed;
    expect(printed.units.length).toBe('mm');
    expect(printed.lines[0]).toMatchObject({ verdict: 'turns', blockedBy: [] });
    expect(printed.chambers.map((each) => each.chamber)).toEqual([1, 2, 3, 4, 5, 6]);
    expect((printed.chambers[0]?.contactHeight ?? 0) / INCH).toBeCloseTo(0.37136, 5);
    expect(printed.chambers.map((each) => each.splits[0]?.verdict)).toEqual([
      'level',
      'low, turns',
      'low, turns',
      'level',
      'high, rubs',
      'high, rubs',
    ]);
    expect((printed.rest.chambers[4]?.driver.shortest ?? 0) / INCH).toBeCloseTo(0.274, 5);
    expect((printed.rest.chambers[2]?.driver.longest ?? 0) / INCH).toBeCloseTo(0.276, 5);
    expect(printed.way.keyIsHeld).toBe(true);
    expect(printed.findings).toEqual([
      expect.objectContaining({ code: 'rides-on-sides', chambers: [1, 2, 3, 4, 5, 6] }),
    ]);
    expect((printed.travel[0]?.chambers[0]?.footHeight ?? 0) / INCH).toBeCloseTo(0.2, 6);
  });

  test('prints how many keys operate each line and what the keys do, and never a list of cuts', () => {
    const job = setDepthTable(keyedJob([[1, 4], [1, 4], [3]]), tableOf(9));
    const path = fileWith(JSON.stringify(setIntent(job, { key: 'key', cylinder: 'cylinder' }, 'nothing')));
    const { out } = run(path);
    const { keying } = JSON.parse(out) as { keying: Record<string, unknown> };
    expect(keying['operatingKeys']).toEqual({
      lines: [{ line: 'line', setsOfHeights: '4', keys: '4', withoutLargestStep: '4' }],
      plugAlone: '4',
      together: '0',
      either: '0',
    });
    expect(keying['keys']).toMatchObject([{ key: 'key', meant: 'nothing', does: 'plug', isAsMeant: false }]);
    expect(keying['crossings']).toEqual([{ key: 'key', line: 'line', meantFor: [] }]);
    expect(out).not.toContain('steps');
  });

  test('prints every pair of a job with --all', () => {
    const printed = JSON.parse(run(h, '--all').out) as { evaluations: unknown[] };
    expect(printed.evaluations).toHaveLength(1);
  });

  test('prints the JSON Schema that is published', () => {
    const published = JSON.parse(
      readFileSync(join(root, 'public/shearsight-job.schema.json'), 'utf8'),
    ) as unknown;
    expect(JSON.parse(run('--schema').out)).toEqual(published);
  });

  const broken = readFileSync(h, 'utf8')
    .replace('"title": "Cylinder H"', '"title": 7')
    .replace('"shoulder"', '"elbow"');
  test.each([
    ['a file that is not there', '/no/such/file.json', /^file: .* cannot be read\.\n$/],
    ['text that is no JSON', fileWith('{"format":'), /^file: .+\n$/],
    ['another kind of file', fileWith('{"format":"something"}'), /format/],
    ['a job with two wrong fields', fileWith(broken), /^.*(title|stop).*\n.*(title|stop).*\n$/],
    ['an argument nobody knows', '--weigh', /^arguments: --weigh is not known here\.\n$/],
  ])('refuses %s: one sentence a line, nothing printed, exit code 2', (_, word, sentences) => {
    const { code, out, err } = run(word);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(sentences);
  });
});
