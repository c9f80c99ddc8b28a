/** What the answer says with a sleeve: which line, what turns, and what the other line does meanwhile. */
import { describe, expect, test } from 'vitest';
import { setIntent } from '../../src/model/keying/intent.ts';
import { firstSelection } from '../../src/model/measured/selection.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { answerOf } from '../../src/panels/answer/answer-of.ts';
import { verdictWords } from '../../src/panels/answer/verdict-words.ts';
import { turnWords } from '../../src/panels/section/turn-words.ts';
import { asRadians } from '../../src/model/radians.ts';
import { lookAt } from '../../src/panels/shared/look.ts';
import { harbourJobWith } from '../support/harbour-jobs.ts';

const look = (job: Job) => lookAt(job, firstSelection(job)!);
const answer = (job: Job) => answerOf(look(job));
const texts = (job: Job) => answer(job).points.map(({ text }) => text);

describe('the answer', () => {
  test('says that the plug turns alone, and that the sleeve stays', () => {
    const job = harbourJobWith('storekeeper');
    expect(answer(job)).toMatchObject({
      tone: 'turns',
      headline: 'The plug should turn alone: all five chambers meet the inner shear line.',
    });
    expect(texts(job)[0]).toBe('At the outer line every chamber holds: the sleeve stays with the shell.');
    expect(answer(job).expected).not.toBeNull();
  });

  test('says that plug and sleeve turn together', () => {
    const job = harbourJobWith('harbour master');
    expect(answer(job).headline).toBe(
      'Plug and sleeve should turn together: all five chambers meet the outer shear line.',
    );
    expect(texts(job)[0]).toBe(
      'At the inner line every chamber holds: the plug does not turn in the sleeve.',
    );
  });

  test('explains a mixture in one sentence, and expects nothing to turn', () => {
    const job = harbourJobWith('storekeeper', (place) =>
      place % 2 === 0 ? 'storekeeper' : 'harbour master',
    );
    expect(answer(job)).toMatchObject({
      tone: 'stops',
      headline: 'Nothing turns: some chambers are at the inner line, some at the outer.',
      expected: null,
    });
    expect(texts(job)).toEqual([
      'Chambers 1, 3 and 5 are at the inner line. Chambers 2 and 4 are at the outer line. A line only turns when every chamber is at it.',
    ]);
  });

  test('names line, chamber and part when one cut is wrong', () => {
    const job = harbourJobWith('storekeeper', undefined, (place) => (place === 2 ? 0.5 : 0));
    expect(answer(job).headline).toBe('Chamber 3 is too low at the inner line: nothing turns.');
    expect(texts(job)[0]).toMatch(/^Its master pin hangs 0\.50 mm into the plug, /u);
  });

  test('tells when a key turns what it is not meant to', () => {
    const job = harbourJobWith('storekeeper');
    const where = { key: job.keys[0]!.id, cylinder: job.cylinders[0]!.id };
    const other = setIntent(job, where, 'together');
    expect(texts(other)).toContain('This key is meant to turn plug and sleeve together.');
    expect(texts(job).join(' ')).not.toContain('meant');
  });

  test('says of each line on its own how a chamber stands at it', () => {
    const { evaluation } = look(harbourJobWith('storekeeper'));
    const [inner, outer] = evaluation.lines.map(({ line }) => line);
    for (const chamber of evaluation.chambers) {
      expect(verdictWords(chamber, 'mm', inner).symbol).toBe('turns');
      expect(verdictWords(chamber, 'mm', outer).symbol).toBe('stops');
    }
  });
});

test('the turn says what turns, or what holds it at which line', () => {
  const quarter = asRadians(Math.PI / 2);
  expect(turnWords(look(harbourJobWith('storekeeper')), quarter, null)).toBe('The plug turns alone: 90°');
  expect(turnWords(look(harbourJobWith('harbour master')), quarter, null)).toBe(
    'Plug and sleeve turn together: 90°',
  );
  const wrong = look(harbourJobWith('harbour master', undefined, (place) => (place === 0 ? -0.4 : 0)));
  expect(turnWords(wrong, quarter, null)).toMatch(
    /^Stops at about .*: chamber 1, its master pin stands in the shell at the outer shear line$/u,
  );
});
