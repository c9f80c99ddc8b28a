/**
 * A long day in short: npx tsx tools/soak.ts [MINUTES] (30), after `npm run build`. Edits, undoes, slides the key, turns, looks at the
 * solids, changes stations, saves files, over and over; measures the heap after a collection and counts what lies on the graphics
 * card. Prints a line every two minutes; ends with what grew. Fails when the heap grew by more than a tenth, what the page itself
 * keeps by more than a twentieth, or counts rose.
 *
 * The minutes start after a warm-up of half as long, and of six rounds at least: caches fill that are meant to, and the browser compiles
 * what is used often, again and again while it learns. That is where a heap seems to grow: over a hundred edits with their undo, a
 * hundred walks through the stations and forty looks at the solids, heap snapshots differed by compiled code (7, 5 and 10 kB a time, ever
 * less) and by no object, text or function at all. Eighteen whole rounds added 16 objects (0.4 kB), 63 short texts (3 kB), and 70 kB to
 * the tables of caches that keep nothing alive (weak maps), which double when they fill up between two collections. So the last line
 * tells both apart, from a snapshot at either end.
 */
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { launchBrowser } from '../tests/support/browser-launch.ts';
import { heapByKind } from './heap-by-kind.ts';
import { startServer } from './static-server.mjs';

const MINUTES = Number(process.argv[2] ?? 30);
const MOST_GROWTH = 0.1;
/** Of some 5 MB: room for the doubling of two tables. */
const MOST_KEPT_GROWTH = 0.05;
const WARM_MINUTES = MINUTES / 2;
const WARM_ROUNDS = 6;

const server = await startServer({ root: fileURLToPath(new URL('../dist', import.meta.url)) });
const browser = await launchBrowser();
const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, reducedMotion: 'reduce' });
const errors: string[] = [];
context.on('weberror', (event) => errors.push(event.error().message));
context.on('console', (message) => {
  if (message.type() === 'error') errors.push(message.text());
});
await context.addInitScript(countOnCard);
const page = await context.newPage();
const session = await context.newCDPSession(page);
await page.goto(server.url);
await page.getByRole('button', { name: 'Slide the key in' }).waitFor();

const warmUntil = Date.now() + WARM_MINUTES * 60_000;
let told = Date.now();
let round = 0;
while (round < WARM_ROUNDS || Date.now() < warmUntil) await oneRound('warming up');
const from = await measure();
const keptFrom = await heapByKind(session);
const warmRounds = round;
const end = Date.now() + MINUTES * 60_000;
while (Date.now() < end) await oneRound('measured');
const last = await measure();
const keptLast = await heapByKind(session);
await browser.close();
await server.close();

const growth = last.heapMb / from.heapMb - 1;
const keptGrowth = keptLast.keptMb / keptFrom.keptMb - 1;
console.log(
  `${String(round - warmRounds)} rounds in ${String(MINUTES)} minutes (after ${String(warmRounds)} to warm up): ` +
    `${say(from)} became ${say(last)}; heap ${percent(growth)}, of it kept by the page ` +
    `${keptFrom.keptMb.toFixed(2)} MB became ${keptLast.keptMb.toFixed(2)} MB (${percent(keptGrowth)}), compiled code ` +
    `${keptFrom.codeMb.toFixed(2)} MB became ${keptLast.codeMb.toFixed(2)} MB; ${String(errors.length)} errors`,
);
for (const each of new Set(errors)) console.log(each);
const hasGrown = growth > MOST_GROWTH || keptGrowth > MOST_KEPT_GROWTH;
const hasMore = last.onCard > from.onCard || last.listeners > from.listeners;
process.exitCode = hasGrown || hasMore || errors.length > 0 ? 1 : 0;

async function oneRound(phase: string): Promise<void> {
  await work(page, round);
  round += 1;
  if (Date.now() - told < 120_000) return;
  told = Date.now();
  console.log(`round ${String(round)}, ${phase}: ${say(await measure())}`);
}

function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

type Measure = { readonly heapMb: number; readonly onCard: number; readonly listeners: number };

function say({ heapMb, onCard, listeners }: Measure): string {
  return `${heapMb.toFixed(1)} MB, ${String(onCard)} objects on the card, ${String(listeners)} listeners`;
}

async function measure(): Promise<Measure> {
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  const onCard = await page.evaluate(() => (window as unknown as { onCard: number }).onCard);
  const { jsEventListeners } = await session.send('Memory.getDOMCounters');
  return { heapMb: usedSize / 2 ** 20, onCard, listeners: jsEventListeners };
}

/** One round of work; ends as it began, so that every round can be compared with every other. */
async function work(on: Page, number: number): Promise<void> {
  const button = (name: string | RegExp) => on.getByRole('button', { name, exact: typeof name === 'string' });
  const station = (name: string) => on.getByRole('link', { name, exact: true }).click();
  await station('Measure');
  const field = on.locator('.chamber-row input, .chambers input').first();
  const before = await field.inputValue();
  for (const change of [1, 2, 3]) {
    await field.fill(`${before.slice(0, -1)}${String((number + change) % 10)}`);
    await field.press('Enter');
  }
  // A digit that was there before is no step.
  while (await button(/^Undo/).isEnabled()) await button(/^Undo/).click();
  if ((await button('Slide the key in').count()) > 0) await button('Slide the key in').click();
  await on.waitForTimeout(2600);
  await button('Solid').click();
  await on.locator('.solid-place canvas').waitFor();
  await on.waitForTimeout(1500);
  await button('Drawing').click();
  await station('Parts on hand');
  await on.waitForTimeout(300);
  await station('Check');
  await on.waitForTimeout(300);
  const download = on.waitForEvent('download', { timeout: 5000 }).catch(() => null);
  await on.locator('.job-menu > summary').click();
  await button('Save to a file…').first().click();
  await (await download)?.delete();
  await station('Measure');
  await button('Pull the key out').click();
  await on.waitForTimeout(2600);
}

/** Counts what a page makes on the graphics card less what it deletes. */
function countOnCard(): void {
  const counter = window as unknown as { onCard: number };
  counter.onCard = 0;
  const prototype = WebGL2RenderingContext.prototype as unknown as Record<
    string,
    (...given: unknown[]) => unknown
  >;
  for (const kind of ['Buffer', 'Texture', 'Program', 'Framebuffer', 'Renderbuffer', 'VertexArray']) {
    for (const [verb, by] of [
      ['create', 1],
      ['delete', -1],
    ] as const) {
      const original = prototype[`${verb}${kind}`];
      if (original === undefined) continue;
      prototype[`${verb}${kind}`] = function (this: unknown, ...given: unknown[]) {
        if (by > 0 || given[0] != null) counter.onCard += by;
        return original.apply(this, given);
      };
    }
  }
}
