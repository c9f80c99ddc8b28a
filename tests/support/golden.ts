/**
 * Golden drawings as SVG text and golden answers as plain text, one folder a case. What changes on purpose is renewed with the reason
 * in words, after the difference has been read:
 *
 *     RENEW_GOLDEN="the keyway is drawn with its end faces" npx vitest run --project unit tests/drawing
 *
 * The reason is added to the case's reasons.txt, so that a look at the folder tells why they are as they are.
 */
import { appendFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect } from 'vitest';

const FOLDER = join(import.meta.dirname, '../golden');

/** Holds a text against the stored one, or renews it when a reason is given. */
export function expectGolden(name: string, text: string): void {
  hold(name, name, storedIn(name), text, text);
}

/** Holds a text against its part of a stored file, or renews the part when a reason is given. Parts begin with `== name`. */
export function expectGoldenPart(name: string, part: string, text: string): void {
  const parts = new Map(
    (storedIn(name) ?? '')
      .split(/^== /mu)
      .slice(1)
      .map((each) => [each.slice(0, each.indexOf('\n')), each.slice(each.indexOf('\n') + 1)]),
  );
  const stored = parts.get(part) ?? null;
  const whole = [...parts.set(part, text)].map(([each, kept]) => `== ${each}\n${kept}`).join('');
  hold(name, `${name}, ${part}`, stored, text, whole);
}

function storedIn(name: string): string | null {
  const path = join(FOLDER, name);
  return existsSync(path) ? readFileSync(path, 'utf8') : null;
}

/** @param whole what the file holds once the text is renewed */
function hold(name: string, what: string, stored: string | null, text: string, whole: string): void {
  const path = join(FOLDER, name);
  const reason = process.env['RENEW_GOLDEN']?.trim() ?? '';
  if (reason !== '' && stored !== text) {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, whole);
    // What is kept for the first time needs no reason.
    const line = `${what.replace(`${dirname(name)}/`, '')}: ${reason}\n`;
    if (stored !== null) appendFileSync(join(dirname(path), 'reasons.txt'), line);
    return;
  }
  expect(stored, `no golden ${what}: renew it with a reason, see tests/support/golden.ts`).not.toBeNull();
  expect(text).toBe(stored);
}

/** Holds a text against a file of the sources that is written from another one; renewed the same way. */
export function expectWritten(file: string, text: string): void {
  const path = join(import.meta.dirname, '../..', file);
  const stored = existsSync(path) ? readFileSync(path, 'utf8') : null;
  if (process.env['RENEW_GOLDEN'] !== undefined && stored !== text) writeFileSync(path, text);
  else
    expect(text, `${file} is not what its source writes: renew it, see tests/support/golden.ts`).toBe(stored);
}
