/** The browser's process killed in the middle of saving: a short form of tools/kill-test.ts. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { appUrl } from '../support/browser.ts';
import { type KillRound, killRound, numberStored } from '../support/kill-rounds.ts';
import { seeded } from '../support/mutate-text.ts';

const ROUNDS = 5;

test(`${ROUNDS} kills while editing: nothing that was called saved is lost`, async () => {
  const profile = mkdtempSync(join(tmpdir(), 'profile-'));
  const random = seeded(20);
  const rounds: KillRound[] = [];
  for (let i = 0; i < ROUNDS; i++)
    rounds.push(await killRound(profile, appUrl(), (rounds.at(-1)?.made ?? 0) + 1, random));
  const found = [...rounds.slice(1).map((round) => round.found), await numberStored(profile, appUrl())];
  rmSync(profile, { recursive: true, force: true });
  expect(rounds.some(({ saved }) => saved > 0)).toBe(true);
  rounds.forEach(({ saved, made }, i) => {
    if (saved === 0) return;
    expect(found[i], `after kill ${i + 1}`).not.toBeNull();
    expect(found[i], `after kill ${i + 1}`).toBeGreaterThanOrEqual(saved);
    expect(found[i], `after kill ${i + 1}`).toBeLessThanOrEqual(made);
  });
}, 240_000);
