/**
 * A long day in short: npx tsx tools/soak.ts [MINUTES] (30), after `npm run build`. Edits, undoes, slides the key, turns, looks at the
 * solids, changes stations, saves files, over and over; measures the heap after a collection and counts what lies on the graphics
 * card. Prints a line every two minutes; ends with what grew. Fails when the heap grew by more than a tenth, or counts rose.
 */
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { launchBrowser } from '../tests/support/browser-launch.ts';
import { startServer } from './static-server.mjs';

const MINUTES = Number(process.argv[2] ?? 30);
const MOST_GROWTH = 0.1;
/** The first rounds fill caches that are meant to be filled. */
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

const end = Date.now() + MINUTES * 60_000;
let round = 0;
let first: Measure | null = null;
let last: Measure = await measure();
let told = Date.now();
while (Date.now() < end) {
  await work(page, round);
  round += 1;
  last = await measure();
  if (round === WARM_ROUNDS) first = last;
  if (Date.now() - told > 120_000) {
    told = Date.now();
    console.log(`round ${String(round)}: ${say(last)}`);
  }
}
await browser.close();
await server.close();

const from = first ?? last;
const growth = last.heapMb / from.heapMb - 1;
console.log(
  `${String(round)} rounds in ${String(MINUTES)} minutes: ${say(from)} became ${say(last)}; ` +
    `heap ${(growth * 100).toFixed(1)} %, ${String(errors.length)} errors`,
);
for (const each of new Set(errors)) console.log(each);
process.exitCode = growth > MOST_GROWTH || last.onCard > from.onCard || errors.length > 0 ? 1 : 0;

type Measure = { readonly heapMb: number; readonly onCard: number };

function say({ heapMb, onCard }: Measure): string {
  return `${heapMb.toFixed(1)} MB, ${String(onCard)} objects on the card`;
}

async function measure(): Promise<Measure> {
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  const onCard = await page.evaluate(() => (window as unknown as { onCard: number }).onCard);
  return { heapMb: usedSize / 2 ** 20, onCard };
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
