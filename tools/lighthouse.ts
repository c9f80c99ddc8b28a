/**
 * What Lighthouse says of the built app as a slow phone would meet it (tools/figures.ts prints it). Three
 * runs of dist/, the middle one counts. Lighthouse itself is no dependency: npx fetches the version below, once, so this needs a
 * connection the first time.
 */
import { execFile } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { type BenchRow, median } from '../bench/support/bench.ts';
import { browserExecutable } from '../tests/support/browser-executable.ts';
import { startServer } from './static-server.mjs';

const VERSION = '12.2.3';
const RUNS = 3;
const AIMS = { performance: 95, accessibility: 100, 'best-practices': 100 };
type Category = keyof typeof AIMS;
type Report = Readonly<Record<'categories', Readonly<Record<Category, { readonly score: number }>>>>;

const root = fileURLToPath(new URL('..', import.meta.url));
const browserFlags = [
  '--headless=new',
  '--no-sandbox',
  '--disable-dev-shm-usage',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-gpu-rasterization',
];

async function reportOf(url: string, run: number): Promise<Report> {
  const file = `${root}reports/lighthouse-${String(run)}.json`;
  const { path, env } = await browserExecutable();
  const asked = [url, '--quiet', '--output=json', `--output-path=${file}`];
  await promisify(execFile)(
    'npx',
    ['--yes', `lighthouse@${VERSION}`, ...asked, `--chrome-flags=${browserFlags.join(' ')}`],
    { cwd: root, env: { ...env, CHROME_PATH: path } },
  );
  return JSON.parse(readFileSync(file, 'utf8')) as Report;
}

/** Runs it on dist/. Throws where Lighthouse cannot be fetched. */
export async function lighthouseRows(): Promise<BenchRow[]> {
  mkdirSync(`${root}reports`, { recursive: true });
  const server = await startServer({ root: `${root}dist/`, host: 'localhost' });
  const reports: Report[] = [];
  try {
    for (let run = 1; run <= RUNS; run += 1) reports.push(await reportOf(server.url, run));
  } finally {
    await server.close();
  }
  return (Object.keys(AIMS) as Category[]).map((category) => {
    const scores = reports.map(({ categories }) => Math.round(categories[category].score * 100));
    return {
      what: `Lighthouse ${VERSION}, ${category}`,
      measured: median(scores),
      unit: 'of 100',
      aim: { atLeast: AIMS[category] },
      note: `runs ${scores.join(', ')}`,
    };
  });
}
