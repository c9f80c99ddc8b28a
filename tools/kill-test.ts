/**
 * The long form of the test of kills: npx tsx tools/kill-test.ts [ROUNDS] (500), after `npm run build`. Prints each loss and, at
 * the end, one line with what came out.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type KillRound, killRound, numberStored } from '../tests/support/kill-rounds.ts';
import { seeded } from '../tests/support/mutate-text.ts';
import { startServer } from './static-server.mjs';

const ROUNDS = Number(process.argv[2] ?? 500);
/** A profile keeps 200 steps of one job; a fresh one now and then tries first saves as well. */
const ROUNDS_OF_PROFILE = 25;

const server = await startServer({ root: fileURLToPath(new URL('../dist', import.meta.url)) });
const random = seeded(Date.now() & 0xffff);
const totals = { kills: 0, withSave: 0, lost: 0, unreadable: 0 };

for (let start = 0; start < ROUNDS; start += ROUNDS_OF_PROFILE) {
  const profile = mkdtempSync(join(tmpdir(), 'kill-profile-'));
  const rounds: KillRound[] = [];
  const count = Math.min(ROUNDS_OF_PROFILE, ROUNDS - start);
  for (let i = 0; i < count; i++)
    rounds.push(await killRound(profile, server.url, (rounds.at(-1)?.made ?? 0) + 1, random));
  const found = [...rounds.slice(1).map((round) => round.found), await numberStored(profile, server.url)];
  rounds.forEach((round, i) => judge(round, found[i] ?? null, start + i + 1, rounds[i + 1]?.told ?? ''));
  rmSync(profile, { recursive: true, force: true });
  console.log(`${String(totals.kills)} kills`);
}
await server.close();
console.log(
  `${String(totals.kills)} kills, ${String(totals.withSave)} after something was called saved: ` +
    `${String(totals.lost)} lost, ${String(totals.unreadable)} unreadable`,
);
process.exitCode = totals.lost + totals.unreadable > 0 ? 1 : 0;

function judge({ saved, made }: KillRound, found: number | null, number: number, told: string): void {
  totals.kills += 1;
  if (saved === 0) return;
  totals.withSave += 1;
  if (found === null) totals.unreadable += 1;
  else if (found < saved || found > made) totals.lost += 1;
  else return;
  console.log(
    `kill ${String(number)}: saved ${String(saved)}, made ${String(made)}, found ${String(found)}; ${told}`,
  );
}
